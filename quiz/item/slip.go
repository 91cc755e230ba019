package item

import (
	"strings"

	"cuesta/orient"
	"cuesta/quiz/mistake"
)

// reason is why an answer is wrong: a mistake of the catalogue, or one of
// paper and pencil that has no place there and only its words.
type reason struct {
	kind  mistake.Kind
	known bool   // it is a mistake of the catalogue
	words string // whole sentences
}

// of is the reason k, with words of its own where those of the catalogue speak
// of a measurement and not of this question.
func of(k mistake.Kind, words string) reason { return reason{kind: k, known: true, words: words} }

// slipped is a reason outside the catalogue.
func slipped(words string) reason { return reason{words: words} }

// catalogued is the reason k in the words of the catalogue.
func catalogued(k mistake.Kind, n orient.Notation) reason {
	what, advice := k.Words(n)
	return of(k, "Probably "+what+". "+advice)
}

// sure is the probability that an answer that falls on a known mistake came of
// it, our assumption; those that coincide share it.
const sure = 0.9

// findings are the mistakes of the catalogue among the reasons.
func findings(rs []reason) []mistake.Finding {
	var out []mistake.Finding
	for _, r := range rs {
		if r.known && !holds(out, r.kind) {
			out = append(out, mistake.Finding{Kind: r.kind, Said: r.words})
		}
	}
	for i := range out {
		out[i].Probability = sure / float64(len(rs))
		for j := range out {
			if j != i {
				out[i].With = append(out[i].With, out[j].Kind)
			}
		}
	}
	return out
}

func holds(fs []mistake.Finding, k mistake.Kind) bool {
	for _, f := range fs {
		if f.Kind == k {
			return true
		}
	}
	return false
}

// said puts the reasons into words; there may be none.
func said(first string, rs []reason) string {
	parts := []string{first}
	for i, r := range rs {
		words := r.words
		if i > 0 {
			words = "Or else: " + strings.ToLower(words[:1]) + words[1:]
		}
		parts = append(parts, words)
	}
	return strings.Join(parts, " ")
}
