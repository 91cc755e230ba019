package calibrate

import (
	"fmt"
	"slices"

	"cuesta/quiz/mistake"
)

// Conclusion is something that follows from the table, and the mistakes of which
// it is said.
type Conclusion struct {
	Said  string
	Kinds []mistake.Kind
}

// Short is what follows from the table: what the pass mark lets through, which mistakes the quiz tells, which do
// no harm in it, and which cannot be told apart, with the readings and on paper.
// It is empty where nobody made a mistake.
func (t Table) Short() []Conclusion {
	if len(t.Named) == 0 {
		return nil
	}
	told := 0
	rarely, harmless := Conclusion{Said: "Seldom told"}, Conclusion{Said: "Nothing comes out wrong of this"}
	for _, n := range t.Named {
		switch spoilt := n.Made - n.Right - n.Refused; {
		case spoilt <= 0:
			harmless.Kinds = append(harmless.Kinds, n.Kind)
		case 2*n.Apart >= spoilt:
			told++
		default:
			rarely.Kinds = append(rarely.Kinds, n.Kind)
		}
	}
	all := []Conclusion{
		{Said: t.passing()},
		{Said: fmt.Sprintf("Of %d mistakes %d can be told in most of the answers that they make wrong", len(t.Named), told)},
		rarely, harmless,
	}
	all = append(all, t.couples(false, "with the readings of the bench")...)
	all = append(all, t.couples(true, "on paper, where the answer alone speaks")...)
	return slices.DeleteFunc(all, func(c Conclusion) bool { return len(c.Kinds) == 0 && c.Said != all[0].Said && c.Said != all[1].Said })
}

// passing says which kinds of mistake the pass mark lets through: those whose
// students pass more often than not.
func (t Table) passing() string {
	made, through := 0, 0
	for _, s := range t.Scores {
		if _, mistaken := mistake.KindOf(s.Learner); mistaken {
			made++
			if s.Pass > 0.5 {
				through++
			}
		}
	}
	at := fmt.Sprintf("At the pass mark of %s ", percent(t.PassShare))
	switch {
	case through == 0:
		return at + "no kind of mistake passes more often than not"
	case through == made:
		return at + "every kind of mistake passes"
	}
	return at + fmt.Sprintf("%d of %d kinds of mistake pass", through, made)
}

// couples are the mistakes that cannot be told from one another in most of the
// wrong answers of some item, and those that look like a slip without a name.
func (t Table) couples(bare bool, where string) []Conclusion {
	var groups [][]mistake.Kind
	slips := Conclusion{Said: "Not told from a slip without a name " + where}
	for _, a := range t.Alike {
		switch {
		case a.Bare != bare || a.Share < 0.5:
		case a.Slip:
			slips.Kinds = added(slips.Kinds, a.Made)
		default:
			groups = joined(groups, a.Made, a.Rival)
		}
	}
	var out []Conclusion
	for i, g := range groups {
		slices.Sort(g)
		said := "Not told from one another " + where
		if i > 0 {
			said = "There neither are these"
		}
		out = append(out, Conclusion{said, g})
	}
	return append(out, slips)
}

func added(ks []mistake.Kind, k mistake.Kind) []mistake.Kind {
	if slices.Contains(ks, k) {
		return ks
	}
	return append(ks, k)
}

// joined puts two mistakes into one group, with what is like either.
func joined(groups [][]mistake.Kind, a, b mistake.Kind) [][]mistake.Kind {
	one := []mistake.Kind{a, b}
	var rest [][]mistake.Kind
	for _, g := range groups {
		if !slices.Contains(g, a) && !slices.Contains(g, b) {
			rest = append(rest, g)
			continue
		}
		for _, k := range g {
			one = added(one, k)
		}
	}
	return append(rest, one)
}
