package form

import (
	"errors"
	"fmt"

	"cuesta/quiz/written"
)

// What can be wrong with a file; every *Wrong wraps one of them.
var (
	ErrBlueprint = errors.New("this blueprint cannot be used yet")
	ErrStations  = errors.New("this file of stations cannot be used yet")
	ErrRoster    = errors.New("this roster cannot be used yet")
	ErrFile      = errors.New("not a file as cuesta writes them")
	ErrVersion   = errors.New("a file of another version")
)

// Problem is one thing that is wrong in a file, and Wrong is all of them.
type (
	Problem = written.Problem
	Wrong   = written.Wrong
)

// wrong is a file with one problem, in no line of its own.
func wrong(err error, format string, a ...any) error {
	return &Wrong{Err: err, Problems: []Problem{{Said: fmt.Sprintf(format, a...)}}}
}

// shortened is a text in quotes, made printable and cut to a length that can be
// read.
func shortened(s string) string { return written.Quoted(s) }
