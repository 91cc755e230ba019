package orient

// Understood says in plain words how the entry was read, so that the writer
// can see it: "Strike 035°, dip 30° to the SE."
func (e Entry) Understood() string {
	s := e.understood()
	if e.Plane.Overturned {
		s += " Overturned."
	}
	return s
}

func (e Entry) understood() string {
	if !e.HasStrike && !e.DipMissing {
		return "Horizontal: no strike."
	}
	if e.DipMissing {
		return e.unfinished()
	}
	if e.Notation == DirectionDip {
		return "Dip direction " + e.Written.String() + "°, " + e.dipWords() + ", so strike " + e.Plane.Strike.String() + "°."
	}
	return e.strikeWords() + ", " + e.dipWords() + e.sideWords() + "."
}

// strikeWords gives the right-hand strike, and beside it what stood on the
// page where that is something else.
func (e Entry) strikeWords() string {
	strike := "strike " + e.Plane.Strike.String() + "°"
	switch {
	case e.Notation == PoleNotation:
		return "Pole " + e.Plane.Pole().String() + ", so " + strike
	case e.Notation == Quadrant:
		return "S" + strike[1:] + " (written " + e.Written.bearing() + ")"
	case e.Written != e.Plane.Strike:
		return "S" + strike[1:] + " (written from the other end, " + e.Written.String() + "°)"
	}
	return "S" + strike[1:]
}

func (e Entry) dipWords() string {
	d := dipDigits(e.Plane.Dip)
	if d == "90" {
		return "vertical"
	}
	return "dip " + d + "°"
}

func (e Entry) sideWords() string {
	if dipDigits(e.Plane.Dip) == "90" {
		return ""
	}
	return " to the " + e.Plane.DipDirection().Letters()
}

func (e Entry) unfinished() string {
	side := e.Plane.DipDirection().Letters()
	switch {
	case e.SideMissing && e.Plane.Dip > 0:
		return e.strikeWords() + ", " + e.dipWords() + ". The side it dips to is still missing."
	case e.SideMissing:
		return e.strikeWords() + ". The dip and its side are still missing."
	case e.Notation == DirectionDip:
		return "Dip direction " + e.Written.String() + "°, so strike " + e.Plane.Strike.String() +
			"°. The dip is still missing."
	case e.Notation == PoleNotation:
		return "The pole trends " + e.Written.String() + "°. Its plunge is still missing."
	}
	return e.strikeWords() + ", dips to the " + side + " side. The dip is still missing."
}

// bearing is the quadrant bearing, and the line itself for the four winds.
func (z Azimuth) bearing() string {
	switch z.Quadrant() {
	case "N0E", "S0E":
		return "N-S"
	case "N90E", "N90W":
		return "E-W"
	}
	return z.Quadrant()
}
