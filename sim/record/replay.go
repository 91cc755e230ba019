package record

import (
	"fmt"

	"cuesta/sim"
)

// Result says whether a recording ends where it says it did.
type Result struct {
	Same  bool     // it does, bit for bit
	Close bool     // it does, as near as anyone can read; see Seen.Close
	Stage Stage    // where it first differs; AtEnd when it does not
	Entry int      // the command that differs, from 1; 0 when none does
	Tick  sim.Tick // of the first difference, or of the end
	Cause error    // why the bench refused the command, if it did
}

// Stage is a part of a recording.
type Stage uint8

// The stages.
const (
	AtStart   Stage = iota // the fresh bench
	AtCommand              // one of the commands
	AtEnd                  // after the last command
)

// Replay runs a recording again. The error says that it cannot be run at all:
// its set-up is impossible (sim.ErrSetup) or its ticks go back (ErrFormat).
func Replay(r Recording) (Result, error) {
	return Watch(r, func(Entry, *sim.World) {})
}

// Watch runs a recording again as Replay does and shows the world after each
// command that the bench carries out. Look at the world, do not drive it.
func Watch(r Recording, after func(Entry, *sim.World)) (Result, error) {
	if err := r.order(); err != nil {
		return Result{}, err
	}
	w, err := sim.New(r.Setup)
	if err != nil {
		return Result{}, err
	}
	res := Result{Stage: AtEnd, Tick: r.End.Tick}
	if w.Hash() != r.Start {
		res = Result{Stage: AtStart}
	}
	for i, e := range r.Entries {
		advanceTo(w, e.Tick)
		err := w.Do(e.Command)
		if res.Stage == AtEnd && (err != nil || w.Hash() != e.Hash) {
			res = Result{Stage: AtCommand, Entry: i + 1, Tick: e.Tick, Cause: err}
		}
		if err != nil {
			return res, nil
		}
		after(e, w)
	}
	advanceTo(w, r.End.Tick)
	end := SeenIn(w.Observe())
	res.Close = end.Close(r.End.Seen)
	res.Same = res.Stage == AtEnd && w.Hash() == r.End.Hash && end == r.End.Seen
	return res, nil
}

// order says whether the ticks never go back.
func (r Recording) order() error {
	var last sim.Tick
	for i, e := range r.Entries {
		if e.Tick < last {
			return fmt.Errorf("%w: command %d is at tick %d, after one at %d", ErrFormat, i+1, e.Tick, last)
		}
		last = e.Tick
	}
	if r.End.Tick < last || r.End.Tick > LastTick {
		return fmt.Errorf("%w: the end is at tick %d, after a command at %d", ErrFormat, r.End.Tick, last)
	}
	return nil
}

func advanceTo(w *sim.World, t sim.Tick) { w.Advance(int(t - w.Tick())) }

// String is the result in a sentence or two.
func (r Result) String() string {
	at := fmt.Sprintf("at tick %d (%.1f s)", r.Tick, float64(r.Tick)/sim.TicksPerSecond)
	if r.Same {
		return "The recording ends where it says it did, " + at + "."
	}
	return r.difference(at) + r.closeness()
}

func (r Result) difference(at string) string {
	switch {
	case r.Stage == AtStart:
		return "The recording differs from the start on: its bench does not begin as it says."
	case r.Cause != nil:
		return fmt.Sprintf("The recording differs at command %d, %s: the bench refuses it, %v.", r.Entry, at, r.Cause)
	case r.Stage == AtCommand:
		return fmt.Sprintf("The recording differs from command %d on, %s.", r.Entry, at)
	}
	return "The recording differs after its last command: it does not end as it says, " + at + "."
}

// closeness tells a change from the last bits of another kind of machine.
func (r Result) closeness() string {
	if !r.Close {
		return ""
	}
	return " What can be read off at the end still agrees within 0.01°:" +
		" it comes from another kind of machine, or a part that does not matter was changed."
}
