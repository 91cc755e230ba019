package scenes

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"cuesta/orient"
	"cuesta/scenes/describe"
	"cuesta/scenes/input"
	"cuesta/sim"
)

// hands drive a bench as a person would: frame by frame, looking only at what
// the instrument shows.
type hands struct {
	t    *testing.T
	b    *Bench
	w, h float64
}

func newHands(t *testing.T, o BenchOptions) *hands {
	t.Helper()
	b, err := NewBench(o)
	if err != nil {
		t.Fatal(err)
	}
	k := &hands{t, b, 1280, 720}
	k.wait(1)
	return k
}

func (k *hands) frame(in input.Frame) {
	in.W, in.H, in.Scale = k.w, k.h, 1
	k.b.Update(in)
}

func (k *hands) wait(ticks int) {
	for ; ticks > 0; ticks -= 2 {
		k.frame(input.Frame{Ticks: 2})
	}
}

func (k *hands) key(key input.Key, m input.Mods) {
	k.frame(input.Frame{Ticks: 2, Presses: []input.Press{{Key: key, Mods: m}}})
}

func (k *hands) typing(s string) {
	for _, r := range s {
		p := input.Press{Rune: r}
		if r == ' ' {
			p = input.Press{Key: input.Space}
		}
		k.frame(input.Frame{Ticks: 2, Presses: []input.Press{p}})
	}
}

// click presses the control with the pointer.
func (k *hands) click(id describe.ID) {
	k.t.Helper()
	n := k.b.Description().Find(id)
	if n == nil {
		k.find(id)
		return
	}
	x, y := n.Bounds.X+n.Bounds.W/2, n.Bounds.Y+n.Bounds.H/2
	k.frame(input.Frame{Pointers: []input.Pointer{{Kind: input.PointerDown, X: x, Y: y}}})
	k.frame(input.Frame{Ticks: 2, Pointers: []input.Pointer{{Kind: input.PointerUp, X: x, Y: y}}})
}

// find presses a control that is not in reach at once, on a small screen: the
// stepper comes round, the others are under More.
func (k *hands) find(id describe.ID) {
	k.t.Helper()
	for range 4 {
		if isStepper(id) && k.b.Description().Find(idKnob) != nil {
			if k.b.Description().Find(id) != nil {
				k.click(id)
				return
			}
			k.click(idKnob)
		}
	}
	if k.b.Description().Find(idMore) == nil {
		k.t.Fatalf("no control %d on the screen", id)
	}
	k.click(idMore)
	for range 5 {
		if k.b.Description().Find(id) != nil {
			k.click(id)
			k.click(idClosePanel)
			return
		}
		k.click(idPanelMore)
	}
	k.t.Fatalf("no control %d under More", id)
}

// knob is a way to make one stroke of a given size: by keys or by buttons.
type knob func(k *hands, id describe.ID, step Step)

func byKeys(k *hands, id describe.ID, step Step) {
	mods := [...]input.Mods{Coarse: input.Shift, Normal: 0, Fine: input.Ctrl}[step]
	arrow := map[describe.ID]input.Key{idSwingLess: input.Left, idSwingMore: input.Right}[id]
	if arrow == input.NoKey {
		arrow = input.Down
		if (id == idTiltMore) == k.b.liftsWithMore() {
			arrow = input.Up
		}
	}
	k.key(input.Escape, 0)
	k.key(arrow, mods)
}

func byButtons(k *hands, id describe.ID, step Step) {
	k.click([...]describe.ID{Coarse: idStepCoarse, Normal: idStepNormal, Fine: idStepFine}[step])
	k.click(id)
}

// null turns a control until the error is small: in large steps first, in
// smaller ones whenever it has gone past. more lowers a positive error.
func (k *hands) null(turn knob, more, less describe.ID, err func() float64) {
	k.t.Helper()
	k.wait(100)
	step, e := Coarse, err()
	for range 300 {
		if math.Abs(e) < .06 || step > Fine {
			return
		}
		id := more
		if e < 0 {
			id = less
		}
		turn(k, id, step)
		k.wait(100)
		now := err()
		if now*e <= 0 {
			step++
		}
		e = now
	}
	k.t.Fatalf("the bubble could not be centred, still off by %v", e)
}

// level centres the round level.
func (k *hands) level(turn knob) {
	o := func() sim.Observation { return k.b.World().Observe() }
	for range 4 {
		k.null(turn, idTiltMore, idTiltLess, func() float64 { return o().Round.Right })
		k.null(turn, idSwingMore, idSwingLess, func() float64 {
			if o().Seated == sim.RightSide {
				return -o().Round.Forward
			}
			return o().Round.Forward
		})
		if k.wait(100); o().Round.Centred {
			return
		}
	}
	k.t.Fatal("not level after four rounds")
}

// measure takes strike and dip and returns what to write.
func (k *hands) measure(turn knob, press func(describe.ID)) string {
	k.level(turn)
	o := func() sim.Observation { return k.b.World().Observe() }
	if o().Seated == sim.RightSide {
		press(idFlip)
		k.level(turn)
	}
	press(idTap)
	k.wait(1200)
	if !o().Dial.Resting {
		k.t.Fatal("the needle does not come to rest")
	}
	strike := math.Round(o().Dial.North.Degrees())
	press(idTurn)
	for range 9 { // from along the strike to straight down the dip
		turn(k, idSwingMore, Coarse)
	}
	k.null(turn, idTiltLess, idTiltMore, func() float64 { return o().Tube.Off })
	k.wait(100)
	if !o().Tube.Centred {
		k.t.Fatalf("tube not centred: %+v", o().Tube)
	}
	dip := math.Round(o().Arc.Arm.Degrees())
	return fmt.Sprintf("%03.0f/%02.0f", math.Mod(strike, 360), dip)
}

func keyFor(k *hands) func(describe.ID) {
	return func(id describe.ID) {
		k.key(input.Escape, 0)
		switch id {
		case idFlip:
			k.typing("f")
		case idTap:
			k.key(input.Space, 0)
		case idTurn:
			k.typing("t")
		}
	}
}

func TestWholeMeasurementByKeyboardAlone(t *testing.T) {
	for _, p := range []orient.Plane{
		orient.PlaneOf(35*orient.Degree, 30*orient.Degree),
		orient.PlaneOf(250*orient.Degree, 8*orient.Degree),
		orient.PlaneOf(137*orient.Degree, 74*orient.Degree),
	} {
		t.Run(orient.Format(p, orient.AzimuthDip), func(t *testing.T) {
			k := newHands(t, BenchOptions{Seed: 7, Plane: &p})
			answer := k.measure(byKeys, keyFor(k))
			k.typing(answer)
			k.key(input.Enter, 0)
			if k.b.phase != judged || !k.b.verdict.Right {
				t.Errorf("answered %s: got phase %v, verdict %+v; want right", answer, k.b.phase, k.b.verdict)
			}
			if k.key(input.Enter, 0); k.b.phase != measuring || k.b.number != 2 {
				t.Error("Enter after the verdict must deal the next plane")
			}
		})
	}
}

func TestWholeMeasurementByPointerAlone(t *testing.T) {
	p := orient.PlaneOf(312*orient.Degree, 41*orient.Degree)
	for _, size := range [][2]float64{{1280, 720}, {390, 844}} {
		k := newHands(t, BenchOptions{Seed: 3, Plane: &p})
		k.w, k.h = size[0], size[1]
		k.wait(2)
		answer := k.measure(byButtons, k.click)
		k.pad(answer)
		k.click(idPrimary)
		if k.b.phase != judged || !k.b.verdict.Right {
			t.Errorf("%v, answered %s: got verdict %+v, want right", size, answer, k.b.verdict)
		}
	}
}

// pad writes with the keypad on the screen.
func (k *hands) pad(s string) {
	k.t.Helper()
	k.click(idKeypad)
	for _, r := range s {
		n := 0
		for _, row := range padRows {
			for _, name := range row {
				if name == string(r) {
					k.click(idPadKey + describe.ID(n))
				}
				n++
			}
		}
	}
	k.click(idClosePanel)
}

func TestKeypadClosesWhenTheTaskGoesOn(t *testing.T) {
	p := orient.PlaneOf(35*orient.Degree, 30*orient.Degree)
	k := newHands(t, BenchOptions{Seed: 7, Plane: &p})
	k.w, k.h = 390, 844
	k.wait(2)
	k.click(idKeypad)
	k.click(idPrimary)
	if k.b.obs.Seat != sim.OnSide || k.b.panel != noPanel {
		t.Errorf("gone on to the dip: seat %v, panel %v; want the plate turned and in view", k.b.obs.Seat, k.b.panel)
	}
	k.click(idKeypad)
	k.click(idPrimary)
	if k.b.phase != measuring || k.b.panel != keypadPanel {
		t.Errorf("recorded nothing: phase %v, panel %v; want the keypad still open", k.b.phase, k.b.panel)
	}
	k.click(idClosePanel)
	k.typing("035/30")
	k.click(idKeypad)
	k.click(idPrimary)
	if k.b.phase != judged || k.b.panel != noPanel {
		t.Errorf("recorded: phase %v, panel %v; want the verdict in view", k.b.phase, k.b.panel)
	}
}

func TestAllowanceKeepsItsTenth(t *testing.T) {
	for _, c := range []struct {
		allowed orient.Angle
		want    string
	}{{2 * orient.Degree, "2°"}, {2.4 * orient.Degree, "2.4°"}, {2.04 * orient.Degree, "2°"}, {11.5 * orient.Degree, "11.5°"}, {0, "0°"}} {
		if got := tenths(c.allowed); got != c.want {
			t.Errorf("%v: got %s, want %s", c.allowed, got, c.want)
		}
	}
}

func TestKeysOfTheInstrumentWorkBehindTheStrike(t *testing.T) {
	k := newHands(t, BenchOptions{Seed: 5})
	k.typing("107")
	k.typing("t")
	if k.b.text != "107" || k.b.obs.Seat != sim.OnSide {
		t.Fatalf("after 107 and t: note %q, seat %v; want the plate turned", k.b.text, k.b.obs.Seat)
	}
	before := k.b.World().Pose().Swing
	k.key(input.Right, 0)
	if k.b.World().Pose().Swing == before {
		t.Error("the arrow does not swing the plate after turning it")
	}
	k.typing("/66")
	if k.b.text != "107/66" {
		t.Errorf("got %q, want 107/66: a slash opens the notebook as figures do", k.b.text)
	}
}

func TestHeldEnterDoesOneThing(t *testing.T) {
	k := newHands(t, BenchOptions{Seed: 5})
	k.typing("107/66")
	for i := range 30 {
		k.frame(input.Frame{Ticks: 4, Presses: []input.Press{{Key: input.Enter, Repeat: i > 0}}})
	}
	if k.b.phase != judged || k.b.number != 1 {
		t.Errorf("got phase %v at station %d, want the verdict on the first", k.b.phase, k.b.number)
	}
}

func TestNothingHappensUnseen(t *testing.T) {
	k := newHands(t, BenchOptions{Seed: 5})
	k.w, k.h = 320, 240
	k.wait(2)
	k.typing("1234")
	k.w, k.h = 1280, 720
	k.wait(2)
	if k.b.text != "" {
		t.Errorf("in a window too small to see: wrote %q", k.b.text)
	}
}

func TestWrongEndIsSaidWithItsReason(t *testing.T) {
	p := orient.PlaneOf(100*orient.Degree, 40*orient.Degree)
	k := newHands(t, BenchOptions{Seed: 11, Plane: &p})
	k.level(byKeys)
	if k.b.obs.Seated == sim.Left {
		keyFor(k)(idFlip)
		k.level(byKeys)
	}
	k.wait(1200)
	k.typing(fmt.Sprintf("%03.0f/40", k.b.obs.Dial.North.Degrees()))
	k.key(input.Enter, 0)
	v := k.b.verdict
	if v.Right || v.EndRight || !v.StrikeRight || !v.DipRight {
		t.Errorf("got %+v, want only the end wrong", v)
	}
	if len(v.Mistakes) == 0 || v.Mistakes[0].Kind.String() != "other-end" {
		t.Errorf("got mistakes %+v, want other-end first", v.Mistakes)
	}
}

func TestImpossibleNoteIsRefusedAndKept(t *testing.T) {
	k := newHands(t, BenchOptions{Seed: 5})
	k.typing("040/30 NE")
	k.key(input.Enter, 0)
	if k.b.phase != measuring || k.b.text != "040/30 NE" {
		t.Errorf("got phase %v, note %q; want the note kept for mending", k.b.phase, k.b.text)
	}
	if !strings.Contains(k.b.echo, "SE") {
		t.Errorf("got %q, want the reason and the letters that are possible", k.b.echo)
	}
	k.key(input.Backspace, 0)
	k.key(input.Backspace, 0)
	k.typing("SE")
	if !k.b.complete {
		t.Errorf("%q: got incomplete, want a whole plane; echo %q", k.b.text, k.b.echo)
	}
	for range 4 {
		k.frame(input.Frame{Presses: []input.Press{{Rune: 'z', Mods: input.Ctrl}}})
	}
	if k.b.text != "040/30 NE" {
		t.Errorf("after undo: got %q", k.b.text)
	}
}

func TestEveryControlIsDescribedAndReachable(t *testing.T) {
	for _, prepare := range []func(*hands){
		func(*hands) {},
		func(k *hands) { k.typing("t") },
		func(k *hands) { k.typing("035/30"); k.key(input.Enter, 0) },
		func(k *hands) { k.click(idSecondary) },
		func(k *hands) { k.key(input.F1, 0) },
		func(k *hands) { k.key(input.F2, 0) },
	} {
		k := newHands(t, BenchOptions{Seed: 2})
		prepare(k)
		order := k.b.Description().Order()
		seen := map[describe.ID]bool{}
		for range order {
			seen[k.b.focus] = true
			k.key(input.Tab, 0)
		}
		for _, n := range order {
			if n.Name == "" {
				t.Errorf("control %d has no name", n.ID)
			}
			if !seen[n.ID] {
				t.Errorf("%q cannot be reached with Tab", n.Name)
			}
		}
		for z := range k.b.screen.zones {
			behind := k.b.panel != noPanel && (zoneName(z) == titleZone || zoneName(z) == stripZone || zoneName(z) == menuZone)
			for _, w := range k.b.screen.zones[z].widgets {
				if !behind && pressable(w) && (k.b.Description().Find(w.id) == nil || !w.focus) {
					t.Errorf("%q is drawn as a control but not described as one", w.text)
				}
			}
		}
	}
}
