package mistake

import "cuesta/orient"

// Apart says whether the mistake k, made on this bed, can be told from a right
// answer and from every other mistake, and if not, from which mistakes not.
// With readings in the evidence it asks about this very measurement: a mistake
// that the pose rules out is not apart. On paper a mistake of unknown size,
// such as an edge off level, is never apart. The entry needs its notation and
// letters only.
//
// Two predictions are one when they lie within the tolerance of each other;
// one that is much rarer than k (by the factor Rivalry) does not count.
func (e Evidence) Apart(k Kind) (apart bool, rivals []Kind) {
	if k == StrikeDipSwapped || k == LettersContradict {
		return true, nil
	}
	if !(e.Truth.Dip <= 0) {
		cs, limit := e.paperStrikes(), e.Limits.Strike
		if e.edgeUsable() {
			cs, limit = e.poseStrikes(), e.Limits.Reading
		}
		off := func(a, b orient.Angle) orient.Angle { return e.offset(orient.AzimuthOf(a), orient.AzimuthOf(b)).Abs() }
		right := func(c orient.Angle) bool { return off(c, e.Truth.Strike.Angle()) <= e.Limits.Strike }
		apart, rivals = stands(cs, k, limit, off, right)
	}
	cs := e.paperDips()
	if e.sideUsable() {
		cs = e.poseDips()
	}
	off := func(a, b orient.Angle) orient.Angle { return (a - b).Abs() }
	right := func(c orient.Angle) bool { return off(c, e.Truth.Dip) <= e.Limits.Dip }
	inDip, more := stands(cs, k, e.Limits.Dip, off, right)
	return apart || inDip, append(rivals, more...)
}

// stands looks for k among the claims: apart when its main predictions are
// wrong answers and nobody else's.
func stands(cs []claim, k Kind, limit orient.Angle, off func(a, b orient.Angle) orient.Angle, right func(orient.Angle) bool) (bool, []Kind) {
	apart, main := false, mainPrior(cs, k)
	var rivals kinds
	for _, c := range cs {
		if !c.kinds.has(k) || c.prior < main/2 {
			continue
		}
		near, clash := rivalsOf(cs, c, k, limit, off)
		if right(c.centre) || clash {
			rivals |= near
			return false, rivals.list()
		}
		apart = true
	}
	return apart, nil
}

func mainPrior(cs []claim, k Kind) (most float64) {
	for _, c := range cs {
		if c.kinds.has(k) {
			most = max(most, c.prior)
		}
	}
	return most
}

// rivalsOf returns the mistakes that predict the answer of c without k, and
// whether they, or a careful answer, are common enough to clash.
func rivalsOf(cs []claim, c claim, k Kind, limit orient.Angle, off func(a, b orient.Angle) orient.Angle) (kinds, bool) {
	var near kinds
	var own, others float64
	for _, o := range cs {
		switch {
		case off(o.centre, c.centre) > limit:
		case o.kinds.has(k):
			own += o.prior
		default:
			others += o.prior
			near |= o.kinds &^ c.kinds
		}
	}
	return near, others >= Rivalry*own
}
