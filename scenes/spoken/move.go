package spoken

import (
	"cmp"

	"cuesta/orient"
	"cuesta/sim"
)

// move is one thing done to an instrument.
type move struct {
	kind  sim.Kind
	by    orient.Angle // as far as it went
	after sim.Observation
}

// moveOf is a command that has been carried out.
func moveOf(c sim.Command, from, to sim.Pose, before, after sim.Observation) move {
	m := move{kind: c.Kind, by: c.Angle, after: after}
	switch c.Kind {
	case sim.Roll:
		m.by = rollOf(from, to)
	case sim.Arm:
		m.by = after.Arc.Arm - before.Arc.Arm
	case sim.Idle, sim.Place, sim.Swing, sim.Flip, sim.Ring, sim.Tap, sim.Lock, sim.Free, sim.Read, sim.Note, sim.Calibrate:
	}
	return m
}

// rollOf is how far the instrument was rolled, right side down or hinge open.
func rollOf(from, to sim.Pose) orient.Angle {
	a := to.Roll[to.Seat] - from.Roll[to.Seat]
	if to.Seat != sim.OnLid && to.Seated == sim.Left {
		return -a
	}
	return a
}

// words say what has been done, as far as it went.
func (m move) words() string {
	switch m.kind {
	case sim.Place:
		return seated(m.after)
	case sim.Swing:
		return cmp.Or(unmoved("The plate", m.by), turned("Swung", m.by, "clockwise seen from above", "anticlockwise seen from above"))
	case sim.Roll:
		return rolled(m.by, m.after)
	case sim.Arm:
		return armTurned(m.by, m.after)
	case sim.Flip:
		return "Turned end for end."
	case sim.Ring:
		return "The dial is set to a declination of " + ringSet(m.after) + "."
	case sim.Tap:
		return "Tapped the case."
	case sim.Lock:
		return "The needle is locked."
	case sim.Free:
		return freed(m.after)
	case sim.Calibrate:
		return "The sensor was turned through all directions and knows its own iron now."
	case sim.Idle, sim.Read, sim.Note:
	}
	return ""
}

// became says what has come of a move that a look shows too.
func (m move) became(before sim.Observation) string {
	switch {
	case m.kind == sim.Roll && m.after.Seat == sim.OnSide:
		return " " + face(m.after)
	case (m.kind == sim.Swing || m.kind == sim.Flip) && before.Seated != m.after.Seated:
		return " The plate now stands on its " + edge(m.after.Seated) + " long edge."
	}
	return ""
}

func rolled(a orient.Angle, after sim.Observation) string {
	switch after.Seat {
	case sim.OnSide:
		return cmp.Or(unmoved("The plate", a), "Rolled "+fine(a)+"°.")
	case sim.OnLid:
		return cmp.Or(unmoved("The hinge", a), turned("The hinge turned", a, "forward end up", "forward end down"))
	case sim.OnEdge, sim.OnBack:
	}
	return cmp.Or(unmoved("The plate", a), turned("Rolled", a, "right side down", "left side down"))
}

// stopped says that a roll can go no further.
func (m move) stopped() string {
	switch {
	case m.kind != sim.Roll || !m.after.Touching:
		return ""
	case m.after.Seat == sim.OnLid:
		return " It is at its stop."
	}
	return " The plate touches the rock and goes no further that way."
}

func armTurned(a orient.Angle, after sim.Observation) string {
	end := " Its index end went up."
	if (a > 0) != (after.Seated == sim.Left) {
		end = " Its index end went down."
	}
	text := cmp.Or(unmoved("The arm", a), turned("The arm turned", a, "away from the seated edge", "towards the seated edge")+end)
	if after.Arc.Arm <= 0 || after.Arc.Arm >= orient.Right {
		text += " It is at its stop."
	}
	return text
}
