package mistake

import (
	"testing"

	"cuesta/orient"
)

func TestApart(t *testing.T) {
	level := func(e Evidence) Evidence { return e.dial(35, 35, 0) }
	for _, c := range []struct {
		name   string
		e      Evidence
		k      Kind
		want   bool
		rivals []Kind
	}{
		{"other end on paper", bed(35, 30, 0, 0), OtherEnd, false, []Kind{SouthEnd}},
		{"other end, forward end seen", bed(35, 30, 0, 0).dial(215, 215, 0), OtherEnd, true, nil},
		{"other end, ruled out by the pose", level(bed(35, 30, 0, 0)), OtherEnd, false, nil},
		{"south end, pose seen", level(bed(35, 30, 0, 0)), SouthEnd, true, nil},
		{"either end is right with letters", bed(35, 30, 0, 0).letters("SE"), OtherEnd, false, nil},
		{"either end of a vertical bed", bed(35, 90, 0, 0), OtherEnd, false, nil},
		{"east and west", bed(35, 30, 0, 0), EastWest, true, nil},
		{"east and west at 090 is the other end", bed(90, 30, 0, 0), EastWest, false, []Kind{OtherEnd, SouthEnd}},
		{"east and west at 000 is right", bed(0, 30, 0, 0), EastWest, false, nil},
		{"east and west at 045 is 90 off", bed(45, 30, 0, 0), EastWest, false, []Kind{DirectionForStrike}},
		{"declination of 15°", bed(35, 60, 0, 0).at(15), DeclinationNotSet, true, nil},
		{"declination of 2° is right", bed(35, 60, 0, 0).at(2), DeclinationNotSet, false, nil},
		{"no declination", bed(35, 60, 0, 0), DeclinationNotSet, false, nil},
		{"percent of 20° is 36", bed(35, 20, 0, 0), PercentScale, true, nil},
		{"percent of 30° is the complement", bed(35, 30, 0, 0), PercentScale, false, []Kind{Complement}},
		{"percent of 5° is 9", bed(35, 5, 0, 0), PercentScale, false, nil},
		{"percent of 60° is refused", bed(35, 60, 0, 0), PercentScale, false, nil},
		{"complement of 45°", bed(35, 45, 0, 0), Complement, false, nil},
		{"swapped 030/70", bed(30, 70, 0, 0), StrikeDipSwapped, true, nil},
		{"swapped 130/70 cannot be written", bed(130, 70, 0, 0), StrikeDipSwapped, false, nil},
		{"letters that cannot be", bed(35, 30, 0, 0), LettersContradict, false, nil},
	} {
		got, rivals := c.e.Apart(c.k)
		if got != c.want {
			t.Errorf("%s: got %t, want %t", c.name, got, c.want)
		}
		for _, r := range c.rivals {
			if !setOf(rivals...).has(r) {
				t.Errorf("%s: got rivals %v, want %v among them", c.name, rivals, r)
			}
		}
	}
}

func TestApartNeedsNoNumbersOfTheAnswer(t *testing.T) {
	e := bed(35, 30, 0, 0)
	f := bed(35, 30, 200, 80)
	for k := range Kind(Kinds) {
		a, _ := e.Apart(k)
		b, _ := f.Apart(k)
		if a != b {
			t.Errorf("%v: got %t and %t, want the same whatever was answered", k, a, b)
		}
	}
	if got, _ := (Evidence{Entry: orient.Entry{}}).Apart(OtherEnd); got {
		t.Error("a level bed: got apart, want not")
	}
}
