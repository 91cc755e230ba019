package form

import (
	"strings"

	"cuesta/orient"
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
func Nearest(s string, known []string) string { return nearest(s, known) }

// nearest is the known word that s was probably meant to be, or "": at most
// two letters away, and no more than half of the word.
func nearest(s string, known []string) string {
	best, least := "", 3
	for _, k := range known {
		if d := edits(s, k); d < least && 2*d <= len(k) {
			best, least = k, d
		}
	}
	return best
}

// edits is Levenshtein's distance in bytes.
func edits(a, b string) int {
	row := make([]int, len(b)+1)
	for j := range row {
		row[j] = j
	}
	for i := range len(a) {
		diagonal := row[0]
		row[0] = i + 1
		for j := range len(b) {
			cost := diagonal
			if a[i] != b[j] {
				cost++
			}
			diagonal = row[j+1]
			row[j+1] = min(cost, row[j]+1, diagonal+1)
		}
	}
	return row[len(b)]
}

// listed is a list in words, or a remark that there is nothing to list.
func listed(words []string) string {
	if len(words) == 0 {
		return "none that this program knows"
	}
	return strings.Join(words, ", ")
}
