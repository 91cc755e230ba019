package item

import (
	"fmt"
	"math/rand/v2"

	"cuesta/orient"
	"cuesta/orient/sphere"
	"cuesta/quiz"
)

// labStation has a real slab measured in a room. No blueprint of a quiz asks
// for it: what there is to measure stands in the room, so the kind is not among
// Kinds, and its items come of a file of stations.
type labStation struct{ station string }

// Station is a real slab with its card, and how it lies where that is known.
type Station struct {
	Name    string  // on its card
	Words   string  // what it is, or ""
	Surface Surface // what is measured
	Mean    bool    // the mean of a student's readings counts, not the last

	// How the instructor found it to lie. No form and no submission holds it.
	Known       bool
	Plane       orient.Plane
	Strike, Dip orient.Angle // by how much the plane may be off, in [0, π/2]
	Note        string       // for the instructor's sheet
}

// AtStation is an item that is measured at a real slab, as often as its part
// has attempts.
type AtStation interface {
	Item
	Station() Station
	// Tolerance is that of an answer: of a known plane with what that plane
	// itself may be off by (quiz.Tolerance.Widened).
	Tolerance() quiz.Tolerance
	// MarkAll marks the readings of a student, at least one, in their order, by
	// the one plane that counts: the last that can be read, or the mean of all
	// those, to the tenth of a degree. Where none can be read it is the last.
	// The mean of readings that are Apart has no mistake named: each of them
	// may have its own.
	MarkAll(readings []string) (counts string, m Mark)
}

// Apart is how far the poles of repeated readings may lie from that of their
// mean before they are looked at once more: beyond careless, one of them is
// written from another end, of another face, or slipped (our choice).
const Apart = 10 * orient.Degree

// stationItem is one station.
type stationItem struct {
	planar
	bare
	station Station
	place   orient.Angle // the declination there; that of planar is what a student has to reckon with
	preset  bool         // it is set on the dial
}

// Name, Title and OnPaper describe the kind.
func (labStation) Name() string { return "lab-station" }

// Title names the station, where there is one.
func (k labStation) Title() string {
	if k.station == "" {
		return "Measure a station"
	}
	return "Station " + k.station
}

// OnPaper is false: a station has a card.
func (labStation) OnPaper() bool { return false }

// Deal takes the station of the specification; nothing is drawn.
func (labStation) Deal(s Spec, _ *rand.Rand) (Item, error) {
	if err := s.Check(); err != nil {
		return nil, err
	}
	st := s.Station
	if st.Known && !(st.Plane.IsValid() && within(st.Strike) && within(st.Dip)) {
		return nil, fmt.Errorf("%w: station %q needs a plane that can be, known to between 0° and 90°", ErrSpec, st.Name)
	}
	it := stationItem{station: st, place: s.Declination, preset: s.RingPreset}
	it.planar = planar{notation: s.Notation, tolerance: s.tolerance()}
	if !it.preset {
		it.declination = it.place
	}
	if st.Known {
		it.truth = st.Plane
		it.tolerance = it.tolerance.Widened(st.Plane.Dip, st.Strike, st.Dip)
	}
	return it, nil
}

func within(a orient.Angle) bool { return a >= 0 && a <= orient.Right }

// Kind is the kind.
func (it stationItem) Kind() Kind { return labStation{it.station.Name} }

// Station is the slab.
func (it stationItem) Station() Station { return it.station }

// Tolerance is that of an answer.
func (it stationItem) Tolerance() quiz.Tolerance { return it.tolerance }

// Prompt is the question.
func (it stationItem) Prompt() string {
	text := "Station " + it.station.Name
	if it.station.Words != "" {
		text += ", " + it.station.Words
	}
	text += ". Measure the " + it.station.Surface.Measured() + " and write it as " + notationNames[it.notation] + "."
	switch {
	case it.place == 0:
		return text
	case it.preset:
		return text + " The declination of the place is set on the dial."
	}
	return text + " The declination of the place is " + declinationWords(it.place) + "; set it on the dial, or reckon with it."
}

// Hints help in steps.
func (stationItem) Hints() []string {
	return []string{
		"Choose a clean part of the face that speaks for the whole, and lay a board on a rough one.",
		"Keep iron away: a knife, keys, a telephone or the frame of a table turns the needle.",
		"Seat the instrument anew for every reading; readings that agree to a few degrees may be trusted.",
	}
}

// Key is the true plane, or "" where it is not known.
func (it stationItem) Key() string {
	if !it.station.Known {
		return ""
	}
	return it.planar.Key()
}

// Mark marks a plane as it was typed. Where the true plane is not known it only
// says how the plane was understood. There is no recording of a real
// instrument, so the evidence is not looked at, and no mistake is named that
// only the pose of the instrument could show.
func (it stationItem) Mark(answer string, _ Evidence) Mark {
	if len(answer) > longest {
		return refused(errLong)
	}
	entry, err := orient.Parse(answer, it.notation)
	s := it.station.Surface
	switch {
	case err == nil && entry.Plane.Overturned && !s.HasWayUp():
		return unread(fmt.Errorf("a %s has no way up; leave out \"overturned\"", s.Noun()))
	case it.station.Known:
		return s.told(it.planar.Mark(answer, Evidence{}))
	case err != nil:
		return s.told(unread(err))
	}
	return Mark{Understood: entry.Understood()}
}

func unread(err error) Mark {
	m := refused(err)
	m.Said = "This could not be read. " + explained(err)
	return m
}

// MarkAll marks the plane that counts.
func (it stationItem) MarkAll(readings []string) (counts string, m Mark) {
	counts, agree := it.settled(readings)
	if m = it.Mark(counts, Evidence{}); agree || m.Right || m.Verdict == nil {
		return counts, m
	}
	v := *m.Verdict
	m.Mistakes, m.Said = nil, it.station.Surface.In(part(v))+" But the readings do not agree, and each may be off in its own way."
	v.Mistakes, v.Said, m.Verdict = nil, m.Said, &v
	return counts, m
}

// settled is the plane that counts, and whether it speaks for the readings.
func (it stationItem) settled(readings []string) (counts string, agree bool) {
	var planes []orient.Plane
	last := readings[len(readings)-1]
	for _, text := range readings {
		if e, err := orient.Parse(text, it.notation); err == nil {
			planes, counts = append(planes, e.Plane), text
		}
	}
	mean, ok := sphere.MeanPlane(planes)
	switch {
	case len(planes) == 0:
		return last, true
	case len(planes) == 1 || !it.station.Mean || !ok:
		return counts, true
	}
	agree = true
	for _, p := range planes {
		agree = agree && mean.AngleTo(p) <= Apart
	}
	mean.Overturned = planes[len(planes)-1].Overturned
	return orient.Format(mean.Rounded(orient.Degree/10), it.notation), agree
}

// Near says that both are the same station.
func (it stationItem) Near(other Item) bool {
	o, ok := other.(stationItem)
	return ok && it.station.Name == o.station.Name
}

// Difficulty is how gentle the slab is, or a half where that is not known.
func (it stationItem) Difficulty() float64 {
	if !it.station.Known {
		return 0.5
	}
	return gentleness(it.truth)
}
