package lesson

import (
	"fmt"
	"math"

	"cuesta/orient"
	"cuesta/scenes/spoken"
	"cuesta/sim"
	"cuesta/sim/record"
)

// What takes how long, in ticks of the bench.
const (
	moving   = sim.TicksPerSecond      // a line or a pose, until the bubble follows
	settling = 10 * sim.TicksPerSecond // after the last move, until the needle rests
)

// script is what happens at the bench in a step: commands at their ticks.
type script struct {
	cues   []record.Entry
	told   sim.Tick // the step is told then
	end    sim.Tick // and all is at rest; time stands still
	hasten bool     // long waits may pass faster, for someone who watches
}

// rehearsal works out a script on a bench of its own.
type rehearsal struct {
	rec *record.Recorder
	err error
}

// rehearse works out what a step does at a bench that stands as recorded. seed
// is that of the simulated student.
func rehearse(from record.Recording, s Step, seed uint64) (script, error) {
	rec, err := record.Start(from.Setup)
	if err != nil {
		return script{}, err
	}
	h := rehearsal{rec: rec}
	for _, e := range from.Entries {
		h.rec.Advance(int(e.Tick - rec.World().Tick()))
		h.do(e.Command)
	}
	h.rec.Advance(int(from.End.Tick - rec.World().Tick()))
	began := rec.World().Tick()
	h.step(s, seed)
	out := script{cues: rec.Recording().Entries[len(from.Entries):], told: rec.World().Tick(), hasten: s.Mistake != ""}
	out.end = out.told
	if out.told > began {
		out.end += settling
	}
	return out, h.err
}

func (h *rehearsal) step(s Step, seed uint64) {
	if s.Pose != nil {
		h.put(*s.Pose)
		h.rec.Advance(moving)
	}
	if s.Mistake != "" && h.err == nil {
		l, ok := studentOf(s.Mistake)
		if !ok {
			h.err = fmt.Errorf("there is no mistake %q", s.Mistake)
			return
		}
		_, h.err = l.Measure(h.rec, orient.AzimuthDip, seed)
		h.rec.Advance(moving)
		if s.View.onEdge() {
			h.asRead()
		}
	}
	for _, text := range s.Do {
		h.line(text)
	}
	h.rec.Advance(int(math.Round(s.Needle * sim.TicksPerSecond)))
}

// asRead puts the instrument back on its edge, as it stood when the dial was
// read, for a class that is to see what was wrong there.
func (h *rehearsal) asRead() {
	r, ok := h.rec.World().Reading(sim.OnEdge)
	if !ok {
		return
	}
	h.do(sim.Command{Kind: sim.Place, Seat: sim.OnEdge})
	h.turn(sim.Swing, (r.Swing - h.rec.World().Pose().Swing).Wrapped())
	f := h.rec.World().Pose().Frame
	h.turn(sim.Roll, (r.Across - orient.Atan2(-f.Right.Z, f.Out.Z)).Wrapped())
	h.rec.Advance(moving)
}

func (h *rehearsal) do(c sim.Command) {
	if h.err == nil {
		h.err = h.rec.Do(c)
	}
}

func (h *rehearsal) turn(k sim.Kind, a orient.Angle) { h.do(sim.Command{Kind: k, Angle: a}) }

// put brings the instrument into a pose.
func (h *rehearsal) put(p Pose) {
	seat := sim.OnEdge
	if p.Seat == "side" {
		seat = sim.OnSide
	}
	h.do(sim.Command{Kind: sim.Place, Seat: seat})
	w := h.rec.World()
	h.turn(sim.Swing, (p.Swing - w.Pose().Swing).Wrapped())
	f := w.Pose().Frame
	if seat == sim.OnEdge {
		h.turn(sim.Roll, (p.Roll - orient.Atan2(-f.Right.Z, f.Out.Z)).Wrapped())
		return
	}
	lean := p.Roll - orient.Atan2(f.Out.Z, math.Abs(f.Right.Z))
	if w.Pose().Seated == sim.RightSide {
		lean = -lean
	}
	h.turn(sim.Roll, lean)
	h.turn(sim.Arm, p.Arm-w.Pose().Arm)
}

// line carries out a line of the spoken bench.
func (h *rehearsal) line(text string) {
	l, err := spoken.Parse(text)
	if err != nil && h.err == nil {
		h.err = err
	}
	if l.Word == spoken.Wait {
		h.rec.Advance(l.Ticks)
		return
	}
	if c := l.Command(); c.Kind != sim.Idle {
		h.do(c)
	}
	if l.Word != spoken.Read {
		h.rec.Advance(moving)
	}
}
