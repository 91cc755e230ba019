package grade

import (
	"fmt"
	"strings"

	"cuesta/orient"
	"cuesta/quiz/item"
	"cuesta/quiz/mistake"
	"cuesta/sim"
	"cuesta/sim/record"
)

// Bounds of a recording that is run again, so that no file takes hours: more
// commands than anyone gives at one slab, and two days at one bench.
const (
	mostCommands = 20_000
	lastTick     = 48 * 3600 * sim.TicksPerSecond
)

// bench is what the recording of one bench led to when it was run again.
type bench struct {
	evidence item.Evidence
	strikes  []orient.Azimuth // of every reading that shows one, right-hand or not
	dips     []orient.Angle   // likewise, in [0, π/2]
	ran      bool             // it was run, on the bench of the form
	remarks  []Remark
}

// rerun runs a recording again on the bench it should be of. The readings are
// those of the bench as it went, whatever the recording says of them.
func rerun(text string, setup sim.Setup) bench {
	var b bench
	if text == "" {
		b.remark(NoRecording, "")
		return b
	}
	r, err := record.Read(strings.NewReader(text))
	switch {
	case err != nil:
		b.remark(RecordingUnread, "("+err.Error()+")")
	case len(r.Entries) > mostCommands:
		b.remark(RecordingUnread, fmt.Sprintf("(it has %d commands; at most %d are run)", len(r.Entries), mostCommands))
	case r.End.Tick > lastTick:
		b.remark(RecordingUnread, "(it lasts more than two days)")
	case r.Setup != setup:
		b.remark(RecordingElsewhere, "")
	default:
		b.run(r)
	}
	return b
}

func (b *bench) remark(k RemarkKind, detail string) {
	b.remarks = append(b.remarks, Remark{Kind: k, Detail: detail})
}

func (b *bench) run(r record.Recording) {
	res, err := record.Watch(r, func(e record.Entry, w *sim.World) {
		if e.Command.Kind == sim.Read {
			b.take(w)
		}
	})
	switch {
	case err != nil:
		b.remark(RecordingUnread, "("+err.Error()+")")
		b.evidence.Watched = false // what was read later is not known
		return
	case !res.Same:
		b.remark(RecordingDiffers, "("+differs(res)+")")
	}
	b.ran, b.evidence.Watched = true, true
}

// differs says where, shortly.
func differs(r record.Result) string {
	s := "at its end"
	switch r.Stage {
	case record.AtStart:
		s = "from its start"
	case record.AtCommand:
		s = fmt.Sprintf("from command %d", r.Entry)
	case record.AtEnd:
	}
	if r.Close {
		s += ", though all that can be read off at the end agrees within 0.01°"
	}
	return s
}

// take keeps the reading that was just taken.
func (b *bench) take(w *sim.World) {
	seat := w.Pose().Seat
	r, ok := w.Reading(seat)
	if !ok {
		return
	}
	b.evidence = mistake.ReadingsOf(w)
	switch seat {
	case sim.OnEdge:
		b.strikes = append(b.strikes, trueNorth(r, w))
	case sim.OnSide:
		b.dips = append(b.dips, r.Shown.Arc.Arm)
	case sim.OnLid:
		b.strikes = append(b.strikes, trueNorth(r, w))
		b.dips = append(b.dips, acute(r.Shown.Hinge))
	case sim.OnBack:
		turn := w.Setup().Field.Declination - r.Shown.Dial.Ring
		b.strikes = append(b.strikes, r.Shown.Sensor.Direction.Add(turn-orient.Right))
		b.dips = append(b.dips, acute(r.Shown.Sensor.Dip))
	}
}

// trueNorth is the azimuth read, with what the ring leaves out of the
// declination added, as a student may do on paper.
func trueNorth(r sim.Reading, w *sim.World) orient.Azimuth {
	return r.Shown.Dial.North.Add(w.Setup().Field.Declination - r.Shown.Dial.Ring)
}

func acute(a orient.Angle) orient.Angle {
	if a > orient.Right {
		return orient.Half - a
	}
	return a
}
