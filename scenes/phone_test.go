package scenes

import (
	"fmt"
	"regexp"
	"strings"
	"testing"

	"cuesta/orient"
	"cuesta/scenes/describe"
	"cuesta/scenes/draw"
	"cuesta/scenes/input"
	"cuesta/sim"
)

// phones are the windows of a phone: upright, as its browser leaves it, on its
// side, and a small one.
var phones = [][2]float64{{390, 844}, {390, 664}, {360, 640}, {844, 390}}

// benchAt is a new bench in a window.
func benchAt(t *testing.T, size [2]float64, set Settings) (*Bench, drive) {
	t.Helper()
	b, err := NewBench(BenchOptions{Seed: 7})
	if err != nil {
		t.Fatal(err)
	}
	b.Choose(set)
	asGuest(b)
	d := drive{size[0], size[1], b}
	d.wait()
	return b, d
}

func TestInsetsOfAnUprightPhoneNeverGrowWithTheText(t *testing.T) {
	for _, size := range phones[:3] {
		last := 0.0
		for i, text := range textSizes {
			b, _ := benchAt(t, size, Settings{Text: text})
			now := b.screen.lay.Dial.R
			if i > 0 && now > last {
				t.Errorf("%v: the inset is %.0f px at %v and %.0f at the size before", size, 2*now, text, 2*last)
			}
			last = now
		}
	}
}

// On an upright phone of usual height an inset is a fair part of the width
// whatever the text, and the rock higher than that.
func TestRockAndInsetsKeepTheirSizeOnAPhone(t *testing.T) {
	for _, text := range textSizes {
		b, _ := benchAt(t, phones[0], Settings{Text: text})
		if l := b.screen.lay; 2*l.Dial.R < 96 || l.Scene.H < 140 {
			t.Errorf("at %v the inset is %.0f px and the rock %.0f high, want 96 and 140", text, 2*l.Dial.R, l.Scene.H)
		}
	}
	b, _ := benchAt(t, [2]float64{844, 390}, Settings{})
	if l := b.screen.lay; 2*l.Dial.R < 120 || l.Scene.H < 240 {
		t.Errorf("on its side the inset is %.0f px and the rock %.0f high, want 120 and 240", 2*l.Dial.R, l.Scene.H)
	}
}

// The instrument is what must be seen: a larger text takes no more than about a
// fifth of its magnifiers, and leaves the rock all of its height but a fifth, a
// third where three steppers with their names stand under it on a phone's side.
func TestLargeTextLeavesTheInstrumentItsSize(t *testing.T) {
	for _, c := range []struct {
		size [2]float64
		rock float64
	}{{phones[0], .8}, {phones[2], .8}, {phones[3], .66}, {windows[0], .8}} {
		for _, seat := range []sim.Seat{sim.OnEdge, sim.OnSide} {
			var usual layout
			for _, text := range textSizes {
				b, d := benchAt(t, c.size, Settings{Text: text})
				if seat == sim.OnSide {
					b.turnOver()
					d.wait()
				}
				now := b.screen.lay
				if text == Text100 {
					usual = now
				}
				if got, want := now.Round.R, usual.Round.R; got < .8*want {
					t.Errorf("%v at %v, %v: the level is %.0f px, %.0f at 100 %%", c.size, text, seat, 2*got, 2*want)
				}
				if got, want := now.Scene.H, usual.Scene.H; got < c.rock*want {
					t.Errorf("%v at %v, %v: the rock is %.0f px high, %.0f at 100 %%", c.size, text, seat, got, want)
				}
			}
		}
	}
}

// Where there is room nothing of the instrument is under More.
func TestAPhoneUsesItsRoom(t *testing.T) {
	for _, size := range [][2]float64{{390, 844}, {844, 390}} {
		b, d := benchAt(t, size, Settings{})
		shown := func(state string, ids ...describe.ID) {
			for _, id := range ids {
				if b.Description().Find(id) == nil {
					t.Errorf("%v, %s: control %d is not on the screen", size, state, id)
				}
			}
		}
		shown("on edge", idSwingMore, idTiltMore, idStepFine, idTurn, idFlip, idTap)
		d.act(idTurn)
		shown("on its side", idSwingMore, idTiltMore, idLeanMore, idStepFine, idTurn, idFlip)
	}
}

// Both hands work at once: no stepper hides behind another on an upright phone.
// The largest text needs the height of a usual one; the page is never lower.
func TestEveryStepperOfAPhoneIsOnTheScreen(t *testing.T) {
	for _, size := range phones[:3] {
		for _, text := range textSizes {
			if text == Text200 && size[1] < 800 {
				continue
			}
			b, d := benchAt(t, size, Settings{Text: text})
			for _, ids := range [][]describe.ID{{idSwingMore, idTiltMore}, {idSwingMore, idTiltMore, idLeanMore}} {
				for _, id := range ids {
					if b.Description().Find(id) == nil {
						t.Errorf("%v at %v, seat %v: stepper %d is not on the screen", size, text, b.obs.Seat, id)
					}
				}
				b.turnOver()
				d.wait()
			}
		}
	}
}

// What is typed and how it reads stay in view beside the keypad.
func TestTheNotebookIsInViewBesideTheKeypad(t *testing.T) {
	for _, size := range append(phones, windows...) {
		for _, text := range textSizes {
			b, d := benchAt(t, size, Settings{Text: text})
			d.act(idKeypad)
			for _, sign := range "035" {
				d.act(padKeyOf(t, string(sign)))
			}
			drawn := " "
			zones, lay := zonesOf(b)
			for _, z := range zones {
				for _, w := range z.widgets {
					if w.look != hidden && within(w.rect, draw.Rect{W: lay.W, H: lay.H}) {
						drawn += strings.ReplaceAll(w.text, "\n", " ") + " "
					}
				}
			}
			if b.panel != keypadPanel || !strings.Contains(drawn, " 035 ") || !strings.Contains(drawn, firstSentence(b.echo)) {
				t.Errorf("%v at %v: beside the keypad are shown %q, want 035 and %q", size, text, drawn, b.echo)
			}
		}
	}
}

// tapWords are the controls that the line names to those who tap.
var tapWords = regexp.MustCompile(`(Swing|Roll|Arm|Hinge) ([−+])`)

// Tapping what the line names brings the bubble home, on a phone and with little
// room, on the edge, on the side and on the lid; the line grows no higher meanwhile.
func TestTheTapsThatAreSaidLevelThePlate(t *testing.T) {
	ids := map[string]describe.ID{"Swing −": idSwingLess, "Swing +": idSwingMore, "Roll −": idTiltLess, "Roll +": idTiltMore,
		"Arm −": idTiltLess, "Arm +": idTiltMore, "Hinge −": idTiltLess, "Hinge +": idTiltMore}
	for _, set := range []Settings{{}, {Text: Text200}, {Method: MethodLid}} {
		for _, side := range []bool{false, true} {
			b, d := benchAt(t, phones[0], set)
			if side {
				if set.Method == MethodLid {
					continue
				}
				b.turnOver()
				b.do(sim.Command{Kind: sim.Swing, Angle: 70 * orient.Degree})
			}
			touch := func(ticks int, acts ...input.Act) { d.frame(input.Frame{Ticks: ticks, Touch: true, Acts: acts}) }
			touch(60)
			home := func() bool {
				return b.obs.Seat == sim.OnSide && b.obs.Tube.Centred || b.obs.Seat != sim.OnSide && b.obs.Round.Centred
			}
			bar, last, step := b.screen.lay.Bar, map[string]string{}, map[string]Step{}
			for n := 0; !home(); n++ {
				said := b.Description().Find(idHint).Name
				found := tapWords.FindAllStringSubmatch(said, -1)
				if len(found) == 0 || n == 150 {
					t.Fatalf("%v at %v, side %v: after %d taps the bubble is not home; the line says %q", set.Method, set.Text, side, n, said)
				}
				f := found[n%len(found)]
				if was, ok := last[f[1]]; !ok {
					step[f[1]] = Coarse
				} else if was != f[2] {
					step[f[1]] = map[Step]Step{Coarse: Normal, Normal: Fine, Fine: Fine}[step[f[1]]]
				}
				last[f[1]], b.step = f[2], step[f[1]]
				touch(60, input.Act{Kind: input.Activate, ID: ids[f[0]]})
				if b.screen.lay.Bar != bar {
					t.Errorf("%v at %v: under %q the line is at %.0f, at first at %.0f", set.Method, set.Text, b.Description().Find(idHint).Name, b.screen.lay.Bar, bar)
				}
			}
		}
	}
}

func padKeyOf(t *testing.T, sign string) describe.ID {
	t.Helper()
	for n := range 30 {
		if padSign(n) == sign {
			return idPadKey + describe.ID(n)
		}
	}
	t.Fatalf("no key %q", sign)
	return 0
}

// The button that goes on stays where it is while the line over it changes.
func TestTheButtonStaysWhereItIs(t *testing.T) {
	for _, size := range append(phones, windows...) {
		for _, text := range textSizes {
			b, d := benchAt(t, size, Settings{Text: text})
			first := b.Description().Find(idPrimary).Bounds
			states := []func(){func() { d.act(idTiltMore) }, func() { d.write("035") }, func() { b.turnOver(); d.wait() }, func() { d.write("035/30") }}
			for i, next := range states {
				next()
				if i == 2 && b.screen.lay.Low { // the other controls of a plate on its side lie under it
					first = b.Description().Find(idPrimary).Bounds
				}
				if now := b.Description().Find(idPrimary).Bounds; now.Y != first.Y || now.H != first.H {
					t.Errorf("%v at %v: in state %d the button is at %.0f, at first at %.0f", size, text, i+1, now.Y, first.Y)
				}
			}
		}
	}
}

// The same screens as in TestNothingIsCutOrOverlaps, in the windows of phones.
func TestNothingIsCutOnAPhone(t *testing.T) {
	for _, size := range phones[1:] {
		for _, text := range textSizes {
			t.Run(fmt.Sprintf("%vx%v at %v", size[0], size[1], text), func(t *testing.T) {
				t.Parallel()
				look := func(s station) { nothingCut(t, s.still()) }
				benchStations(t, size[0], size[1], Settings{Text: text}, look)
				paperStations(t, size[0], size[1], Settings{Text: text}, look)
			})
		}
	}
}
