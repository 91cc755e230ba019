package spoken

import (
	"strings"

	"cuesta/sim"
)

// Moves gathers what is done to an instrument, so that a run of small moves is
// told in one go, in the sentences of the bench in words. The zero value is
// nothing done.
type Moves struct{ made []gathered }

// gathered is a run of moves of one kind.
type gathered struct {
	move
	back bool // it has moved, and may be back where it was
}

// Add takes in a command that has been carried out. What a look tells of itself
// is left out: the seat, the dial as it is set, the lock.
func (m *Moves) Add(c sim.Command, from, to sim.Pose, before, after sim.Observation) {
	switch c.Kind {
	case sim.Swing, sim.Roll, sim.Arm, sim.Flip, sim.Tap, sim.Calibrate:
		m.add(moveOf(c, from, to, before, after))
	case sim.Idle, sim.Place, sim.Ring, sim.Lock, sim.Free, sim.Read, sim.Note:
	}
}

func (m *Moves) add(n move) {
	for i := len(m.made) - 1; i >= 0 && m.made[i].kind != sim.Flip; i-- {
		if g := &m.made[i]; g.kind == n.kind && g.after.Seat == n.after.Seat {
			g.back = g.back || g.by.Abs() >= least
			g.by, g.after = g.by+n.by, n.after
			return
		}
	}
	m.made = append(m.made, gathered{move: n})
}

// Any says whether there is anything to tell.
func (m *Moves) Any() bool { return len(m.made) > 0 }

// Tell says what has been done since it was last told.
func (m *Moves) Tell() string {
	var out []string
	for _, g := range m.made {
		out = append(out, g.words())
	}
	m.made = nil
	return strings.Join(out, " ")
}

func (g gathered) words() string {
	if g.back && g.by.Abs() < least {
		return "To and fro, and back where it was."
	}
	return g.move.words() + g.stopped()
}
