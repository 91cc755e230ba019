package mistake

import (
	"math"
	"strings"
	"testing"

	"cuesta/orient"
	"cuesta/sim"
)

func deg(x float64) orient.Angle { return orient.Angle(x) * orient.Degree }

// bed is evidence about a bed and an answer written in right-hand azimuth and
// dip, with the limits of a course that tolerates 2°, 1° of levelling and 3°.
func bed(strike, dip, answerStrike, answerDip float64) Evidence {
	limit := deg(2) + orient.Asin(math.Min(1, deg(1).Tan()/deg(dip).Tan()))
	return Evidence{
		Truth:  orient.PlaneOf(deg(strike), deg(dip)),
		Entry:  orient.Entry{Plane: orient.PlaneOf(deg(answerStrike), deg(answerDip)), HasStrike: true},
		Limits: Limits{Reading: deg(2), Strike: limit, Dip: deg(3)},
	}
}

// at is bed at a place of the given declination.
func (e Evidence) at(declination float64) Evidence {
	e.Declination = deg(declination)
	return e
}

// letters says that letters settled the side.
func (e Evidence) letters(s string) Evidence { e.Entry.Letters = s; return e }

// in says how the answer was written.
func (e Evidence) in(n orient.Notation) Evidence { e.Entry.Notation = n; return e }

// dial adds a reading of the dial: which way the edge pointed, what the dial
// showed and how the ring stood.
func (e Evidence) dial(trend, shown, ring float64) Evidence {
	e.HasEdge = true
	e.Edge.Shown.Frame.Forward = orient.AzimuthOf(deg(trend)).Vec()
	e.Edge.Shown.Dial = sim.Dial{North: orient.AzimuthOf(deg(shown)), Ring: deg(ring), Resting: true}
	return e
}

// held says what became of the needle.
func (e Evidence) held(s sim.NeedleState, resting bool) Evidence {
	e.Edge.Shown.Dial.State, e.Edge.Shown.Dial.Resting = s, resting
	return e
}

// arc adds a reading of the arc: plunge of the edge, lean of the body and what
// the arm showed.
func (e Evidence) arc(plunge, lean, arm float64) Evidence {
	e.HasSide = true
	e.Side.Along, e.Side.Across, e.Side.Shown.Arc.Arm = deg(plunge), deg(lean), deg(arm)
	return e
}

var both = Wrong{Strike: true, Dip: true}
var strikeOnly = Wrong{Strike: true}
var dipOnly = Wrong{Dip: true}

// examples hold one case worked out by hand for each kind, or more.
var examples = []struct {
	name string
	e    Evidence
	is   Wrong
	want []Kind // in order; ties one after the other
	tie  bool   // all of want are one tie
}{
	{"the edge pointed to 215, the dial showed it, it was written", bed(35, 30, 215, 30).dial(215, 215, 0), strikeOnly, []Kind{OtherEnd}, false},
	{"the edge pointed to 035, the dial showed 035, 215 was written", bed(35, 30, 215, 30).dial(35, 35, 0), strikeOnly, []Kind{SouthEnd}, false},
	{"215 for 035 on paper", bed(35, 30, 215, 30), strikeOnly, []Kind{OtherEnd, SouthEnd}, true},
	{"the dip direction, 125", bed(35, 30, 125, 30), strikeOnly, []Kind{DirectionForStrike}, false},
	{"the dip direction with a dial at 035", bed(35, 30, 126, 30).dial(35, 35, 0), strikeOnly, []Kind{DirectionForStrike}, false},
	{"035 as the dip direction of 125", bed(35, 30, 305, 30).in(orient.DirectionDip), strikeOnly, []Kind{DirectionForStrike}, false},
	{"360 − 35 = 325", bed(35, 30, 325, 30), strikeOnly, []Kind{EastWest}, false},
	{"N35W for N35E", bed(35, 30, 325, 30).in(orient.Quadrant).letters("NE"), strikeOnly, []Kind{EastWest}, false},
	{"the dial at 035, 325 written", bed(35, 30, 325, 30).dial(35, 35, 0), strikeOnly, []Kind{EastWest}, false},
	{"360 − 125 = 235 as dip direction", bed(35, 30, 145, 30).in(orient.DirectionDip), strikeOnly, []Kind{EastWest}, false},
	{"035/30 NW of a bed that dips SE", bed(35, 30, 215, 30).letters("NW"), strikeOnly, []Kind{WrongLetters}, false},
	// Magnetic 35 with declination 17 E is true 52 (US interagency wildfire
	// mathematics course, ch. 5).
	{"magnetic 35 for true 52", bed(52, 40, 35, 40).at(17), strikeOnly, []Kind{DeclinationNotSet}, false},
	{"the ring at zero", bed(52, 40, 35, 40).at(17).dial(52, 35, 0), strikeOnly, []Kind{DeclinationNotSet}, false},
	// Magnetic 315 with declination 15 W is true 300; a published answer of 330
	// is wrong (field navigation web page).
	{"330 for true 300", bed(300, 40, 330, 40).at(-15), strikeOnly, []Kind{DeclinationWrongSign}, false},
	{"the ring at 15 E", bed(300, 40, 330, 40).at(-15).dial(300, 330, 15), strikeOnly, []Kind{DeclinationWrongSign}, false},
	{"the ring at 5 E for 17 E", bed(52, 40, 40, 40).at(17).dial(52, 40, 5), strikeOnly, []Kind{DeclinationMisset}, false},
	{"17 added to a true 52", bed(52, 40, 69, 40).at(17).dial(52, 52, 17), strikeOnly, []Kind{DeclinationTwice}, false},
	// sin ε = tan 3° / tan 12° gives 14.3° (Ragan's relation).
	{"an edge that plunges 3° on a bed of 12°", bed(90, 12, 104, 12).dial(104.3, 104, 0), strikeOnly, []Kind{LevelNotCentred}, false},
	{"a swinging needle", bed(90, 40, 101, 40).dial(90, 101, 0).held(sim.NeedleFree, false), strikeOnly, []Kind{NeedleMoving}, false},
	{"a rubbing needle", bed(90, 40, 101, 40).dial(90, 101, 0).held(sim.NeedleRubbing, true), strikeOnly, []Kind{LevelNotCentred, NeedleRubbing}, false},
	{"a locked needle", bed(90, 40, 101, 40).dial(90, 101, 0).held(sim.NeedleLocked, true), strikeOnly, []Kind{NeedleLocked}, false},
	{"a needle that sticks", bed(90, 40, 97, 40).dial(90, 97, 0), strikeOnly, []Kind{NeedleSticking}, false},
	// True dip 35, section at 45° to the strike: apparent 26.25 (J. B. Jukes
	// 1859, The South Staffordshire Coalfield, 2nd ed., p. 216).
	{"an apparent dip", bed(270, 35, 270, 26).arc(26.34, 0, 26.3), dipOnly, []Kind{EdgeNotDownDip}, false},
	// tan λ = tan 40° / cos 40° gives 47.6°.
	{"a body that leans 40°", bed(270, 40, 270, 48).arc(40, 40, 47.6), dipOnly, []Kind{BodyLeaning}, false},
	{"an arm read off level", bed(270, 40, 270, 48).arc(40, 0, 48), dipOnly, []Kind{TubeNotCentred}, false},
	// 50.04 percent is 26° and 83.40 percent 40° (Jukes 1859, p. 211).
	{"percent of 26°", bed(270, 26, 270, 50), dipOnly, []Kind{PercentScale}, false},
	{"percent of 40° on the arc", bed(270, 40, 270, 84).arc(40, 0, 40), dipOnly, []Kind{PercentScale}, false},
	{"90 − 40 = 50", bed(270, 40, 270, 50), dipOnly, []Kind{Complement}, false},
	{"58 for 30 is percent or complement", bed(270, 30, 270, 58.5), dipOnly, []Kind{PercentScale, Complement}, true},
	{"184 for 148", bed(148, 40, 184, 40), strikeOnly, []Kind{DigitsSwapped}, false},
	{"37 for 73 with the arm at 73", bed(148, 73, 148, 37).arc(73, 0, 73), dipOnly, []Kind{DigitsSwapped}, false},
	{"30/035", bed(35, 70, 70, 35), both, []Kind{StrikeDipSwapped}, false},
	{"other end and percent", bed(35, 26, 215, 49).dial(215, 215, 0).arc(26, 0, 26), both, []Kind{OtherEnd, PercentScale}, false},
	{"other end, edge not level", bed(90, 12, 284, 12).dial(284.3, 284, 0), strikeOnly, []Kind{OtherEnd, LevelNotCentred}, false},
	{"a sensor turned 11° by its own iron", bed(35, 30, 46, 30).raw(11), strikeOnly, []Kind{NotCalibrated}, false},
	{"the pose was wrong, the answer not", bed(35, 30, 35, 30).dial(215, 215, 0), Wrong{}, nil, false},
	{"nothing that is known", bed(35, 30, 250, 30).dial(35, 35, 0), strikeOnly, nil, false},
}

func TestExamples(t *testing.T) {
	for _, c := range examples {
		got := Diagnose(c.e, c.is)
		if !sameKinds(got, c.want) {
			t.Errorf("%s: got %v, want %v", c.name, got, c.want)
			continue
		}
		for _, f := range got {
			if tied := len(f.With) > 0; tied != c.tie {
				t.Errorf("%s: %v tied with %v, want a tie: %t", c.name, f.Kind, f.With, c.tie)
			}
			if !(f.Probability > 0 && f.Probability <= 1+1e-12) {
				t.Errorf("%s: probability %g, want it in (0, 1]", c.name, f.Probability)
			}
		}
	}
}

// sameKinds compares without order: findings of one probability have none.
func sameKinds(got []Finding, want []Kind) bool {
	var g []Kind
	for _, f := range got {
		g = append(g, f.Kind)
	}
	return len(g) == len(want) && setOf(g...) == setOf(want...)
}

// Every kind has an example, but for the one whose answers are refused.
func TestEveryKindHasAnExample(t *testing.T) {
	seen := setOf(LettersContradict)
	for _, c := range examples {
		seen |= setOf(c.want...)
	}
	for k := range Kind(Kinds) {
		if !seen.has(k) {
			t.Errorf("%v: got no example, want one", k)
		}
	}
}

// The names are part of the program's output and of files: they stay.
func TestNamesStay(t *testing.T) {
	want := strings.Fields(`other-end south-end dip-direction-for-strike east-west-exchanged wrong-letters
		declination-not-set declination-wrong-sign declination-misset declination-twice level-not-centred
		needle-not-at-rest needle-rubbing needle-locked needle-sticking edge-not-down-dip body-leaning
		tube-not-centred percent-scale complement digits-swapped strike-dip-swapped letters-contradict
		sensor-not-calibrated`)
	if len(want) != Kinds {
		t.Fatalf("got %d kinds, want %d", Kinds, len(want))
	}
	for k := range Kind(Kinds) {
		if got := k.String(); got != want[k] {
			t.Errorf("kind %d: got %q, want %q", k, got, want[k])
		}
		text, err := k.MarshalText()
		var back Kind
		if err != nil || back.UnmarshalText(text) != nil || back != k {
			t.Errorf("%v: got %v back from %q, %v", k, back, text, err)
		}
	}
	if _, ok := KindOf("hammer"); ok {
		t.Error("hammer: got a kind, want none")
	}
	if _, err := Kind(200).MarshalText(); err == nil {
		t.Error("kind 200: got no error, want one")
	}
}

func TestWhatIsSaid(t *testing.T) {
	for k := range Kind(Kinds) {
		for _, n := range []orient.Notation{orient.AzimuthDip, orient.DirectionDip} {
			s := Evidence{Entry: orient.Entry{Notation: n}}.said(k, nil)
			if !strings.HasPrefix(s, "Probably ") || !strings.HasSuffix(s, ".") || len(s) > 230 {
				t.Errorf("%v: got %q (%d bytes), want one or two short sentences", k, s, len(s))
			}
		}
	}
	got := Evidence{Entry: orient.Entry{Notation: orient.DirectionDip}}.said(DirectionForStrike, nil)
	if want := "Probably the strike was written where the dip direction belongs."; !strings.HasPrefix(got, want) {
		t.Errorf("got %q, want it to begin with %q", got, want)
	}
}
