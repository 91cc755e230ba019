package scenes

import (
	"strings"
	"testing"

	"cuesta/orient"
	"cuesta/scenes/input"
	"cuesta/sim"
)

// withMethod is a bench on a plane, measured in one way.
func withMethod(t *testing.T, m Method) (*Bench, drive) {
	t.Helper()
	p := orient.PlaneOf(35*orient.Degree, 30*orient.Degree)
	b, err := NewBench(BenchOptions{Seed: 3, Plane: &p, Method: &m})
	if err != nil {
		t.Fatal(err)
	}
	d := drive{1280, 720, b}
	d.wait()
	return b, d
}

func typed(d drive, keys string) {
	for _, r := range keys {
		d.frame(input.Frame{Ticks: 2, Presses: []input.Press{{Rune: r}}})
	}
}

// On its lid, by keys alone: level the body, read direction and dip at once,
// write, record.
func TestLidByKeysAlone(t *testing.T) {
	b, d := withMethod(t, MethodLid)
	if b.obs.Seat != sim.OnLid {
		t.Fatalf("seat %v, want on its lid", b.obs.Seat)
	}
	for range 400 { // as the hint says, to a tenth of a degree
		if b.nextHint() != hintLid {
			break
		}
		h := b.lidHome()
		far := input.Mods(0)
		if b.obs.Round.AtWall {
			far = input.Shift
		}
		keys := map[int8][2]input.Key{1: {input.Right, input.Up}, -1: {input.Left, input.Down}}
		if h.swing != 0 {
			d.frame(input.Frame{Ticks: 60, Presses: []input.Press{{Key: keys[h.swing][0], Mods: far}}})
		}
		if h.tilt != 0 {
			d.frame(input.Frame{Ticks: 60, Presses: []input.Press{{Key: keys[h.tilt][1], Mods: far}}})
		}
		d.frame(input.Frame{Ticks: 60})
	}
	for range 60 {
		d.frame(input.Frame{Ticks: 30})
	}
	if got := b.nextHint(); got != hintReadLid {
		say, _ := b.line(got)
		t.Fatalf("after the keys of the hint it says %q", say)
	}
	north, hinge := b.obs.Dial.Degree(), b.obs.Hinge.Degrees()
	if north < 115 || north > 135 || hinge < 28 || hinge > 32 {
		t.Errorf("the north end stands at %d and the hinge at %.1f, want near dip direction 125 and dip 30", north, hinge)
	}
	typed(d, "035/30")
	d.key(input.Enter)
	if b.phase != judged || !b.verdict.Right {
		t.Errorf("phase %d, verdict %+v; want judged and right", b.phase, b.verdict)
	}
}

// The sensor: calibrate by its key, read, write, record.
func TestSensorByKeysAlone(t *testing.T) {
	b, d := withMethod(t, MethodSensor)
	if b.obs.Seat != sim.OnBack || b.nextHint() != hintCalibrate {
		t.Fatalf("seat %v, hint %d; want flat and to calibrate", b.obs.Seat, b.nextHint())
	}
	typed(d, "k")
	if !b.obs.Sensor.Calibrated || b.nextHint() != hintReadSensor {
		t.Fatalf("calibrated %v, hint %d", b.obs.Sensor.Calibrated, b.nextHint())
	}
	tree := b.Description()
	if got := tree.Find(idRound); got == nil || got.Value != "calibrated" {
		t.Errorf("the first magnifier is described as %+v", got)
	}
	if got := tree.Find(idDial); got == nil || !strings.HasPrefix(got.Value, "The sensor shows dip direction 12") {
		t.Errorf("the display is described as %+v", got)
	}
	typed(d, "035/30")
	d.key(input.Enter)
	if b.phase != judged || !b.verdict.Right {
		t.Errorf("phase %d, verdict %+v; want judged and right", b.phase, b.verdict)
	}
}

// The key goes round the methods on the same plane, until something is written.
func TestKeyGoesRoundTheMethods(t *testing.T) {
	b, d := withMethod(t, MethodEdge)
	truth, number := b.ses.Truth(), b.number
	for _, want := range []sim.Seat{sim.OnLid, sim.OnBack, sim.OnEdge} {
		typed(d, "i")
		if b.obs.Seat != want || b.ses.Truth() != truth || b.number != number {
			t.Errorf("seat %v on %v, station %d; want %v on %v, station %d", b.obs.Seat, b.ses.Truth(), b.number, want, truth, number)
		}
	}
	typed(d, "035")
	d.key(input.Escape)
	typed(d, "i")
	if b.obs.Seat != sim.OnEdge || b.text != "035" || !strings.Contains(b.notice, "next plane") {
		t.Errorf("seat %v, note %q, notice %q; want all as it was, and the method for the next plane", b.obs.Seat, b.text, b.notice)
	}
	b.next()
	if b.obs.Seat != sim.OnLid {
		t.Errorf("the next plane has seat %v, want on its lid", b.obs.Seat)
	}
}

// A plane whose answer has been shown is not laid anew by another method.
func TestMethodTakesNoAnswerBack(t *testing.T) {
	b, d := withMethod(t, MethodEdge)
	b.ses.Reveal()
	typed(d, "i")
	if b.obs.Seat != sim.OnEdge || b.ses.Counts() {
		t.Errorf("seat %v, counts %v; want on edge, no longer graded", b.obs.Seat, b.ses.Counts())
	}
}

// At once there is no second step: the filled button records, and the keys of
// the other seats say why they do nothing.
func TestOneStepAtOnce(t *testing.T) {
	for _, m := range []Method{MethodLid, MethodSensor} {
		b, d := withMethod(t, m)
		tree := b.Description()
		if n := tree.Find(idPrimary); n == nil || n.Name != "Record" {
			t.Errorf("%v: the filled button is %+v", m, n)
		}
		if tree.Find(idTurn) != nil {
			t.Errorf("%v: the plate can be turned on its side", m)
		}
		if n := tree.Find(idSteps); n == nil || n.Name != "Steps: 1 Both at once, 2 Note" {
			t.Errorf("%v: the steps are %+v", m, n)
		}
		seat := b.obs.Seat
		typed(d, "t")
		if b.obs.Seat != seat || b.notice == "" {
			t.Errorf("%v: after T seat %v, notice %q", m, b.obs.Seat, b.notice)
		}
	}
}

// A question of a form is answered on its own bench and in the notation of the
// form, whatever is chosen in the settings; what is a matter of eyes and ears
// still counts.
func TestSettingsLeaveAFormsBenchAlone(t *testing.T) {
	for _, set := range []Settings{{Method: MethodSensor}, {Declination: DeclinationYours}, {Dips: SteepDips}, {Notation: orient.DirectionDip}} {
		b, d := withMethod(t, MethodEdge)
		b.exam = &exam{name: "Question 1"}
		ses, was := b.ses, b.set
		set.Text = Text150
		b.Choose(set)
		d.wait()
		was.Text = Text150
		if b.ses != ses || b.set != was {
			t.Errorf("method %v, declination %v, dips %v, notation %v: same bench %v, settings kept %v; want both", set.Method, set.Declination, set.Dips, set.Notation, b.ses == ses, b.set == was)
		}
		if b.notice == "" {
			t.Errorf("method %v, declination %v, dips %v, notation %v: nothing is said", set.Method, set.Declination, set.Dips, set.Notation)
		}
	}
}
