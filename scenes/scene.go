package scenes

import (
	"cuesta/scenes/describe"
	"cuesta/scenes/draw"
	"cuesta/scenes/input"
	"cuesta/sim"
)

// Scene is one screen and what can be done on it. Every front end drives a
// scene by Update and reads Picture or Description; none of the three is called
// while another runs.
type Scene interface {
	// Update takes one frame of input, moves time on and returns the commands
	// that were carried out at a bench.
	Update(input.Frame) []sim.Command
	// Picture draws the screen.
	Picture(*draw.List)
	// Description is the same screen in words. It holds until the next Update.
	Description() *describe.Tree
	// Close keeps what is to be kept; it is called once, at the end.
	Close() error
}

// Chooser is a scene whose settings can be asked for and changed.
type Chooser interface {
	Settings() Settings
	Choose(Settings)
}

// Observer is a scene with an instrument that can be heard.
type Observer interface {
	// Observation is the instrument as it stands; false where none is on the
	// screen.
	Observation() (sim.Observation, bool)
}

// Guest is a scene that can be left for the hall it was opened from.
type Guest interface {
	// Leaves makes the scene offer the way back; leave is called when it is
	// taken.
	Leaves(leave func())
}

var (
	_ Scene    = (*Bench)(nil)
	_ Scene    = (*Paper)(nil)
	_ Chooser  = (*Bench)(nil)
	_ Chooser  = (*Paper)(nil)
	_ Observer = (*Bench)(nil)
	_ Observer = (*Paper)(nil)
	_ Guest    = (*Bench)(nil)
	_ Guest    = (*Paper)(nil)
)
