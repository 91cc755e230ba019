package item

import (
	"fmt"
	"math"

	"cuesta/orient"
	"cuesta/quiz"
)

// quantity is a number that is asked for. It answers Ask, Key and Mark for the
// items that embed it.
type quantity struct {
	label string
	unit  string  // "°" or "%"
	value float64 // the right number, whole, in the unit
	full  float64 // what an answer may be off by
	wide  float64 // what it may be off by for a part of the points, or 0
	part  float64 // that part, in [0, 1]
	wraps bool    // an azimuth, in [0, 360)
	most  float64 // the greatest answer that can be; the least is 0
	exact bool    // it follows by reckoning alone: a known mistake earns no part
	slips []slip
}

// slip is a wrong number and how it comes about.
type slip struct {
	value float64
	reason
}

// bearing asks for an azimuth, which may be off by full.
func bearing(label string, value int, full orient.Angle, p quiz.Partial) quantity {
	return quantity{
		label: label, unit: "°", value: wrap(float64(value)), full: full.Degrees(),
		wide: p.Strike.Degrees(), part: p.Share, wraps: true, most: 360, exact: full == exact,
	}
}

// slope asks for an angle of slope, which may be off by full.
func slope(label string, value int, full orient.Angle, p quiz.Partial) quantity {
	return quantity{
		label: label, unit: "°", value: float64(value), full: full.Degrees(),
		wide: p.Dip.Degrees(), part: p.Share, most: 90,
	}
}

// slip adds a wrong number, if it is a possible answer.
func (q *quantity) slip(value float64, r reason) {
	if q.wraps {
		value = wrap(value)
	}
	if value >= 0 && value <= q.most {
		q.slips = append(q.slips, slip{value, r})
	}
}

// Ask is what is asked for.
func (q quantity) Ask() Ask {
	return Ask{Kind: AskNumber, Label: q.label, Unit: q.unit, Wraps: q.wraps, Tolerance: q.full, Value: q.value}
}

// Key is the right number with its unit: 035°, 58 %.
func (q quantity) Key() string { return q.write(q.value) }

func (q quantity) write(x float64) string {
	x = math.Round(x*100)/100 + 0
	switch {
	case q.wraps:
		return orient.AzimuthOf(orient.Angle(x)*orient.Degree).String() + q.unit
	case q.unit == "%":
		return fmt.Sprintf("%v %%", x)
	}
	return fmt.Sprintf("%v%s", x, q.unit)
}

// Mark marks a number as it was typed.
func (q quantity) Mark(answer string, _ Evidence) Mark {
	x, err := q.read(answer)
	if err != nil {
		return refused(err)
	}
	m := Mark{Understood: q.write(x), Share: q.share(x)}
	if m.Right = q.apart(x, q.value) <= q.full+rounding; m.Right {
		m.Said = "Right."
		return m
	}
	rs := q.reasons(x)
	if q.exact && len(rs) > 0 {
		m.Share = 0
	}
	m.Mistakes, m.Said = findings(rs), said(q.outcome(m.Share), rs)
	return m
}

// rounding is the room left for the last digits of a float, so that an answer
// off by exactly the tolerance is inside it.
const rounding = 1e-9

func (q quantity) share(x float64) float64 {
	switch off := q.apart(x, q.value); {
	case off <= q.full+rounding:
		return 1
	case off <= q.wide+rounding:
		return q.part
	default:
		return 0
	}
}

func (q quantity) outcome(share float64) string {
	if share > 0 {
		return "This is near, and earns a part of the points."
	}
	return "This is not the " + q.label + "."
}

// reasons are the known ways to this number: the nearest, and those that
// cannot be told from it.
func (q quantity) reasons(x float64) []reason {
	var rs []reason
	for _, s := range q.slips {
		if q.apart(x, s.value) <= q.full+rounding && q.apart(s.value, q.value) > q.full {
			rs = append(rs, s.reason)
		}
	}
	return rs
}

// apart is how far two numbers are from each other, the short way round where
// they wrap.
func (q quantity) apart(x, y float64) float64 {
	if q.wraps {
		return math.Abs(math.Remainder(x-y, 360))
	}
	return math.Abs(x - y)
}

// near says that the answer to either is right, for the other too.
func (q quantity) near(p quantity) bool {
	return q.unit == p.unit && q.wraps == p.wraps && q.apart(q.value, p.value) <= max(q.full, p.full)+rounding
}

// closeness is how near the known mistakes lie to the right number, in [0, 1]:
// the mean of 1/(1 + distance/15). The nearer they are, the less a look at the
// number alone would catch them.
func (q quantity) closeness() float64 {
	if len(q.slips) == 0 {
		return 0
	}
	var sum float64
	for _, s := range q.slips {
		sum += 1 / (1 + q.apart(s.value, q.value)/15)
	}
	return sum / float64(len(q.slips))
}

// wrap takes degrees to [0, 360).
func wrap(x float64) float64 {
	x = math.Mod(x, 360)
	if x < 0 {
		x += 360
	}
	return x
}

// none is the partial credit of kinds that give none.
var none quiz.Partial
