package sitting

import "errors"

// Deed is what an entry does.
type Deed uint8

// The deeds.
const (
	Go     Deed = iota // to Item
	Answer             // Item with Text
	Flag               // Item, or takes its flag off
	Undo               // takes back the last Answer or Flag that still stands
	Hint               // takes the next hint of Item
	Bench              // the recording of the bench of Item: its first Keep lines, then Text
	Finish             // hands in
)

var deeds = [...]string{
	Go: "go", Answer: "answer", Flag: "flag", Undo: "undo", Hint: "hint", Bench: "bench", Finish: "finish",
}

// String is the deed in the journal.
func (d Deed) String() string {
	if int(d) < len(deeds) {
		return deeds[d]
	}
	return "nothing"
}

func deedOf(word string) (Deed, bool) {
	for d, w := range deeds {
		if w == word {
			return Deed(d), true
		}
	}
	return 0, false
}

// Entry is one thing the student does. Items count from 0.
type Entry struct {
	Do   Deed
	Item int    // for Go, Answer, Flag, Hint and Bench
	Text string // for Answer and Bench
	Keep int    // for Bench
	At   string // RFC 3339, from the clock of the machine that is used, or ""
}

// Why an entry is not taken. The sitting is then as it was.
var (
	ErrFinished = errors.New("the form has been handed in")
	ErrItem     = errors.New("there is no such item")
	ErrAttempts = errors.New("the item has been answered as often as it may be")
	ErrUnread   = errors.New("the answer could not be read")
	ErrNothing  = errors.New("there is nothing to take back")
	ErrHints    = errors.New("there are no more hints to this item")
	ErrTime     = errors.New("the time is over")
	ErrMoment   = errors.New("not a day and time with its zone")
	ErrBench    = errors.New("the recording does not follow from the one before")
	ErrDeed     = errors.New("there is no such entry")
)
