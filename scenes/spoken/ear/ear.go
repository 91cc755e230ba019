package ear

import (
	"errors"
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"
)

// Say types a line at the bench and returns what is said.
type Say func(line string) (said string)

// ErrLost is the error when the sentences do not lead on; it comes with the
// last of them.
var ErrLost = errors.New("ear: the sentences do not lead on")

// Reading is what was read, in whole degrees as they are on the scales.
type Reading struct{ Strike, Dip int }

// Measure takes strike and dip: it sets the ring where welcome tells of a
// declination, brings the bubble home, turns to the right-hand end, lets the
// needle rest, reads, and does the same for the dip.
func Measure(welcome string, say Say) (Reading, error) {
	s := student{say: say}
	if m := declination.FindStringSubmatch(welcome); m != nil {
		s.types("ring %s%s", m[1], m[2][:1])
	}
	var r Reading
	for _, part := range []func(*Reading) error{s.level, s.rightHand, s.strike, s.dip} {
		if err := part(&r); err != nil {
			return Reading{}, err
		}
	}
	return r, nil
}

var (
	declination = regexp.MustCompile(`declination here is ([0-9.]+)° (east|west)`)
	round       = regexp.MustCompile(`Bubble (inside|not inside|at the wall).*?: ([0-9.]+) (right|left), ([0-9.]+) (forward|back)`)
	tube        = regexp.MustCompile(`Tube bubble (between|not between|at the end).*?: ([0-9.]+) (towards|away)`)
	north       = regexp.MustCompile(`north end stands at (\d+)\.`)
	index       = regexp.MustCompile(`index stands at (\d+) on the degree scale`)
)

// student is one measurement under way.
type student struct {
	say  Say
	last string
}

func (s *student) types(format string, a ...any) string {
	s.last = s.say(fmt.Sprintf(format, a...))
	return s.last
}

func (s *student) lost(doing string) error {
	return fmt.Errorf("%w while %s: %s", ErrLost, doing, s.last)
}

// signed is a number and the word behind it: plus is its positive way.
func signed(text, word, plus string) float64 {
	x, err := strconv.ParseFloat(text, 64)
	if err != nil || word != plus {
		return -x
	}
	return x
}

// home is a search for where a bubble comes home.
type home struct {
	step float64 // degrees, while it lies at the wall
	gain float64 // degrees of turn for one unit of the bubble
	last float64
	turn float64 // the last turn, or 0 before the first
	near bool    // it lay at no wall before the last turn
}

// next is the turn that is to bring a bubble home that lies at at.
func (h *home) next(at float64, wall bool) float64 {
	switch {
	case wall && h.last*at < 0:
		h.step = math.Max(h.step/2, .1)
	case wall && h.turn != 0:
		h.step = math.Min(1.5*h.step, 24)
	case !wall && h.near && math.Abs(at-h.last) > .01:
		h.gain = math.Min(40, math.Abs(h.turn/(h.last-at)))
	}
	h.last, h.near, h.turn = at, !wall, at*h.gain
	if wall {
		h.turn = math.Copysign(h.step, at)
	}
	return h.turn
}

// most bounds the tries of each part.
const most = 80

// level brings the round bubble into the middle of its ring.
func (s *student) level(*Reading) error {
	right, err := s.fallsRight()
	if err != nil {
		return err
	}
	roll, swing := home{step: 12, gain: 2.4}, home{step: 16, gain: 3}
	s.types("bubble")
	for range most {
		m := round.FindStringSubmatch(s.last)
		if m == nil {
			return s.lost("levelling")
		}
		across, along, wall := signed(m[2], m[3], "right"), signed(m[4], m[5], "forward"), m[1] == "at the wall"
		switch a, b := math.Abs(across), math.Abs(along); {
		case a <= .02 && b <= .02:
			return nil
		case a > .02 && a >= b/2:
			s.types("roll %.2f", roll.next(across, wall && a > .4))
			continue
		}
		turn := swing.next(along, wall)
		if !right {
			turn = -turn
		}
		if s.types("swing %.2f", turn); strings.Contains(s.last, "now stands on") {
			moved := s.last
			if right, err = s.fallsRight(); err != nil {
				return err
			}
			s.last = moved
		}
	}
	return s.lost("levelling")
}

// fallsRight is what look says about the rock beside the arrow.
func (s *student) fallsRight() (bool, error) {
	said := s.types("look")
	right := strings.Contains(said, "falls away to the right")
	if !right && !strings.Contains(said, "falls away to the left") {
		return false, s.lost("looking where the rock falls away")
	}
	return right, nil
}

// rightHand turns to the end from which the rock falls away to the right.
func (s *student) rightHand(*Reading) error {
	right, err := s.fallsRight()
	if err == nil && !right {
		s.types("flip")
	}
	return err
}

func (s *student) strike(r *Reading) error {
	for range most {
		s.types("tap")
		if s.types("wait 4"); !strings.Contains(s.last, "Needle at rest.") {
			continue
		}
		return s.read(north, &r.Strike)
	}
	return s.lost("waiting for the needle")
}

func (s *student) read(scale *regexp.Regexp, into *int) error {
	m := scale.FindStringSubmatch(s.types("read"))
	if m == nil {
		return s.lost("reading")
	}
	var err error
	*into, err = strconv.Atoi(m[1])
	return err
}

func (s *student) dip(r *Reading) error {
	s.types("seat side")
	s.types("swing 90")
	arm := home{step: 32, gain: 1.34}
	for range most {
		m := tube.FindStringSubmatch(s.last)
		if m == nil {
			return s.lost("turning the arm")
		}
		off := signed(m[2], m[3], "towards")
		if math.Abs(off) <= .02 {
			return s.read(index, &r.Dip)
		}
		s.types("arm %.2f", -arm.next(off, m[1] == "at the end"))
	}
	return s.lost("turning the arm")
}
