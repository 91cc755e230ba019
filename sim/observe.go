package sim

import (
	"math"

	"cuesta/orient"
	"cuesta/sim/instrument"
)

// Observe is what can be seen on the instrument now.
func (w *World) Observe() Observation {
	return Observation{
		Tick:     w.tick,
		Seat:     w.stance.seat,
		Seated:   w.stance.seated(),
		Round:    w.seeRound(),
		Tube:     w.seeTube(),
		Dial:     w.seeDial(),
		Arc:      w.seeArc(),
		Frame:    w.frame,
		Touching: w.stance.touching(w.rock),
		Lean:     w.seeLean(),
		Hinge:    w.stance.hinge,
		Sensor:   w.seeSensor(),
	}
}

func (w *World) seeRound() RoundLevel {
	l, s := w.parts.round, w.round.spot
	right, forward := l.InRings(s)
	return RoundLevel{Right: right, Forward: forward, Centred: l.Centred(s), AtWall: l.AtWall(s)}
}

func (w *World) seeTube() TubeLevel {
	l, m := w.parts.tube, w.tube.bubble
	return TubeLevel{Off: l.InHalfGaps(m), Centred: l.Centred(m), AtEnd: l.AtEnd(m)}
}

func (w *World) seeDial() Dial {
	a := w.needle.angle(w.frame)
	return Dial{
		Needle:  a,
		North:   instrument.Dial{Ring: w.stance.ring}.At(a),
		Ring:    w.stance.ring,
		Resting: w.needle.resting(w.parts.needle),
		State:   w.needle.state,
	}
}

func (w *World) seeArc() Arc {
	c := instrument.Arc{Arm: w.stance.arm}
	return Arc{Arm: c.Arm, Percent: c.Percent()}
}

func (w *World) seeSensor() Sensor {
	if w.stance.seat != OnBack {
		return Sensor{Calibrated: w.sensor.calibrated}
	}
	a := w.sensor.show(w.parts.sensor, w.frame, w.tick)
	return Sensor{
		Direction:  orient.AzimuthOf(a.Direction + w.stance.ring),
		Dip:        a.Dip,
		Calibrated: w.sensor.calibrated,
	}
}

func (w *World) seeLean() orient.Angle {
	return orient.Angle(math.Round(w.lean().Degrees())) * orient.Degree
}

// lean is η, the face off the vertical about the edge, face turned up
// positive, in [−π/2, π/2].
func (w *World) lean() orient.Angle {
	f := w.frame
	return orient.Atan2(f.Out.Z, math.Abs(f.Right.Z))
}

// read keeps the pose for the judge.
func (w *World) read() {
	s := w.stance.seat
	w.readings[s] = Reading{
		Tick:   w.tick,
		Seat:   s,
		Seated: w.stance.seated(),
		Swing:  w.stance.swing,
		Along:  orient.Asin(-w.frame.Forward.Z),
		Across: w.across(),
		Shown:  w.Observe(),
	}
	w.taken[s] = true
}

// across is the tilt of the face about the edge: off level on the edge, right
// side down positive, in (−π, π]; off the vertical on the side.
func (w *World) across() orient.Angle {
	if w.stance.seat == OnSide {
		return w.lean()
	}
	return orient.Atan2(-w.frame.Right.Z, w.frame.Out.Z)
}

// Reading is the pose at the last reading taken on the seat, and whether one
// was taken.
func (w *World) Reading(s Seat) (Reading, bool) {
	if int(s) >= seats {
		return Reading{}, false
	}
	return w.readings[s], w.taken[s]
}

// Notes are the answers written so far, oldest first, a copy.
func (w *World) Notes() []string { return append([]string(nil), w.notes...) }

// Pose is where the instrument stands on the rock. It knows the truth, so it
// goes to the picture and to the judge, never to a screen as figures.
type Pose struct {
	Seat   Seat
	Seated Side
	Swing  orient.Angle        // φ in (−π, π]
	Roll   [seats]orient.Angle // of each seat: the plate above the rock about the seated edge or the hinge, [0, π]
	Arm    orient.Angle        // [0, π/2]
	Ring   orient.Angle        // (−π, π]
	Frame  Frame
}

// Pose is where the instrument stands on the rock.
func (w *World) Pose() Pose {
	t := w.stance
	p := Pose{Seat: t.seat, Seated: t.seated(), Swing: t.swing, Arm: t.arm, Ring: t.ring, Frame: w.frame}
	for _, s := range [...]Seat{OnEdge, OnSide, OnLid, OnBack} {
		t.seat = s
		p.Roll[s] = t.above(w.rock)
	}
	return p
}
