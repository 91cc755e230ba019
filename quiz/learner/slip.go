package learner

import (
	"fmt"
	"math"

	"cuesta/orient"
	"cuesta/quiz/item"
	"cuesta/quiz/mistake"
)

// slip is the answer of someone who makes the mistake of the learner on an
// item without a bench; false where it cannot be made there.
func (d *desk) slip() (string, bool) {
	if d.Manner != Mistaken {
		return "", false
	}
	x, ok := slipped(d.it, d.Mistake)
	if !ok {
		return "", false
	}
	return d.number(d.it.Ask(), x), true
}

// slipped is the number that a mistake makes of an item that is read off a
// dial or an arc.
func slipped(it item.Item, k mistake.Kind) (float64, bool) {
	switch f := it.Figure().(type) {
	case item.DialFigure:
		return slippedDial(it.Ask().Value, f, k)
	case item.ArcFigure:
		return slippedArc(it.Ask(), f, k)
	case item.LevelFigure, item.MapFigure, item.BlockFigure, item.NetFigure, item.TableFigure:
	}
	return 0, false
}

// slippedDial is what is read off a dial instead of the azimuth asked for. Who
// is asked for the rear end and takes the number at the needle gives the other
// end.
func slippedDial(right float64, f item.DialFigure, k mistake.Kind) (float64, bool) {
	rear := math.Abs(math.Remainder(right-(f.Ring-f.Needle).Degrees(), 360)) > 90
	switch {
	case k == mistake.SouthEnd && !rear, k == mistake.OtherEnd && rear:
		return right + 180, true
	case k == mistake.EastWest:
		return 360 - right, true
	}
	return 0, false
}

// slippedArc is what is read off the arc instead of the angle or the slope.
func slippedArc(a item.Ask, f item.ArcFigure, k mistake.Kind) (float64, bool) {
	switch {
	case k == mistake.PercentScale && a.Unit == "%":
		return f.Arm.Degrees(), true
	case k == mistake.PercentScale:
		return 100 * f.Arm.Tan(), true
	case k == mistake.Complement && a.Unit != "%":
		return 90 - f.Arm.Degrees(), true
	}
	return 0, false
}

// Rivals are the mistakes that lead to the answer of k on an item without a
// bench; ok is false where k cannot be made there, or leads to a right answer.
func Rivals(it item.Item, k mistake.Kind) (rivals []mistake.Kind, ok bool) {
	x, ok := slipped(it, k)
	a := it.Ask()
	if !ok || it.Mark(fmt.Sprint(wrapped(a, x)), item.Evidence{}).Right {
		return nil, false
	}
	for o := range mistake.Kind(mistake.Kinds) {
		if y, can := slipped(it, o); can && o != k && apart(a, x, y) <= a.Tolerance {
			rivals = append(rivals, o)
		}
	}
	return rivals, true
}

func wrapped(a item.Ask, x float64) float64 {
	if a.Wraps {
		return orient.AzimuthOf(orient.Angle(x) * orient.Degree).Degrees()
	}
	return x
}

func apart(a item.Ask, x, y float64) float64 {
	if a.Wraps {
		return math.Abs(math.Remainder(x-y, 360))
	}
	return math.Abs(x - y)
}
