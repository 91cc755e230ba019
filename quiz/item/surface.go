package item

import (
	"regexp"
	"slices"

	"cuesta/quiz/mistake"
)

// Surface is what is measured at a station: the zero value is bedding, of which
// all our sentences speak.
type Surface uint8

// The surfaces, in the words of the trade.
const (
	Bedding Surface = iota
	Joint
	Cleavage
	Foliation
	Fault
	BareSlab // the upper face of a slab, whatever it may be in the rock
	surfaces = iota
)

var surfaceWords = [surfaces]struct{ word, noun, face string }{
	Bedding:   {"bedding", "bed", "is bedding"},
	Joint:     {"joint", "joint", "is the joint"},
	Cleavage:  {"cleavage", "cleavage plane", "is cleavage"},
	Foliation: {"foliation", "foliation plane", "is foliation"},
	Fault:     {"fault", "fault plane", "is the fault plane"},
	BareSlab:  {"slab", "slab", "is to be measured"},
}

// Surfaces are the words for them in files, in their order.
func Surfaces() []string {
	out := make([]string, surfaces)
	for i, w := range surfaceWords {
		out[i] = w.word
	}
	return out
}

// String is the word for it in files, in lower case.
func (s Surface) String() string { return surfaceWords[s%surfaces].word }

// Noun is one such surface, such as fault plane.
func (s Surface) Noun() string { return surfaceWords[s%surfaces].noun }

// Face follows "which face", such as "is bedding".
func (s Surface) Face() string { return surfaceWords[s%surfaces].face }

// Measured is what lies at a station, for its card and its question.
func (s Surface) Measured() string {
	if s == Bedding {
		return "slab"
	}
	return s.Noun()
}

// HasWayUp says whether such a surface can be overturned.
func (s Surface) HasWayUp() bool { return s == Bedding }

var bed = regexp.MustCompile(`\bbed\b`)

// In speaks of the surface in a text of ours that speaks of a bed.
func (s Surface) In(text string) string {
	if s == Bedding {
		return text
	}
	return bed.ReplaceAllLiteralString(text, s.Noun())
}

// told is the mark in words of the surface.
func (s Surface) told(m Mark) Mark {
	if s == Bedding {
		return m
	}
	m.Said, m.Mistakes = s.In(m.Said), s.found(m.Mistakes)
	if m.Verdict != nil {
		v := *m.Verdict
		v.Said, v.Mistakes, m.Verdict = s.In(v.Said), m.Mistakes, &v
	}
	return m
}

func (s Surface) found(fs []mistake.Finding) []mistake.Finding {
	out := slices.Clone(fs)
	for i := range out {
		out[i].Said = s.In(out[i].Said)
	}
	return out
}
