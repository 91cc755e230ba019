// Package speech says sentences through the speech program that the system has.
package speech

import (
	"errors"
	"fmt"
	"os/exec"
	"strings"
	"sync"
	"unicode"
)

// ErrNoProgram is wrapped by Open's error where the system has no speech
// program; the error says which one to install.
var ErrNoProgram = errors.New("there is no speech program on this system")

// Voice says sentences one after another, in its own time. A voice that was not
// opened is nil, and says nothing.
type Voice struct {
	programs []program // the one in use, and those to try where it fails
	wake     chan struct{}
	over     chan struct{} // closed when the voice has ended
	mu       sync.Mutex
	next     string // what is to be said; "" is nothing
	ended    bool   // nothing will come after next
	cut      bool   // nor is what is being said to go on
	err      error  // of the last program, when none is left
}

// Open finds the system's speech program. No text that is said can become a
// flag or a command: it goes to the program as its input, or behind the end of
// its flags.
func Open() (*Voice, error) {
	var found []program
	for _, p := range programs {
		if path, err := exec.LookPath(p.name); err == nil {
			p.path = path
			found = append(found, p)
		}
	}
	if found == nil {
		return nil, fmt.Errorf("%w; %s", ErrNoProgram, install)
	}
	return start(found...), nil
}

func start(ps ...program) *Voice {
	v := &Voice{programs: ps, wake: make(chan struct{}, 1), over: make(chan struct{})}
	go v.run()
	return v
}

// Say has sentences said at once; what is still being said is cut off. It never
// waits.
func (v *Voice) Say(sentences ...string) {
	text := clean(strings.Join(sentences, " "))
	if v == nil || text == "" {
		return
	}
	v.mu.Lock()
	v.next = text
	v.mu.Unlock()
	v.rouse()
}

// Write has p said as Say does, and never fails.
func (v *Voice) Write(p []byte) (int, error) {
	v.Say(string(p))
	return len(p), nil
}

// Err says why nothing is spoken any more: each program there is has failed.
func (v *Voice) Err() error {
	if v == nil {
		return nil
	}
	v.mu.Lock()
	defer v.mu.Unlock()
	return v.err
}

// Finish waits until all has been said, and ends the voice.
func (v *Voice) Finish() { v.end(false) }

// Close cuts off what is being said, and ends the voice.
func (v *Voice) Close() { v.end(true) }

func (v *Voice) end(cut bool) {
	if v == nil {
		return
	}
	v.mu.Lock()
	v.ended, v.cut = true, cut
	if cut {
		v.next = ""
	}
	v.mu.Unlock()
	v.rouse()
	<-v.over
}

func (v *Voice) rouse() {
	select {
	case v.wake <- struct{}{}:
	default:
	}
}

// take is what is to be said now, and whether the voice is to end after it.
func (v *Voice) take() (string, bool) {
	v.mu.Lock()
	defer v.mu.Unlock()
	s := v.next
	v.next = ""
	return s, v.ended
}

// hurry says that what is being said is to be cut off.
func (v *Voice) hurry() bool {
	v.mu.Lock()
	defer v.mu.Unlock()
	return v.next != "" || v.cut
}

// clean leaves out what is no text: signs that steer a terminal or end an
// argument.
func clean(s string) string {
	return strings.Join(strings.FieldsFunc(s, func(r rune) bool {
		return unicode.IsControl(r) || unicode.IsSpace(r) || r == unicode.ReplacementChar
	}), " ")
}
