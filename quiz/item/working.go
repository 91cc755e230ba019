package item

import (
	"fmt"
	"math"
)

// Worked is an item whose right answer is reckoned in a line.
type Worked interface {
	Item
	// Working is that line, with the right answer at its end.
	Working() string
}

// Working goes from the true dip to the apparent one, or back.
func (it apparentItem) Working() string {
	psi := it.section.FromLine(it.plane.Strike).Abs()
	if it.back {
		t := angle(it.shown).Tan() / psi.Sin()
		return fmt.Sprintf("tan %d° / sin %.0f° = %.2f, which is tan %s", it.shown, psi.Degrees(), t, it.Key())
	}
	t := it.plane.Dip.Tan() * psi.Sin()
	return fmt.Sprintf("tan %.0f° × sin %.0f° = %.2f, which is tan %s", it.plane.Dip.Degrees(), psi.Degrees(), t, it.Key())
}

// Working goes from degrees to per cent, or back.
func (it gradeItem) Working() string {
	if it.back {
		return fmt.Sprintf("%d / 100 = %.2f, which is tan %s", it.given, float64(it.given)/100, it.Key())
	}
	return fmt.Sprintf("100 × tan %d° = %s", it.given, it.Key())
}

// Working adds the declination or takes it off, and comes back into the circle.
func (it declinationItem) Working() string {
	by := turn(it.declination, it.back)
	sign := "+"
	if by < 0 {
		sign = "−"
	}
	text := fmt.Sprintf("%03d° %s %.0f°", it.given, sign, math.Abs(float64(by)))
	switch sum := it.given + by; {
	case sum < 0:
		text += " + 360°"
	case sum >= 360:
		text += " − 360°"
	}
	return text + " = " + it.Key()
}

var (
	_ Worked = apparentItem{}
	_ Worked = gradeItem{}
	_ Worked = declinationItem{}
)
