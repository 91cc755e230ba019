package spoken

import (
	"strings"

	"cuesta/scenes/session"
	"cuesta/sim"
)

// Glance says where everything is on a bench where this is to be seen, as the
// line look does, for front ends that describe the same bench.
func Glance(s *session.Session, o sim.Observation) string { return look(s, o) }

// Shown says what scale and level show, as the lines read and bubble do.
func Shown(s *session.Session) string {
	o := s.World().Observe()
	if o.Seat == sim.OnBack { // there both are the same
		return reading(o)
	}
	return reading(o) + " " + bubble(o)
}

// Reading says what the scale shows, as the line read does.
func Reading(s *session.Session) string { return reading(s.World().Observe()) }

// Level says where the bubble of the level in use is, as Glance does.
func Level(o sim.Observation) string { return bubble(o) }

// Hinge says how far the hinge of the lid is open, as Glance does.
func Hinge(s *session.Session) string { return hinge(s.World().Observe()) }

// Needle says how the needle is, as Glance does; "" where it is not looked at.
func Needle(s *session.Session) string {
	o := s.World().Observe()
	if o.Seat == sim.OnSide || o.Seat == sim.OnBack {
		return ""
	}
	return strings.TrimSpace(needleAtAGlance(o.Dial))
}
