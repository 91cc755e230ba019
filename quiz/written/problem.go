package written

import (
	"fmt"
	"strings"
)

// Problem is one thing that is wrong in a file.
type Problem struct {
	Line, Column int    // from 1; 0 where the file as a whole is meant
	Said         string // what was read and what would do
}

// String is the problem in one line.
func (p Problem) String() string {
	switch {
	case p.Line == 0:
		return p.Said
	case p.Column == 0:
		return fmt.Sprintf("line %d: %s", p.Line, p.Said)
	}
	return fmt.Sprintf("line %d, column %d: %s", p.Line, p.Column, p.Said)
}

// Wrong is everything that is wrong with a file, in the order of its lines.
type Wrong struct {
	Problems []Problem // at least one
	Err      error     // what the file is not
}

// Error is all the problems in one line.
func (w *Wrong) Error() string {
	said := make([]string, len(w.Problems))
	for i, p := range w.Problems {
		said[i] = p.String()
	}
	return w.Err.Error() + ": " + strings.Join(said, "; ")
}

// Unwrap is what the file is not.
func (w *Wrong) Unwrap() error { return w.Err }

// Quoted is a text in quotes, made printable and cut to a length that can be
// read.
func Quoted(s string) string {
	const most = 40
	if r := []rune(s); len(r) > most {
		s = string(r[:most]) + "…"
	}
	return fmt.Sprintf("%q", s)
}
