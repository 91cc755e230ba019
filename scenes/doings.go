package scenes

import (
	"slices"

	"cuesta/scenes/describe"
	"cuesta/scenes/spoken"
	"cuesta/sim"
)

// doings are what has been done to the instrument, gathered until a run of small
// moves is over, and what was last told of it.
type doings struct {
	run   spoken.Moves
	since int // ticks since the last move
	words string
	times int // told so far
}

// runOver is the pause that ends a run, 0.5 s: longer than a key waits before
// it repeats.
const runOver = sim.TicksPerSecond / 2

// add takes in a command that has been carried out.
func (d *doings) add(c sim.Command, from, to sim.Pose, before, after sim.Observation) {
	d.run.Add(c, from, to, before, after)
	d.since = 0
}

// pass lets time go by, and tells a run that is over.
func (d *doings) pass(ticks int) {
	if !d.run.Any() {
		return
	}
	if d.since += ticks; d.since >= runOver {
		d.words, d.times = d.run.Tell(), d.times+1
	}
}

// idDone is the sentence on what has been done.
const idDone describe.ID = 60

// tell puts what was done last behind the instrument, for those who do not see
// it.
func (d *doings) tell(t *describe.Tree) {
	t.Acting = d.run.Any()
	if n := t.Find(idDone); n != nil {
		n.Name, n.Again = d.words, d.times
		return
	}
	kids := t.Root.Children
	i := slices.IndexFunc(kids, func(n describe.Node) bool { return n.ID == idInstrument })
	if i < 0 || d.words == "" {
		return
	}
	said := describe.Node{ID: idDone, Role: describe.Status, Name: d.words, Again: d.times, Bounds: kids[i].Bounds}
	t.Root.Children = slices.Insert(kids, i+1, said)
}
