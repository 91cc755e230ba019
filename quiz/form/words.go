package form

import (
	"strings"

	"cuesta/orient"
	"cuesta/quiz/written"
)

// notations are the words for notations in files, in their order.
var notations = [...]string{
	orient.AzimuthDip: "azimuth", orient.Quadrant: "quadrant",
	orient.DirectionDip: "direction", orient.PoleNotation: "pole",
}

func notationWord(n orient.Notation) string {
	if int(n) < len(notations) {
		return notations[n]
	}
	return notations[orient.AzimuthDip]
}

func notationOf(word string) (orient.Notation, bool) {
	for n, w := range notations {
		if w == word {
			return orient.Notation(n), true
		}
	}
	return 0, false
}

// Nearest is the one of the known words that s was probably meant to be, or "".
func Nearest(s string, known []string) string { return written.Nearest(s, known) }

// listed is a list in words, or a remark that there is nothing to list.
func listed(words []string) string {
	if len(words) == 0 {
		return "none that this program knows"
	}
	return strings.Join(words, ", ")
}
