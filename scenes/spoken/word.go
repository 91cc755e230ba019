package spoken

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

// nearest is the known word that s was probably meant to be, or "".
func nearest(s string, known []string) string {
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

// edits is the number of letters to insert, drop or change to turn a into b
// (Levenshtein's distance).
func edits(a, b []rune) int {
	row := make([]int, len(b)+1)
	for j := range row {
		row[j] = j
	}
	for i := range a {
		diagonal := row[0]
		row[0] = i + 1
		for j := range b {
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
