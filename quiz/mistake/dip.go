package mistake

import (
	"math"

	"cuesta/orient"
	"cuesta/sim"
)

// Priors of the dip part, our assumptions.
const (
	priorDipCareful  = 0.70
	priorPercent     = 0.06
	priorComplement  = 0.04
	priorEdge        = 0.06
	priorLean        = 0.04
	priorTube        = 0.02
	priorDipDigits   = 0.01
	priorDipSlip     = 0.03
	priorDipSlipSeen = 0.01
	priorDipAnything = 0.04
)

// dipClaims are all ways in which the dip of the answer may have come about.
func (e Evidence) dipClaims() []claim {
	paper, other := e.paperDips(), e.otherDip().prior()
	pose := e.poseDips()
	if pose == nil {
		return scaled(paper, 1-other)
	}
	return append(scaled(pose, 1-other-priorStale), scaled(paper, priorStale)...)
}

// otherDip is the claim of something else about the dip.
func (e Evidence) otherDip() something {
	slip, anything := priorDipSlip, priorDipAnything
	if _, seen := e.dipSeat(); seen {
		slip = priorDipSlipSeen
	} else if !e.dipRead() {
		slip, anything = priorGuess, priorGuess
	}
	return something{slip, anything, e.Truth.Dip, orient.Right}
}

// paperDips start from the true dip.
func (e Evidence) paperDips() []claim {
	d, sigma := e.Truth.Dip, half(e.Limits.Dip)
	cs := append(make([]claim, 0, roomy), claim{0, priorDipCareful, d, sigma})
	cs = append(cs, misread(0, d, sigma)...)
	cs = append(cs, spread(EdgeNotDownDip, priorEdge, sigma, grid{10, 60, 4}, func(psi orient.Angle) orient.Angle {
		return orient.Atan2(d.Sin()*psi.Cos(), d.Cos())
	})...)
	cs = append(cs, spread(BodyLeaning, priorLean, sigma, grid{10, 60, 4}, func(eta orient.Angle) orient.Angle {
		return orient.Atan2(d.Sin(), d.Cos()*eta.Cos())
	})...)
	off := func(off orient.Angle) orient.Angle { return d + off }
	cs = append(cs, spread(TubeNotCentred, priorTube/2, sigma, grid{-12, -3, 2}, off)...)
	cs = append(cs, spread(TubeNotCentred, priorTube/2, sigma, grid{3, 12, 2}, off)...)
	return without(cs, e.unheldDip())
}

// roomy holds the claims of either part without growing.
const roomy = 96

// grid is the sizes from, to and by step, in whole degrees.
type grid struct{ from, to, step int }

// spread claims a mistake of unknown size, all of the grid alike; sizes that
// leave [0°, 90°] are left out.
func spread(k Kind, prior float64, sigma orient.Angle, g grid, dip func(orient.Angle) orient.Angle) []claim {
	cs := make([]claim, 0, (g.to-g.from)/g.step+1)
	for i := g.from; i <= g.to; i += g.step {
		if d := dip(orient.Angle(i) * orient.Degree); d >= 0 && d <= orient.Right {
			cs = append(cs, claim{setOf(k), 1, d, sigma})
		}
	}
	return scaled(cs, prior)
}

// misread claims what may be done wrong with the angle d on the arc.
func misread(with kinds, d, sigma orient.Angle) []claim {
	cs := []claim{{with | setOf(Complement), priorComplement, orient.Right - d, sigma}}
	if percent, ok := percentDip(d); ok {
		// The spread of the angle grows with the slope of the percent scale.
		s := orient.Angle(math.Max(1, 100*float64(orient.Degree)/(d.Cos()*d.Cos()))) * sigma
		cs = append(cs, claim{with | setOf(PercentScale), priorPercent, percent, s})
	}
	return append(cs, scaled(exchangedDips(with, d, sigma), priorDipDigits)...)
}

// exchangedDips claims two digits exchanged in a dip read as d, give or take.
func exchangedDips(with kinds, d, sigma orient.Angle) []claim {
	var cs []claim
	n, around := int(math.Round(d.Degrees())), misreading(sigma)
	for m := max(n-around, 0); m <= min(n+around, 90); m++ {
		w := claim{sigma: sigma}.density(orient.Angle(m)*orient.Degree - d)
		for _, x := range swapped(m, 2, 90) {
			cs = append(cs, claim{with | setOf(DigitsSwapped), w, orient.Angle(x) * orient.Degree, leastSigma})
		}
	}
	return cs
}

// percentDip is the dip that is written when the percent scale is read as
// degrees; false when that is more than 90.
func percentDip(d orient.Angle) (orient.Angle, bool) {
	p := orient.Angle(100*d.Tan()) * orient.Degree
	return p, d < orient.Right && p <= orient.Right+2*orient.Degree
}

// poseDips start from what the last reading showed; none where there is no
// reading.
func (e Evidence) poseDips() []claim {
	s, ok := e.dipSeat()
	switch {
	case !ok:
	case s == sim.OnLid:
		return e.lidDips()
	case s == sim.OnBack:
		return e.shownDips(0, e.Back.Shown.Sensor.Dip)
	default:
		return e.sideDips()
	}
	return nil
}

// sideDips start from what the arc showed.
func (e Evidence) sideDips() []claim {
	arm, sigma := e.Side.Shown.Arc.Arm, half(min(e.Limits.Reading, e.Limits.Dip))
	own := blamed(e.sideFaults(), e.Limits.Dip)
	cs := append(make([]claim, 0, roomy), claim{own, priorDipCareful, arm, sigma})
	return append(cs, misread(own, arm, sigma)...)
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
