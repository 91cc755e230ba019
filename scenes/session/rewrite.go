package session

import "cuesta/orient"

// Rewritten is what stands in the notebook, read in notation from, as the same
// plane is written in notation to. It is left as it stands where it is in that
// notation already, and is not ok where it does not read as a whole plane.
func Rewritten(text string, from, to orient.Notation) (s string, ok bool) {
	e, err := orient.Parse(text, from)
	if err != nil {
		return text, false
	}
	if same, err := orient.Parse(text, to); err == nil && same.Plane == e.Plane && (same.Notation == to || e.Plane.Dip == 0) {
		return text, true
	}
	return orient.Format(e.Plane, to), true
}
