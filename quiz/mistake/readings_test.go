package mistake

import (
	"testing"

	"cuesta/orient"
	"cuesta/sim"
)

// watched says that a bench kept every reading.
func (e Evidence) watched() Evidence { e.Watched = true; return e }

// preset says that the dial was set for the student.
func (e Evidence) preset() Evidence { e.RingPreset = true; return e }

// hinge adds a reading of the lid that is right but for the ring.
func (e Evidence) hinge(ring float64) Evidence {
	e.HasLid, e.Lid.Shown = true, e.flush(ring)
	return e
}

// sensed does the same for the sensor.
func (e Evidence) sensed(ring float64) Evidence {
	e.HasBack, e.Back.Shown = true, e.flush(ring)
	return e
}

// raw is a sensor that was not calibrated and shows the direction off by so much.
func (e Evidence) raw(off float64) Evidence {
	e = e.sensed(0)
	s := &e.Back.Shown.Sensor
	s.Direction, s.Calibrated = s.Direction.Add(deg(off)), false
	return e
}

func (e Evidence) flush(ring float64) sim.Observation {
	down := e.Truth.DipDirection()
	shown := down.Add(deg(ring) - e.Declination)
	return sim.Observation{
		Frame:  sim.Frame{Forward: down.Vec()},
		Dial:   sim.Dial{North: shown, Ring: deg(ring), Resting: true},
		Hinge:  e.Truth.Dip,
		Sensor: sim.Sensor{Direction: shown, Dip: e.Truth.Dip, Calibrated: true},
	}
}

// What a bench did not show was not misread there: the number alone speaks only
// where nobody watched.
func TestWhatWasNotReadWasNotMisread(t *testing.T) {
	for _, c := range []struct {
		name string
		e    Evidence
		is   Wrong
		want []Kind
	}{
		{"percent of 26° on paper", bed(35, 26, 35, 49), dipOnly, []Kind{PercentScale}},
		{"percent of 26°, never read", bed(35, 26, 35, 49).watched(), dipOnly, nil},
		{"percent of 26°, the dial alone read", bed(35, 26, 35, 49).dial(35, 35, 0).watched(), dipOnly, nil},
		{"percent of 26°, read off the arc", bed(35, 26, 35, 49).arc(26, 0, 26).watched(), dipOnly, []Kind{PercentScale}},
		{"percent of 26°, a hinge read", bed(35, 26, 35, 49).hinge(0).watched(), dipOnly, nil},
		{"90 − 40, never read", bed(35, 40, 35, 50).watched(), dipOnly, nil},
		{"90 − 40, a hinge read", bed(35, 40, 35, 50).hinge(0).watched(), dipOnly, []Kind{Complement}},
		{"37 for 73, never read", bed(148, 73, 148, 37).watched(), dipOnly, nil},
		{"360 − 35, never read", bed(35, 30, 325, 30).watched(), strikeOnly, nil},
		{"360 − 35, the arc alone read", bed(35, 30, 325, 30).arc(30, 0, 30).watched(), strikeOnly, nil},
		{"360 − 35, the sensor read", bed(35, 30, 325, 30).sensed(0).watched(), strikeOnly, nil},
		{"360 − 35, the dial read through the lid", bed(35, 30, 325, 30).hinge(0).watched(), strikeOnly, []Kind{EastWest}},
		{"184 for 148, never read", bed(148, 40, 184, 40).watched(), strikeOnly, nil},
		{"declination, never read", bed(52, 40, 35, 40).at(17).watched(), strikeOnly, nil},
		{"declination, read through the lid", bed(52, 40, 35, 40).at(17).hinge(0).watched(), strikeOnly, []Kind{DeclinationNotSet}},
		{"the other end, never read", bed(35, 30, 215, 30).watched(), strikeOnly, []Kind{OtherEnd}},
		{"the dip direction, never read", bed(35, 30, 125, 30).watched(), strikeOnly, []Kind{DirectionForStrike}},
		{"letters, never read", bed(35, 30, 215, 30).letters("NW").watched(), strikeOnly, []Kind{WrongLetters}},
		{"30/035, never read", bed(35, 70, 70, 35).watched(), both, []Kind{StrikeDipSwapped}},
	} {
		if got := Diagnose(c.e, c.is); !sameKinds(got, c.want) {
			t.Errorf("%s: got %v, want %v", c.name, got, c.want)
		}
	}
}

// Of every answer there is, none has a reading mistake of a part that was not
// read.
func TestNoReadingNoReadingMistake(t *testing.T) {
	dial := setOf(SouthEnd, EastWest, DeclinationNotSet, DeclinationWrongSign, DeclinationMisset, DeclinationTwice,
		LevelNotCentred, NeedleMoving, NeedleRubbing, NeedleLocked, NeedleSticking, DigitsSwapped)
	arc := setOf(EdgeNotDownDip, BodyLeaning, TubeNotCentred, PercentScale, Complement, DigitsSwapped)
	for dip := 0.0; dip <= 90; dip++ {
		for _, f := range Diagnose(bed(115, 25, 115, dip).dial(115, 115, 0).watched(), dipOnly) {
			if arc.has(f.Kind) {
				t.Errorf("dip %g: got %v at %g, want no mistake of the arc", dip, f.Kind, f.Probability)
			}
		}
	}
	for strike := 0.0; strike < 360; strike++ {
		for _, f := range Diagnose(bed(115, 25, strike, 25).at(17).arc(25, 0, 25).watched(), strikeOnly) {
			if dial.has(f.Kind) {
				t.Errorf("strike %g: got %v at %g, want no mistake of the dial", strike, f.Kind, f.Probability)
			}
		}
	}
}

func TestUnreadPercentIsRefusedWithoutAReason(t *testing.T) {
	_, err := orient.Parse("035/173", orient.AzimuthDip)
	if f, ok := OfRefused("035/173", err, bed(35, 60, 0, 0).watched()); ok {
		t.Errorf("got %v, want nothing: no arc was read", f.Kind)
	}
	if f, ok := OfRefused("035/173", err, bed(35, 60, 0, 0).arc(60, 0, 60).watched()); !ok || f.Kind != PercentScale {
		t.Errorf("got %v %t, want the percent scale of the arc that was read", f.Kind, ok)
	}
}

// 098 is 115 without 17° E.
func TestPresetDialIsNotBlamed(t *testing.T) {
	for _, strike := range []float64{98, 81, 132} {
		e := bed(115, 25, strike, 25).at(17).preset()
		for _, e := range []Evidence{e, e.watched(), e.hinge(17).watched(), e.sensed(17).watched()} {
			for _, f := range Diagnose(e, strikeOnly) {
				if setOf(DeclinationNotSet, DeclinationWrongSign).has(f.Kind) || f.Kind == DeclinationTwice && !e.flatRead() {
					t.Errorf("%g: got %v, want no word of the declination", strike, f.Kind)
				}
			}
		}
	}
	turned := bed(115, 25, 98, 25).at(17).preset().hinge(0).watched()
	if got := Diagnose(turned, strikeOnly); !sameKinds(got, []Kind{DeclinationNotSet}) {
		t.Errorf("a ring turned back to zero: got %v, want it named", got)
	}
	if got := Diagnose(bed(115, 25, 98, 25).at(17).preset().dial(115, 115, 17).watched(), strikeOnly); len(got) > 0 {
		t.Errorf("a dial read as it was set: got %v, want nothing left out", got)
	}
}

func TestReadingsOfABench(t *testing.T) {
	w, err := sim.New(sim.Setup{Plane: orient.PlaneOf(deg(35), deg(30))})
	if err != nil {
		t.Fatal(err)
	}
	if got := ReadingsOf(w); !got.Watched || got.HasEdge || got.HasSide || got.HasLid || got.HasBack {
		t.Errorf("got %+v, want a bench without a reading", got)
	}
	for _, c := range []sim.Command{{Kind: sim.Read}, {Kind: sim.Place, Seat: sim.OnSide}, {Kind: sim.Read}} {
		if err := w.Do(c); err != nil {
			t.Fatal(err)
		}
	}
	if got := ReadingsOf(w); !got.HasEdge || !got.HasSide || got.Side.Seat != sim.OnSide || got.HasLid {
		t.Errorf("got %+v, want dial and arc", got)
	}
}
