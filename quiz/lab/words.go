package lab

import (
	"fmt"
	"strings"

	"cuesta/quiz/form"
	"cuesta/quiz/item"
)

// Cautions are the usual ones where people handle slabs in a room (common
// practice).
var Cautions = []string{
	"A slab is heavy and its edges are sharp: two people lift one, with straight backs and gloves, and nobody lifts alone.",
	"Keep fingers, hands and feet from under a slab and its wedge, and see that it rests firmly before you lean on it.",
	"Leave nothing over the edge of a table, and wear closed shoes.",
	"The rules of the building and local codes come first; a licensed practitioner judges whatever bears on safety or building. Practice readings are never data for design.",
}

// Care is the shortest of them, for where there is room for a line only.
const Care = "Two people lift a slab; fingers and feet clear; closed shoes."

// Who names a student.
func Who(s form.Student) string {
	if s.Name == "" || s.Name == s.ID {
		return s.ID
	}
	return s.Name + " (" + s.ID + ")"
}

// Told is what is said of a reading that was taken, a paragraph each: how it was
// understood; where there are several, whether it lies far from the others, what
// they come to and which plane counts; and the verdict, where it is given.
func (r *Room) Told(d Reading) []string {
	understood := strings.ToLower(d.Understood[:1]) + d.Understood[1:]
	out := []string{fmt.Sprintf("reading %d of %d: %q, understood as %s.", d.Number, d.Number+d.Left, d.Text, understood)}
	if d.Away > item.Apart {
		others := "others here"
		if d.Number == 2 {
			others = "other reading here"
		}
		out = append(out, fmt.Sprintf("It differs from your %s by %.0f°: if this one slipped, undo takes it back.", others, d.Away.Degrees()))
	}
	if d.Repeats != nil {
		counts := " The last reading counts."
		switch mean := r.lab.Parts[d.Station].Spec.Station.Mean; {
		case mean && d.Repeats.Agree():
			counts = " The mean counts, " + d.Counts + "."
		case mean:
			counts = " The mean counts all the same: take a reading back with undo, or take more."
		}
		out = append(out, d.Repeats.Words(r.lab.Notation)+counts)
	}
	if d.Mark != nil {
		out = append(out, d.Mark.Said)
	}
	return out
}
