package learner

import (
	"fmt"
	"strings"

	"cuesta/orient"
	"cuesta/quiz/item"
)

// guess is any answer of the form that is asked for, each alike.
func (d *desk) guess() string {
	switch a := d.it.Ask(); a.Kind {
	case item.AskNumber:
		return fmt.Sprint(d.r.IntN(most(a) + 1))
	case item.AskChoice:
		return a.Choices[d.r.IntN(len(a.Choices))]
	case item.AskPlane, item.AskSymbol, item.AskLine:
	}
	return d.guessPlane()
}

// most is the greatest number that a guess would try: a whole turn, an upright
// bed, or a slope of 45°.
func most(a item.Ask) int {
	switch {
	case a.Wraps:
		return 359
	case a.Unit == "%":
		return 100
	}
	return 90
}

// guessPlane is any plane, written like the key.
func (d *desk) guessPlane() string {
	strike, dip := d.r.IntN(360), d.r.IntN(91)
	if key := d.it.Key(); strings.HasPrefix(key, "N") || strings.HasPrefix(key, "S") {
		return orient.Format(orient.PlaneOf(degrees(strike), degrees(dip)), orient.Quadrant)
	}
	return fmt.Sprintf("%03d/%02d", strike, dip)
}

func degrees(n int) orient.Angle { return orient.Angle(n) * orient.Degree }
