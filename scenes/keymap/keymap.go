package keymap

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
)

// Map is which key does what. The zero value has the usual keys. Maps can be
// compared.
type Map struct {
	own [Actions]Stroke // in place of the usual ones, where not zero
}

// ErrKept is the error for a key that cannot be given away.
var ErrKept = errors.New("that key cannot be given another meaning")

// Of is the key that does an action.
func (m Map) Of(a Action) Stroke {
	if s := m.own[a]; s != (Stroke{}) {
		return s
	}
	return a.Usual()
}

// At is the action that a key does in a place, if it does one.
func (m Map) At(p Place, s Stroke) (Action, bool) {
	for a := range Actions {
		if q := a.Place(); (q == p || q == Everywhere) && m.Of(a) == s && s != (Stroke{}) {
			return a, true
		}
	}
	return 0, false
}

// Usual says whether no key has been changed.
func (m Map) Usual() bool { return m == Map{} }

// With gives an action another key. An action that had that key, where both
// are to be had, gets the old one in exchange: it is named in swapped. The
// error wraps ErrKept and says why; the map is then as it was.
func (m Map) With(a Action, s Stroke) (with Map, swapped []Action, err error) {
	if s == (Stroke{}) {
		return m, nil, fmt.Errorf("%w: no key was read", ErrKept)
	}
	if why := s.reserved(a); why != "" {
		return m, nil, fmt.Errorf("%w: %s", ErrKept, why)
	}
	with, old := m, m.Of(a)
	with.put(a, s)
	for b := range Actions {
		if b != a && b.meets(a) && m.Of(b) == s {
			if why := old.reserved(b); why != "" {
				return m, nil, fmt.Errorf("%w: %s is for %q, which could not have %s in exchange", ErrKept, s, b.Words(), old)
			}
			with.put(b, old)
			swapped = append(swapped, b)
		}
	}
	if x, y, clash := with.clash(); clash {
		return m, nil, fmt.Errorf("%w: %q and %q would both be %s", ErrKept, x.Words(), y.Words(), with.Of(x))
	}
	return with, swapped, nil
}

func (m *Map) put(a Action, s Stroke) {
	if s == a.Usual() {
		s = Stroke{}
	}
	m.own[a] = s
}

// clash finds two actions that may both be to be had and have one key.
func (m Map) clash() (a, b Action, found bool) {
	for a := range Actions {
		for b := range a {
			if a.meets(b) && m.Of(a) == m.Of(b) {
				return b, a, true
			}
		}
	}
	return 0, 0, false
}

// kept is one changed key as it is kept.
type kept struct{ Do, Key string }

// MarshalJSON writes the keys that are not the usual ones.
func (m Map) MarshalJSON() ([]byte, error) {
	list := []kept{}
	for a := range Actions {
		if m.own[a] != (Stroke{}) {
			list = append(list, kept{a.String(), m.own[a].String()})
		}
	}
	return json.Marshal(list)
}

// UnmarshalJSON reads what MarshalJSON writes. A list in which an action is
// unknown, a key is none, stays as it is, or does two things, is an error.
func (m *Map) UnmarshalJSON(data []byte) error {
	var list []kept
	d := json.NewDecoder(bytes.NewReader(data))
	d.DisallowUnknownFields()
	if err := d.Decode(&list); err != nil {
		return err
	}
	var out Map
	for _, k := range list {
		a, ok := actionOf(k.Do)
		if !ok {
			return fmt.Errorf("keys: %.40q is nothing a key does", k.Do)
		}
		s, err := ParseStroke(k.Key)
		if err != nil {
			return fmt.Errorf("keys: %w", err)
		}
		if why := s.reserved(a); why != "" {
			return fmt.Errorf("keys: %s", why)
		}
		out.put(a, s)
	}
	if a, b, clash := out.clash(); clash {
		return fmt.Errorf("keys: %s does both %s and %s", out.Of(a), a, b)
	}
	*m = out
	return nil
}

func actionOf(name string) (Action, bool) {
	for a := range Actions {
		if a.String() == name {
			return a, true
		}
	}
	return 0, false
}
