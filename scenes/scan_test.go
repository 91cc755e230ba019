package scenes

import (
	"slices"
	"testing"

	"cuesta/scenes/describe"
	"cuesta/scenes/draw"
	"cuesta/scenes/input"
)

// marksTo is how many marks the mark is shown on before a control is pressed.
func marksTo(spots []spot, id describe.ID) int {
	way := find(spots, id, nil)
	n := 0
	for _, i := range way {
		n += i + 1
	}
	return n
}

// benchStates are screens of the bench.
var benchStates = map[string]func(*hands){
	"strike":   func(*hands) {},
	"dip":      func(k *hands) { k.typing("t") },
	"judged":   func(k *hands) { k.typing("123/45"); k.key(input.Enter, 0) },
	"help":     func(k *hands) { k.key(input.F1, 0) },
	"settings": func(k *hands) { k.key(input.F2, 0) },
	"keys":     func(k *hands) { k.key(input.F4, 0) },
	"keypad":   func(k *hands) { k.click(idKeypad) },
}

func TestNoControlIsFarFromTheMark(t *testing.T) {
	for name, prepare := range benchStates {
		for _, size := range [][2]float64{{1280, 720}, {390, 844}, {1920, 1080}} {
			k := newHands(t, BenchOptions{Seed: 2})
			s := k.b.Settings()
			s.Declination = DeclinationYours
			k.b.Choose(s)
			k.w, k.h = size[0], size[1]
			k.wait(2)
			prepare(k)
			spots := spotsOf(k.b.Description())
			for _, n := range k.b.Description().Order() {
				if n.Role == describe.Field {
					continue
				}
				if got := marksTo(spots, n.ID); got == 0 || got > mostMarks {
					t.Errorf("%s, %v: %q is %d marks away, want 1 to %d", name, size, n.Name, got, mostMarks)
				}
			}
		}
	}
}

func TestNoControlOfAnyScreenIsFar(t *testing.T) {
	for _, o := range screensAll(t) {
		spots := spotsOf(o.s.Description())
		for _, n := range o.s.Description().Order() {
			if got := marksTo(spots, n.ID); n.Role != describe.Field && (got == 0 || got > mostMarks) {
				t.Errorf("%s: %q is %d marks away, want 1 to %d", o.name, n.Name, got, mostMarks)
			}
		}
	}
}

// many is a screen of n controls in rows of seven.
func many(n int) *describe.Tree {
	t := &describe.Tree{}
	for i := range n {
		t.Root.Children = append(t.Root.Children, describe.Node{ID: describe.ID(i + 1), Role: describe.Button, Name: "x", Focusable: true,
			Bounds: describe.Rect{X: float64(i%7) * 50, Y: float64(i/7) * 50, W: 40, H: 40}})
	}
	return t
}

func TestEveryControlOfAnyScreenIsInAGroup(t *testing.T) {
	for n := range 70 {
		spots := spotsOf(many(n))
		most := mostMarks
		if n > 48 {
			most = mostMarks + 2
		}
		for id := 1; id <= n; id++ {
			if got := marksTo(spots, describe.ID(id)); got == 0 || got > most {
				t.Errorf("%d controls: number %d is %d marks away, want 1 to %d", n, id, got, most)
			}
		}
	}
}

// scanned is a bench worked by one switch.
func scanned(t *testing.T, set Settings) (*hands, *Switched) {
	k := newHands(t, BenchOptions{Seed: 2})
	k.b.Choose(set)
	return k, NewSwitched(k.b)
}

func frames(s *Switched, n int, ps ...input.Press) {
	for i := range n {
		f := input.Frame{W: 1280, H: 720, Scale: 1, Ticks: 4}
		if i == 0 {
			f.Presses = ps
		}
		s.Update(f)
	}
}

// TestTheMarkComesRoundForEver waits for three minutes and presses nothing: every
// group has had the mark again and again, and nothing else has happened.
// Nothing is timed (WCAG 2.2, 2.2.1).
func TestTheMarkComesRoundForEver(t *testing.T) {
	k, s := scanned(t, Settings{Scan: ScanItself, Pace: PaceMiddle})
	frames(s, 1)
	pose, order := k.b.World().Pose(), ids(k.b.Description())
	seen := map[string]int{}
	for range 3 * 60 * 2 {
		frames(s, 15)
		seen[s.scan.at().name]++
	}
	if len(seen) != len(s.scan.root) {
		t.Errorf("the mark was on %d groups of %d", len(seen), len(s.scan.root))
	}
	for name, n := range seen {
		if n < 8 {
			t.Errorf("%q had the mark for %d half seconds of three minutes", name, n)
		}
	}
	if k.b.World().Pose() != pose || !slices.Equal(ids(k.b.Description()), order) || len(k.b.World().Notes()) != 0 {
		t.Error("something has happened by itself")
	}
}

func ids(t *describe.Tree) []describe.ID {
	var out []describe.ID
	for _, n := range t.Order() {
		out = append(out, n.ID)
	}
	return out
}

// With two switches the mark stays where it is for as long as one likes.
func TestWithTwoSwitchesNothingIsTimed(t *testing.T) {
	_, s := scanned(t, Settings{Scan: ScanTwo})
	frames(s, 2)
	move := input.Press{Key: input.Space}
	for range 60 {
		frames(s, 1, move)
		at := s.scan.path
		if frames(s, 200); !slices.Equal(s.scan.path, at) {
			t.Fatalf("the mark went from %v to %v by itself", at, s.scan.path)
		}
	}
}

// press waits for the mark to come to a control, as the person does, and
// presses the switch by way of a press, a touch anywhere or an act.
func pressMarked(t *testing.T, s *Switched, id describe.ID, f input.Frame) {
	t.Helper()
	f.W, f.H, f.Scale = 1280, 720, 1
	for range 4000 {
		at := s.scan.at()
		if at.id == id {
			s.Update(f)
			return
		}
		if at.sub != nil && find(at.sub, id, nil) != nil {
			s.Update(f)
			continue
		}
		frames(s, 5)
	}
	t.Fatalf("the mark does not come to control %d", id)
}

func TestAnythingIsASwitch(t *testing.T) {
	for name, f := range map[string]input.Frame{
		"space": {Presses: []input.Press{{Key: input.Space}}},
		"enter": {Presses: []input.Press{{Key: input.Enter}}},
		"F8":    {Presses: []input.Press{{Key: input.F8}}},
		"touch": {Pointers: []input.Pointer{{Kind: input.PointerDown, X: 3, Y: 3, Touch: true}, {Kind: input.PointerUp, X: 3, Y: 3, Touch: true}}},
		"act":   {Acts: []input.Act{{Kind: input.Activate, ID: idHelp}}},
	} {
		k, s := scanned(t, Settings{Scan: ScanItself, Pace: PaceQuick})
		frames(s, 1)
		before := k.b.World().Pose().Swing
		pressMarked(t, s, idSwingMore, f)
		if k.b.World().Pose().Swing <= before {
			t.Errorf("%s: the marked control was not pressed", name)
		}
		s.Update(f)
		if k.b.World().Pose().Swing <= before {
			t.Errorf("%s: it cannot be pressed again at once", name)
		}
	}
}

func TestAHeldSwitchPressesOnce(t *testing.T) {
	k, s := scanned(t, Settings{Scan: ScanItself, Pace: PaceQuick})
	frames(s, 1)
	pressMarked(t, s, idSwingMore, input.Frame{Presses: []input.Press{{Key: input.Space}}})
	once := k.b.World().Pose().Swing
	frames(s, 1, input.Press{Key: input.Space, Repeat: true}, input.Press{Key: input.Space, Repeat: true})
	if k.b.World().Pose().Swing != once {
		t.Error("holding the switch pressed again")
	}
}

func TestScanningCanBeSwitchedOffByTheSwitch(t *testing.T) {
	for _, way := range []Scan{ScanItself, ScanTwo} {
		k, s := scanned(t, Settings{Scan: ScanItself, Pace: PaceQuick})
		frames(s, 1)
		tap := input.Frame{Presses: []input.Press{{Key: input.Enter}}}
		pressMarked(t, s, idSettings, tap)
		for range 6 {
			if k.b.Description().Find(idSetScan) != nil {
				break
			}
			pressMarked(t, s, idPanelMore, tap)
		}
		pressMarked(t, s, idSetScan+describe.ID(way-ScanItself), tap) // off, or to itself again
		if way == ScanItself && k.b.Settings().Scan != ScanOff {
			t.Errorf("got %v, want scanning off", k.b.Settings().Scan)
		}
	}
}

// A screen that has just appeared gives more time to look.
func TestTheMarkWaitsOnAPanelThatHasJustOpened(t *testing.T) {
	k, s := scanned(t, Settings{Scan: ScanItself, Pace: PaceQuick})
	frames(s, 1)
	pressMarked(t, s, idHelp, input.Frame{Presses: []input.Press{{Key: input.Enter}}})
	if k.b.panel != helpPanel {
		t.Fatal("the help is not open")
	}
	n := 0
	for slices.Equal(s.scan.path, []int{0}) && n < 1000 {
		frames(s, 1)
		n++
	}
	if got, want := 4*n, 2*PaceQuick.Ticks(); got < want || got > want+8 {
		t.Errorf("the first mark stayed %d ticks, want %d", got, want)
	}
}

// What has the mark is told as what has the focus is (WCAG 2.2, 4.1.2), and is
// on the screen.
func TestTheMarkIsToldAndSeen(t *testing.T) {
	k, s := scanned(t, Settings{Scan: ScanTwo})
	frames(s, 2)
	var herald describe.Herald
	herald.Hear(s.Description())
	var l draw.List
	for range 40 {
		frames(s, 1, input.Press{Key: input.Space})
		tree := s.Description()
		n := tree.Find(tree.Focus)
		if n == nil || n.Name == "" {
			t.Fatalf("the mark is on %+v, which is not described", n)
		}
		if got := herald.Hear(tree); len(got) == 0 {
			t.Errorf("nothing is said as the mark moves to %q", n.Name)
		}
		s.Picture(&l)
		plain := len(l.Items)
		k.b.Picture(&l)
		if len(l.Items) >= plain {
			t.Errorf("no mark is drawn on %q", n.Name)
		}
	}
}

func TestKeysThatAreNoSwitchWorkAsEver(t *testing.T) {
	k, s := scanned(t, Settings{Scan: ScanItself})
	frames(s, 1)
	frames(s, 1, input.Press{Key: input.F2})
	if k.b.panel != settingsPanel {
		t.Error("F2 does not open the settings")
	}
	if frames(s, 1, input.Press{Key: input.Escape}); k.b.panel != noPanel {
		t.Error("Escape does not lead out")
	}
}

// Who works the hall with a switch can do without it again.
func TestScanningCanBeSwitchedOffInTheHall(t *testing.T) {
	h := NewHall(HallOptions{Settings: Settings{Scan: ScanItself, Pace: PaceQuick},
		Doors: []Door{{Group: "Practice", Title: "Measure", Words: "One slab."}}})
	s := NewSwitched(h)
	frames(s, 1)
	pressMarked(t, s, idSetScan, input.Frame{Presses: []input.Press{{Key: input.Enter}}})
	if h.Settings().Scan != ScanOff {
		t.Errorf("got %v, want scanning off", h.Settings().Scan)
	}
}
