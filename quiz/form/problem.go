package form

import (
	"errors"
	"fmt"
	"strings"
)

// What can be wrong with a file; every *Wrong wraps one of them.
var (
	ErrBlueprint = errors.New("not a blueprint")
	ErrStations  = errors.New("not a file of stations")
	ErrRoster    = errors.New("not a roster")
	ErrFile      = errors.New("not a file as cuesta writes them")
	ErrVersion   = errors.New("a file of another version")
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
	Err      error     // ErrBlueprint, ErrStations, ErrRoster, ErrFile or ErrVersion
}

// Error is all the problems in one line.
func (w *Wrong) Error() string {
	said := make([]string, len(w.Problems))
	for i, p := range w.Problems {
		said[i] = p.String()
	}
	return w.Err.Error() + ": " + strings.Join(said, "; ")
}

// Unwrap is the sentinel.
func (w *Wrong) Unwrap() error { return w.Err }

// wrong is a file with one problem, in no line of its own.
func wrong(err error, format string, a ...any) error {
	return &Wrong{Err: err, Problems: []Problem{{Said: fmt.Sprintf(format, a...)}}}
}

// shortened is a text in quotes, made printable and cut to a length that can be
// read.
func shortened(s string) string {
	const most = 40
	if r := []rune(s); len(r) > most {
		s = string(r[:most]) + "…"
	}
	return fmt.Sprintf("%q", s)
}
