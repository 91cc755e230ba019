package mistake

import (
	"strings"

	"cuesta/orient"
)

// NameFrom is the probability from which a mistake is named, and Rivalry the
// part of its probability at which another one that fits as well is named
// beside it.
const (
	NameFrom = 0.6
	Rivalry  = 0.25
)

// Finding is a mistake that was probably made.
type Finding struct {
	Kind        Kind
	Probability float64 // in [0, 1]
	Said        string  // what happened and what to do next time, in a few calm sentences
	With        []Kind  // others that explain the answer as well; then each of them is a Finding too
}

// said puts a finding into words.
func (e Evidence) said(k Kind, with []Kind) string {
	n := e.Entry.Notation
	if len(with) == 0 {
		return "Probably " + e.what(k) + ". " + k.advice(n)
	}
	whats := []string{"Either " + e.what(k)}
	advice := []string{k.advice(n)}
	for _, r := range with {
		whats = append(whats, "or "+e.what(r))
		advice = append(advice, r.advice(n))
	}
	return strings.Join(whats, ", ") + "; this answer does not tell which. " + strings.Join(advice, " ")
}

// what says what happened, in the words of the notation and of the answer.
func (e Evidence) what(k Kind) string {
	if k == DirectionForStrike && e.upTheDip() {
		return "the line of dip was read, not the strike"
	}
	return k.what(e.Entry.Notation)
}

// upTheDip says whether an azimuth without letters was written that points up
// the dip: nobody writes that for a dip direction.
func (e Evidence) upTheDip() bool {
	a := e.Entry
	return a.HasStrike && a.Letters == "" && a.Notation == orient.AzimuthDip &&
		a.Plane.Strike.From(e.Truth.DipDirection().Opposite()).Abs() < orient.Right/2
}
