package mistake

// astrayShare is the share of those who err in a number, without a name, that
// err in both at once: an eye that guesses, a face that was not meant. Our
// assumption.
const astrayShare = 0.5

// astrayWeight is prior × likelihood that both numbers are something else than
// all that is known here. It speaks where neither number is right, against rare
// slips in one of the two, such as digits exchanged.
func (e Evidence) astrayWeight() float64 {
	off, dip := e.offset(e.Entry.Plane.Strike, e.Truth.Strike), e.Entry.Plane.Dip-e.Truth.Dip
	if off.Abs() <= e.Limits.Strike || dip.Abs() <= e.Limits.Dip {
		return 0
	}
	s, d, near := e.otherStrike(), e.otherDip(), claim{sigma: wide}
	anywhere := min(s.anything, d.anything) / (float64(s.over) * float64(d.over))
	return astrayShare * (min(s.slip, d.slip)*near.density(off)*near.density(dip) + anywhere)
}
