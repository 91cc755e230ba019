package learner

import (
	"math"
	"strconv"

	"cuesta/orient"
	"cuesta/quiz/item"
)

// leavesThought is how often a hurried learner slips where something has to be
// thought out; an assumption.
const leavesThought = 0.08

// reckon answers an item without a bench.
func (d *desk) reckon() string {
	if text, ok := d.slip(); ok {
		d.makesHere()
		return text
	}
	if d.Manner == Hurried && d.r.Float64() < leavesThought {
		return d.guess()
	}
	switch a := d.it.Ask(); a.Kind {
	case item.AskNumber:
		return d.number(a, a.Value)
	case item.AskPlane, item.AskSymbol:
		return d.plane(d.it.Key())
	case item.AskChoice, item.AskLine:
	}
	return d.it.Key()
}

// isRead says whether the answer is read off a scale or a map, with the
// scatter of a reading; else it is reckoned.
func (d *desk) isRead() bool {
	switch f := d.it.Figure().(type) {
	case item.DialFigure, item.ArcFigure:
		return true
	case item.MapFigure:
		return !f.LineOnly
	case item.LevelFigure, item.BlockFigure, item.NetFigure, item.TableFigure:
	}
	return false
}

// number writes x; a reading to the whole unit, with its scatter.
func (d *desk) number(a item.Ask, x float64) string {
	if d.isRead() {
		x = math.Round(x + d.r.NormFloat64()*d.scatter().Degrees())
	}
	return strconv.FormatFloat(math.Max(0, math.Round(onCircle(a, x)*100)/100), 'f', -1, 64)
}

// plane writes a plane; a strike read off a map with its scatter. The dip
// stands there as a number.
func (d *desk) plane(text string) string {
	n := d.part.Spec.Notation
	if !d.isRead() {
		return text
	}
	e, err := orient.Parse(text, n)
	if err != nil || !e.HasStrike {
		return text
	}
	e.Plane.Strike = orient.AzimuthOf(d.read(e.Plane.Strike.Angle()))
	return orient.Format(e.Plane, n)
}
