package orient

import (
	"errors"
	"strconv"
)

// What can be wrong with a written plane; every *ParseError wraps one of them.
var (
	ErrIncomplete = errors.New("the reading is not complete")
	ErrSide       = errors.New("the side the plane dips to is missing")
	ErrAzimuth    = errors.New("not an azimuth")
	ErrDip        = errors.New("not a dip")
	ErrQuadrant   = errors.New("not a quadrant bearing")
	ErrLetters    = errors.New("the letters do not fit the strike")
	ErrNumber     = errors.New("not a number of degrees")
	ErrWords      = errors.New("not a way to write a plane")
)

// A ParseError says where a written plane stops making sense.
type ParseError struct {
	Text  string // the whole text
	Pos   int    // the character where it goes wrong, counted from 1
	Read  string // what was read there and why it cannot be, as a clause of its own
	Would string // what would do instead
	Err   error  // one of the Err values of this package
}

// Error is one line: the text, the place, what was read and what would do.
func (e *ParseError) Error() string {
	return strconv.Quote(clip(e.Text)) + ", character " + strconv.Itoa(e.Pos) +
		": " + e.Read + "; " + e.Would
}

// Unwrap returns the kind of the error.
func (e *ParseError) Unwrap() error { return e.Err }

func clip(s string) string {
	const longest = 60
	r := []rune(s)
	if len(r) <= longest {
		return s
	}
	return string(r[:longest]) + "…"
}
