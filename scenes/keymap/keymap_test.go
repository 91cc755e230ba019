package keymap_test

import (
	"encoding/json"
	"errors"
	"fmt"
	"slices"
	"testing"

	"cuesta/scenes/input"
	"cuesta/scenes/keymap"
)

func sign(r rune) keymap.Stroke        { return keymap.Stroke{Rune: r} }
func stroke(k input.Key) keymap.Stroke { return keymap.Stroke{Key: k} }

func TestTheUsualKeysDoOneThingEach(t *testing.T) {
	var m keymap.Map
	for a := range keymap.Actions {
		if a.Words() == "" || a.String() == "" || a.Usual() == (keymap.Stroke{}) {
			t.Errorf("action %d: words %q, name %q, key %v", a, a.Words(), a, a.Usual())
		}
		if got, ok := m.At(a.Place(), m.Of(a)); !ok || got != a {
			t.Errorf("%s: its key %v does %v in its place", a, m.Of(a), got)
		}
		got, err := keymap.ParseStroke(a.Usual().String())
		if err != nil || got != a.Usual() {
			t.Errorf("%s: %q reads back as %v, %v", a, a.Usual(), got, err)
		}
	}
}

func TestAKeyThatIsTakenIsExchanged(t *testing.T) {
	m, swapped, err := keymap.Map{}.With(keymap.TurnOver, sign('f'))
	if err != nil || !slices.Equal(swapped, []keymap.Action{keymap.Flip}) {
		t.Fatalf("got %v, %v; want flip in exchange", swapped, err)
	}
	if m.Of(keymap.TurnOver) != sign('f') || m.Of(keymap.Flip) != sign('t') {
		t.Errorf("got %v and %v, want F and T", m.Of(keymap.TurnOver), m.Of(keymap.Flip))
	}
	back, _, err := m.With(keymap.TurnOver, sign('t'))
	if err != nil || !back.Usual() {
		t.Errorf("given back: %+v, %v; want the usual keys", back, err)
	}
}

func TestOneKeyMayServeAFormAndALecture(t *testing.T) {
	m, swapped, err := keymap.Map{}.With(keymap.NextItem, stroke(input.F6))
	if err != nil || len(swapped) != 0 {
		t.Fatalf("got %v, %v", swapped, err)
	}
	if got := m.Of(keymap.NextStep); got != stroke(input.PageDown) {
		t.Errorf("the lecture's key became %v", got)
	}
	if _, swapped, err = m.With(keymap.NextStep, stroke(input.F6)); err != nil || len(swapped) != 0 {
		t.Errorf("got %v, %v; a form and a lecture never meet", swapped, err)
	}
}

func TestWaysOutCannotBeTakenAway(t *testing.T) {
	for _, s := range []keymap.Stroke{stroke(input.Escape), stroke(input.Tab), stroke(input.Enter), stroke(input.Backspace), sign('7'), sign('/'), {}} {
		m, _, err := keymap.Map{}.With(keymap.Flip, s)
		if !errors.Is(err, keymap.ErrKept) || !m.Usual() {
			t.Errorf("%v: got %v, want ErrKept and nothing changed", s, err)
		}
	}
}

// What works everywhere works in fields too, where a letter is written.
func TestALetterCannotWorkEverywhere(t *testing.T) {
	for _, c := range []struct {
		a keymap.Action
		s keymap.Stroke
	}{{keymap.Menu, sign('x')}, {keymap.Switch, sign('f')}, {keymap.Flip, stroke(input.F1)}} {
		if m, _, err := (keymap.Map{}).With(c.a, c.s); !errors.Is(err, keymap.ErrKept) || !m.Usual() {
			t.Errorf("%s with %s: got %v, want ErrKept and nothing changed", c.a, c.s, err)
		}
	}
}

func TestKeysAreKept(t *testing.T) {
	m, _, _ := keymap.Map{}.With(keymap.SwingLess, sign('h'))
	m, _, _ = m.With(keymap.Tap, stroke(input.F6))
	data, err := json.Marshal(m)
	if err != nil {
		t.Fatal(err)
	}
	var got keymap.Map
	if err := json.Unmarshal(data, &got); err != nil || got != m {
		t.Errorf("%s reads back as %+v, %v", data, got, err)
	}
	if data, _ := json.Marshal(keymap.Map{}); string(data) != "[]" {
		t.Errorf("the usual keys are kept as %s", data)
	}
}

var damaged = []string{
	`{}`, `[{"Do":"fly","Key":"T"}]`, `[{"Do":"flip","Key":"Escape"}]`, `[{"Do":"flip","Key":"7"}]`,
	`[{"Do":"flip","Key":"t"}]`, `[{"Do":"flip","Key":"tt"}]`, `[{"Do":"flip","Key":""}]`, `[{"Do":"flip","Key":"x","Colour":1}]`,
}

func TestDamagedKeysAreRefused(t *testing.T) {
	for _, s := range damaged {
		var m keymap.Map
		if err := json.Unmarshal([]byte(s), &m); err == nil || !m.Usual() {
			t.Errorf("%s: got %+v, %v", s, m, err)
		}
	}
}

func FuzzKeys(f *testing.F) {
	for _, s := range append(damaged, `[]`, `[{"Do":"flip","Key":"x"}]`) {
		f.Add([]byte(s))
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		var m keymap.Map
		if json.Unmarshal(data, &m) != nil {
			return
		}
		out, err := json.Marshal(m)
		var again keymap.Map
		if err != nil || json.Unmarshal(out, &again) != nil || again != m {
			t.Errorf("%s became %s, %v", data, out, err)
		}
		for a := range keymap.Actions {
			if got, ok := m.At(a.Place(), m.Of(a)); !ok || got != a {
				t.Errorf("%s: the key of %s does %s", data, a, got)
			}
		}
	})
}

func ExampleMap_With() {
	m, swapped, err := keymap.Map{}.With(keymap.TurnOver, keymap.Stroke{Rune: 'f'})
	fmt.Println(m.Of(keymap.TurnOver), swapped, err)
	_, _, err = m.With(keymap.TurnOver, keymap.Stroke{Key: input.Escape})
	fmt.Println(err)
	// Output:
	// F [flip] <nil>
	// that key cannot be given another meaning: Escape stays as it is, so that there is always a way on and a way out
}
