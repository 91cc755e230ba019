package sim

import (
	"errors"
	"fmt"
	"math"
	"unicode/utf8"

	"cuesta/orient"
)

// What Do cannot carry out. The world is then as it was.
var (
	ErrNotOnSide = errors.New("the inclination arm is turned with the instrument on its side")
	ErrFlat      = errors.New("the instrument lies flat on the rock and cannot be rolled")
	ErrNotFlat   = errors.New("the sensor is calibrated with the instrument flat on the rock")
	ErrSeat      = errors.New("the instrument cannot be seated like this")
	ErrAngle     = errors.New("an angle must be a number of at most one full turn")
	ErrText      = errors.New("a note is plain text of at most 400 bytes")
	ErrKind      = errors.New("there is no such command")
	ErrNotes     = errors.New("the notebook is full")
)

// Bounds that keep a world of any length of commands small.
const (
	longestNote = 400
	mostNotes   = 1000
)

// pathStep is how finely a turn is followed, so that the needle touches the
// glass where it would; longestPath bounds the work of one command.
const (
	pathStep    = orient.Degree / 2
	longestPath = 120
)

// Do carries out a command, at once: a change of pose takes no time. A roll or
// the arm goes as far as the rock or its stop allows, without an error; the
// observation then says Touching, or shows the arm at its stop. Errors wrap
// one of the sentinels above and leave the world unchanged.
func (w *World) Do(c Command) error {
	if err := w.refuse(c); err != nil {
		return err
	}
	switch c.Kind {
	case Idle:
	case Place:
		w.place(c.Seat)
	case Swing:
		w.follow(c.Angle, stance.swung)
	case Roll:
		w.follow(c.Angle, stance.rolled)
	case Arm:
		t := w.stance
		t.arm = max(0, min(orient.Right, t.arm+c.Angle))
		w.rest(t)
	case Flip:
		w.rest(w.stance.flipped())
	case Ring:
		w.stance.ring = c.Angle.Wrapped()
	case Tap:
		w.needle.tap(w.frame, w.parts.needle)
	case Lock:
		w.needle.lock(w.frame)
	case Free:
		w.needle.free(w.frame, w.parts.needle)
	case Read:
		w.read()
	case Note:
		w.notes = append(w.notes, c.Text)
		w.written.text(c.Text)
	case Calibrate:
		w.sensor.calibrate(w.parts.sensor)
	}
	return nil
}

// refuse says why a command cannot be carried out.
func (w *World) refuse(c Command) error {
	switch c.Kind {
	case Idle, Flip, Tap, Lock, Free, Read:
		return nil
	case Place:
		if !w.setup.Tool.Takes(c.Seat) {
			return fmt.Errorf("%w: seat %v", ErrSeat, c.Seat)
		}
		return nil
	case Swing, Roll, Arm, Ring:
		return w.refuseTurn(c)
	case Note:
		return w.refuseNote(c.Text)
	case Calibrate:
		if w.stance.seat != OnBack {
			return ErrNotFlat
		}
		return nil
	}
	return fmt.Errorf("%w: kind %d", ErrKind, c.Kind)
}

func (w *World) refuseTurn(c Command) error {
	switch {
	case c.Kind == Arm && w.stance.seat != OnSide:
		return ErrNotOnSide
	case c.Kind == Roll && w.stance.seat == OnBack:
		return ErrFlat
	case !finite(c.Angle) || c.Angle.Abs() > orient.Full:
		return fmt.Errorf("%w: %v°", ErrAngle, c.Angle.Degrees())
	}
	return nil
}

func (w *World) refuseNote(text string) error {
	if len(text) > longestNote || !utf8.ValidString(text) {
		return fmt.Errorf("%w: %d bytes", ErrText, len(text))
	}
	if len(w.notes) >= mostNotes {
		return ErrNotes
	}
	return nil
}

// place seats the instrument. The swing stays; each seat keeps its own roll.
func (w *World) place(s Seat) {
	t := w.stance
	t.seat = s
	w.rest(t.clear(w.rock))
}

// follow carries a turn out in small steps, each from the stance it began at,
// so that the last one ends exactly where the turn does.
func (w *World) follow(a orient.Angle, turn func(stance, orient.Angle, rock) stance) {
	from := w.stance
	n := max(1, min(longestPath, int(math.Ceil(float64(a.Abs()/pathStep)))))
	for i := 1; i <= n; i++ {
		part := float64(i) / float64(n)
		w.rest(turn(from, orient.Angle(float64(a.Radians()*part)), w.rock))
	}
}
