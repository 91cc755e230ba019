package draw

import (
	"sync"

	"codeberg.org/go-fonts/dejavu/dejavusans"
	"golang.org/x/image/font"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"

	"cuesta/assets"
)

// face is one font file. Lengths taken from it are in em.
type face struct {
	font *sfnt.Font
	ppem fixed.Int26_6 // at which one font unit is one pixel
	em   float64       // length of an em in 1/64 font units
	buf  sfnt.Buffer

	kerns map[uint32]float64 // by the two signs, in em
}

// glyph is a sign in em: its outline, y down from the baseline, and how far it
// moves the pen.
type glyph struct {
	face    *face
	index   sfnt.GlyphIndex
	outline Path
	advance float64
}

// faces finds signs. Font files are parsed when they are first asked for, so
// that a program which draws no text starts without them.
type faces struct {
	mu       sync.Mutex
	reading  [2]*face
	fallback *face
	plain    [2][128]*glyph // the signs of ASCII in each weight
	glyphs   map[glyphKey]*glyph
}

type glyphKey struct {
	font Font
	sign rune
}

var shared = faces{glyphs: map[glyphKey]*glyph{}}

func parse(ttf []byte) *face {
	f, err := sfnt.Parse(ttf)
	if err != nil {
		panic("draw: an embedded font is broken: " + err.Error())
	}
	u := f.UnitsPerEm()
	return &face{font: f, ppem: fixed.I(int(u)), em: 64 * float64(u), kerns: map[uint32]float64{}}
}

// face returns the reading face of a weight.
func (s *faces) face(f Font) *face {
	if s.reading[f] == nil {
		s.reading[f] = parse([...][]byte{assets.Regular, assets.Bold}[f])
	}
	return s.reading[f]
}

// glyph returns a sign, from the fallback face where the reading face lacks
// it. A sign that neither has is the box of the reading face.
func (s *faces) glyph(f Font, r rune) *glyph {
	if r >= 0 && int(r) < len(s.plain[f]) {
		if s.plain[f][r] == nil {
			s.plain[f][r] = s.find(f, r)
		}
		return s.plain[f][r]
	}
	k := glyphKey{f, r}
	if s.glyphs[k] == nil {
		s.glyphs[k] = s.find(f, r)
	}
	return s.glyphs[k]
}

func (s *faces) find(f Font, r rune) *glyph {
	fc := s.face(f)
	i := fc.index(r)
	if i == 0 {
		if s.fallback == nil {
			s.fallback = parse(dejavusans.TTF)
		}
		if j := s.fallback.index(r); j != 0 {
			fc, i = s.fallback, j
		}
	}
	return fc.load(i)
}

// kern is the extra space between two signs, in em, mostly 0 or below.
func (s *faces) kern(a, b *glyph) float64 {
	if a == nil || a.face != b.face {
		return 0
	}
	k := uint32(a.index)<<16 | uint32(b.index)
	d, ok := a.face.kerns[k]
	if !ok {
		v, err := a.face.font.Kern(&a.face.buf, a.index, b.index, a.face.ppem, font.HintingNone)
		if err == nil {
			d = float64(v) / a.face.em
		}
		a.face.kerns[k] = d
	}
	return d
}

func (f *face) index(r rune) sfnt.GlyphIndex {
	i, err := f.font.GlyphIndex(&f.buf, r)
	if err != nil {
		return 0
	}
	return i
}

func (f *face) load(i sfnt.GlyphIndex) *glyph {
	g := &glyph{face: f, index: i}
	if a, err := f.font.GlyphAdvance(&f.buf, i, f.ppem, font.HintingNone); err == nil {
		g.advance = float64(a) / f.em
	}
	segs, err := f.font.LoadGlyph(&f.buf, i, f.ppem, nil)
	if err != nil {
		return g
	}
	g.outline = outline(segs, f.em)
	return g
}

func outline(segs sfnt.Segments, em float64) Path {
	var p Path
	at := func(q fixed.Point26_6) (float64, float64) { return float64(q.X) / em, float64(q.Y) / em }
	for i, s := range segs {
		x, y := at(s.Args[0])
		switch s.Op {
		case sfnt.SegmentOpMoveTo:
			if i > 0 {
				p.Close()
			}
			p.MoveTo(x, y)
		case sfnt.SegmentOpLineTo:
			p.LineTo(x, y)
		case sfnt.SegmentOpQuadTo:
			x1, y1 := at(s.Args[1])
			p.QuadTo(x, y, x1, y1)
		case sfnt.SegmentOpCubeTo:
			x1, y1 := at(s.Args[1])
			x2, y2 := at(s.Args[2])
			p.CubeTo(x, y, x1, y1, x2, y2)
		}
	}
	if len(p.Kinds) > 0 {
		p.Close()
	}
	return p
}
