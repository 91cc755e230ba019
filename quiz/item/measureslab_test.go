package item

import (
	"math"
	"strings"
	"testing"

	"cuesta/orient"
	"cuesta/quiz"
	"cuesta/quiz/mistake"
	"cuesta/sim"
)

func slab(p orient.Plane, t quiz.Tolerance, n orient.Notation) slabItem {
	return slabItem{planar: planar{truth: p, notation: n, tolerance: t, declination: deg(17)}, setup: sim.Setup{Plane: p}}
}

// 295/25 S, N65W 25S and dip direction 205, dip 25 are the same plane (D. M. Ragan, Structural Geology, ch. 1).
func TestSlabInAnyNotation(t *testing.T) {
	it := slab(plane(115, 25), quiz.DefaultTolerance, orient.AzimuthDip)
	holdTo(t, it, right("115/25"), right("N65W, 25S"), right("115/25 S"), right("295/25S"), right("25→205"), right("117/23"),
		named("295/25", mistake.OtherEnd), named("205/25", mistake.DirectionForStrike), named("245/25", mistake.EastWest),
		named("098/25", mistake.DeclinationNotSet), named("115/47", mistake.PercentScale), named("115/65", mistake.Complement),
		named("115/25 N", mistake.WrongLetters))
	holdTo(t, slab(plane(115, 25), quiz.DefaultTolerance, orient.DirectionDip), right("205/25"), right("N65W 25S"))
}

// With the declination set on the dial, and no reading that shows it turned, none
// was left out; 098 is 115 without 17° E.
func TestPresetDeclinationIsNotBlamed(t *testing.T) {
	it := slab(plane(115, 25), quiz.DefaultTolerance, orient.AzimuthDip)
	it.setup.Ring = it.declination
	for _, typed := range []string{"098/25", "081/25", "132/25"} {
		m := it.Mark(typed, Evidence{})
		if m.Right || holds(m.Mistakes, mistake.DeclinationNotSet) || holds(m.Mistakes, mistake.DeclinationWrongSign) || holds(m.Mistakes, mistake.DeclinationTwice) {
			t.Errorf("%s: got %+v, want wrong and no word of the declination", typed, m)
		}
	}
	var e Evidence
	e.HasEdge = true
	e.Edge.Shown.Frame.Forward = orient.AzimuthOf(deg(115)).Vec()
	e.Edge.Shown.Dial = sim.Dial{North: orient.AzimuthOf(deg(98)), Resting: true}
	if m := it.Mark("098/25", e); !holds(m.Mistakes, mistake.DeclinationNotSet) {
		t.Errorf("a ring turned back to zero: got %+v, want it named", m.Mistakes)
	}
}

// S. Martel, University of Hawaii, GG303 lab 1, 2011: strike full within 1°
// and half within 8°, dip full within 3° and half within 8°.
func TestSlabBySteps(t *testing.T) {
	it := slab(plane(35, 30), quiz.SteppedTolerance, orient.AzimuthDip)
	for typed, want := range map[string]float64{"035/30": 1, "036/33": 1, "040/30": 0.75, "040/36": 0.5, "035/45": 0.5, "060/60": 0} {
		if got := it.Mark(typed, Evidence{}).Share; math.Abs(got-want) > 1e-9 {
			t.Errorf("%s: got %v, want %v", typed, got, want)
		}
	}
}

func TestRefusedSlabsAreExplained(t *testing.T) {
	it := slab(plane(40, 30), quiz.DefaultTolerance, orient.AzimuthDip)
	for typed, want := range map[string]mistake.Kind{"040/30 NE": mistake.LettersContradict, "130/30 SE": mistake.DirectionForStrike} {
		m := it.Mark(typed, Evidence{})
		if !m.Refused || !holds(m.Mistakes, want) {
			t.Errorf("%s: got %+v, want refused and %v", typed, m, want)
		}
	}
}

// What was written may stand first in the sentence, whatever its letters.
func TestRefusalsAreSentences(t *testing.T) {
	it := slab(plane(40, 30), quiz.DefaultTolerance, orient.AzimuthDip)
	for typed, want := range map[string]string{
		"040/95": "This could not be read. 95 was read as the dip; a dip lies from 0 to 90; write it in two digits, such as 035/30.",
		"040/９５": "This could not be read. ９５ was read as the dip; ",
		"040/":   "This could not be read. There is no dip; ",
		"joint":  "This could not be read. \"joint\" means nothing here; ",
	} {
		if m := it.Mark(typed, Evidence{}); !strings.HasPrefix(m.Said, want) {
			t.Errorf("%s: got %q, want %q", typed, m.Said, want)
		}
	}
}

// The readings kept of the bench tell two mistakes apart that look alike on
// paper.
func TestTheBenchTellsTheEnds(t *testing.T) {
	it := slab(plane(35, 30), quiz.DefaultTolerance, orient.AzimuthDip)
	for _, c := range []struct {
		points, shown float64
		want          mistake.Kind
	}{{215, 215, mistake.OtherEnd}, {35, 35, mistake.SouthEnd}} {
		var e Evidence
		e.HasEdge = true
		e.Edge.Shown.Frame.Forward = orient.AzimuthOf(deg(c.points)).Vec()
		e.Edge.Shown.Dial = sim.Dial{North: orient.AzimuthOf(deg(c.shown)), Ring: deg(17), Resting: true}
		m := it.Mark("215/30", e)
		if m.Right || len(m.Mistakes) != 1 || m.Mistakes[0].Kind != c.want {
			t.Errorf("got %+v, want %v", m.Mistakes, c.want)
		}
	}
}

func TestSlabsStandOnABench(t *testing.T) {
	seen(t, measureSlab{}, Spec{Declination: deg(-12), RingPreset: true}, 1000, map[string]func(Item) bool{
		"near north": func(it Item) bool { return it.(slabItem).truth.Strike.From(0).Abs() < deg(8) },
		"gentle":     func(it Item) bool { return it.(slabItem).truth.Dip < deg(15) },
		"steep":      func(it Item) bool { return it.(slabItem).truth.Dip > deg(75) },
		"ring set": func(it Item) bool {
			s := it.(AtBench).Setup()
			_, err := sim.New(s)
			return err == nil && s.Ring == deg(-12) && s.Field.Declination == deg(-12) && s.Field.Horizontal == horizontal
		},
	})
}

// Answers of the mistakes that can be told on paper are wrong on every slab,
// and named.
func TestToldMistakesOnAnySlab(t *testing.T) {
	ds, err := dealt[measureSlab{}]()
	if err != nil {
		t.Fatal(err)
	}
	var told, names int
	for _, d := range ds {
		it := d.it.(slabItem)
		if it.declination.Abs() < deg(1.5) { // at the very edge of a tolerance of 1°
			continue
		}
		c := diagnosed{s: d.spec, truth: it.truth, declination: whole(it.declination)}
		for _, m := range c.mistaken() {
			text := orient.Format(m.plane, it.notation)
			entry, err := orient.Parse(text, it.notation)
			if err != nil {
				t.Fatalf("%s: %v", text, err)
			}
			preset := it.setup.Ring == it.declination && (m.kind == mistake.DeclinationNotSet || m.kind == mistake.DeclinationWrongSign || m.kind == mistake.DeclinationTwice)
			if apart, _ := it.of(entry, Evidence{}).Evidence().Apart(m.kind); !apart || preset {
				continue
			}
			told++
			mark := it.Mark(text, Evidence{})
			if mark.Right || mark.Share == 1 {
				t.Errorf("%s for %s (%v): got right, want wrong", text, it.Key(), m.kind)
			}
			if holds(mark.Mistakes, m.kind) {
				names++
			}
		}
	}
	if told < deals || float64(names) < 0.95*float64(told) {
		t.Errorf("got %d of %d named, want 95 %% of at least %d", names, told, deals)
	}
	t.Logf("%d of %d named", names, told)
}
