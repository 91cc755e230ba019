package quiz

import (
	"fmt"
	"strings"

	"cuesta/orient"
)

// understood writes the answer as right-hand strike and dip.
func understood(e orient.Entry) string {
	if e.DipMissing {
		return e.Plane.Strike.String() + "/"
	}
	return orient.Format(e.Plane, orient.AzimuthDip)
}

// said puts the verdict into words: what is right and what is not, and the
// reason where one is probable. It keeps the true numbers to itself, so that
// the student can measure again.
func (c Case) said(v Verdict) string {
	parts := []string{c.outcome(v)}
	for _, f := range v.Mistakes {
		if !said(parts, f.Said) {
			parts = append(parts, f.Said)
		}
	}
	return strings.Join(parts, " ")
}

func said(parts []string, s string) bool {
	for _, p := range parts {
		if p == s {
			return true
		}
	}
	return false
}

// outcome is the first sentence.
func (c Case) outcome(v Verdict) string {
	switch {
	case v.Right && !v.StrikeAsked:
		return "Right: this bed is as good as level, and has no strike to write."
	case v.Right:
		return "Right: strike and dip are within what a careful reading allows."
	case !c.Entry.HasStrike && v.StrikeAsked:
		return "This bed is not level: it has a strike and a dip to write."
	case c.Entry.DipMissing:
		return strikeOutcome(v) + " The dip is still missing."
	case !v.WayUpRight && v.StrikeRight && v.SideRight && v.DipRight:
		return "Strike and dip are right, but the way up is not: look for signs of which side of the bed is the younger."
	case !v.DipRight && !v.StrikeAsked:
		return "The dip is off."
	case !v.DipRight && v.StrikeRight && v.SideRight:
		return "The strike is right, the dip is off."
	case !v.DipRight:
		return strikeOutcome(v) + " The dip is off too."
	}
	return "The dip is right. " + strikeOutcome(v)
}

// strikeOutcome says what is wrong with the strike.
func strikeOutcome(v Verdict) string {
	switch {
	case !v.StrikeRight && v.OtherSide() && v.EndAsked:
		return "The strike is off, and written from this end the bed would dip to the wrong side."
	case !v.StrikeRight && v.OtherSide():
		return "The strike is off, and the bed dips to its other side."
	case !v.StrikeRight:
		return "The strike is off."
	case v.SideRight:
		return "The strike is right."
	case v.EndAsked:
		return "The strike line is right, but written from its other end the bed would dip to the wrong side."
	default:
		return "The strike line is right, but the bed dips to its other side."
	}
}

// OtherSide says whether the answer dips to the other side, and clearly so: not
// where its strike lies about across that of the bed.
func (v Verdict) OtherSide() bool {
	return !v.SideRight && v.LineError.Abs() <= orient.Right/2
}

// StrikeOff is by how much and to which side the strike line was written off the
// bed's, such as 4.5° clockwise.
func (v Verdict) StrikeOff() string { return off(v.LineError, "clockwise", "anticlockwise") }

// DipOff is by how much the dip was written off the bed's, such as 2.0° too
// steep.
func (v Verdict) DipOff() string { return off(v.DipError, "too steep", "too gentle") }

// Figures are both in a sentence: the true plane can be worked out from it, which
// Said keeps to itself. "" stands for an answer that lacks one of the two.
func (v Verdict) Figures() string {
	switch dip := "the dip is " + v.DipOff(); {
	case !v.measured:
		return ""
	case !v.StrikeAsked:
		return "In figures: " + dip + "."
	default:
		return "In figures: the strike line is " + v.StrikeOff() + ", " + dip + "."
	}
}

func off(a orient.Angle, more, less string) string {
	side := more
	switch d := a.Degrees(); {
	case d > -.05 && d < .05:
		side = "off"
	case d < 0:
		side = less
	}
	return fmt.Sprintf("%.1f° %s", a.Abs().Degrees(), side)
}
