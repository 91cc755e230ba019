package draw

// Face is a font file that a painter may have to embed or name.
type Face uint8

// The faces: the two weights for reading, and the one that has the signs they
// lack.
const (
	RegularFace Face = iota
	BoldFace
	FallbackFace
)

// Piece is a run of a text that stands in one face. Start is where it begins
// along the baseline, from the place of the text, in units of the picture.
// Gaps[i] is the extra space before sign i of the run, in em: kerning and
// track; the first is 0.
type Piece struct {
	Face  Face
	Signs []rune
	Start float64
	Gaps  []float64
}

// Pieces cuts the text up by face, placed and aligned as AppendOutline does, so
// that a painter which writes text as text puts every sign in the same place.
func (t Text) Pieces() []Piece {
	shared.mu.Lock()
	defer shared.mu.Unlock()
	var out []Piece
	pen := -shared.before(t)
	var last *glyph
	for _, r := range t.S {
		g := shared.glyph(t.Font, r)
		gap := shared.kern(last, g)
		face := shared.named(t.Font, g)
		if n := len(out); last == nil || out[n-1].Face != face {
			out = append(out, Piece{Face: face, Start: t.Size * (pen + gap)})
			pen, gap = pen+gap, 0
		} else {
			pen += gap
			gap += t.Track
		}
		p := &out[len(out)-1]
		p.Signs, p.Gaps = append(p.Signs, r), append(p.Gaps, gap)
		pen += g.advance + t.Track
		last = g
	}
	return out
}

// named is the face in which a glyph was found.
func (s *faces) named(f Font, g *glyph) Face {
	if g.face == s.fallback {
		return FallbackFace
	}
	if f == Bold {
		return BoldFace
	}
	return RegularFace
}
