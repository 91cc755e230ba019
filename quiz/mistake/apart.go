package mistake

import "cuesta/orient"

// Apart says whether the mistake k, made on this bed, can be told from a right
// answer and from every other mistake, and if not, from which mistakes not.
// With readings in the evidence it asks about this very measurement: a mistake
// that the pose rules out is not apart. On paper a mistake of unknown size,
// such as an edge off level, hardly ever is. Letters that contradict the
// numbers are refused before they are judged: not apart here. The entry needs its notation and
// letters only.
//
// Two predictions are one when they lie within the tolerance of each other;
// one that is much rarer than k (by the factor Rivalry) does not count.
func (e Evidence) Apart(k Kind) (apart bool, rivals []Kind) {
	if k == StrikeDipSwapped {
		return e.swapShows(), nil
	}
	if apart, rivals = e.strikeScene().stands(k); apart {
		return true, nil
	}
	apart, more := e.dipScene().stands(k)
	return apart, append(rivals, more...)
}

// scene is one part of the answer, for asking what can be told apart in it.
type scene struct {
	claims []claim
	other  something
	near   orient.Angle // two predictions no further apart are one
	right  orient.Angle // so near the truth an answer is right
	off    func(a, b orient.Angle) orient.Angle
}

func (e Evidence) strikeScene() scene {
	s := scene{other: e.otherStrike(), near: e.Limits.Strike, right: e.Limits.Strike}
	s.off = func(a, b orient.Angle) orient.Angle { return e.offset(orient.Azimuth(a), orient.Azimuth(b)).Abs() }
	if e.Truth.Dip <= 0 {
		return s
	}
	if pose := e.poseStrikes(); pose != nil {
		s.claims, s.near = pose, e.Limits.Reading
		return s
	}
	s.claims = e.paperStrikes()
	return s
}

func (e Evidence) dipScene() scene {
	s := scene{other: e.otherDip(), near: e.Limits.Dip, right: e.Limits.Dip}
	s.off = func(a, b orient.Angle) orient.Angle { return (a - b).Abs() }
	if s.claims = e.poseDips(); s.claims == nil {
		s.claims = e.paperDips()
	}
	return s
}

// mainPart is the part of the commonest prediction of a mistake from which a
// rarer one of the same mistake has to stand too: for a number misread before
// its digits were exchanged that is a little over one standard deviation.
const mainPart = 2

// stands looks for k among the claims: apart when its main predictions are
// wrong answers and nobody else's.
func (s scene) stands(k Kind) (bool, []Kind) {
	found, main := false, mainPrior(s.claims, k)
	for _, c := range s.claims {
		if !c.kinds.has(k) || c.prior*mainPart < main {
			continue
		}
		rivals, clash := s.rivals(c, k)
		if clash || s.off(c.centre, s.other.truth) <= s.right {
			return false, rivals.list()
		}
		found = true
	}
	return found, nil
}

func mainPrior(cs []claim, k Kind) (most float64) {
	for _, c := range cs {
		if c.kinds.has(k) {
			most = max(most, c.prior)
		}
	}
	return most
}

// rivals are the mistakes that predict the answer of c without k; they clash
// when they, with careful answers and slips without a name, are common enough.
func (s scene) rivals(c claim, k Kind) (near kinds, clash bool) {
	own := 0.0
	others := s.other.at(s.off(c.centre, s.other.truth)) * 2 * float64(s.near)
	for _, o := range s.claims {
		switch {
		case s.off(o.centre, c.centre) > s.near:
		case o.kinds.has(k):
			own += o.prior
		default:
			others += o.prior
			near |= o.kinds &^ c.kinds
		}
	}
	return near, others >= Rivalry*own
}
