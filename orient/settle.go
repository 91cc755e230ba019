package orient

import (
	"math"
	"strings"
)

// settle says what the parts of a draft mean together.
func settle(text string, d draft, assume Notation) (Entry, error) {
	s := settler{text: text, d: d}
	s.e = Entry{Notation: s.notation(assume)}
	s.e.Plane.Overturned = d.overturned
	if d.letters.kind == wordToken {
		s.e.Letters = d.letters.text
	}
	for _, step := range []func() error{s.bearing, s.dip, s.side} {
		if err := step(); err != nil {
			return s.e, err
		}
	}
	return s.e, nil
}

type settler struct {
	text string
	d    draft
	e    Entry
}

func (s *settler) fail(at token, read, would string, kind error) error {
	return &ParseError{Text: s.text, Pos: max(1, at.pos), Read: read, Would: would, Err: kind}
}

// notation decides which notation the draft is in. Words, arrows and quadrant
// bearings say it themselves. Letters that lie within 45° of the azimuth make
// it a dip direction where the course writes those; any others, a strike.
func (s *settler) notation(assume Notation) Notation {
	d := s.d
	switch {
	case d.pole:
		return PoleNotation
	case d.direction:
		return DirectionDip
	case d.bearing.kind == noBearing:
		return assume
	case d.bearing.kind == quadrantBearing:
		return Quadrant
	case d.vertical || d.strike:
		return AzimuthDip
	case assume == DirectionDip && s.lettersAlong():
		return DirectionDip
	case assume == PoleNotation && d.letters.kind != wordToken:
		return PoleNotation
	}
	return AzimuthDip
}

func (s *settler) lettersAlong() bool {
	if s.d.letters.kind != wordToken {
		return true
	}
	deg, ok := pointDegrees(s.d.letters.text)
	return ok && apart(deg, s.d.bearing.deg) < 45
}

func (s *settler) bearing() error {
	b := s.d.bearing
	if b.kind == azimuthBearing && b.deg > 360 {
		return s.fail(b.tok, b.tok.text+" was read as the azimuth; an azimuth lies from 0 to 360",
			"write three digits and then the dip, such as "+exampleOf(s.e.Notation), ErrAzimuth)
	}
	s.e.HasStrike = b.kind != noBearing
	s.e.Written = degrees(b.deg)
	s.e.Plane.Strike = s.strike(b.deg)
	return nil
}

// strike is the right-hand strike without regard to letters.
func (s *settler) strike(deg float64) Azimuth {
	switch s.e.Notation {
	case DirectionDip:
		return degrees(deg + 270)
	case PoleNotation:
		return degrees(deg + 90)
	case AzimuthDip, Quadrant:
	}
	return degrees(deg)
}

func (s *settler) dip() error {
	deg, at := s.d.dip.deg, s.d.dip
	if s.d.dip.kind != numberToken {
		return s.wordsForDip()
	}
	if deg > 90 {
		return s.fail(at, at.text+" was read as the "+s.dipName()+"; a "+s.dipName()+" lies from 0 to 90", s.insteadOfDip(), ErrDip)
	}
	if s.d.vertical && deg != 90 || s.d.horizontal && deg != 0 || s.d.vertical && s.d.horizontal {
		return s.fail(at, at.text+" stands beside a word for another dip", "write the number or the word", ErrDip)
	}
	if s.e.Notation == PoleNotation {
		deg = 90 - deg
	}
	return s.setDip(deg)
}

func (s *settler) wordsForDip() error {
	switch {
	case s.d.vertical && s.d.horizontal:
		return s.fail(s.d.dip, "both vertical and horizontal were read", "write one of them", ErrDip)
	case s.d.vertical && s.d.bearing.kind == noBearing:
		return s.fail(s.d.dip, "there is a vertical plane without its strike", "write the strike beside it, such as 035/90",
			ErrIncomplete)
	case s.d.vertical:
		return s.setDip(90)
	case s.d.horizontal:
		return s.setDip(0)
	}
	s.e.DipMissing = true
	return nil
}

// setDip takes the dip; a plane with dip 0 loses its strike.
func (s *settler) setDip(deg float64) error {
	s.e.Plane.Dip = Angle(deg) * Degree
	if deg == 0 {
		s.e.Plane.Strike, s.e.HasStrike = 0, false
	}
	return nil
}

func (s *settler) dipName() string {
	if s.e.Notation == PoleNotation {
		return "plunge"
	}
	return "dip"
}

// insteadOfDip says what would do instead of a number too large for a dip, and
// what it may have been meant to be. Three digits in front are an azimuth, which
// has not changed places with its dip.
func (s *settler) insteadOfDip() string {
	first, second := s.d.bearing, s.d.dip
	would := "write it in two digits, such as " + exampleOf(s.e.Notation)
	if first.kind == azimuthBearing && first.deg <= 90 && second.deg <= 360 && !s.d.direction && !threeDigits(first.tok.text) {
		return would + ", or " + degrees(second.deg).String() + "/" + padded(first.deg, 2) + " if " + second.text + " is the azimuth"
	}
	if s.d.direction && second.deg <= 360 && first.deg <= 90 {
		return "write the dip before the arrow, " + padded(first.deg, 2) + "→" + degrees(second.deg).String()
	}
	return would
}

// threeDigits says that a number is written as an azimuth is: 035.
func threeDigits(text string) bool {
	n := 0
	for n < len(text) && text[n] >= '0' && text[n] <= '9' {
		n++
	}
	return n == 3
}

func exampleOf(n Notation) string {
	return [...]string{"035/30", "N35E 30SE", "125/30", "305/60"}[n]
}

func degrees(deg float64) Azimuth { return AzimuthOf(Angle(math.Mod(deg, 360)) * Degree) }

// apart is the angle between two directions in degrees, in [0, 180].
func apart(a, b float64) float64 {
	return math.Abs(math.Remainder(a-b, 360))
}

// joinOr lists words: SE or NW.
func joinOr(words ...string) string { return strings.Join(words, " or ") }
