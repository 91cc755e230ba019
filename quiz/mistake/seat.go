package mistake

import (
	"cuesta/orient"
	"cuesta/sim"
)

// strikeSeat and dipSeat are the seats of the last reading that shows the part
// and can be used.
func (e Evidence) strikeSeat() (sim.Seat, bool) { return e.last(sim.OnEdge, sim.OnLid, sim.OnBack) }

func (e Evidence) dipSeat() (sim.Seat, bool) { return e.last(sim.OnSide, sim.OnLid, sim.OnBack) }

func (e Evidence) last(seats ...sim.Seat) (last sim.Seat, ok bool) {
	var at sim.Tick
	for _, s := range seats {
		if r, usable := e.usable(s); usable && (!ok || r.Tick > at) {
			last, at, ok = s, r.Tick, true
		}
	}
	return last, ok
}

// usable is the reading on a seat, and whether it is there and can be used.
func (e Evidence) usable(s sim.Seat) (sim.Reading, bool) {
	switch s {
	case sim.OnEdge:
		return e.Edge, e.HasEdge && posed(e.Edge)
	case sim.OnSide:
		return e.Side, e.HasSide && finite(e.Side.Along, e.Side.Across, e.Side.Shown.Arc.Arm)
	case sim.OnLid:
		return e.Lid, e.HasLid && posed(e.Lid) && finite(e.Lid.Shown.Hinge)
	case sim.OnBack:
		v := e.Back.Shown.Sensor
		return e.Back, e.HasBack && posed(e.Back) && finite(v.Direction.Angle(), v.Dip)
	}
	return sim.Reading{}, false
}

// posed says whether a reading has a pose and a dial that can be used.
func posed(r sim.Reading) bool {
	f, d := r.Shown.Frame.Forward, r.Shown.Dial
	return finite(d.North.Angle(), d.Ring, orient.Angle(f.X), orient.Angle(f.Y)) && (f.X != 0 || f.Y != 0)
}

// trend is the azimuth of the forward end.
func trend(r sim.Reading) orient.Azimuth {
	f := r.Shown.Frame.Forward
	return orient.AzimuthOf(orient.Atan2(f.X, f.Y))
}
