package mistake

import (
	"math"

	"cuesta/orient"
)

// Priors of the dip part, our assumptions.
const (
	priorDipCareful   = 0.70
	priorPercent      = 0.06
	priorComplement   = 0.04
	priorEdge         = 0.06
	priorLean         = 0.04
	priorTube         = 0.02
	priorDipDigits    = 0.01
	priorDipSomething = 0.03
)

// dipClaims are all ways in which the dip of the answer may have come about.
func (e Evidence) dipClaims() []claim {
	paper := e.paperDips()
	if !e.sideUsable() {
		return scaled(paper, 1-priorDipSomething)
	}
	return append(scaled(e.poseDips(), 1-priorDipSomething-priorStale), scaled(paper, priorStale)...)
}

// paperDips start from the true dip.
func (e Evidence) paperDips() []claim {
	d, sigma := e.Truth.Dip, half(e.Limits.Dip)
	cs := []claim{{0, priorDipCareful, d, sigma}}
	cs = append(cs, misread(0, d, sigma, 2)...)
	cs = append(cs, spread(EdgeNotDownDip, priorEdge, sigma, 10, 60, func(psi orient.Angle) []orient.Angle {
		return []orient.Angle{orient.Atan2(d.Sin()*psi.Cos(), d.Cos())}
	})...)
	cs = append(cs, spread(BodyLeaning, priorLean, sigma, 10, 60, func(eta orient.Angle) []orient.Angle {
		return []orient.Angle{orient.Atan2(d.Sin(), d.Cos()*eta.Cos())}
	})...)
	return append(cs, spread(TubeNotCentred, priorTube, sigma, 3, 12, func(off orient.Angle) []orient.Angle {
		return []orient.Angle{d - off, d + off}
	})...)
}

// spread claims a mistake of unknown size, each whole number of degrees in
// [from, to] alike; sizes that leave [0°, 90°] are left out.
func spread(k Kind, prior float64, sigma orient.Angle, from, to int, dips func(orient.Angle) []orient.Angle) []claim {
	var cs []claim
	for i := from; i <= to; i++ {
		for _, d := range dips(orient.Angle(i) * orient.Degree) {
			if d >= 0 && d <= orient.Right {
				cs = append(cs, claim{setOf(k), 1, d, sigma})
			}
		}
	}
	return scaled(cs, prior)
}

// misread claims what may be done wrong with the angle d on the arc.
func misread(with kinds, d, sigma orient.Angle, around int) []claim {
	cs := []claim{{with | setOf(Complement), priorComplement, orient.Right - d, sigma}}
	if percent, ok := percentDip(d); ok {
		// The spread of the angle grows with the slope of the percent scale.
		s := orient.Angle(math.Max(1, 100*float64(orient.Degree)/(d.Cos()*d.Cos()))) * sigma
		cs = append(cs, claim{with | setOf(PercentScale), priorPercent, percent, s})
	}
	var swaps []claim
	n := int(math.Round(d.Degrees()))
	for m := max(n-around, 0); m <= min(n+around, 90); m++ {
		for _, x := range swapped(m, 2, 90) {
			swaps = append(swaps, claim{with | setOf(DigitsSwapped), 1, orient.Angle(x) * orient.Degree, leastSigma})
		}
	}
	return append(cs, scaled(swaps, priorDipDigits)...)
}

// percentDip is the dip that is written when the percent scale is read as
// degrees; false when that is more than 90.
func percentDip(d orient.Angle) (orient.Angle, bool) {
	p := orient.Angle(100*d.Tan()) * orient.Degree
	return p, d < orient.Right && p <= orient.Right+2*orient.Degree
}

// sideUsable says whether there is a reading of the arc that can be used.
func (e Evidence) sideUsable() bool {
	return e.HasSide && finite(e.Side.Along, e.Side.Across, e.Side.Shown.Arc.Arm)
}

// poseDips start from what the arc showed.
func (e Evidence) poseDips() []claim {
	arm, sigma := e.Side.Shown.Arc.Arm, half(e.Limits.Dip)
	own := blamed(e.sideFaults(), e.Limits.Dip)
	cs := []claim{{own, priorDipCareful, arm, sigma}}
	return append(cs, misread(own, arm, sigma, 1)...)
}

// sideFaults takes apart how the angle on the arc departs from the true dip:
// edge off the dip, body off the vertical, tube level off the horizontal.
func (e Evidence) sideFaults() []fault {
	plunge := min(e.Side.Along.Abs(), orient.Right)
	level := orient.Atan2(plunge.Sin(), plunge.Cos()*math.Abs(e.Side.Across.Cos()))
	return []fault{
		{EdgeNotDownDip, plunge - e.Truth.Dip},
		{BodyLeaning, level - plunge},
		{TubeNotCentred, e.Side.Shown.Arc.Arm - level},
	}
}
