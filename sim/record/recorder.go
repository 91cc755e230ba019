package record

import (
	"errors"

	"cuesta/sim"
)

// ErrFull is returned when a recording has no room for another command. The
// world is then as it was.
var ErrFull = errors.New("the recording is full")

// Recorder drives a world and keeps what it did.
type Recorder struct {
	world   *sim.World
	start   uint64
	entries []Entry
}

// Start sets up a bench and begins its recording. The error wraps
// sim.ErrSetup.
func Start(s sim.Setup) (*Recorder, error) {
	w, err := sim.New(s)
	if err != nil {
		return nil, err
	}
	return &Recorder{world: w, start: w.Hash()}, nil
}

// World is the world being recorded. Look at it as you like, but drive it
// through the recorder.
func (r *Recorder) World() *sim.World { return r.world }

// Do carries out a command and keeps it; a command that is refused leaves no
// trace.
func (r *Recorder) Do(c sim.Command) error {
	if len(r.entries) >= MostEntries || r.world.Tick() >= LastTick {
		return ErrFull
	}
	if err := r.world.Do(c); err != nil {
		return err
	}
	r.entries = append(r.entries, Entry{Tick: r.world.Tick(), Command: trimmed(c), Hash: r.world.Hash()})
	return nil
}

// trimmed keeps of a command what its kind uses.
func trimmed(c sim.Command) sim.Command {
	t := sim.Command{Kind: c.Kind}
	switch {
	case c.Kind.Turns():
		t.Angle = c.Angle
	case c.Kind == sim.Place:
		t.Seat = c.Seat
	case c.Kind == sim.Note:
		t.Text = c.Text
	}
	return t
}

// Step lets one tick pass.
func (r *Recorder) Step() { r.Advance(1) }

// Advance lets n ticks pass; at LastTick time stands still.
func (r *Recorder) Advance(n int) {
	r.world.Advance(int(min(sim.Tick(n), LastTick-r.world.Tick())))
}

// Recording is what has been done so far, as a value of its own.
func (r *Recorder) Recording() Recording {
	w := r.world
	return Recording{
		Setup:   w.Setup(),
		Start:   r.start,
		Entries: append([]Entry(nil), r.entries...),
		End:     End{Tick: w.Tick(), Hash: w.Hash(), Seen: SeenIn(w.Observe())},
	}
}
