package mistake

import "strings"

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
		return "Probably " + k.what(n) + ". " + k.advice(n)
	}
	whats := []string{"Either " + k.what(n)}
	advice := []string{k.advice(n)}
	for _, r := range with {
		whats = append(whats, "or "+r.what(n))
		advice = append(advice, r.advice(n))
	}
	return strings.Join(whats, ", ") + "; this answer does not tell which. " + strings.Join(advice, " ")
}
