package grade

import (
	"fmt"
	"strings"

	"cuesta/orient"
	"cuesta/quiz/item"
)

// writtenOff is how far a number may lie from what was read off: five times the
// scatter of a careful eye, 1°, so that haste alone is seldom reported (our
// choice).
const writtenOff = 5 * orient.Degree

// follows says whether the readings lead to the answer. Only what no mistake
// explains is held against them: a right part, or a wrong one without a name.
// An answer between several readings, such as their mean, is led to.
func (b *bench) follows(m item.Mark, answer orient.Entry) {
	if !b.ran || m.Verdict == nil || m.Refused {
		return
	}
	v := m.Verdict
	asks := v.StrikeAsked && answer.HasStrike
	b.taken(asks, !answer.DipMissing)
	var off []string
	if asks && explained(v.StrikeRight, m) && !between(b.strikeOffsets(answer.Plane)) {
		off = append(off, "strike")
	}
	if !answer.DipMissing && explained(v.DipRight, m) && !between(b.dipOffsets(answer.Plane)) {
		off = append(off, "dip")
	}
	if len(off) > 0 {
		b.remark(ReadingDiffers, fmt.Sprintf("(%s)", strings.Join(off, " and ")))
	}
}

// explained says that a part of the answer must have been read as it stands.
func explained(right bool, m item.Mark) bool { return right || len(m.Mistakes) == 0 }

// taken says which readings are missing.
func (b *bench) taken(strike, dip bool) {
	noStrike, noDip := strike && len(b.strikes) == 0, dip && len(b.dips) == 0
	switch {
	case noStrike && noDip:
		b.remark(NoReading, "")
	case noStrike:
		b.remark(NoReading, "for the strike")
	case noDip:
		b.remark(NoReading, "for the dip")
	}
}

func (b *bench) strikeOffsets(p orient.Plane) []orient.Angle {
	var off []orient.Angle
	for _, s := range b.strikes {
		off = append(off, s.FromLine(p.Strike))
	}
	return off
}

func (b *bench) dipOffsets(p orient.Plane) []orient.Angle {
	var off []orient.Angle
	for _, d := range b.dips {
		off = append(off, d-p.Dip)
	}
	return off
}

// between says whether 0 lies among the offsets or close to one of them.
// Without any there is nothing to compare.
func between(off []orient.Angle) bool {
	if len(off) == 0 {
		return true
	}
	least, most := off[0], off[0]
	for _, o := range off {
		least, most = min(least, o), max(most, o)
	}
	return least <= writtenOff && most >= -writtenOff
}
