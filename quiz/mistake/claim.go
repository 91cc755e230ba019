package mistake

import (
	"math"
	"math/bits"

	"cuesta/orient"
)

// kinds is a set of kinds.
type kinds uint32

func setOf(ks ...Kind) kinds {
	var s kinds
	for _, k := range ks {
		s |= 1 << k
	}
	return s
}

func (s kinds) has(k Kind) bool { return s&(1<<k) != 0 }

func (s kinds) list() []Kind {
	out := make([]Kind, 0, bits.OnesCount32(uint32(s)))
	for k := range Kind(Kinds) {
		if s.has(k) {
			out = append(out, k)
		}
	}
	return out
}

// claim is one way in which one part of the answer may have come about: the
// mistakes in it and what it predicts, a normal spread about a centre.
type claim struct {
	kinds  kinds // none: a careful student
	prior  float64
	centre orient.Angle
	sigma  orient.Angle
}

// density is the height of the normal curve at a distance off, per radian.
func (c claim) density(off orient.Angle) float64 {
	t := float64(off / c.sigma)
	return math.Exp(-t*t/2) / (float64(c.sigma) * math.Sqrt(2*math.Pi))
}

// part is all claims about one part of the answer, the weight each has after
// the answer is known, and the weight of something else.
type part struct {
	claims []claim
	weight []float64 // prior × likelihood
	other  float64   // the same for something else
	total  float64
}

// something is the claim of something else than all that is known here: slips
// of some degrees without a name, a wide normal spread about the truth, and
// anything at all, spread evenly over the angles there are.
type something struct {
	slip, anything float64 // priors
	truth          orient.Angle
	over           orient.Angle // the angles there are
}

// wide is the spread of slips without a name, our assumption.
const wide = 12 * orient.Degree

func (s something) prior() float64 { return s.slip + s.anything }

// at is its density where the answer is off the truth.
func (s something) at(off orient.Angle) float64 {
	return s.slip*claim{sigma: wide}.density(off) + s.anything/float64(s.over)
}

// weigh applies Bayes' rule: off is the distance of the answer from a centre.
func weigh(cs []claim, off func(orient.Angle) orient.Angle, s something) part {
	p := part{claims: cs, weight: make([]float64, len(cs)), other: s.at(off(s.truth))}
	p.total = p.other
	for i, c := range cs {
		p.weight[i] = c.prior * c.density(off(c.centre))
		p.total += p.weight[i]
	}
	return p
}

// known is the probability that it is not something else.
func (p part) known() float64 { return 1 - p.other/p.total }

// rarer gives the claims of k the part f of their weight, in place.
func (p part) rarer(k Kind, f float64) part {
	for i, c := range p.claims {
		if c.kinds.has(k) {
			p.total -= p.weight[i] * (1 - f)
			p.weight[i] *= f
		}
	}
	return p
}

// probability is the share of the claims for which ok holds.
func (p part) probability(ok func(kinds) bool) float64 {
	var sum float64
	for i, c := range p.claims {
		if ok(c.kinds) {
			sum += p.weight[i]
		}
	}
	return sum / p.total
}

// of is the probability that k is there.
func (p part) of(k Kind) float64 { return p.probability(func(s kinds) bool { return s.has(k) }) }

// scaled gives the priors of cs the sum f, in place.
func scaled(cs []claim, f float64) []claim {
	var sum float64
	for _, c := range cs {
		sum += c.prior
	}
	for i := range cs {
		cs[i].prior *= f / sum
	}
	return cs
}
