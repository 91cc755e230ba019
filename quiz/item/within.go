package item

import (
	"math"
	"strconv"

	"cuesta/orient"
	"cuesta/quiz"
)

// Within is how far an answer may be off for full points: "± 1°", "strike ± 4°,
// dip ± 3°" or "exact"; "" for a choice.
func Within(it Item) string {
	switch a := it.Ask(); a.Kind {
	case AskChoice:
		return ""
	case AskNumber:
		if a.Tolerance == 0 {
			return "exact"
		}
		return "± " + strconv.FormatFloat(hundredths(a.Tolerance), 'f', -1, 64) + unit(a.Unit)
	case AskPlane, AskLine, AskSymbol:
		if p, ok := it.(interface{ within() string }); ok {
			return p.within()
		}
	}
	return ""
}

// unit sets a space before per cent.
func unit(u string) string {
	if u == "%" {
		return " %"
	}
	return u
}

// within is the tolerance of a plane, in degrees cut to a tenth.
func (p planar) within() string {
	strike, dip := tenth(p.tolerance.Strike(p.truth.Dip)), tenth(p.tolerance.Dip)
	switch {
	case p.truth.Dip < quiz.NoStrikeBelow:
		return "dip ± " + dip + "°"
	case max(p.tolerance.Strike(p.truth.Dip), p.tolerance.Dip) <= exact:
		return "exact"
	}
	return "strike ± " + strike + "°, dip ± " + dip + "°"
}

func tenth(a orient.Angle) string {
	return strconv.FormatFloat(math.Floor(a.Degrees()*10+rounding)/10, 'f', -1, 64)
}
