package spoken_test

import (
	"bytes"
	"encoding/json"
	"fmt"
	"math"
	"regexp"
	"strings"
	"testing"

	"cuesta/scenes/session"
	"cuesta/scenes/spoken"
)

// reply is what a program sees of the bench: the object of one line.
type reply struct {
	OK    bool   `json:"ok"`
	Said  string `json:"said"`
	Tick  int    `json:"tick"`
	Round struct {
		Right, Forward float64
		Centred        bool
	} `json:"round"`
	Tube *struct {
		Off     float64
		Centred bool
	} `json:"tube"`
	Dial struct {
		North   int
		Resting bool
	} `json:"dial"`
	Arc *struct {
		Degrees int
		Percent *float64
	} `json:"arc"`
	Verdict *struct {
		Understood  string
		Right       bool
		Points, Of  float64
		StrikeError float64 `json:"strike_error"`
		DipError    float64 `json:"dip_error"`
		PoleAngle   float64 `json:"pole_angle"`
		Mistakes    []struct {
			Kind        string
			Probability float64
			Said        string
		}
	} `json:"verdict"`
}

// student works a bench and knows nothing but the replies.
type student struct {
	t     testing.TB
	bench *spoken.Bench
	now   reply
	lines int
}

func sit(t testing.TB, o session.Options) *student {
	t.Helper()
	ses, err := session.New(o)
	if err != nil {
		t.Fatal(err)
	}
	return &student{t: t, bench: spoken.NewBench(ses, nil)}
}

// try types a line; type wants it to be understood.
func (s *student) try(format string, a ...any) reply {
	s.t.Helper()
	line := fmt.Sprintf(format, a...)
	r, told := s.bench.Line(line)
	if !told {
		s.t.Fatalf("no reply to %q", line)
	}
	var b bytes.Buffer
	if err := r.WriteJSON(&b); err != nil {
		s.t.Fatalf("%q: %v", line, err)
	}
	s.now = reply{}
	if err := json.Unmarshal(b.Bytes(), &s.now); err != nil {
		s.t.Fatalf("%q: %v in %s", line, err, b.Bytes())
	}
	s.lines++
	return s.now
}

func (s *student) typed(format string, a ...any) reply {
	s.t.Helper()
	r := s.try(format, a...)
	if !r.OK {
		s.t.Fatalf("%s: %s", fmt.Sprintf(format, a...), r.Said)
	}
	return r
}

var declinationHere = regexp.MustCompile(`The declination here is ([0-9.]+)° (east|west)`)

// setRing sets the declination that the welcome tells.
func (s *student) setRing() {
	if m := declinationHere.FindStringSubmatch(s.bench.Welcome()); m != nil {
		s.typed("ring %s%s", m[1], m[2][:1])
	}
}

// hunt finds the turns that bring a bubble home: coarse steps while it lies
// against a wall, halved each time it has gone past; then by the figures.
type hunt struct {
	step float64 // while against the wall
	gain float64 // degrees of turn for one unit of the bubble
	last float64 // the bubble before the last turn
	turn float64 // the last turn
	free bool    // the bubble was off the wall before it
}

func (h *hunt) next(at float64, wall bool) float64 {
	past := h.last*at < 0
	switch {
	case wall && past:
		h.step = math.Max(h.step/2, 0.1)
	case wall && h.turn != 0:
		h.step = math.Min(h.step*1.5, 24)
	case h.free && math.Abs(at-h.last) > 0.01:
		h.gain = math.Min(40, math.Abs(h.turn/(h.last-at)))
	}
	h.turn = at * h.gain
	if wall {
		h.turn = math.Copysign(h.step, at)
	}
	h.last, h.free = at, !wall
	return h.turn
}

// wallOf is where the bubble of the round level meets the wall.
const wallOf = 1.40

// level brings the round bubble into the middle of its ring.
func (s *student) level() {
	s.t.Helper()
	r := s.typed("bubble")
	roll, swing := hunt{step: 12, gain: 2.4}, hunt{step: 16, gain: 3}
	for range 80 {
		wall := math.Hypot(r.Round.Right, r.Round.Forward) > wallOf
		switch across, along := math.Abs(r.Round.Right), math.Abs(r.Round.Forward); {
		case across <= 0.02 && along <= 0.02:
			return
		case across > 0.02 && across >= along/2:
			r = s.typed("roll %.3f", roll.next(r.Round.Right, wall && across > 0.4))
		default:
			side := 1.0
			if !s.fallsRight() {
				side = -1
			}
			r = s.typed("swing %.3f", side*swing.next(r.Round.Forward, wall))
		}
	}
	s.t.Fatalf("the bubble would not come home: %+v after %d lines", r.Round, s.lines)
}

// fallsRight is what look says about the rock beside the arrow.
func (s *student) fallsRight() bool {
	said := s.typed("look").Said
	right := strings.Contains(said, "falls away to the right")
	if !right && !strings.Contains(said, "falls away to the left") && !strings.Contains(said, "straight") {
		s.t.Fatalf("look does not say where the rock falls away: %s", said)
	}
	return right
}

// settle lets the needle come to rest.
func (s *student) settle() {
	s.t.Helper()
	for range 20 {
		if s.typed("tap"); s.typed("wait 4").Dial.Resting {
			return
		}
	}
	s.t.Fatalf("the needle does not come to rest: %s", s.now.Said)
}

// toRightHand turns to the end from which the rock falls away to the right.
func (s *student) toRightHand() {
	if !s.fallsRight() {
		s.typed("flip")
	}
}

// readStrike reads the dial with the bubble in the middle.
func (s *student) readStrike() int {
	s.settle()
	return s.typed("read").Dial.North
}

// readDip turns the plate from the strike on its side and reads both scales.
func (s *student) readDip() (degrees int, percent float64) {
	s.t.Helper()
	s.typed("seat side")
	r := s.typed("swing 90")
	arm := hunt{step: 32, gain: 1.34}
	for range 40 {
		off := r.Tube.Off
		if math.Abs(off) <= 0.02 {
			r = s.typed("read")
			return r.Arc.Degrees, *r.Arc.Percent
		}
		r = s.typed("arm %.3f", -arm.next(off, math.Abs(off) > 1.75))
	}
	s.t.Fatalf("the tube bubble would not come home: %+v", r.Tube)
	return 0, 0
}

// measure is the whole of a careful measurement.
func (s *student) measure() (strike, dip int) {
	s.t.Helper()
	s.setRing()
	s.level()
	s.toRightHand()
	strike = s.readStrike()
	dip, _ = s.readDip()
	return strike, dip
}
