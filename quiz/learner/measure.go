package learner

import (
	"math"
	"math/rand/v2"
	"slices"
	"strings"

	"cuesta/orient"
	"cuesta/quiz/item"
	"cuesta/quiz/mistake"
	"cuesta/sim"
	"cuesta/sim/record"
)

// measure does an item at the bench: takes both readings and writes them down.
func (d *desk) measure(b item.AtBench) error {
	setup := b.Setup()
	rec, err := record.Start(setup)
	if err != nil {
		return err
	}
	h := &hands{rec: rec, r: d.r}
	h.lookAround()
	d.bothReadings(h)
	d.evidence = mistake.ReadingsOf(rec.World())
	if h.err != nil {
		return h.err
	}
	var text strings.Builder
	err = rec.Recording().Write(&text)
	d.recording = text.String()
	return err
}

// bothReadings measures the rock that the hands have looked at.
func (d *desk) bothReadings(h *hands) {
	setup := h.rec.World().Setup()
	p := d.plan(h, tenth(setup.Field.Declination))
	z := d.strike(h, p)
	dip := d.dip(h, p)
	d.text = d.write(h, setup, z, dip)
	if d.leftOff(h) {
		d.made = append(d.made, mistake.LevelNotCentred)
	}
	h.do(sim.Command{Kind: sim.Note, Text: d.text})
}

// Measure takes both readings at a bench as it stands, with the mistake of the
// learner, notes them down there in the notation and returns what was noted. The
// same bench and seed give the same commands. It is for someone to watch: what is
// read is what the instrument shows, to the degree, and the
// lie of the rock is taken in by eye, without a turn of the instrument. The
// error is that of a bench that refuses a command.
func (l Learner) Measure(rec *record.Recorder, n orient.Notation, seed uint64) (string, error) {
	d := desk{Learner: l, r: rand.New(rand.NewPCG(seed, stream)), watched: true}
	d.part.Spec.Notation = n
	h := &hands{rec: rec, r: d.r}
	h.face(rec.World().Setup().Plane.Normal())
	if h.see().Seat != sim.OnEdge {
		h.do(sim.Command{Kind: sim.Place, Seat: sim.OnEdge})
	}
	if h.see().Dial.State == sim.NeedleLocked {
		h.act(sim.Free)
	}
	d.bothReadings(h)
	return d.text, h.err
}

// tenth is a declination as it is set on the ring.
func tenth(a orient.Angle) orient.Angle {
	return orient.Angle(math.Round(a.Degrees()*10)/10) * orient.Degree
}

// leftOff says that a hurried learner read the dial with the bubble off.
func (d *desk) leftOff(h *hands) bool {
	e, ok := h.rec.World().Reading(sim.OnEdge)
	return ok && !e.Shown.Round.Centred && d.Manner != Mistaken && !slices.Contains(d.made, mistake.LevelNotCentred)
}

// strike takes the reading of the dial.
func (d *desk) strike(h *hands, p plan) orient.Azimuth {
	if p.ringNeeded(h.see()) {
		h.turn(sim.Ring, p.ring)
	}
	switch p.needle {
	case tapped:
		d.aim(h, p)
		h.settle()
	case resting:
		d.aim(h, p)
		h.wait(9)
	case none:
		d.aim(h, p)
		h.wait(d.r.Float64())
	case glassed:
		d.elsewhere(h, p)
		h.turn(sim.Roll, 12*orient.Degree)
		h.swingTo(p.end)
		h.settle()
	case locked:
		d.elsewhere(h, p)
		h.act(sim.Lock)
		d.aim(h, p)
		h.wait(3)
	}
	h.act(sim.Read)
	return orient.AzimuthOf(d.read(h.see().Dial.North.Angle()))
}

// elsewhere lets the needle come to rest with the edge away from the strike.
func (d *desk) elsewhere(h *hands, p plan) {
	h.swingTo(p.end + h.either(10, 60))
	h.level(0)
	h.settle()
}

// aim lays the edge along the strike and levels the plate; who looks at the
// bubble tries until it stands in its ring.
func (d *desk) aim(h *hands, p plan) {
	for range 8 {
		if p.end == 0 {
			h.swingTo(h.plunging(p.plunge))
		} else {
			h.swingTo(orient.Half - h.plunging(p.plunge))
		}
		h.level(p.lean)
		h.wait(1)
		if p.loose || wellIn(h.see().Round) {
			return
		}
		p.plunge, p.lean = h.some(0.25), h.some(0.25)
	}
}

// wellIn says that the bubble stands in its ring with a margin, so that it
// will when it has come to rest.
func wellIn(l sim.RoundLevel) bool {
	const margin = 0.2 // of the ring's radius; it may stand 0.26 off the middle
	return l.Right*l.Right+l.Forward*l.Forward < margin*margin
}

// dip takes the reading of the arc.
func (d *desk) dip(h *hands, p plan) orient.Angle {
	h.do(sim.Command{Kind: sim.Place, Seat: sim.OnSide})
	h.upright()
	h.swingTo(orient.Right + p.aside)
	h.turn(sim.Roll, p.side)
	d.levelArm(h, p)
	h.act(sim.Read)
	arm := h.see().Arc.Arm
	if p.percent {
		return orient.Angle(math.Round(100*arm.Tan()+d.r.NormFloat64()*d.scatter().Degrees())) * orient.Degree
	}
	return max(0, min(orient.Right, d.read(arm)))
}

// levelArm turns the arm; who takes care tries until the bubble stands between
// its marks.
func (d *desk) levelArm(h *hands, p plan) {
	for range 8 {
		h.turn(sim.Arm, armLevel(h.see().Frame)+p.arm-h.see().Arc.Arm)
		h.wait(1.5)
		if d.Manner == Hurried || d.makes(mistake.TubeNotCentred) || h.see().Tube.Centred {
			return
		}
		p.arm = h.some(0.15)
	}
}

// armLevel is the angle of the arm at which its tube is level.
func armLevel(f sim.Frame) orient.Angle {
	plunge := orient.Asin(-f.Forward.Z).Abs()
	lean := orient.Atan2(math.Abs(f.Out.Z), math.Abs(f.Right.Z))
	return orient.Atan2(plunge.Sin(), plunge.Cos()*lean.Cos())
}

// read is a reading to the degree, with its scatter.
func (d *desk) read(a orient.Angle) orient.Angle {
	return orient.Angle(math.Round(a.Degrees()+d.off())) * orient.Degree
}

// off is what a reading is off by, in degrees; nothing where someone watches, who
// sees the scale too.
func (d *desk) off() float64 {
	off := d.r.NormFloat64() * d.scatter().Degrees()
	if d.watched {
		return 0
	}
	return off
}
