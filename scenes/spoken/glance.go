package spoken

import "cuesta/scenes/session"

// Glance says where everything is on a bench, as the line look does, for front
// ends that describe the same bench.
func Glance(s *session.Session) string { return (&Bench{ses: s}).look() }
