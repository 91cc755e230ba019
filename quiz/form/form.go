package form

import (
	"cuesta/orient"
	"cuesta/quiz"
	"cuesta/quiz/item"
	"cuesta/sim"
)

// Blueprint is what an instructor writes: what a quiz asks, and how it is
// marked.
type Blueprint struct {
	Title      string
	Notation   orient.Notation
	Place      string // in words
	Site       string // as geomag.ParseSite reads it, or ""
	Date       string // as geomag.ParseYear reads it, or ""
	Field      sim.Field
	RingPreset bool // the declination is set on the dial for the student
	Tolerance  quiz.Tolerance
	PassShare  float64 // of the points, in [0, 1]
	Minutes    float64 // time limit; 0 is none
	Due        string  // RFC 3339, or "": from then on no answer is taken
	Cautions   bool    // the usual cautions are printed on paper forms
	Seed       uint64
	Parts      []Part
}

// Part is a run of items of one kind.
type Part struct {
	Kind     string
	Count    int
	Points   float64 // of each item
	Attempts int     // answers that may be given to an item; at least 1
	HintCost float64 // share of the item's points that a hint costs
	Spec     item.Spec
}

// Student is a line of the roster.
type Student struct {
	ID        string
	Name      string
	ExtraTime float64 // factor on the time limit, at least 1
	Class     string  // students of one class share no plane; "" is a class too
}

// Form is what one student is dealt. It keeps specifications and seeds; the
// items follow from them.
//
// A form holds what the simulation needs: who reads the file and knows this
// program can find the plane on the bench, and the answers of the other items.
// Where that matters, let the quiz be sat under supervision.
type Form struct {
	Blueprint Blueprint
	Student   Student
	Code      string // short, for sheets and files; it follows from the rest
	Items     []Dealt
}

// Dealt is one item of a form.
type Dealt struct {
	Part int
	Seed uint64
}

// Submission is what comes back. Its recordings can be run again and tell
// whether a reading was taken; who took it they cannot tell.
type Submission struct {
	Form     Form
	Answers  []Answer // one an item, in their order
	Started  string   // RFC 3339, from the clock of the machine that was used, or ""
	Finished string
}

// Answer is what a student did with one item.
type Answer struct {
	Texts     []string // as typed, one an attempt, the last counts
	Hints     int      // taken
	Flagged   bool
	Recording string // of the bench, as sim/record writes it, or ""
}
