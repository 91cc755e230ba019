package mistake

import "cuesta/orient"

// fault is a known departure of the instrument from a perfect reading, and how
// far it moves the number.
type fault struct {
	kind   Kind
	effect orient.Angle
}

// together is the sum of the effects.
func together(fs []fault) orient.Angle {
	var sum orient.Angle
	for _, f := range fs {
		sum += f.effect
	}
	return sum
}

// blamed returns the faults that matter: none while together they stay within
// the limit, else the greatest of those that push the way of the sum and every
// other one of at least half the limit.
func blamed(fs []fault, limit orient.Angle) kinds {
	sum := together(fs)
	if sum.Abs() <= limit {
		return 0
	}
	var set kinds
	var greatest fault
	for _, f := range fs {
		if f.effect*sum <= 0 {
			continue
		}
		if f.effect.Abs() > greatest.effect.Abs() {
			greatest = f
		}
		if f.effect.Abs() >= limit/2 {
			set |= setOf(f.kind)
		}
	}
	return set | setOf(greatest.kind)
}
