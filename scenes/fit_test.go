package scenes

import (
	"fmt"
	"image"
	"testing"

	"cuesta/scenes/describe"
	"cuesta/scenes/draw"
)

// everyStation looks at every state of every scene in every window and size
// of text.
func everyStation(t *testing.T, look func(t *testing.T, s still)) {
	for _, size := range windows {
		for _, text := range textSizes {
			t.Run(fmt.Sprintf("%vx%v at %v", size[0], size[1], text), func(t *testing.T) {
				t.Parallel()
				for _, s := range stills(t, shape{size[0], size[1], text}) {
					look(t, s)
				}
			})
		}
	}
}

// Text grows to 200 % with nothing lost (WCAG 2.2, 1.4.4): every text lies in
// its box, every box in its part of the screen, and none on another.
func TestNothingIsCutOrOverlaps(t *testing.T) { everyStation(t, nothingCut) }

func nothingCut(t *testing.T, s still) {
	t.Helper()
	if s.lay.TooTiny {
		t.Errorf("%s: the window is refused", s.name)
		return
	}
	screen := draw.Rect{W: s.lay.W, H: s.lay.H}
	var all []widget
	var boxes []draw.Rect
	for _, z := range s.zones {
		if !within(z.rect, screen) {
			t.Errorf("%s: a zone %v leaves the screen", s.name, z.rect)
		}
		for _, w := range z.widgets {
			if w.look == hidden || w.text == "" && w.look == plain {
				continue
			}
			box := inkBox(w)
			if !within(box, z.rect) {
				t.Errorf("%s: %q at %.0f leaves its zone %.0f", s.name, w.text, box, z.rect)
			}
			if need := textWidth(w); need > w.rect.W+1 {
				t.Errorf("%s: %q needs %.0f of %.0f", s.name, w.text, need, w.rect.W)
			}
			if lines := float64(len(splitLines(w.text))); w.look != plain && w.look != tab && lines*1.15*w.size > w.rect.H+1 {
				t.Errorf("%s: %q is %.0f high in %.0f", s.name, w.text, lines*1.15*w.size, w.rect.H)
			}
			all, boxes = append(all, w), append(boxes, box)
		}
	}
	for i, a := range all {
		for j, b := range all[i+1:] {
			x, y := boxes[i], boxes[i+1+j]
			if a.text == "" && pressable(a) && within(y, x) {
				continue // words in a door
			}
			if overlap(x, y) {
				t.Errorf("%s: %q %.0f lies on %q %.0f", s.name, a.text, x, b.text, y)
			}
		}
	}
}

// textWidth is the room a widget's text needs.
func textWidth(w widget) float64 {
	if w.look == box {
		const u = 1 // the least
		from, to := fieldPart(w.text, w.caret, w.size, w.rect.W-2*fieldPad*u)
		return draw.Measure(w.font(), w.size, string([]rune(w.text)[from:to]), fieldTrack) + fieldPad
	}
	wide := 0.0
	for _, s := range splitLines(w.text) {
		wide = max(wide, draw.Measure(w.font(), w.size, s, 0))
	}
	return wide + w.pad
}

// What a large window offers can be reached in every other one too: at once,
// by the stepper that comes round, or under More.
func TestEveryControlIsInReachInEveryWindow(t *testing.T) {
	states := map[string]func(*Bench, drive){
		"fresh":       func(*Bench, drive) {},
		"on its side": func(b *Bench, d drive) { d.act(idTurn) },
		"on its lid":  func(b *Bench, d drive) { b.Choose(Settings{Method: MethodLid}) },
		"sensor":      func(b *Bench, d drive) { b.Choose(Settings{Method: MethodSensor}) },
		"wrong":       func(b *Bench, d drive) { d.write("215/48"); d.act(idPrimary) },
	}
	for name, prepare := range states {
		offered := func(w, h float64, text TextSize) map[describe.ID]string {
			b, err := NewBench(BenchOptions{Seed: 7})
			if err != nil {
				t.Fatal(err)
			}
			asGuest(b)
			d := drive{w, h, b}
			d.wait()
			prepare(b, d)
			b.Choose(Settings{Text: text, Declination: DeclinationYours, Method: b.set.Method})
			d.wait()
			out := map[describe.ID]string{}
			take := func() {
				for _, n := range b.Description().Order() {
					out[n.ID] = n.Name
				}
			}
			take()
			for range 4 {
				if b.Description().Find(idKnob) != nil {
					d.act(idKnob)
					take()
				}
			}
			if b.Description().Find(idMore) != nil {
				d.act(idMore)
				eachPage(d, func(int) { take() })
			}
			return out
		}
		all := offered(1920, 1080, Text100)
		for _, size := range windows {
			for _, text := range textSizes {
				got := offered(size[0], size[1], text)
				for id, control := range all {
					if _, ok := got[id]; !ok {
						t.Errorf("%s, %vx%v at %v: %q cannot be reached", name, size[0], size[1], text, control)
					}
				}
			}
		}
	}
}

// A region that has not changed is not painted again, so none may lie under
// another: it would come up over it.
func TestNoRegionLiesOnAnother(t *testing.T) {
	for _, size := range [...][2]float64{{1280, 720}, {390, 844}, {1366, 768}} {
		t.Run(fmt.Sprintf("%vx%v", size[0], size[1]), func(t *testing.T) {
			t.Parallel()
			look := func(s station) {
				var l draw.List
				s.scene.Picture(&l)
				rects := drawnRegions(&l)
				for i, a := range rects {
					for _, b := range rects[:i] {
						if a.Overlaps(b) {
							t.Errorf("%s: the regions %v and %v overlap", s.name, a, b)
						}
					}
				}
			}
			benchStations(t, size[0], size[1], Settings{}, look)
			labStations(t, size[0], size[1], Settings{}, look)
			paperStations(t, size[0], size[1], Settings{}, look)
			hallStations(size[0], size[1], Settings{}, look)
		})
	}
}

// drawnRegions are the regions in which something is drawn.
func drawnRegions(l *draw.List) []image.Rectangle {
	var out []image.Rectangle
	for i, it := range l.Items {
		if it.Op == draw.OpRegion && i+1 < len(l.Items) && l.Items[i+1].Op != draw.OpRegion {
			out = append(out, l.Regions[it.N].Rect.Pixels())
		}
	}
	return out
}
