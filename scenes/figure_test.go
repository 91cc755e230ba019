package scenes

import (
	"strings"
	"testing"

	"cuesta/scenes/describe"
	"cuesta/scenes/draw"
	"cuesta/scenes/input"
)

// figureOf is the size at which a figure is drawn.
func figureOf(p *Paper) (w, h float64) {
	var l draw.List
	p.Picture(&l)
	return float64(p.screen.figure.W), float64(p.screen.figure.H)
}

// On a phone on its side the figure has nearly all the height, in every question
// that has one.
func TestTheFigureIsLargeOnALowScreen(t *testing.T) {
	for _, pad := range []bool{false, true} {
		m, p, d := formAt(t, [2]float64{844, 390}, Text100)
		for i, it := range m.items {
			if it.Figure() == nil {
				continue
			}
			p.goTo(i)
			p.pad = pad
			d.wait()
			if w, h := figureOf(p); max(w, h) < 330 {
				t.Errorf("%s, keypad %v: the figure is %.0f by %.0f", it.Kind().Name(), pad, w, h)
			}
		}
	}
}

// A tap on a figure lets it fill the window, and another, Back or Escape makes
// it small again; what is written stays.
func TestATapEnlargesTheFigure(t *testing.T) {
	back := map[string]func(tapper){
		"a tap":  func(f tapper) { f.tap(idEnlarge) },
		"Back":   func(f tapper) { f.tap(idClosePanel) },
		"Escape": func(f tapper) { f.key(input.Escape) },
	}
	for name, back := range back {
		for _, size := range append(phones, windows...) {
			for _, text := range textSizes {
				m, p, d := formAt(t, size, text)
				f := tapper{t, p, d}
				for i, it := range m.items {
					p.goTo(i)
					f.wait()
					if it.Figure() == nil || p.screen.beside {
						continue
					}
					if !f.sees(idEnlarge) {
						t.Fatalf("%v at %v, %s: no figure to tap", size, text, it.Kind().Name())
					}
					page := p.page
					w, h := figureOf(p)
					f.tap(idEnlarge)
					if w2, h2 := figureOf(p); !p.large || w2*h2 < .99*w*h {
						t.Errorf("%v at %v, %s: enlarged from %.0f by %.0f to %.0f by %.0f", size, text, it.Kind().Name(), w, h, w2, h2)
					}
					nothingAmiss(t, p)
					back(f)
					if p.large || p.page != page || p.Description().Focus != idEnlarge {
						t.Errorf("%v at %v, %s, by %s: large %v, part %d of %d", size, text, it.Kind().Name(), name, p.large, p.page, page)
					}
				}
			}
		}
	}
}

// nothingAmiss looks at an enlarged figure: it lies on the screen, under no
// control, and is described.
func nothingAmiss(t *testing.T, p *Paper) {
	t.Helper()
	tree := p.Description()
	all := draw.Rect(tree.Root.Bounds)
	big, back, picture := tree.Find(idEnlarge), tree.Find(idClosePanel), tree.Find(idFigure)
	if big == nil || back == nil || picture == nil || !strings.Contains(big.Name, "small") || picture.Value == "" {
		t.Fatalf("enlarged, there are %v, %v and %v", big, back, picture)
	}
	if !within(draw.Rect(big.Bounds), all) || overlap(draw.Rect(big.Bounds), draw.Rect(back.Bounds)) {
		t.Errorf("the figure at %.0f, Back at %.0f, on %.0f", big.Bounds, back.Bounds, all)
	}
	heads := 0
	visit(&tree.Root, func(n *describe.Node) {
		if n.Role == describe.Heading {
			heads++
		}
	})
	if heads != 1 {
		t.Errorf("%d headings", heads)
	}
}

// A label in two lines stays with its field.
func TestALabelStaysWithItsField(t *testing.T) {
	for _, size := range append(phones, windows...) {
		for _, text := range textSizes {
			if size[1] == 360 && text == Text200 {
				continue // has no room for both
			}
			m, p, d := formAt(t, size, text)
			for i, it := range m.items {
				p.goTo(i)
				d.wait()
				for n := range 9 {
					p.page = n
					p.followed = p.focus
					d.wait()
					tree := p.Description()
					if name, field := tree.Find(idFieldName), tree.Find(idNotebook); (name == nil) != (field == nil) {
						t.Errorf("%v at %v, %s, part %d: label shown %v, field shown %v", size, text, it.Kind().Name(), n+1, name != nil, field != nil)
					}
				}
			}
		}
	}
}

// On a phone on its side the form is laid out in a way of its own.
func TestNothingIsCutOnAPhoneOnItsSide(t *testing.T) {
	for _, text := range textSizes {
		paperStations(t, 844, 390, Settings{Text: text}, func(s station) { nothingCut(t, s.still()) })
	}
}
