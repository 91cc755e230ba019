package sim

import (
	"math"

	"cuesta/orient"
	"cuesta/sim/instrument"
)

// Side names a long edge of the instrument, seen with the forward end away
// from you.
type Side uint8

// The long edges.
const (
	Left Side = iota
	RightSide
)

// NeedleState says what holds the needle.
type NeedleState uint8

// The states of the needle.
const (
	NeedleFree    NeedleState = iota
	NeedleRubbing             // the case is tilted beyond the clearance: the needle touches the glass and stays
	NeedleLocked              // held by the lock
)

// Observation is what can be seen on the instrument at one tick, without the
// truth about the rock.
type Observation struct {
	Tick   Tick
	Seat   Seat
	Seated Side // the long edge that stands on the rock; Left for the flat seats
	Round  RoundLevel
	Tube   TubeLevel // meaningful OnSide only
	Dial   Dial
	Arc    Arc // meaningful OnSide only
	Frame  Frame
	// Touching says that the plate lies against the rock: it cannot be rolled
	// further that way.
	Touching bool
	// Lean is how far the face is off the vertical about the edge, face turned
	// up positive, to the nearest degree as an eye sees it; meaningful OnSide
	// only.
	Lean orient.Angle
	// Hinge is the angle between lid and body on the scale of the hinge, in
	// [0, π]: the dip, when the body is level. Meaningful OnLid only.
	Hinge  orient.Angle
	Sensor Sensor // meaningful OnBack only
}

// Sensor is what a sensor lying flat on the surface shows. It settles ten times
// a second; its noise does not rest.
type Sensor struct {
	Direction  orient.Azimuth // of dip, with the declination set on the ring added
	Dip        orient.Angle   // [0, π]
	Calibrated bool           // the field of its own iron has been taken out
}

// Degrees are the figures it shows, whole degrees: the direction in [0, 360).
func (s Sensor) Degrees() (direction, dip int) {
	return instrument.Graduated(s.Direction), int(math.Round(s.Dip.Degrees()))
}

// RoundLevel is the round level: the offset of the bubble in radii of the
// marked ring, positive to the right and forward. The bubble runs to the high
// side.
type RoundLevel struct {
	Right, Forward float64
	Centred        bool // wholly inside the ring
	AtWall         bool // the bubble touches the wall
}

// TubeLevel is the tube level on the arm: the offset of the bubble towards the
// index end, in half gaps between the marks. The bubble runs to the high end: a
// bubble at the index end asks for a smaller angle of the arm with the left
// edge seated, for a wider one with the right edge, where the arc hangs down.
type TubeLevel struct {
	Off     float64
	Centred bool // wholly between the marks
	AtEnd   bool // the bubble touches an end of the tube
}

// Dial is the graduated circle and the needle in it.
type Dial struct {
	Needle  orient.Angle   // the north end in the body, clockwise from forward, (−π, π]
	North   orient.Azimuth // what the scale shows at the north end, before rounding to its graduation
	Ring    orient.Angle   // the declination set on the dial, east positive
	Resting bool
	State   NeedleState
}

// Degree is the number read at the north end, to the nearest degree, in
// [0, 360).
func (d Dial) Degree() int { return instrument.Graduated(d.North) }

// Arc is the inclination arm on its two scales.
type Arc struct {
	Arm     orient.Angle // from the seated edge, [0, π/2]; the degree scale shows it
	Percent float64      // 100·tan(Arm), what the percent scale shows; +Inf at 90°
}

// Degree is the number read on the degree scale, to the nearest degree.
func (a Arc) Degree() int { return instrument.Arc{Arm: a.Arm}.Degree() }

// Frame is the body in the world: forward along the long edge, right, and out
// of the face; (Right, Forward, Out) is right-handed and orthonormal.
type Frame struct {
	Forward, Right, Out orient.Vec
}

// Reading is the pose at the moment the student took a reading. It knows the
// truth, so it goes to the judge and never to the screen.
type Reading struct {
	Tick   Tick
	Seat   Seat
	Seated Side
	Swing  orient.Angle // φ from the right-hand strike towards the dip, in the surface
	Along  orient.Angle // β: how far the forward end of the edge points down, [−π/2, π/2]
	Across orient.Angle // tilt of the face about the edge: OnEdge right side down positive; OnSide η, lean of the face off the vertical, face turned up positive
	Shown  Observation
}
