package form

import (
	"fmt"
	"math"
	"time"

	"cuesta/quiz"
	"cuesta/quiz/item"
	"cuesta/sim"
)

// The shapes of forms in files: angles in degrees, names for kinds.

type formJSON struct {
	Code      string        `json:"code"`
	Student   studentJSON   `json:"student"`
	Blueprint blueprintJSON `json:"blueprint"`
	Items     []dealtJSON   `json:"items"`
}

type studentJSON struct {
	ID        string  `json:"id"`
	Name      string  `json:"name"`
	Class     string  `json:"class,omitempty"`
	ExtraTime float64 `json:"extra_time"`
}

type dealtJSON struct {
	Part int    `json:"part"` // from 0
	Seed uint64 `json:"seed"`
}

type blueprintJSON struct {
	Title     string        `json:"title"`
	Notation  string        `json:"notation"`
	Place     placeJSON     `json:"place"`
	Tolerance toleranceJSON `json:"tolerance"`
	Pass      float64       `json:"pass"`
	Minutes   float64       `json:"minutes"`
	Due       string        `json:"due,omitempty"`
	Cautions  bool          `json:"cautions"`
	Seed      uint64        `json:"seed"`
	Parts     []partJSON    `json:"parts"`
}

type placeJSON struct {
	Name        string  `json:"name"`
	Site        string  `json:"site"`
	Date        string  `json:"date"`
	Declination float64 `json:"declination"`
	Inclination float64 `json:"inclination"`
	Horizontal  float64 `json:"horizontal"` // nT
	Preset      bool    `json:"preset"`
}

type toleranceJSON struct {
	Reading    float64 `json:"reading"`
	Levelling  float64 `json:"levelling"`
	Dip        float64 `json:"dip"`
	StepStrike float64 `json:"step_strike"`
	StepDip    float64 `json:"step_dip"`
	StepShare  float64 `json:"step_share"`
	Side       float64 `json:"side,omitempty"` // 0: the usual one
}

type partJSON struct {
	Kind      string        `json:"kind"`
	Count     int           `json:"count"`
	Points    float64       `json:"points"`
	Attempts  int           `json:"attempts"`
	HintCost  float64       `json:"hint_cost"`
	Notation  string        `json:"notation"`
	Tolerance toleranceJSON `json:"tolerance"`
	Gentle    float64       `json:"gentle"`
	Moderate  float64       `json:"moderate"`
	Steep     float64       `json:"steep"`
	DipMin    float64       `json:"dip_min"`
	DipMax    float64       `json:"dip_max"`
	Station   *stationJSON  `json:"station,omitempty"`
}

// stationJSON is what a form says of a station: nothing of how it lies.
type stationJSON struct {
	Name  string `json:"name"`
	Words string `json:"words"`
	Mean  bool   `json:"mean"`
}

func formJSONOf(f Form) formJSON {
	s := f.Student
	j := formJSON{
		Code: f.Code, Student: studentJSON{s.ID, s.Name, s.Class, s.ExtraTime},
		Blueprint: blueprintJSONOf(f.Blueprint), Items: make([]dealtJSON, len(f.Items)),
	}
	for i, d := range f.Items {
		j.Items[i] = dealtJSON(d)
	}
	return j
}

func blueprintJSONOf(b Blueprint) blueprintJSON {
	j := blueprintJSON{
		Title: b.Title, Notation: notationWord(b.Notation), Tolerance: toleranceJSONOf(b.Tolerance),
		Place: placeJSON{
			Name: b.Place, Site: b.Site, Date: b.Date, Preset: b.RingPreset,
			Declination: inDegrees(b.Field.Declination), Inclination: inDegrees(b.Field.Inclination),
			Horizontal: inNanotesla(b.Field.Horizontal),
		},
		Pass: b.PassShare, Minutes: b.Minutes, Due: b.Due, Cautions: b.Cautions, Seed: b.Seed,
		Parts: make([]partJSON, len(b.Parts)),
	}
	for i, p := range b.Parts {
		m := p.Spec.Mix
		j.Parts[i] = partJSON{
			Kind: p.Kind, Count: p.Count, Points: p.Points, Attempts: p.Attempts, HintCost: p.HintCost,
			Notation: notationWord(p.Spec.Notation), Tolerance: toleranceJSONOf(p.Spec.Tolerance),
			Gentle: m.Gentle, Moderate: m.Moderate, Steep: m.Steep,
			DipMin: inDegrees(p.Spec.DipMin), DipMax: inDegrees(p.Spec.DipMax),
		}
		if s := p.Spec.Station; s.Name != "" {
			j.Parts[i].Station = &stationJSON{s.Name, s.Words, s.Mean}
		}
	}
	return j
}

func toleranceJSONOf(t quiz.Tolerance) toleranceJSON {
	return toleranceJSON{
		inDegrees(t.Reading), inDegrees(t.Levelling), inDegrees(t.Dip),
		inDegrees(t.Partial.Strike), inDegrees(t.Partial.Dip), t.Partial.Share, t.Side,
	}
}

func (j toleranceJSON) tolerance() quiz.Tolerance {
	return quiz.Tolerance{
		Reading: degrees(j.Reading), Levelling: degrees(j.Levelling), Dip: degrees(j.Dip),
		Partial: quiz.Partial{Strike: degrees(j.StepStrike), Dip: degrees(j.StepDip), Share: j.StepShare},
		Side:    j.Side,
	}
}

// settled is the blueprint as it comes back from a file, bit for bit, with the
// place in each part.
func (b Blueprint) settled() (Blueprint, error) { return blueprintJSONOf(b).blueprint() }

func (j blueprintJSON) blueprint() (Blueprint, error) {
	notation, ok := notationOf(j.Notation)
	b := Blueprint{
		Title: j.Title, Notation: notation, Place: j.Place.Name, Site: j.Place.Site, Date: j.Place.Date,
		Field: sim.Field{
			Declination: degrees(j.Place.Declination), Inclination: degrees(j.Place.Inclination),
			Horizontal: nanotesla(j.Place.Horizontal),
		},
		RingPreset: j.Place.Preset, Tolerance: j.Tolerance.tolerance(), PassShare: j.Pass, Minutes: j.Minutes,
		Due: j.Due, Cautions: j.Cautions, Seed: j.Seed,
	}
	switch {
	case !ok:
		return b, fmt.Errorf("the notation is %s; it is one of %s", shortened(j.Notation), listed(notations[:]))
	case !(j.Pass >= 0 && j.Pass <= 1):
		return b, fmt.Errorf("the share to pass is %v; it lies from 0 to 1", j.Pass)
	case !(j.Minutes >= 0 && j.Minutes <= mostMinutes):
		return b, fmt.Errorf("the time limit is %v minutes; it lies from 0 to %d", j.Minutes, mostMinutes)
	case !b.Tolerance.IsValid():
		return b, fmt.Errorf("a tolerance lies from 0° to 90°, a share from 0 to 1")
	case !isLine(j.Title) || !isLine(j.Place.Name) || !isLine(j.Place.Site) || !isLine(j.Place.Date):
		return b, fmt.Errorf("title and place are lines of at most %d characters", longestText)
	case j.Due != "" && !isMoment(j.Due):
		return b, fmt.Errorf("due is %s; it is a day and time with its zone", shortened(j.Due))
	case len(j.Parts) > mostParts:
		return b, fmt.Errorf("the form has %d parts; it has at most %d", len(j.Parts), mostParts)
	}
	for i, p := range j.Parts {
		part, err := p.part(b)
		if err != nil {
			return b, fmt.Errorf("part %d: %w", i+1, err)
		}
		b.Parts = append(b.Parts, part)
	}
	return b, nil
}

func isMoment(s string) bool {
	_, err := time.Parse(time.RFC3339, s)
	return err == nil
}

func (j partJSON) part(b Blueprint) (Part, error) {
	notation, ok := notationOf(j.Notation)
	p := Part{
		Kind: j.Kind, Count: j.Count, Points: j.Points, Attempts: j.Attempts, HintCost: j.HintCost,
		Spec: item.Spec{
			Notation: notation, Tolerance: j.Tolerance.tolerance(),
			Mix:    quiz.Mix{Gentle: j.Gentle, Moderate: j.Moderate, Steep: j.Steep},
			DipMin: degrees(j.DipMin), DipMax: degrees(j.DipMax),
			Declination: b.Field.Declination, Field: b.Field, RingPreset: b.RingPreset,
		},
	}
	if s := j.Station; s != nil {
		p.Spec.Station = item.Station{Name: s.Name, Words: s.Words, Mean: s.Mean}
	}
	_, known := item.KindNamed(j.Kind)
	switch {
	case !known:
		return p, fmt.Errorf("read the kind %s, which this program does not know", shortened(j.Kind))
	case !ok:
		return p, fmt.Errorf("the notation is %s; it is one of %s", shortened(j.Notation), listed(notations[:]))
	case (j.Kind == LabStation) != (j.Station != nil):
		return p, fmt.Errorf("a part of the kind %s, and no other, has a station", LabStation)
	case j.Station != nil && (!isStationName(j.Station.Name) || !isLine(j.Station.Words) || j.Count != 1):
		return p, fmt.Errorf("the station %s: its name is one word of at most %d characters, what it is is a line, and there is one of it", shortened(j.Station.Name), longestStation)
	case j.Count < 1 || j.Count > MostItems:
		return p, fmt.Errorf("the count is %d; it lies from 1 to %d", j.Count, MostItems)
	case !(j.Points >= 0 && j.Points <= mostPoints):
		return p, fmt.Errorf("an item has %v points; it has from 0 to %d", j.Points, mostPoints)
	case j.Attempts < 1 || j.Attempts > mostAttempts:
		return p, fmt.Errorf("there are %d attempts; there are from 1 to %d", j.Attempts, mostAttempts)
	case !(j.HintCost >= 0 && j.HintCost <= 1):
		return p, fmt.Errorf("a hint costs %v; it costs a share from 0 to 1", j.HintCost)
	}
	return p, p.Spec.Check()
}

func (j formJSON) form() (Form, error) {
	b, err := j.Blueprint.blueprint()
	if err != nil {
		return Form{}, err
	}
	s := j.Student
	f := Form{Blueprint: b, Student: Student{s.ID, s.Name, s.ExtraTime, s.Class}, Code: j.Code}
	if err := f.Student.check(); err != nil {
		return Form{}, err
	}
	slots := b.Slots()
	if len(slots) != len(j.Items) || len(slots) > MostItems {
		return Form{}, fmt.Errorf("the form has %d items; its parts make %d", len(j.Items), len(slots))
	}
	for i, d := range j.Items {
		if d.Part != slots[i] {
			return Form{}, fmt.Errorf("item %d belongs to part %d; it would be %d", i+1, d.Part, slots[i])
		}
		f.Items = append(f.Items, Dealt(d))
	}
	if got := codeOf(f); got != j.Code {
		return Form{}, fmt.Errorf("its code is %s, but what it holds has the code %s: it was damaged or changed", shortened(j.Code), got)
	}
	return f, nil
}

// mostExtra bounds the factor on the time limit.
const mostExtra = 10

// check says what is wrong with a student.
func (s Student) check() error {
	switch {
	case s.ID == "" || !isLine(s.ID):
		return fmt.Errorf("the id is %s; it is one line of at most %d characters", shortened(s.ID), longestText)
	case !isLine(s.Name) || !isLine(s.Class):
		return fmt.Errorf("name and class are lines of at most %d characters", longestText)
	case !(s.ExtraTime >= 1 && s.ExtraTime <= mostExtra):
		return fmt.Errorf("the extra time is %v; it is a factor from 1 to %d", s.ExtraTime, mostExtra)
	}
	return nil
}

// Limit is the time the student has, in minutes; 0 is no limit.
func (f Form) Limit() float64 {
	return f.Blueprint.Minutes * math.Max(1, f.Student.ExtraTime)
}
