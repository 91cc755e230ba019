package orient

import "strconv"

// draft is a reading cut into its parts, before anyone asks what they mean.
type draft struct {
	flags
	bearing   bearing
	dip       token // a number, or the zero token while it is missing
	letters   token // a word, or the zero token
	direction bool  // an arrow or a label says that bearing is a dip direction
	strike    bool  // a label says that it is a strike
}

type bearingKind uint8

const (
	noBearing bearingKind = iota
	azimuthBearing
	quadrantBearing
)

// bearing is a horizontal direction as written, in degrees.
type bearing struct {
	kind bearingKind
	deg  float64
	tok  token
}

// syntax reads tokens into a draft. It keeps what it has when it fails.
type syntax struct {
	text string
	toks []token
	d    draft
}

func (s *syntax) peek() token { return s.toks[0] }

func (s *syntax) second() token {
	if len(s.toks) > 1 {
		return s.toks[1]
	}
	return s.toks[0]
}

func (s *syntax) take() token {
	t := s.toks[0]
	if t.kind != endToken {
		s.toks = s.toks[1:]
	}
	return t
}

func (s *syntax) accept(k tokenKind) bool {
	if s.peek().kind == k {
		s.take()
		return true
	}
	return false
}

func (s *syntax) fail(at token, read, would string, kind error) error {
	return &ParseError{Text: s.text, Pos: at.pos, Read: read, Would: would, Err: kind}
}

// read is the whole reading: bearing and dip in either order.
func (s *syntax) read() error {
	if s.peek().kind == endToken && (s.d.horizontal || s.d.vertical) {
		return nil
	}
	first := s.heading()
	arrow := s.peek().kind == numberToken && s.second().kind == arrowToken
	order := s.bearingFirst
	if arrow || first == dipToken {
		order = s.dipFirst
	}
	if err := order(); err != nil {
		return err
	}
	s.accept(markToken)
	if t := s.peek(); t.kind != endToken {
		return s.fail(t, strconv.Quote(t.text)+" stands behind a whole reading",
			"write one plane with one azimuth and one dip", ErrWords)
	}
	return nil
}

// heading reads the labels that stand before the numbers, one as in "strike
// 035" or two as in "strike/dip: 035/30", and returns the first.
func (s *syntax) heading() tokenKind {
	first := s.label()
	second := s.label()
	s.d.strike = first == strikeToken || second == strikeToken
	s.d.direction = first == directionToken || second == directionToken
	return first
}

// label reads one label and a sign behind it; endToken where there is none.
func (s *syntax) label() tokenKind {
	switch k := s.peek().kind; k {
	case strikeToken, dipToken, directionToken:
		s.take()
		s.accept(markToken)
		return k
	case endToken, numberToken, wordToken, markToken, dashToken, arrowToken:
	}
	return endToken
}

func (s *syntax) bearingFirst() error {
	if err := s.bearing(); err != nil {
		return err
	}
	s.separators()
	if s.peek().kind == dipToken {
		s.label()
	}
	return s.dip()
}

// dipFirst is 30→125, or a dip and then a strike under their own names.
func (s *syntax) dipFirst() error {
	if err := s.dip(); err != nil {
		return err
	}
	arrow := s.accept(arrowToken)
	s.separators()
	second := s.label()
	s.d.strike = s.d.strike || second == strikeToken
	named := s.d.strike || s.d.direction || second == directionToken
	if !arrow && !named {
		return s.fail(s.peek(), "a dip stands first", "write the strike first, 035/30, or an arrow, 30→125", ErrIncomplete)
	}
	if err := s.bearing(); err != nil {
		return err
	}
	s.separators()
	if s.d.strike || s.label() != strikeToken {
		s.d.direction = !s.d.strike
		return s.sideBehind()
	}
	s.d.letters, s.d.strike = s.d.bearing.tok, true
	return s.bearing()
}

// separators passes what may stand between two parts. A dash behind another
// separator is the sign of a number and stays.
func (s *syntax) separators() {
	if s.peek().kind == dashToken && s.second().kind != markToken {
		s.take()
		return
	}
	if s.accept(markToken) {
		s.accept(markToken)
	}
}

func (s *syntax) bearing() error {
	t := s.take()
	switch t.kind {
	case numberToken:
		s.d.bearing = bearing{kind: azimuthBearing, deg: t.deg, tok: t}
		return nil
	case wordToken:
		return s.wordBearing(t)
	case dashToken:
		return s.fail(t, "there is a minus sign before the azimuth",
			"write it clockwise from north, 000 to 360", ErrAzimuth)
	case endToken:
		return s.fail(t, "there is no azimuth", anyNotation, ErrIncomplete)
	case markToken, arrowToken, strikeToken, dipToken, directionToken:
	}
	return s.fail(t, strconv.Quote(t.text)+" stands where the azimuth belongs", anyNotation, ErrWords)
}

// wordBearing is a bearing that starts with a letter: N35E, NE, N-S or EW.
func (s *syntax) wordBearing(t token) error {
	if t.text == "N" || t.text == "S" {
		dashed := s.peek().kind == dashToken && s.second().kind == numberToken
		if dashed {
			s.take()
		}
		if s.peek().kind == numberToken {
			return s.quadrant(t)
		}
	}
	if first, ok := line(t.text); ok {
		t.text = first
	} else if s.peek().kind == dashToken && s.second().kind == wordToken {
		s.take()
		if other := s.take(); !opposite(t.text, other.text) {
			return s.fail(other, t.text+" and "+other.text+" are not the two ends of a line",
				"name two opposite points, such as N-S or NE-SW", ErrQuadrant)
		}
	}
	deg, _ := pointDegrees(t.text)
	s.d.bearing = bearing{kind: quadrantBearing, deg: deg, tok: t}
	return nil
}

// quadrant is N35E once its N or S, the token from, has been read.
func (s *syntax) quadrant(from token) error {
	n := s.take()
	s.accept(dashToken)
	to := s.take()
	if to.kind == endToken {
		return s.fail(to, "there is a quadrant bearing without its E or W", "write it whole, such as N35E", ErrIncomplete)
	}
	if to.text != "E" && to.text != "W" {
		return s.fail(to, strconv.Quote(to.text)+" stands behind "+from.text+n.text,
			"end the quadrant bearing with E or W, such as N35E", ErrQuadrant)
	}
	if n.deg > 90 {
		return s.fail(n, n.text+" was read in a quadrant bearing, which only goes to 90",
			"write 0 to 90 between the letters, such as N35E, or three digits", ErrQuadrant)
	}
	s.d.bearing = bearing{kind: quadrantBearing, deg: quadrantDegrees(from.text, n.deg, to.text), tok: from}
	return nil
}

func quadrantDegrees(from string, n float64, to string) float64 {
	switch from + to {
	case "NE":
		return n
	case "SE":
		return 180 - n
	case "SW":
		return 180 + n
	}
	return 360 - n
}

// dip is the dip with its letters on either side: 30SE, SE 30, 30, SE.
func (s *syntax) dip() error {
	if s.peek().kind == wordToken {
		s.d.letters = s.take()
		s.separators()
	}
	switch t := s.peek(); t.kind {
	case numberToken:
		s.d.dip = s.take()
	case dashToken:
		return s.fail(t, "there is a minus sign before the dip", "write the dip downwards from 00 to 90", ErrDip)
	case endToken:
		if s.d.vertical || s.d.horizontal {
			return nil
		}
		return s.fail(t, "there is no dip", "write it behind, such as "+s.example(), ErrIncomplete)
	case markToken, arrowToken, wordToken, strikeToken, dipToken, directionToken:
		if !s.d.vertical && !s.d.horizontal {
			return s.fail(t, strconv.Quote(t.text)+" stands where the dip belongs", anyNotation, ErrWords)
		}
	}
	return s.sideBehind()
}

func (s *syntax) sideBehind() error {
	after := s.peek()
	if after.kind == markToken || after.kind == dashToken || after.kind == arrowToken {
		after = s.second()
	}
	lettersFollow := after.kind == wordToken && s.d.bearing.kind != noBearing || s.peek().kind == wordToken
	if s.d.letters.kind != wordToken && lettersFollow {
		if s.peek().kind != wordToken {
			s.take()
		}
		s.d.letters = s.take()
	}
	return nil
}

func (s *syntax) example() string {
	switch {
	case s.d.bearing.kind == quadrantBearing:
		return "N35E 30SE"
	case s.d.direction:
		return "125/30"
	}
	return "035/30"
}
