package sim

import (
	"math"

	"cuesta/orient"
)

// hasher is FNV-1a over 64 bits.
type hasher uint64

// Constants of FNV-1a, 64 bits (draft-eastlake-fnv).
const (
	fnvOffset hasher = 14695981039346656037
	fnvPrime  hasher = 1099511628211
)

func (h *hasher) byte(b byte) { *h = (*h ^ hasher(b)) * fnvPrime }

func (h *hasher) bits(u uint64) {
	for range 8 {
		h.byte(byte(u))
		u >>= 8
	}
}

func (h *hasher) number(x float64) { h.bits(math.Float64bits(x)) }

func (h *hasher) angles(as ...orient.Angle) {
	for _, a := range as {
		h.number(a.Radians())
	}
}

func (h *hasher) text(s string) {
	h.bits(uint64(len(s)))
	for i := range len(s) {
		h.byte(s[i])
	}
}

func (h *hasher) flag(b bool) {
	if b {
		h.byte(1)
	} else {
		h.byte(0)
	}
}

// Hash is FNV-1a over the bits of the whole state, set-up, readings and notes
// included: equal worlds have equal hashes, on every target.
func (w *World) Hash() uint64 {
	h := fnvOffset
	w.setup.hash(&h)
	h.bits(uint64(w.tick))
	w.stance.hash(&h)
	w.round.hash(&h)
	h.number(w.tube.bubble.At)
	h.number(w.tube.bubble.Rate)
	w.needle.hash(&h)
	w.sensor.hash(&h)
	for i := range w.readings {
		h.flag(w.taken[i])
		w.readings[i].hash(&h)
	}
	h.bits(uint64(len(w.notes)))
	h.bits(uint64(w.written))
	return uint64(h)
}

func (s Setup) hash(h *hasher) {
	h.bits(s.Seed)
	h.angles(s.Plane.Strike.Angle(), s.Plane.Dip, s.Field.Declination, s.Field.Inclination, s.Ring)
	h.number(s.Field.Horizontal)
	h.flag(s.Plane.Overturned)
	h.byte(byte(s.Balance))
	h.byte(byte(s.Tool))
}

func (t stance) hash(h *hasher) {
	h.byte(byte(t.seat))
	h.angles(t.swing, t.edge, t.lean, t.hinge, t.arm, t.ring)
}

func (r round) hash(h *hasher) {
	h.number(r.spot.Right.At)
	h.number(r.spot.Right.Rate)
	h.number(r.spot.Forward.At)
	h.number(r.spot.Forward.Rate)
}

func (d needle) hash(h *hasher) {
	h.byte(byte(d.state))
	h.angles(d.bearing.At, d.bearing.Rate, d.held)
	h.bits(uint64(d.tremble))
}

func (s sensor) hash(h *hasher) {
	h.number(s.known.X)
	h.number(s.known.Y)
	h.number(s.known.Z)
	h.flag(s.calibrated)
	h.bits(s.times)
}

func (r Reading) hash(h *hasher) {
	h.bits(uint64(r.Tick))
	h.byte(byte(r.Seat))
	h.byte(byte(r.Seated))
	h.angles(r.Swing, r.Along, r.Across)
	r.Shown.hash(h)
}

func (o Observation) hash(h *hasher) {
	h.number(o.Round.Right)
	h.number(o.Round.Forward)
	h.number(o.Tube.Off)
	h.angles(o.Dial.Needle, o.Dial.North.Angle(), o.Dial.Ring, o.Arc.Arm, o.Hinge)
	h.angles(o.Sensor.Direction.Angle(), o.Sensor.Dip)
	h.byte(byte(o.Dial.State))
	h.flag(o.Dial.Resting)
}
