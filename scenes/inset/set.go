package inset

import (
	"math"

	"cuesta/scenes/draw"
	"cuesta/scenes/figure"
	"cuesta/scenes/theme"
)

// Set keeps the baked parts of the magnifiers, for the themes and sizes that
// were drawn last. Make one with New. It is not safe for use by several
// goroutines at once.
type Set struct {
	// Unit is the number of device pixels in one unit of length, at least 1: it
	// sets the least width of a rim and the softness of a shadow.
	Unit float64

	kept  []kept
	clock uint64
}

// New returns a set that has baked nothing yet.
func New() *Set { return &Set{Unit: 1} }

// piece names a baked part.
type piece uint8

const (
	shadowPiece piece = iota
	roundBody
	roundMarks
	roundBubble
	dialCase
	dialDisc
	needleShade
	needleBody
	tubePlate
	tubeArm
	tubeBubble
	tubeMarks
	arcPlate
	arcArm
	armShade
	hingePlate
	hingeIndex
	display
	displayState
	digit
)

type key struct {
	what  piece
	theme theme.Name
	px    float64
	kind  uint8 // muted, the way up of the figures, calibrated, or which digit
}

type kept struct {
	key  key
	used uint64
	t    *draw.Texture
}

// most is the number of baked parts that are kept: those of two themes or sizes.
const most = 80

// find returns the part of a key, or nil when it has to be baked.
func (s *Set) find(k key) *draw.Texture {
	s.clock++
	for i := range s.kept {
		if s.kept[i].key == k {
			s.kept[i].used = s.clock
			return s.kept[i].t
		}
	}
	return nil
}

// keep stores a baked part, in place of the one unused for longest when there
// is no room.
func (s *Set) keep(k key, t *draw.Texture) *draw.Texture {
	if len(s.kept) < most {
		s.kept = append(s.kept, kept{k, s.clock, t})
		return t
	}
	old := 0
	for i := range s.kept {
		if s.kept[i].used < s.kept[old].used {
			old = i
		}
	}
	s.kept[old] = kept{k, s.clock, t}
	return t
}

// part returns a part over box, baking it when it is new. The middle of the box
// falls on the corner of a pixel, so that a part that is not turned stays sharp.
func (s *Set) part(th *theme.Theme, what piece, kind uint8, px float64, box draw.Rect, paint func(*draw.List, *theme.Theme, uint8)) *draw.Texture {
	k := key{what, th.Name, px, kind}
	if t := s.find(k); t != nil {
		return t
	}
	return s.keep(k, figure.Bake(box, px, func(l *draw.List) { paint(l, th, kind) }))
}

// around is a box about c of half size r, widened to whole pixels at px.
func around(c draw.Point, r, px float64) draw.Rect {
	h := math.Ceil(r*px) / px
	return draw.Rect{X: c.X - h, Y: c.Y - h, W: 2 * h, H: 2 * h}
}

// finer is the scale at which a part that is turned is baked, when k is the
// scale on the screen and size its extent in cm: half as fine again, within a
// texture of moderate size.
func finer(k, size float64) float64 { return max(min(1.5*k, 1700/size), k) }
