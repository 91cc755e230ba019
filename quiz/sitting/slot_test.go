package sitting_test

import (
	"errors"
	"testing"

	"cuesta/quiz/form"
	"cuesta/quiz/sitting"
)

// drawer is a slot in memory. full refuses to be written, as the storage of a
// browser does when its quota is used up.
type drawer struct {
	data []byte
	full bool
}

var errFull = errors.New("the storage is full")

func (d *drawer) Load() ([]byte, error) { return append([]byte(nil), d.data...), nil }

func (d *drawer) Save(p []byte) error {
	if d.full {
		return errFull
	}
	d.data = append([]byte(nil), p...)
	return nil
}

func TestASlotKeepsEachEntry(t *testing.T) {
	f, d := dealt(t, blueprint, form.Student{ID: "tf1", Name: "Ada Moss"}), &drawer{}
	j, err := sitting.OpenIn(d, f, "")
	if err != nil {
		t.Fatal(err)
	}
	if err := j.Do(sitting.Entry{Do: sitting.Flag, Item: 1}); err != nil {
		t.Fatal(err)
	}
	again, err := sitting.OpenIn(d, f, "")
	if err != nil {
		t.Fatal(err)
	}
	if !again.Resumed() || !again.Answer(1).Flagged {
		t.Errorf("resumed %v, flagged %v; want both", again.Resumed(), again.Answer(1).Flagged)
	}
}

func TestAFullSlotLosesNothing(t *testing.T) {
	f, d := dealt(t, blueprint, form.Student{ID: "tf1", Name: "Ada Moss"}), &drawer{}
	j, err := sitting.OpenIn(d, f, "")
	if err != nil {
		t.Fatal(err)
	}
	flag := func(i int) error { return j.Do(sitting.Entry{Do: sitting.Flag, Item: i}) }
	if err := flag(0); err != nil {
		t.Fatal(err)
	}
	d.full = true
	if err := flag(1); !errors.Is(err, errFull) {
		t.Fatalf("got %v, want %v", err, errFull)
	}
	if j.Answer(1).Flagged || !j.Answer(0).Flagged {
		t.Error("a refused entry counts, or an earlier one is lost")
	}
	d.full = false
	if err := flag(1); err != nil {
		t.Fatalf("after there was room again: %v", err)
	}
	again, err := sitting.OpenIn(d, f, "")
	if err != nil {
		t.Fatal(err)
	}
	if !again.Answer(0).Flagged || !again.Answer(1).Flagged {
		t.Error("the entries are not in the slot")
	}
}

func TestTwoPagesDoNotWriteOneSlot(t *testing.T) {
	f, d := dealt(t, blueprint, form.Student{ID: "tf1", Name: "Ada Moss"}), &drawer{}
	one, err := sitting.OpenIn(d, f, "")
	if err != nil {
		t.Fatal(err)
	}
	two, err := sitting.OpenIn(d, f, "")
	if err != nil {
		t.Fatal(err)
	}
	if err := one.Do(sitting.Entry{Do: sitting.Flag, Item: 0}); err != nil {
		t.Fatal(err)
	}
	if err := two.Do(sitting.Entry{Do: sitting.Flag, Item: 1}); !errors.Is(err, sitting.ErrShared) {
		t.Errorf("got %v, want %v", err, sitting.ErrShared)
	}
}

func TestATornSlotIsCutAndADamagedOneLeftAlone(t *testing.T) {
	f, d := dealt(t, blueprint, form.Student{ID: "tf1", Name: "Ada Moss"}), &drawer{}
	j, err := sitting.OpenIn(d, f, "")
	if err != nil {
		t.Fatal(err)
	}
	if err := j.Do(sitting.Entry{Do: sitting.Flag, Item: 0}); err != nil {
		t.Fatal(err)
	}
	whole := len(d.data)
	d.data = append(d.data, "0000"...)
	if j, err = sitting.OpenIn(d, f, ""); err != nil || !j.Torn() || len(d.data) != whole {
		t.Errorf("%v, torn %v, %d bytes; want it cut to %d", err, err == nil && j.Torn(), len(d.data), whole)
	}
	d.data[3] ^= 1
	damaged := string(d.data)
	if _, err := sitting.OpenIn(d, f, ""); !errors.Is(err, sitting.ErrJournal) || string(d.data) != damaged {
		t.Errorf("got %v, want %v and the slot as it was", err, sitting.ErrJournal)
	}
}
