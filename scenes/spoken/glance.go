package spoken

import "cuesta/scenes/session"

// Look says where everything is on a bench, as the line look does, for front
// ends that describe the same bench.
func Look(s *session.Session) string { return (&Bench{ses: s}).look() }
