package mistake

import (
	"sort"

	"cuesta/orient"
)

// Explanation is one way the answer may have come about, with its probability.
type Explanation struct {
	Kinds       []Kind // the mistakes in it, none for a careful answer
	Else        bool   // something else than all that is known here
	Probability float64
}

// posterior holds both parts of the answer, which are independent but for what
// spoils both at once.
type posterior struct {
	strike, dip       part
	hasStrike, hasDip bool
	swapped           float64 // probability that strike and dip stand in each other's place
	astray            float64 // probability that both numbers are something else
}

// apart is the probability that each number came about by itself.
func (p posterior) apart() float64 { return 1 - p.swapped - p.astray }

func (e Evidence) posterior() posterior {
	p := posterior{hasStrike: !e.flat() && e.sane(), hasDip: !e.Entry.DipMissing && e.sane()}
	if p.hasStrike {
		off := func(c orient.Angle) orient.Angle { return e.offset(e.Entry.Plane.Strike, orient.Azimuth(c)) }
		p.strike = weigh(e.strikeClaims(), off, e.otherStrike())
	}
	if p.hasDip {
		off := func(c orient.Angle) orient.Angle { return e.Entry.Plane.Dip - c }
		p.dip = weigh(e.dipClaims(), off, e.otherDip())
	}
	if p.hasStrike && p.hasDip {
		s, d := p.strike.known(), p.dip.known()
		p.strike, p.dip = p.strike.rarer(DigitsSwapped, d), p.dip.rarer(DigitsSwapped, s)
		swapped, astray := e.swappedWeight(), e.astrayWeight()
		all := swapped + astray + (1-priorSwapped)*p.strike.total*p.dip.total
		p.swapped, p.astray = swapped/all, astray/all
	}
	return p
}

// StrikeExplanations returns the explanations of the strike of the answer, the most
// probable first; their probabilities sum to 1. A flat bed has none.
func (e Evidence) StrikeExplanations() []Explanation {
	p := e.posterior()
	if !p.hasStrike {
		return nil
	}
	return p.strike.explanations(p)
}

// DipExplanations does the same for the dip; an answer without a dip has none.
func (e Evidence) DipExplanations() []Explanation {
	p := e.posterior()
	if !p.hasDip {
		return nil
	}
	return p.dip.explanations(p)
}

func (p part) explanations(of posterior) []Explanation {
	var sets []kinds
	sum := map[kinds]float64{}
	for i, c := range p.claims {
		if _, ok := sum[c.kinds]; !ok {
			sets = append(sets, c.kinds)
		}
		sum[c.kinds] += p.weight[i]
	}
	rest := of.apart() / p.total
	out := []Explanation{{Else: true, Probability: p.other*rest + of.astray}}
	if of.swapped > 0 {
		out = append(out, Explanation{Kinds: []Kind{StrikeDipSwapped}, Probability: of.swapped})
	}
	for _, s := range sets {
		out = append(out, Explanation{Kinds: s.list(), Probability: sum[s] * rest})
	}
	sort.SliceStable(out, func(i, j int) bool { return out[i].Probability > out[j].Probability })
	return out
}

// Wrong says which parts of the answer are wrong; only those are explained.
type Wrong struct{ Strike, Dip bool }

// Diagnose names the probable mistakes in the wrong parts of the answer: those
// that explain both first, then the most probable. It names a mistake only when it, or it together with
// others that fit as well, is at least as probable as NameFrom.
func Diagnose(e Evidence, wrong Wrong) []Finding {
	if !wrong.Strike && !wrong.Dip {
		return nil
	}
	p := e.posterior()
	if p.swapped >= NameFrom {
		return []Finding{{StrikeDipSwapped, p.swapped, e.said(StrikeDipSwapped, nil), nil}}
	}
	var strikes, dips []Finding
	if wrong.Strike && p.hasStrike {
		strikes = e.name(p.strike, p.apart())
	}
	if wrong.Dip && p.hasDip {
		dips = e.name(p.dip, p.apart())
	}
	return inOrder(strikes, dips)
}

// inOrder joins the findings in the two parts: first what explains both, then
// the more probable.
func inOrder(strikes, dips []Finding) []Finding {
	both := named(strikes) & named(dips)
	var out []Finding
	for _, f := range append(strikes, dips...) {
		out = merge(out, f)
	}
	sort.SliceStable(out, func(i, j int) bool {
		if a, b := both.has(out[i].Kind), both.has(out[j].Kind); a != b {
			return a
		}
		return out[i].Probability > out[j].Probability
	})
	return out
}

func named(fs []Finding) (s kinds) {
	for _, f := range fs {
		s |= setOf(f.Kind)
	}
	return s
}

// leastShare is the probability under which a mistake is not looked at, even
// as the first of several.
const leastShare = 0.1

// name returns the findings in one part.
func (e Evidence) name(p part, rest float64) []Finding {
	var out []Finding
	var done kinds
	for _, k := range p.ranked() {
		if done.has(k) || p.of(k) < leastShare {
			continue
		}
		group, sum := p.tie(k, done)
		if sum*rest < NameFrom {
			continue
		}
		done |= setOf(group...)
		for i, m := range group {
			with := append(append([]Kind(nil), group[:i]...), group[i+1:]...)
			prob := rest * p.of(m)
			out = append(out, Finding{m, prob, e.said(group[0], group[1:]), with})
		}
	}
	return out
}

// ranked are the kinds in the part, the most probable first.
func (p part) ranked() []Kind {
	var all kinds
	var prob [Kinds]float64
	for i, c := range p.claims {
		all |= c.kinds
		for _, k := range c.kinds.list() {
			prob[k] += p.weight[i]
		}
	}
	ks := all.list()
	sort.SliceStable(ks, func(i, j int) bool { return prob[ks[i]] > prob[ks[j]] })
	return ks
}

// tie returns k with the rivals that fit as well without it, leaving out those
// that are named already, and how probable it is that one of them is there.
func (p part) tie(k Kind, done kinds) ([]Kind, float64) {
	own := p.of(k)
	ks := []Kind{k}
	for _, r := range p.ranked() {
		if r == k || done.has(r) {
			continue
		}
		if p.probability(func(s kinds) bool { return s.has(r) && !s.has(k) }) >= Rivalry*own {
			ks = append(ks, r)
		}
	}
	group := setOf(ks...)
	return ks, p.probability(func(s kinds) bool { return s&group != 0 })
}

// merge adds f, or keeps the more probable when the kind is there already.
func merge(out []Finding, f Finding) []Finding {
	for i, g := range out {
		if g.Kind == f.Kind {
			if f.Probability > g.Probability {
				out[i] = f
			}
			return out
		}
	}
	return append(out, f)
}
