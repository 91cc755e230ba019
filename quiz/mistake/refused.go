package mistake

import (
	"errors"
	"math"
	"strconv"
	"strings"

	"cuesta/orient"
	"cuesta/sim"
)

// OfRefused looks for a mistake behind an answer that could not be read: a dip
// over 90 that is the percent scale or the strike, letters that contradict the
// numbers. The err is what orient.Parse said; the entry of the evidence needs
// its notation only. It reports false when nothing is probable.
func OfRefused(text string, err error, e Evidence) (Finding, bool) {
	ns := numbers(text)
	switch {
	case errors.Is(err, orient.ErrLetters):
		return e.ofLetters(ns), true
	case errors.Is(err, orient.ErrDip) && len(ns) >= 2:
		return e.ofSteep(ns[0], ns[len(ns)-1])
	}
	return Finding{}, false
}

// ofLetters tells letters that are wrong from a dip direction that was written
// for the strike, which makes right letters impossible.
func (e Evidence) ofLetters(ns []orient.Angle) Finding {
	if len(ns) > 0 && e.Truth.Dip > 0 {
		off := orient.AzimuthOf(ns[0]).FromLine(e.Truth.DipDirection())
		if off.Abs() <= e.Limits.Strike {
			return Finding{DirectionForStrike, 0.9, e.said(DirectionForStrike, nil), nil}
		}
	}
	return Finding{LettersContradict, 1, e.plain(LettersContradict), nil}
}

// ofSteep explains a dip over 90.
func (e Evidence) ofSteep(azimuth, dip orient.Angle) (Finding, bool) {
	arm := e.Truth.Dip
	if s, ok := e.dipSeat(); ok && s == sim.OnSide {
		arm = e.Side.Shown.Arc.Arm
	}
	percent := orient.Angle(math.Atan(dip.Degrees() / 100))
	p := priorPercent * claim{sigma: half(e.Limits.Dip)}.density(percent-arm)
	if e.unheldDip().has(PercentScale) {
		p = 0
	}
	z := e.writtenFrom(e.Truth.Strike)
	s := priorSwapped * claim{sigma: half(e.Limits.Strike)}.density(z.From(orient.AzimuthOf(dip)))
	s *= claim{sigma: half(e.Limits.Dip)}.density(azimuth-e.Truth.Dip) * float64(orient.Right)
	all := p + s + priorDipAnything/float64(orient.Right)
	switch {
	case p/all >= NameFrom:
		return Finding{PercentScale, p / all, e.said(PercentScale, nil), nil}, true
	case s/all >= NameFrom:
		return Finding{StrikeDipSwapped, s / all, e.said(StrikeDipSwapped, nil), nil}, true
	}
	return Finding{}, false
}

// plain says what is certain.
func (e Evidence) plain(k Kind) string {
	what := k.what(e.Entry.Notation)
	return strings.ToUpper(what[:1]) + what[1:] + ". " + k.advice(e.Entry.Notation)
}

// numbers are the numbers in a text as degrees, in order.
func numbers(text string) []orient.Angle {
	var out []orient.Angle
	for _, f := range strings.FieldsFunc(text, func(r rune) bool { return (r < '0' || r > '9') && r != '.' }) {
		if x, err := strconv.ParseFloat(f, 64); err == nil && x <= 1e6 {
			out = append(out, orient.Angle(x)*orient.Degree)
		}
	}
	return out
}
