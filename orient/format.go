package orient

import (
	"math"
	"strconv"
	"strings"
)

// Format writes the plane in a notation: 035/30, N35E 30SE, 125/30 (dip
// direction) or 305/60 (trend and plunge of the pole). Azimuths have three
// digits, dips two, with up to two decimals where whole degrees do not do. A
// horizontal plane is the word horizontal, its pole 000/90. An overturned
// plane carries its mark. Parse reads back what Format writes, to the
// hundredth of a degree.
func Format(p Plane, n Notation) string {
	s := format(p, n)
	if p.Overturned {
		s += " overturned"
	}
	return s
}

func format(p Plane, n Notation) string {
	dip := dipDigits(p.Dip)
	if n == PoleNotation {
		return p.Pole().String()
	}
	if dip == "00" {
		return "horizontal"
	}
	switch n {
	case Quadrant:
		return quadrantPlane(p, dip)
	case DirectionDip:
		return p.DipDirection().String() + "/" + dip
	case AzimuthDip, PoleNotation:
	}
	return p.Strike.String() + "/" + dip
}

// quadrantPlane names the north end of the strike line, as is common practice.
func quadrantPlane(p Plane, dip string) string {
	end := p.Strike
	if d := hundredths(end.Degrees()); d > 90 && d <= 270 {
		end = end.Opposite()
	}
	s := end.Quadrant() + " " + dip
	if dip == "90" {
		return s
	}
	return s + p.DipDirection().Letters()
}

// String writes trend and plunge: 305/60.
func (l Line) String() string {
	plunge := dipDigits(l.Plunge)
	if plunge == "90" {
		return "000/90"
	}
	return l.Trend.String() + "/" + plunge
}

func dipDigits(d Angle) string { return padded(hundredths(d.Degrees()), 2) }

// hundredths rounds to 0.01°, the finest that is written, and never to −0.
func hundredths(deg float64) float64 { return math.Round(deg*100)/100 + 0 }

func short(deg float64) string {
	return strconv.FormatFloat(hundredths(deg), 'f', -1, 64)
}

// padded writes deg with at least n digits before the point.
func padded(deg float64, n int) string {
	s := short(deg)
	whole, _, _ := strings.Cut(s, ".")
	if len(whole) < n {
		s = strings.Repeat("0", n-len(whole)) + s
	}
	return s
}
