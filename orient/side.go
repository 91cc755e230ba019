package orient

// How far letters may lie from the direction of dip, in degrees. A single
// letter names the side if the strike line lies outside its own octant, so it
// must keep 22.5° from the line. More letters must lie nearer to the
// direction of dip than to the strike: within 45°, so that a bed that strikes
// into the north-east quadrant never dips NE or SW.
const (
	singleLimit = 67.5
	lettersOff  = 45
)

// names says whether letters can stand for the dip direction dd (degrees).
func names(letters string, dd float64) bool {
	deg, ok := pointDegrees(letters)
	limit := float64(lettersOff)
	if len(letters) == 1 {
		limit = singleLimit
	}
	return ok && apart(deg, dd) <= limit+1e-9
}

// side lets the letters settle which side of the strike line goes down.
func (s *settler) side() error {
	if s.e.Letters == "" {
		return s.noLetters()
	}
	right := s.d.bearing.deg + 90
	if s.e.Notation == DirectionDip {
		right = s.d.bearing.deg
	}
	if s.e.Notation == PoleNotation {
		right = s.d.bearing.deg + 180
	}
	if !s.e.HasStrike || names(s.e.Letters, right) {
		return nil
	}
	twoSided := s.e.Notation == AzimuthDip || s.e.Notation == Quadrant
	if twoSided && names(s.e.Letters, right+180) {
		s.e.Plane.Strike = degrees(s.d.bearing.deg + 180)
		return nil
	}
	return s.impossible(right, twoSided)
}

func (s *settler) impossible(right float64, twoSided bool) error {
	one, other := degrees(right).Letters(), degrees(right+180).Letters()
	written := s.e.Written.String()
	if !twoSided {
		return s.fail(s.d.letters, s.e.Letters+" stands beside a dip towards "+degrees(right).String(),
			"write "+one+" or leave the letters out", ErrLetters)
	}
	would := "write " + joinOr(one, other)
	if s.e.Notation == AzimuthDip && s.lettersAlong() {
		would += ", or 30→" + written + " if " + written + " is the dip direction"
	}
	return s.fail(s.d.letters, s.e.Letters+" was read, but a plane striking "+written+
		" dips "+joinOr(one, other), would, ErrLetters)
}

// noLetters is in order unless a quadrant bearing needs them.
func (s *settler) noLetters() error {
	needs := s.e.Notation == Quadrant && s.e.HasStrike && s.d.dip.deg < 90 && !s.d.vertical
	if !needs {
		return nil
	}
	s.e.SideMissing = true
	if s.e.DipMissing {
		return nil
	}
	s.e.DipMissing = true
	right := degrees(s.d.bearing.deg + 90)
	at := s.d.dip
	at.pos += len([]rune(at.text))
	dip := padded(s.d.dip.deg, 2)
	return s.fail(at, "there are no letters behind the dip, and a quadrant bearing does not say the side",
		"write "+joinOr(dip+right.Letters(), dip+right.Opposite().Letters()), ErrSide)
}
