package quiz

import (
	"cuesta/orient"
	"cuesta/quiz/mistake"
)

// Case is an answer and all that is needed to judge it.
type Case struct {
	Entry       orient.Entry
	Truth       orient.Plane
	Declination orient.Angle    // at the place, east positive
	Notation    orient.Notation // the course's; it gives the words, not the marks
	Tolerance   Tolerance

	// The last readings taken say why an answer is wrong, and never whether it is.
	mistake.Readings
}

// Judge marks an answer. The same plane earns the same mark in any notation.
// An entry that is not finite is a wrong answer, and so is every answer to a
// truth that is no plane.
func Judge(c Case) Verdict {
	v := Verdict{Of: 1}
	if !readable(c.Entry.Plane) || !readable(c.Truth) {
		v.StrikeAsked, v.Said = true, "This answer is not a plane: strike and dip must be numbers."
		return v
	}
	c.Entry.Plane.Strike = orient.AzimuthOf(c.Entry.Plane.Strike.Angle())
	c.judgeDip(&v)
	c.judgeStrike(&v)
	v.WayUpRight = c.Entry.Plane.Overturned == c.Truth.Overturned
	v.Right = v.StrikeRight && v.SideRight && v.EndRight && v.DipRight && v.WayUpRight
	v.Points = c.points(v)
	v.Understood = understood(c.Entry)
	v.measured = !c.Entry.DipMissing && (c.Entry.HasStrike || !v.StrikeAsked)
	v.Mistakes = mistake.Diagnose(c.Evidence(), mistake.Wrong{
		Strike: !v.StrikeRight || !v.SideRight || !v.EndRight, Dip: !v.DipRight})
	v.Said = c.said(v)
	return v
}

// readable says whether p is made of finite angles, with a dip from 0° to 90°.
func readable(p orient.Plane) bool {
	s := p.Strike.Angle()
	return s-s == 0 && p.Dip >= 0 && p.Dip <= orient.Right
}

// judgeDip compares the dips. A steep bed may be read on either side of the
// vertical: the dip is then counted on through it.
func (c Case) judgeDip(v *Verdict) {
	if c.Entry.DipMissing {
		return
	}
	v.DipError = c.Entry.Plane.Dip - c.Truth.Dip
	if c.acrossVertical() {
		v.DipError = orient.Half - c.Entry.Plane.Dip - c.Truth.Dip
	}
	v.DipRight = within(v.DipError.Abs(), c.Tolerance.Dip)
	v.PoleAngle = c.Truth.AngleTo(c.Entry.Plane)
}

// acrossVertical says that truth and answer lie on the two sides of the
// vertical, no further apart than the tolerance of the dip; on a vertical bed,
// which has no side, however far.
func (c Case) acrossVertical() bool {
	a, t := c.Entry.Plane, c.Truth
	if a.Strike.From(t.Strike).Abs() <= orient.Right {
		return false
	}
	return within(orient.Right-t.Dip, 0) || !c.Entry.DipMissing && within(orient.Half-a.Dip-t.Dip, c.Tolerance.Dip)
}

// judgeStrike compares line, side and end, each by itself.
func (c Case) judgeStrike(v *Verdict) {
	v.StrikeRight, v.SideRight, v.EndRight = true, true, true
	v.StrikeAsked = c.Truth.Dip >= NoStrikeBelow
	if !v.StrikeAsked {
		return
	}
	if !c.Entry.HasStrike {
		v.StrikeRight, v.SideRight = false, false
		return
	}
	v.StrikeError = c.Entry.Plane.Strike.From(c.Truth.Strike)
	v.LineError = lineError(v.StrikeError)
	v.StrikeRight = within(v.LineError.Abs(), c.Tolerance.Strike(c.Truth.Dip))
	if c.acrossVertical() {
		v.StrikeError = v.LineError
		return
	}
	v.SideRight = v.StrikeError.Abs() <= orient.Right
	v.EndAsked = c.endAsked()
	v.EndRight = v.SideRight || !v.EndAsked
}

// endAsked says whether the answer rests on the right-hand end of the strike:
// letters make either end right, and a dip direction or a pole has no end.
func (c Case) endAsked() bool {
	switch c.Entry.Notation {
	case orient.AzimuthDip, orient.Quadrant:
		return c.Entry.Letters == ""
	case orient.DirectionDip, orient.PoleNotation:
	}
	return false
}

// lineError takes the turn between two ends to that between their lines, in
// (−π/2, π/2].
func lineError(e orient.Angle) orient.Angle {
	switch {
	case e > orient.Right:
		return e - orient.Half
	case e <= -orient.Right:
		return e + orient.Half
	}
	return e
}

// points gives half the mark for the dip and half for the strike, of which the
// side has its share (Tolerance.Side) and the line the rest; the side counts only
// with the line. A flat bed has the whole mark on the dip. A wrong way up costs a
// quarter.
func (c Case) points(v Verdict) float64 {
	p := c.Tolerance.Partial
	dip := 0.0
	if !c.Entry.DipMissing {
		dip = p.marks(v.DipError, c.Tolerance.Dip, p.Dip)
	}
	total := dip
	if v.StrikeAsked {
		line := 0.0
		if c.Entry.HasStrike {
			line = p.marks(v.LineError, c.Tolerance.Strike(c.Truth.Dip), p.Strike)
		}
		side := c.Tolerance.side()
		total = dip/2 + line*(0.5-side)
		if v.SideRight && v.EndRight {
			total = dip/2 + line/2
		}
	}
	if !v.WayUpRight {
		total = max(0, total-0.25)
	}
	return v.Of * total
}

// Evidence is the case as the diagnosis sees it.
func (c Case) Evidence() mistake.Evidence {
	t := c.Tolerance
	return mistake.Evidence{
		Truth: c.Truth, Entry: c.Entry, Declination: c.Declination,
		Limits:   mistake.Limits{Reading: t.Reading, Strike: t.Strike(c.Truth.Dip), Dip: t.Dip},
		Readings: c.Readings,
	}
}
