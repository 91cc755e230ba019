package session

import "errors"

// ErrShown is the error for an answer to a plane that was shown before one was
// given: there is nothing left to grade.
var ErrShown = errors.New("not graded: the true plane has been shown")

// Counts says whether the next answer is the one that is graded: the first to
// this plane, given before the true plane was shown. Later answers are judged
// for practice and count for nothing.
func (s *Session) Counts() bool { return !s.answered && !s.revealed }

// Spoilt says that answers to this plane can no longer be judged at all: it
// was shown before the first.
func (s *Session) Spoilt() bool { return s.revealed && !s.answered }
