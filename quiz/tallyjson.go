package quiz

import (
	"bytes"
	"encoding/json"
	"fmt"

	"cuesta/quiz/mistake"
)

const tallyVersion = 1

// tallyJSON is the written form of a tally: classes and mistakes by name, so
// that a new kind of mistake leaves old files readable.
type tallyJSON struct {
	Version  int              `json:"version"`
	Classes  map[string]Score `json:"classes"`
	Mistakes map[string]int   `json:"mistakes"`
	Answers  int              `json:"answers"`
}

// MarshalJSON writes the tally with its version; what was never counted is
// left out.
func (t Tally) MarshalJSON() ([]byte, error) {
	out := tallyJSON{tallyVersion, map[string]Score{}, map[string]int{}, t.Answers}
	for c, s := range t.Classes {
		if s != (Score{}) {
			out.Classes[DipClass(c).String()] = s
		}
	}
	for k, n := range t.Mistakes {
		if n != 0 {
			out.Mistakes[mistake.Kind(k).String()] = n
		}
	}
	return json.Marshal(out)
}

// UnmarshalJSON reads a tally. It refuses another version, names it does not
// know and counts that cannot be.
func (t *Tally) UnmarshalJSON(data []byte) error {
	var in tallyJSON
	d := json.NewDecoder(bytes.NewReader(data))
	d.DisallowUnknownFields()
	if err := d.Decode(&in); err != nil {
		return fmt.Errorf("quiz: tally: %w", err)
	}
	if in.Version != tallyVersion {
		return fmt.Errorf("quiz: tally: version %d; this program reads version %d", in.Version, tallyVersion)
	}
	got := Tally{Answers: in.Answers}
	if err := got.fill(in); err != nil {
		return err
	}
	if !got.IsValid() {
		return fmt.Errorf("quiz: tally: a count is not from 0 to a million, or more are right than were answered")
	}
	*t = got
	return nil
}

func (t *Tally) fill(in tallyJSON) error {
	for name, s := range in.Classes {
		c, ok := classNamed(name)
		if !ok {
			return fmt.Errorf("quiz: tally: %q is not a dip class; gentle, moderate and steep are", name)
		}
		t.Classes[c] = s
	}
	for name, n := range in.Mistakes {
		k, ok := mistake.KindOf(name)
		if !ok {
			return fmt.Errorf("quiz: tally: %q is not the name of a mistake", name)
		}
		t.Mistakes[k] = n
	}
	return nil
}

func classNamed(name string) (DipClass, bool) {
	for _, c := range []DipClass{Gentle, Moderate, Steep} {
		if c.String() == name {
			return c, true
		}
	}
	return 0, false
}
