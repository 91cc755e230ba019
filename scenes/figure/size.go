package figure

import "cuesta/scenes/draw"

// The plate, in cm. Both long edges carry a light bar because either can be
// seated.
const (
	Length    = 16.0 // forward
	Width     = 10.0 // to the right
	Thickness = 0.85
	Bar       = 1.00 // width of the light bar along either long edge
	Rim       = 0.15 // from the bars and the short ends to the groove
)

// The forward arrow on each bar, in cm along the bar and about its middle line.
const (
	ArrowFrom  = 8.2
	ArrowTo    = 15.72
	ArrowHalf  = 0.40
	arrowHead  = 1.20
	arrowShaft = 0.085
)

// The graduated circle, in cm from its centre. The ticks grow outward from the
// base circle, which the tip of the needle nearly touches, so the needle never
// covers a tick or a figure.
const (
	DialRadius   = 3.50
	DialBezel    = 3.70 // outer radius of the ring of the case
	DialBase     = 2.74
	tick1        = 0.19
	tick5        = 0.28
	tick10       = 0.34
	figureRadius = 3.26
	figureSize   = 0.25
	letterRadius = 2.02
	letterSize   = 0.76
	markFrom     = 3.375 // the declination mark, a wedge outside 000
	markTo       = 3.47
	markHalf     = 0.125
	indexFrom    = 3.84 // the index on the case, its tip towards the circle
	indexTo      = 3.51
	indexHalf    = 0.17
)

// The needle, in cm from its pivot.
const (
	NeedleTip   = 2.72
	needleHalf  = 0.34
	needleBarb  = 1.40
	needleNotch = 1.56
	shaftHalf   = 0.085
	SouthAt     = 2.18 // centre of the open ring of the south end
	SouthRadius = 0.20 // its outer radius
	southBore   = 0.11
	NeedleHub   = 0.20
)

// The round level, in cm from its centre.
const (
	RoundBezel  = 1.22
	RoundVial   = 1.08
	RoundRing   = 0.50 // radius of the marked ring, the unit of a sim.RoundLevel
	RoundBubble = 0.37
)

// The inclination arc and its arm, in cm from the pivot. The pointer meets the
// percent ticks and then the degree ticks; the figures of either scale stand on
// the far side of its ticks, the percent figures under the clear end of the arm.
const (
	ArcOuter      = 6.36 // of the plate that carries the scales
	ArcInner      = 4.22
	arcMargin     = 0.32 // of that plate beyond the lines of 0 and 90
	DegreeBase    = 5.36 // ticks outward
	degreeTick1   = 0.19
	degreeTick5   = 0.29
	degreeTick10  = 0.40
	degreeFigures = 6.04
	degreeSize    = 0.36
	PercentBase   = 5.10 // ticks inward
	percentTick   = 0.14
	percentLong   = 0.24
	percentFigure = 4.58
	percentSize   = 0.25
)

// The arm and its tube level, in cm from the pivot, the index along x.
const (
	ArmTail    = -0.50          // round
	ArmBody    = 3.62           // end of the full width
	ArmNeck    = ArcInner + .02 // where the clear end begins
	ArmTip     = DegreeBase
	ArmHalf    = 0.42
	neckHalf   = 0.22
	TubeAt     = 2.05 // centre of the tube
	TubeHalf   = 1.425
	TubeRadius = 0.27
	TubeMark   = 0.56 // half the gap between the marks, the unit of a sim.TubeLevel
	TubeBubble = 0.42 // half length of the bubble
	tubeLumen  = 0.19 // half width of the bubble
)

// The centres of the parts in the plan.
var (
	DialCentre  = draw.Point{X: 11.9, Y: 5.0}
	RoundCentre = draw.Point{X: 7.15, Y: 7.55}
	ArmPivot    = draw.Point{X: 1.65, Y: 1.65}
)
