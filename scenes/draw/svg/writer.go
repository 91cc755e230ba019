package svg

import (
	"bytes"
	"encoding/xml"
	"fmt"
	"math"
	"strconv"

	"cuesta/scenes/draw"
)

// family names the reading face first and then faces that most readers have.
const family = `'Atkinson Hyperlegible','DejaVu Sans',Verdana,sans-serif`

// writer puts an element together.
type writer struct {
	options Options
	out     []byte
	ids     int
	group   bool // a clipped group is open
}

func (w *writer) put(s string) { w.out = append(w.out, s...) }

// next is an id that has not been used.
func (w *writer) next(s string) string {
	w.ids++
	return w.id(s + strconv.Itoa(w.ids))
}

// float writes a number to the thousandth; numbers that are none become 0.
func (w *writer) float(v float64) {
	r := math.Round(v*1000) / 1000
	if math.IsNaN(r) || math.IsInf(r, 0) || r == 0 {
		r = 0 // also for −0
	}
	w.out = strconv.AppendFloat(w.out, r, 'f', -1, 64)
}

func (w *writer) number(name string, v float64) {
	w.put(" " + name + `="`)
	w.float(v)
	w.put(`"`)
}

func (w *writer) text(name, s string) {
	w.put(" " + name + `="`)
	w.escape(s)
	w.put(`"`)
}

// escape writes a text; signs that XML cannot hold become U+FFFD.
func (w *writer) escape(s string) {
	var b bytes.Buffer
	_ = xml.EscapeText(&b, []byte(s)) // a bytes.Buffer takes all
	w.out = append(w.out, b.Bytes()...)
}

// color writes a colour and its opacity, as fill, stroke or stop.
func (w *writer) color(use string, c draw.Color) {
	name, opacity := use, use+"-opacity"
	if use == "stop" {
		name = "stop-color"
	}
	w.put(fmt.Sprintf(` %s="#%02x%02x%02x"`, name, c.R, c.G, c.B))
	if c.A != 255 {
		w.number(opacity, float64(c.A)/255)
	}
}

// path begins a path element, without its end.
func (w *writer) path(p *draw.Path) {
	w.put(`<path d="`)
	k := 0
	for _, kind := range p.Kinds {
		n := 1
		switch kind {
		case draw.Move:
			w.put("M")
		case draw.LineTo:
			w.put("L")
		case draw.Quad:
			w.put("Q")
			n = 2
		case draw.Cube:
			w.put("C")
			n = 3
		case draw.Close:
			w.put("Z")
			n = 0
		}
		w.points(p.Points[k : k+n])
		k += n
	}
	w.put(`"`)
}

func (w *writer) points(pts []draw.Point) {
	for i, q := range pts {
		if i > 0 {
			w.put(" ")
		}
		w.float(q.X)
		w.put(" ")
		w.float(q.Y)
	}
}

// words writes a line of text.
func (w *writer) words(t *draw.Text) {
	if t.S == "" {
		return
	}
	if w.options.Outlines {
		var p draw.Path
		t.AppendOutline(&p)
		w.fill(&draw.Fill{Path: p, Color: t.Color})
		return
	}
	w.put("<text")
	w.number("x", t.At.X)
	w.number("y", t.At.Y)
	w.text("font-family", family)
	w.number("font-size", t.Size)
	if t.Font == draw.Bold {
		w.put(` font-weight="bold"`)
	}
	switch t.Align {
	case draw.AlignLeft:
	case draw.AlignCentre:
		w.put(` text-anchor="middle"`)
	case draw.AlignRight:
		w.put(` text-anchor="end"`)
	}
	if t.Track != 0 {
		w.number("letter-spacing", t.Track*t.Size)
	}
	w.turn(t)
	w.color("fill", t.Color)
	w.put(">")
	w.escape(t.S)
	w.put("</text>\n")
}

func (w *writer) turn(t *draw.Text) {
	if t.Rotate == 0 {
		return
	}
	w.put(` transform="rotate(`)
	w.float(t.Rotate * 180 / math.Pi)
	w.put(" ")
	w.points([]draw.Point{t.At})
	w.put(`)"`)
}

func distance(a, b draw.Point) float64 { return math.Hypot(b.X-a.X, b.Y-a.Y) }
