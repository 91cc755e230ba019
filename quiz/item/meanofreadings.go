package item

import (
	"fmt"
	"math"
	"math/rand/v2"
	"strings"

	"cuesta/orient"
	"cuesta/orient/sphere"
)

// meanOfReadings has repeated readings of one bed averaged.
type meanOfReadings struct{}

// meanItem is one table of readings.
type meanItem struct {
	planar
	readings []string
	naive    bool // the numbers as they stand have another mean
}

// Name, Title and OnPaper describe the kind.
func (meanOfReadings) Name() string  { return "mean-of-readings" }
func (meanOfReadings) Title() string { return "Mean of repeated readings" }
func (meanOfReadings) OnPaper() bool { return true }

// Deal draws a bed and four to six readings that scatter about it; in a course
// that writes azimuths one of them is written from the other end, with letters.
func (meanOfReadings) Deal(s Spec, r *rand.Rand) (Item, error) {
	if err := s.Check(); err != nil {
		return nil, err
	}
	p, err := s.planeBetween(r, 8, 80)
	if err != nil {
		return nil, err
	}
	n := 4 + r.IntN(3)
	for {
		if it, ok := newMean(scattered(p, n, r), r.IntN(n), s); ok {
			return it, nil
		}
	}
}

// newMean is the question about these readings; false when one of them happens
// to be their mean.
func newMean(planes []orient.Plane, turned int, s Spec) (meanItem, bool) {
	mean, ok := sphere.MeanPlane(planes)
	it := meanItem{planar: planar{truth: mean.Rounded(orient.Degree), notation: s.Notation, tolerance: s.tolerance()}}
	for i, q := range planes {
		it.readings = append(it.readings, reading(q, s.Notation, i == turned))
		ok = ok && q != it.truth
	}
	if s.Notation != orient.Quadrant {
		numbers := byNumbers(it.readings, s.Notation)
		it.naive = !alike(numbers, it.truth, it.tolerance)
		it.slip(numbers, slipped("The numbers were averaged as they stand. Azimuths on both sides of north, or written from different ends, must first be brought to one end and one side."))
	}
	it.slip(orient.Plane{Strike: it.truth.Strike.Opposite(), Dip: it.truth.Dip}, exchanges(it.truth, s.Notation)[0].reason)
	return it, ok
}

// scatter is the standard deviation of the dips of repeated readings, in
// degrees; strikes scatter by its part of the sine of the dip, after Cruden &
// Charlesworth 1976, GSA Bulletin 87:977–980.
const scatter = 1.5

// scattered are n readings of the bed, in whole degrees.
func scattered(p orient.Plane, n int, r *rand.Rand) []orient.Plane {
	var out []orient.Plane
	for range n {
		turn := bounded(r) * orient.StrikeScatter(scatter*orient.Degree, p.Dip)
		dip := p.Dip + bounded(r)*scatter*orient.Degree
		q := orient.PlaneOf(p.Strike.Angle()+turn, max(orient.Degree, min(orient.Right, dip)))
		out = append(out, q.Rounded(orient.Degree))
	}
	return out
}

// bounded is a normal deviate of at most two standard deviations.
func bounded(r *rand.Rand) orient.Angle {
	return orient.Angle(max(-2, min(2, r.NormFloat64())))
}

// reading writes a reading, from the other end with letters if it is turned.
func reading(p orient.Plane, n orient.Notation, turned bool) string {
	letters := p.DipDirection().Letters()
	if text := fmt.Sprintf("%s/%02.0f %s", p.Strike.Opposite(), p.Dip.Degrees(), letters); turned && n == orient.AzimuthDip {
		return text
	}
	return orient.Format(p, n)
}

// byNumbers is the mean of the numbers as they are written.
func byNumbers(readings []string, n orient.Notation) orient.Plane {
	var azimuth, dip float64
	for _, text := range readings {
		e, err := orient.Parse(text, n)
		if err != nil {
			panic("item: a reading that cannot be read: " + text)
		}
		azimuth += e.Written.Degrees() / float64(len(readings))
		dip += e.Plane.Dip.Degrees() / float64(len(readings))
	}
	return orient.PlaneOf(orient.Angle(math.Round(azimuth))*orient.Degree-shifts[n], orient.Angle(math.Round(dip))*orient.Degree)
}

// Kind is the kind.
func (meanItem) Kind() Kind { return meanOfReadings{} }

// Prompt is the question.
func (it meanItem) Prompt() string {
	text := fmt.Sprintf("The table holds %d readings of one bed. Write their mean as %s, to the nearest degree.", len(it.readings), notationNames[it.notation])
	if it.notation == orient.AzimuthDip {
		text += " Where letters stand, they settle the side of the dip."
	}
	return text
}

// Figure is the table.
func (it meanItem) Figure() Figure { return readingTable(it.readings) }

// readingTable numbers the readings.
func readingTable(readings []string) TableFigure {
	t := TableFigure{Head: []string{"reading", "plane"}}
	for i, text := range readings {
		t.Rows = append(t.Rows, []string{fmt.Sprint(i + 1), text})
	}
	return t
}

// Alt tells the table.
func (it meanItem) Alt() string { return readingWords(it.readings) }

func readingWords(readings []string) string {
	return "A table of readings, in this order: " + strings.Join(readings, "; ") + "."
}

// Hints help in steps.
func (it meanItem) Hints() []string {
	return []string{
		"Bring all readings to the same end and the same side first.",
		"Where azimuths lie on both sides of north, count those below 180 as if 360 were added, and wrap the mean.",
		"Poles may be averaged instead: on a net the mean lies in the middle of their cluster.",
	}
}

// Near says that both means lie alike.
func (it meanItem) Near(other Item) bool {
	o, ok := other.(meanItem)
	return ok && it.near(o.planar)
}

// Difficulty is how gentle the bed is, and higher where the numbers as they
// are written have another mean.
func (it meanItem) Difficulty() float64 {
	d := 0.5 * gentleness(it.truth)
	if it.naive {
		d += 0.4
	}
	return d
}
