package lesson

import "cuesta/orient"

// Lesson is one lecture.
type Lesson struct {
	Name    string // of its file without the ending: "two-readings"
	Title   string
	Summary string // one sentence
	Minutes int    // how long it takes when it is told
	Notes   string // for the presenter, before the first step
	Seed    uint64 // of the stone, the needle and the simulated student
	Plane   orient.Plane
	// Declination of the place, east positive; the dial begins set to it. The
	// field is 20 µT horizontal.
	Declination orient.Angle
	Steps       []Step
}

// Step is what happens when the presenter goes on once. Its parts happen in the
// order of the fields.
type Step struct {
	Plane   *orient.Plane // another slab
	Pose    *Pose         // the instrument is put there
	Mistake string        // the name of a mistake that the simulated student makes now, live; "careful" makes none; the draws differ from step to step
	Do      []string      // lines of the spoken bench, a second each
	Needle  float64       // seconds in which needle and bubbles run on
	Wait    float64       // seconds before the next step may follow by itself; 0 waits for the presenter
	Say     string        // the one line on the screen; "" leaves the last
	Show    []Thing       // what appears
	Hide    []Thing       // what goes
	Ask     string        // a question on the screen in place of Say
	Answer  string        // shown when the presenter reveals
	View    View
	Notes   string // what the presenter may tell
}

// Pose is where the instrument is put. Angles left out in the file are 0.
type Pose struct {
	Seat  string       // "edge" or "side"
	Swing orient.Angle // from the right-hand end of the strike, clockwise seen from above
	Roll  orient.Angle // off level, right side down; on its side, the lean
	Arm   orient.Angle // on its side
}

// Thing is something that can be shown or hidden.
type Thing uint8

// The things. Numbers, dial readings and answers are hidden until they are
// shown or revealed.
const (
	Water      Thing = iota // the level sheet and its shoreline on the rock
	Strike                  // the strike line
	Arrow                   // straight down the dip
	Hand                    // the right hand on the slab
	Numbers                 // strike and dip in figures
	Ball                    // a ball that rolls down the dip
	Instrument              // the plate
	Levels                  // the magnified level
	Scale                   // the magnified dial or arc
	Curve                   // strike error against dip, with the point of this slab
	Ends                    // the azimuths of both ends of the strike line
	Reading                 // what the dial or the arc shows, in figures
	Student                 // what the simulated student wrote, and the verdict
	Things                  // how many there are
)

// View is where the eye goes.
type View uint8

// The views.
const (
	ViewAsItIs View = iota
	ViewStrike      // as for reading the dial
	ViewDip         // as for reading the arc
	ViewClose
	ViewAbove // straight down: the map
)
