package sim

import "cuesta/orient"

// TicksPerSecond is the rate of the fixed step.
const TicksPerSecond = 120

// Tick counts fixed steps since the bench was set up.
type Tick int64

// Seat is the way the instrument rests on the rock.
type Seat uint8

// The seats.
const (
	OnEdge Seat = iota // a long edge on the rock, face up: for the strike
	OnSide             // the same edge, face vertical: for the dip
	OnLid              // hinged lid flush on the surface, body levelled
	OnBack             // flat on the surface: the sensor method
)

// Kind is what a command does.
type Kind uint8

// The kinds of command.
const (
	Idle      Kind = iota
	Place          // puts the instrument on the rock as Seat says; keeps the swing
	Swing          // turns it on the surface by Angle, clockwise seen from above
	Roll           // rolls it about the seated edge by Angle, right side down positive; OnLid opens the hinge by Angle
	Arm            // turns the inclination arm by Angle
	Flip           // turns it end for end
	Ring           // sets the declination on the dial to Angle, east positive
	Tap            // taps the case
	Lock           // holds the needle
	Free           // frees the needle
	Read           // the student takes the reading as it stands: its pose is kept
	Note           // the student writes Text; the world keeps it, quiz judges it
	Calibrate      // turns the sensor through all directions, so that it learns the field of its own iron
)

// Command is one act of the student. The zero value does nothing.
type Command struct {
	Kind  Kind
	Seat  Seat         // for Place
	Angle orient.Angle // for Swing, Roll, Arm, Ring
	Text  string       // for Note
}
