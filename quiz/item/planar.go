package item

import (
	"errors"
	"strings"
	"unicode/utf8"

	"cuesta/orient"
	"cuesta/quiz"
	"cuesta/quiz/mistake"
)

// planar is a plane that is asked for, in any notation. It answers Ask, Key
// and Mark for the items that embed it.
type planar struct {
	truth       orient.Plane
	notation    orient.Notation // of the course
	tolerance   quiz.Tolerance
	declination orient.Angle
	slips       []planeSlip // if any, they explain wrong answers instead of the diagnosis of a measurement
}

// planeSlip is a wrong plane and how it comes about.
type planeSlip struct {
	plane orient.Plane
	reason
}

// Ask is what is asked for.
func (p planar) Ask() Ask {
	return Ask{Kind: AskPlane, Label: notationNames[p.notation], Notation: p.notation}
}

// Key is the right plane in the notation of the course.
func (p planar) Key() string { return orient.Format(p.truth, p.notation) }

// Mark marks a plane as it was typed.
func (p planar) Mark(answer string, e Evidence) Mark {
	if len(answer) > longest {
		return refused(errLong)
	}
	entry, err := orient.Parse(answer, p.notation)
	if err != nil {
		return p.unread(answer, err, e)
	}
	return p.judged(entry, e)
}

// judged is the mark of an entry.
func (p planar) judged(entry orient.Entry, e Evidence) Mark {
	v := quiz.Judge(p.of(entry, e))
	m := Mark{
		Share: v.Points / v.Of, Right: v.Right, Understood: entry.Understood(),
		Said: v.Said, Mistakes: v.Mistakes, Verdict: &v,
	}
	if len(p.slips) > 0 && !m.Right {
		rs := p.reasons(entry.Plane)
		m.Mistakes, m.Said = findings(rs), said(part(v), rs)
		v.Mistakes, v.Said = m.Mistakes, m.Said
	}
	return m
}

// of is the case of the judge.
func (p planar) of(entry orient.Entry, e Evidence) quiz.Case {
	return quiz.Case{
		Entry: entry, Truth: p.truth, Declination: p.declination, Notation: p.notation, Tolerance: p.tolerance,
		Readings: e,
	}
}

// unread refuses an answer and names the mistake behind it, where there is one.
func (p planar) unread(answer string, err error, e Evidence) Mark {
	m := refused(err)
	m.Said = "This could not be read. " + explained(err)
	f, ok := mistake.OfRefused(answer, err, p.of(orient.Entry{Notation: p.notation}, e).Evidence())
	if reckoned := len(p.slips) > 0; ok && !(reckoned && f.Kind == mistake.PercentScale) { // no arc was read
		m.Mistakes = []mistake.Finding{f}
		m.Said += " " + f.Said
	}
	return m
}

// explained is what was read and what would do, as a sentence.
func explained(err error) string {
	var at *orient.ParseError
	if !errors.As(err, &at) {
		return sentence(err.Error())
	}
	return sentence(at.Read + "; " + at.Would)
}

// sentence begins with a capital and ends with a full stop.
func sentence(s string) string {
	if s == "" {
		return s
	}
	_, n := utf8.DecodeRuneInString(s) // what was written may stand first
	return strings.ToUpper(s[:n]) + strings.TrimSuffix(s[n:], ".") + "."
}

// part says in one sentence which part of the plane is wrong.
func part(v quiz.Verdict) string {
	strike := v.StrikeRight && v.SideRight && v.EndRight
	switch {
	case !v.StrikeAsked && !v.DipRight:
		return "The dip is not right."
	case strike && v.DipRight:
		return "Strike and dip are right, but not which side of the bed is up."
	case strike:
		return "The direction is right, the dip is not."
	case v.DipRight && v.StrikeRight:
		return "The dip and the strike line are right, but the bed dips to the other side."
	case v.StrikeRight && !v.SideRight:
		return "The strike line is right, but the bed dips to the other side, and the dip is not right."
	case v.DipRight && v.OtherSide():
		return "The dip is right, but the direction is not, and the bed dips to the other side."
	case v.DipRight:
		return "The dip is right, the direction is not."
	case v.OtherSide():
		return "Neither the direction nor the dip is right, and the bed dips to the other side."
	}
	return "Neither the direction nor the dip is right."
}

// reasons are the known ways to this plane.
func (p planar) reasons(a orient.Plane) []reason {
	var rs []reason
	for _, s := range p.slips {
		if alike(a, s.plane, p.tolerance) && !alike(s.plane, p.truth, p.tolerance) {
			rs = append(rs, s.reason)
		}
	}
	return rs
}

// slip adds a wrong plane.
func (p *planar) slip(a orient.Plane, r reason) { p.slips = append(p.slips, planeSlip{a, r}) }

// near says that the answer to either is right, for the other too.
func (p planar) near(q planar) bool {
	return alike(p.truth, q.truth, p.tolerance) || alike(q.truth, p.truth, q.tolerance)
}

// alike says that two planes cannot be told apart with the tolerance t: the
// side they dip to counts, and a bed that is nearly vertical has two.
func alike(a, b orient.Plane, t quiz.Tolerance) bool {
	flat := min(a.Dip, b.Dip) < quiz.NoStrikeBelow
	turn := a.Strike.From(b.Strike).Abs()
	dips := (a.Dip - b.Dip).Abs()
	if turn > orient.Right && orient.Half-a.Dip-b.Dip <= t.Dip {
		turn, dips = orient.Half-turn, orient.Half-a.Dip-b.Dip
	}
	limit := max(t.Strike(a.Dip), t.Strike(b.Dip))
	return a.Overturned == b.Overturned && dips <= t.Dip+rounding && (flat || turn <= limit+rounding)
}

// gentleness is the difficulty of a plane: 1 − dip/90°, because the flatter a
// bed the less a strike can be read off it.
func gentleness(p orient.Plane) float64 { return 1 - float64(p.Dip/orient.Right) }
