package inset

import (
	"strings"
	"testing"

	"cuesta/orient"
	"cuesta/sim"
)

func TestRoundWords(t *testing.T) {
	for _, c := range []struct {
		o    sim.RoundLevel
		want string
	}{
		{sim.RoundLevel{Centred: true}, "wholly inside the ring"},
		{sim.RoundLevel{Right: .2, Forward: .1, Centred: true}, "wholly inside the ring"},
		{sim.RoundLevel{Right: .3}, "touching the ring"},
		{sim.RoundLevel{Right: -.6, Forward: .7}, "touching the ring"},
		{sim.RoundLevel{Right: -.8, Forward: .8}, "outside the ring, forward left"},
		{sim.RoundLevel{Forward: 1.1}, "outside the ring, forward"},
		{sim.RoundLevel{Right: 1.2}, "outside the ring, right"},
		{sim.RoundLevel{Right: 1, Forward: -.9}, "outside the ring, rear right"},
		{sim.RoundLevel{Right: 1, Forward: 1, AtWall: true}, "at the wall, forward right"},
		{sim.RoundLevel{Forward: -1.42, AtWall: true}, "at the wall, rear"},
		{sim.RoundLevel{Right: -1, Forward: -1, AtWall: true}, "at the wall, rear left"},
		{sim.RoundLevel{Right: -1.42, Forward: -.01, AtWall: true}, "at the wall, left"},
		{sim.RoundLevel{Right: -.01, Forward: 1.42, AtWall: true}, "at the wall, forward"},
	} {
		if got := RoundState(c.o).Words(); got != c.want {
			t.Errorf("%+v: %q, want %q", c.o, got, c.want)
		}
	}
}

func TestTubeWords(t *testing.T) {
	for _, c := range []struct {
		o    sim.TubeLevel
		want string
	}{
		{sim.TubeLevel{Centred: true}, "between the marks"},
		{sim.TubeLevel{Off: .2, Centred: true}, "between the marks"},
		{sim.TubeLevel{Off: .3}, "touching a mark, index end"},
		{sim.TubeLevel{Off: -1}, "touching a mark, pivot end"},
		{sim.TubeLevel{Off: 1.2}, "past the mark, index end"},
		{sim.TubeLevel{Off: -1.5}, "past the mark, pivot end"},
		{sim.TubeLevel{Off: 1.79, AtEnd: true}, "at the end, index end"},
		{sim.TubeLevel{Off: -1.79, AtEnd: true}, "at the end, pivot end"},
	} {
		if got := TubeState(c.o).Words(); got != c.want {
			t.Errorf("%+v: %q, want %q", c.o, got, c.want)
		}
	}
}

func TestDialWords(t *testing.T) {
	for _, c := range []struct {
		o    sim.Dial
		want string
	}{
		{sim.Dial{}, "swinging"},
		{sim.Dial{Resting: true}, "at rest"},
		{sim.Dial{Resting: true, State: sim.NeedleRubbing}, "rubbing on the glass: the case is tilted too far"},
		{sim.Dial{Resting: true, State: sim.NeedleLocked}, "locked"},
	} {
		if got := DialState(c.o).Words(); got != c.want {
			t.Errorf("%+v: %q, want %q", c.o, got, c.want)
		}
	}
}

// TestWordsShowAndDoNotTell: no number, no praise, no capital, no full stop.
func TestWordsShowAndDoNotTell(t *testing.T) {
	for p := range words {
		for _, w := range words[p] {
			if strings.ContainsAny(w, "0123456789.!") || w != strings.ToLower(w) {
				t.Errorf("%q holds a number or is a sentence", w)
			}
			for _, praise := range []string{"good", "right!", "correct", "well", "perfect", "level."} {
				if strings.Contains(w, praise) {
					t.Errorf("%q praises", w)
				}
			}
		}
	}
}

func TestHingeAndSensorWords(t *testing.T) {
	for _, c := range []struct{ got, want string }{
		{HingeState(0).Words(), "closed"},
		{HingeState(orient.Degree / 10).Words(), "open"},
		{HingeState(orient.Half).Words(), "folded right back"},
		{SensorState(sim.Sensor{}).Words(), "not calibrated"},
		{SensorState(sim.Sensor{Calibrated: true}).Words(), "calibrated"},
	} {
		if c.got != c.want {
			t.Errorf("%q, want %q", c.got, c.want)
		}
	}
}
