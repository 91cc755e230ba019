package spoken

import "strings"

// Word is the first word of a line.
type Word uint8

// The words, and Nothing for an empty line or a remark.
const (
	Nothing Word = iota
	Seat
	Swing
	Roll
	Arm
	Flip
	Ring
	Wait
	Tap
	Lock
	Free
	Calibrate
	Look
	Bubble
	Read
	Note
	Picture
	Reveal
	New
	Help
	Quit
)

// words are the words as they are typed, in the order of the help.
var words = [...]string{
	Seat: "seat", Swing: "swing", Roll: "roll", Arm: "arm", Flip: "flip", Ring: "ring",
	Wait: "wait", Tap: "tap", Lock: "lock", Free: "free", Calibrate: "calibrate", Look: "look", Bubble: "bubble",
	Read: "read", Note: "note", Picture: "picture", Reveal: "reveal", New: "new",
	Help: "help", Quit: "quit",
}

// String is the word as it is typed; Nothing is "".
func (w Word) String() string {
	if int(w) < len(words) {
		return words[w]
	}
	return ""
}

func wordOf(s string) (Word, bool) {
	for w := Seat; int(w) < len(words); w++ {
		if words[w] == s {
			return w, true
		}
	}
	return Nothing, false
}

// Nearest is the known word that s was probably meant to be, or "".
func Nearest(s string, known ...string) string {
	s = strings.ToLower(s)
	best, least := "", 3
	for _, k := range known {
		if k == "" {
			continue
		}
		if d := edits([]rune(s), []rune(k)); d < least && 2*d < len(k) {
			best, least = k, d
		}
	}
	return best
}

// edits is the number of letters to insert, drop or change, and of neighbours to
// change over, that turn a into b (Levenshtein's distance with Damerau's swaps,
// no letter being edited twice).
func edits(a, b []rune) int {
	rows := make([][]int, len(a)+1)
	for i := range rows {
		rows[i] = make([]int, len(b)+1)
		rows[i][0] = i
	}
	for j := range rows[0] {
		rows[0][j] = j
	}
	for i, r := range a {
		for j, s := range b {
			least := min(rows[i][j+1], rows[i+1][j]) + 1
			if r == s {
				least = min(least, rows[i][j])
			} else {
				least = min(least, rows[i][j]+1)
			}
			if i > 0 && j > 0 && r == b[j-1] && s == a[i-1] {
				least = min(least, rows[i-1][j-1]+1)
			}
			rows[i+1][j+1] = least
		}
	}
	return rows[len(a)][len(b)]
}
