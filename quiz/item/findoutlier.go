package item

import (
	"fmt"
	"math/rand/v2"

	"cuesta/orient"
	"cuesta/quiz/mistake"
)

// findOutlier asks which of repeated readings was taken by mistake.
type findOutlier struct{}

// outlierItem is one table of readings.
type outlierItem struct {
	choice
	readings []string
	plane    orient.Plane // of the others
	off      orient.Angle // the turn of the pole by the mistake
}

// Name, Title and OnPaper describe the kind.
func (findOutlier) Name() string  { return "find-outlier" }
func (findOutlier) Title() string { return "Which reading does not belong" }
func (findOutlier) OnPaper() bool { return true }

// standsOut is how far the pole of an outlier lies from the others, at least.
const standsOut = 14 * orient.Degree

// Deal draws a bed, five or six readings of it, and puts a mistake of the
// catalogue into one of them that makes it stand out.
func (findOutlier) Deal(s Spec, r *rand.Rand) (Item, error) {
	if err := s.Check(); err != nil {
		return nil, err
	}
	s.Notation = readInField(s.Notation)
	p, err := s.planeBetween(r, 10, 80)
	if err != nil {
		return nil, err
	}
	var out []planeSlip
	for _, m := range misreadings(p, s.Notation) {
		if m.plane.AngleTo(p) >= standsOut {
			out = append(out, m)
		}
	}
	if len(out) == 0 {
		return nil, fmt.Errorf("%w: no mistake stands out at a dip of %v°", ErrSpec, p.Dip.Degrees())
	}
	m := out[r.IntN(len(out))]
	planes := scattered(p, 5+r.IntN(2), r)
	at := r.IntN(len(planes))
	planes[at] = m.plane.Rounded(orient.Degree)
	return newOutlier(p, planes, at, m, s.Notation), nil
}

// misreadings are the mistakes of the catalogue that come of a careless
// reading, as the plane that is then understood.
func misreadings(p orient.Plane, n orient.Notation) []planeSlip {
	var out []planeSlip
	for _, m := range exchanges(p, n) {
		if m.known {
			out = append(out, planeSlip{m.plane, catalogued(m.kind, n)})
		}
	}
	if percent := orient.Angle(orient.PercentGrade(p.Dip)) * orient.Degree; percent <= orient.Right {
		out = append(out, planeSlip{orient.Plane{Strike: p.Strike, Dip: percent}, catalogued(mistake.PercentScale, n)})
	}
	return out
}

func newOutlier(p orient.Plane, planes []orient.Plane, at int, m planeSlip, n orient.Notation) outlierItem {
	it := outlierItem{plane: p, off: m.plane.AngleTo(p)}
	var all []option
	for i, q := range planes {
		it.readings = append(it.readings, orient.Format(q, n))
		o := option{numbered(i), slipped("This reading lies near most of the others.")}
		if i == at {
			o.reason = slipped(m.words)
		}
		all = append(all, o)
	}
	it.choice = choiceOf("reading", numbered(at), all...)
	return it
}

func numbered(i int) string { return fmt.Sprintf("reading %d", i+1) }

// Kind is the kind.
func (outlierItem) Kind() Kind { return findOutlier{} }

// Prompt is the question.
func (it outlierItem) Prompt() string {
	return fmt.Sprintf("The table holds %d readings of one bed, taken within a few steps. One was taken or written by mistake. Which one does not belong?", len(it.readings))
}

// Figure is the table.
func (it outlierItem) Figure() Figure { return readingTable(it.readings) }

// Alt tells the table.
func (it outlierItem) Alt() string { return readingWords(it.readings) }

// Hints help in steps.
func (outlierItem) Hints() []string {
	return []string{
		"Azimuths on both sides of north are near each other: 358 and 002 differ by 4.",
		"Compare planes, not single numbers: on a gentle bed strikes scatter widely and still belong together.",
		"Think of what goes wrong in the field: the other end of the line, a quarter turn, east for west, the wrong scale of the arc.",
	}
}

// Near says that both ask about much the same table: the same answer, and beds
// that lie alike.
func (it outlierItem) Near(other Item) bool {
	o, ok := other.(outlierItem)
	return ok && it.Key() == o.Key() && it.plane.AngleTo(o.plane) <= 5*orient.Degree
}

// Difficulty is higher the less the outlier stands out.
func (it outlierItem) Difficulty() float64 { return 1 - 0.8*float64(it.off/orient.Right) }
