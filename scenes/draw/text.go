package draw

import (
	"math"
	"strings"
	"unicode/utf8"
)

// LineHeight is the usual distance between baselines, in em.
const LineHeight = 1.35

// Measure returns the width of one line of text, in the unit of size. The
// empty text has none; track is added after every sign.
func Measure(f Font, size float64, s string, track float64) float64 {
	shared.mu.Lock()
	defer shared.mu.Unlock()
	return size * shared.width(f, s, track)
}

func (s *faces) width(f Font, text string, track float64) float64 {
	w, _ := s.extend(f, 0, nil, text, track)
	return w
}

// extend is the width of a line that has come to w and its last sign, with a
// text added to it; and the last sign then.
func (s *faces) extend(f Font, w float64, last *glyph, text string, track float64) (float64, *glyph) {
	for _, r := range text {
		g := s.glyph(f, r)
		w += s.kern(last, g) + g.advance + track
		last = g
	}
	return w, last
}

// Ascent is the height of capitals and of the tallest letters above the
// baseline, in the unit of size.
func Ascent(f Font, size float64) float64 { return size * extents(f, "dlbH").top }

// CapHeight is the height of capitals, in the unit of size.
func CapHeight(f Font, size float64) float64 { return size * extents(f, "H").top }

// Descent is the depth of the deepest letters below the baseline, in the unit
// of size.
func Descent(f Font, size float64) float64 { return size * extents(f, "gpqy").bottom }

type extent struct{ top, bottom float64 }

func extents(f Font, signs string) extent {
	shared.mu.Lock()
	defer shared.mu.Unlock()
	var e extent
	for _, r := range signs {
		for _, q := range shared.glyph(f, r).outline.Points {
			e.top, e.bottom = max(e.top, -q.Y), max(e.bottom, q.Y)
		}
	}
	return e
}

// HasGlyph says whether a face has the sign: without one a box is drawn.
func HasGlyph(f Font, r rune) bool {
	shared.mu.Lock()
	defer shared.mu.Unlock()
	return shared.glyph(f, r).index != 0
}

// Wrap breaks a text into lines no wider than width, at spaces; a line feed
// always breaks. A word that is wider than a line is broken inside. It returns
// at least one line.
func Wrap(f Font, size, width float64, s string) []string {
	shared.mu.Lock()
	defer shared.mu.Unlock()
	var lines []string
	for _, para := range strings.Split(s, "\n") {
		lines = shared.wrap(lines, f, width/size+roundOff, para)
	}
	return lines
}

// roundOff lets a line fit that is exactly as wide as its room.
const roundOff = 1e-9

func (s *faces) wrap(lines []string, f Font, width float64, para string) []string {
	line, w := "", 0.0
	var last *glyph
	for _, word := range strings.Fields(para) {
		space := " "
		if line == "" {
			space = ""
		}
		longer, end := s.extend(f, w, last, space, 0)
		longer, end = s.extend(f, longer, end, word, 0)
		if longer <= width {
			line, w, last = line+space+word, longer, end
			continue
		}
		if line != "" {
			lines = append(lines, line)
		}
		for s.width(f, word, 0) > width && utf8.RuneCountInString(word) > 1 {
			n := s.fits(f, width, word)
			lines, word = append(lines, word[:n]), word[n:]
		}
		line = word
		w, last = s.extend(f, 0, nil, word, 0)
	}
	return append(lines, line)
}

// fits returns how many bytes of a word go into a width: one sign at least,
// and never the last.
func (s *faces) fits(f Font, width float64, word string) int {
	n := 0
	for i := range word {
		if n > 0 && s.width(f, word[:i], 0) > width {
			break
		}
		if i > 0 {
			n = i
		}
	}
	return n
}

// AppendOutline adds the outlines of a text to a path, placed, aligned and
// turned; it is filled with the non-zero rule. It allocates nothing once the
// path has grown.
func (t Text) AppendOutline(p *Path) {
	shared.mu.Lock()
	defer shared.mu.Unlock()
	pen := -shared.before(t)
	sin, cos := math.Sincos(t.Rotate)
	var last *glyph
	for _, r := range t.S {
		g := shared.glyph(t.Font, r)
		pen += shared.kern(last, g)
		p.Kinds = append(p.Kinds, g.outline.Kinds...)
		for _, q := range g.outline.Points {
			x, y := t.Size*(pen+q.X), t.Size*q.Y
			p.Points = append(p.Points, Point{t.At.X + cos*x - sin*y, t.At.Y + sin*x + cos*y})
		}
		pen += g.advance + t.Track
		last = g
	}
}

// before is the part of the width that lies left of the place, in em.
func (s *faces) before(t Text) float64 {
	switch t.Align {
	case AlignCentre:
		return (s.width(t.Font, t.S, t.Track) - t.Track) / 2
	case AlignRight:
		return s.width(t.Font, t.S, t.Track) - t.Track
	default:
		return 0
	}
}
