package scenes

import (
	"fmt"
	"testing"

	"cuesta/scenes/draw"
)

// sizes are windows a bench may find itself in: a small and a usual laptop, a
// projector, the largest screens, a phone upright and on its side.
var sizes = [][2]float64{{1280, 720}, {1920, 1080}, {800, 600}, {1024, 768}, {3840, 2160}, {2560, 1080}, {480, 360}, {844, 390}, {390, 844}}

func overlap(a, b draw.Rect) bool {
	return a.X < b.X+b.W-.5 && b.X < a.X+a.W-.5 && a.Y < b.Y+b.H-.5 && b.Y < a.Y+a.H-.5
}

func boxOf(c circle) draw.Rect { return draw.Rect{X: c.X - c.R, Y: c.Y - c.R, W: 2 * c.R, H: 2 * c.R} }

func TestAreasCoverTheWindowOnce(t *testing.T) {
	for _, size := range sizes {
		for _, text := range []float64{1, 1.25, 1.5, 2} {
			t.Run(fmt.Sprint(size, text), func(t *testing.T) {
				l := layOut(frameOf{W: size[0], H: size[1], Scale: 1, Text: text, BarLines: 1, StripRows: 1, ButtonRows: 1})
				if l.TooTiny {
					t.Fatal("got too small, want a layout")
				}
				areas := []draw.Rect{l.Scene, l.Strip, l.Bar, l.Column, l.Title}
				sum := 0.0
				for i, a := range areas {
					sum += a.W * a.H
					for _, b := range areas[i+1:] {
						if overlap(a, b) {
							t.Errorf("%v and %v overlap", a, b)
						}
					}
				}
				if got, want := sum, size[0]*size[1]; got < want-1 || got > want+1 {
					t.Errorf("areas cover %v pixels, want %v", got, want)
				}
			})
		}
	}
}

func TestInsetsStayInTheColumnAndApart(t *testing.T) {
	for _, size := range sizes {
		for _, judged := range []bool{false, true} {
			l := layOut(frameOf{W: size[0], H: size[1], Scale: 1, Text: 1, BarLines: 1, StripRows: 1, ButtonRows: 1, Judged: judged})
			r, d := boxOf(l.Round), boxOf(l.Dial)
			if judged && l.Round.R == 0 {
				continue // a small window has no room for both insets and verdict
			}
			if overlap(r, d) {
				t.Errorf("%v judged %v: insets overlap: %v %v", size, judged, r, d)
			}
			for _, b := range []draw.Rect{r, d} {
				if b.X < l.Column.X || b.X+b.W > l.Column.X+l.Column.W || b.Y < l.Column.Y || b.Y+b.H > l.Notes {
					t.Errorf("%v judged %v: inset %v leaves its place above %v", size, judged, b, l.Notes)
				}
			}
		}
	}
}

func TestTinyWindowsAreRefusedNotCrammed(t *testing.T) {
	for _, size := range [][2]float64{{320, 240}, {1, 1}, {200, 900}, {4000, 100}} {
		if l := layOut(frameOf{W: size[0], H: size[1], Scale: 1, Text: 1, BarLines: 1, StripRows: 1, ButtonRows: 1}); !l.TooTiny {
			t.Errorf("%v: got a layout, want the message", size)
		}
	}
}
