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

// weigh applies Bayes' rule: off is the distance of the answer from a centre,
// other the prior of something else, spread evenly over a range of angles.
func weigh(cs []claim, off func(orient.Angle) orient.Angle, other float64, over orient.Angle) part {
	p := part{claims: cs, weight: make([]float64, len(cs)), other: other / float64(over)}
	p.total = p.other
	for i, c := range cs {
		p.weight[i] = c.prior * c.density(off(c.centre))
		p.total += p.weight[i]
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

// scaled gives the priors of cs the sum f.
func scaled(cs []claim, f float64) []claim {
	var sum float64
	for _, c := range cs {
		sum += c.prior
	}
	out := make([]claim, len(cs))
	for i, c := range cs {
		c.prior *= f / sum
		out[i] = c
	}
	return out
}
