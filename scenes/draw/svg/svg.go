// Package svg writes a picture as Scalable Vector Graphics 1.1. The same list
// gives the same bytes.
//
// Text stays text, in the reading face where the reader has it and a common
// sans-serif where not; Options.Outlines writes shapes instead, which look the
// same everywhere but cannot be searched or read aloud. Textured meshes become
// plain triangles, see draw.Mesh.Flattened.
package svg

import (
	"cuesta/scenes/draw"
)

// Options say how a picture is written.
type Options struct {
	Title    string // a short name, read aloud; "" leaves it out
	Desc     string // what the picture shows; "" leaves it out
	Outlines bool   // text as shapes
	Prefix   string // of the ids, for several pictures on one page; letters, digits and hyphens, begun with a letter
}

// Element returns the picture as an svg element, to be set into a page.
func Element(l *draw.List, o Options) []byte {
	w := writer{options: o}
	w.open(l)
	for _, it := range l.Items {
		w.item(l, it)
	}
	w.shut()
	w.put("</svg>\n")
	return w.out
}

// File returns the picture as a file of its own.
func File(l *draw.List, o Options) []byte {
	return append([]byte("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n"), Element(l, o)...)
}

func (w *writer) open(l *draw.List) {
	w.put(`<svg xmlns="http://www.w3.org/2000/svg" version="1.1"`)
	w.number("width", l.W)
	w.number("height", l.H)
	w.put(` viewBox="0 0 `)
	w.float(l.W)
	w.put(" ")
	w.float(l.H)
	w.put(`"`)
	w.label()
	w.put(">\n")
	w.said("title", "t", w.options.Title)
	w.said("desc", "d", w.options.Desc)
}

// label ties title and description to the picture for screen readers. A
// picture without either is ornament.
func (w *writer) label() {
	var ids string
	if w.options.Title != "" {
		ids = w.id("t")
	}
	if w.options.Desc != "" {
		if ids != "" {
			ids += " "
		}
		ids += w.id("d")
	}
	if ids == "" {
		w.put(` aria-hidden="true"`)
		return
	}
	w.put(` role="img"`)
	w.text("aria-labelledby", ids)
}

func (w *writer) said(element, id, s string) {
	if s == "" {
		return
	}
	w.put("<" + element)
	w.text("id", w.id(id))
	w.put(">")
	w.escape(s)
	w.put("</" + element + ">\n")
}

func (w *writer) id(s string) string { return w.options.Prefix + s }

func (w *writer) item(l *draw.List, it draw.Item) {
	switch it.Op {
	case draw.OpFill:
		w.fill(&l.Fills[it.N])
	case draw.OpStroke:
		w.stroke(&l.Lines[it.N])
	case draw.OpText:
		w.words(&l.Texts[it.N])
	case draw.OpMesh:
		for _, f := range l.Meshes[it.N].Flattened() {
			w.fill(&f)
		}
	case draw.OpRegion:
		w.region(l.Regions[it.N].Rect)
	}
}

// region begins a group that is clipped to a rectangle; it lasts until the
// next.
func (w *writer) region(r draw.Rect) {
	w.shut()
	id := w.next("c")
	w.put("<clipPath")
	w.text("id", id)
	w.put("><rect")
	w.number("x", r.X)
	w.number("y", r.Y)
	w.number("width", r.W)
	w.number("height", r.H)
	w.put("/></clipPath>\n<g")
	w.text("clip-path", "url(#"+id+")")
	w.put(">\n")
	w.group = true
}

func (w *writer) shut() {
	if w.group {
		w.put("</g>\n")
		w.group = false
	}
}

func (w *writer) fill(f *draw.Fill) {
	if len(f.Path.Kinds) == 0 {
		return
	}
	if f.Gradient.Kind != draw.NoGradient {
		id := w.gradient(f)
		w.path(&f.Path)
		w.text("fill", "url(#"+id+")")
		w.put("/>\n")
		return
	}
	w.path(&f.Path)
	w.color("fill", f.Color)
	w.put("/>\n")
}

func (w *writer) gradient(f *draw.Fill) string {
	id, g := w.next("g"), f.Gradient
	if g.Kind == draw.Linear {
		w.put("<linearGradient")
		w.number("x1", g.A.X)
		w.number("y1", g.A.Y)
		w.number("x2", g.B.X)
		w.number("y2", g.B.Y)
	} else {
		w.put("<radialGradient")
		w.number("cx", g.A.X)
		w.number("cy", g.A.Y)
		w.number("r", distance(g.A, g.B))
	}
	w.text("id", id)
	w.put(` gradientUnits="userSpaceOnUse"><stop offset="0"`)
	w.color("stop", f.Color)
	w.put(`/><stop offset="1"`)
	w.color("stop", g.To)
	if g.Kind == draw.Linear {
		w.put("/></linearGradient>\n")
	} else {
		w.put("/></radialGradient>\n")
	}
	return id
}

func (w *writer) stroke(l *draw.Line) {
	s := &l.Style
	if s.Width <= 0 || len(l.Path.Kinds) == 0 {
		return
	}
	w.path(&l.Path)
	w.put(` fill="none"`)
	w.color("stroke", s.Color)
	w.number("stroke-width", s.Width)
	switch s.Cap {
	case draw.ButtCap:
	case draw.RoundCap:
		w.put(` stroke-linecap="round"`)
	case draw.SquareCap:
		w.put(` stroke-linecap="square"`)
	}
	switch s.Join {
	case draw.MiterJoin: // its limit of 4 is the default of the format
	case draw.RoundJoin:
		w.put(` stroke-linejoin="round"`)
	case draw.BevelJoin:
		w.put(` stroke-linejoin="bevel"`)
	}
	w.dash(s.Dash)
	w.put("/>\n")
}

func (w *writer) dash(d []float64) {
	if len(d) == 0 {
		return
	}
	w.put(` stroke-dasharray="`)
	for i, v := range d {
		if i > 0 {
			w.put(" ")
		}
		w.float(v)
	}
	w.put(`"`)
}
