package browse

import (
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"
)

// What the instrument is said to show.
var (
	roundWords = regexp.MustCompile(`Bubble (inside|not inside|at the wall).*?: ([0-9.]+) (right|left), ([0-9.]+) (forward|back)`)
	tubeWords  = regexp.MustCompile(`Tube bubble (between|not between|at the end).*?: ([0-9.]+) (towards|away)`)
	northWords = regexp.MustCompile(`north end stands at (\d+)`)
	indexWords = regexp.MustCompile(`index stands at (\d+) on the degree scale`)
)

// measurer takes a measurement from what the accessibility tree says.
type measurer struct {
	t *testing.T
	*Tab
	hand
	step string
}

func (m *measurer) do(name string, times int) {
	m.t.Helper()
	if err := m.hand.press(name, times); err != nil {
		m.t.Fatal(err)
	}
}

// clear takes away the sheet on which large text tells and offers.
func (m *measurer) clear() Tree {
	m.t.Helper()
	now := settled(m.t, m.Tab)
	if now.holds("Back to the bench") {
		m.do("Back to the bench", 1)
		now = settled(m.t, m.Tab)
	}
	return now
}

func (m *measurer) instrument() string {
	m.t.Helper()
	return must[Node](m.t)(m.clear().Find("application", "Instrument")).Description
}

func number(s, word, plus string) float64 {
	x, _ := strconv.ParseFloat(s, 64)
	if word != plus {
		return -x
	}
	return x
}

// turn makes one kind of turn in the largest step that fits and returns what
// it has made, in degrees.
func (m *measurer) turn(less, more string, a float64) float64 {
	m.t.Helper()
	name := more
	if a < 0 {
		name, a = less, -a
	}
	step, size := "Steps of 0.1°", .1
	switch {
	case a >= 8:
		step, size = "Steps of 10°", 10
	case a >= .7:
		step, size = "Steps of 1°", 1
	}
	if step != m.step {
		m.do(step, 1)
		m.step = step
	}
	times := math.Max(1, math.Round(a/size))
	m.do(name, int(times))
	return times * size
}

// homing is a search for where a bubble comes home: in coarse turns while it
// lies at a wall, then by what the last turn has done to it.
type homing struct {
	gain       float64 // degrees of turn for one unit of the bubble
	last, made float64
	near       bool
	side, wall float64
}

func (h *homing) next(at float64, wall bool) float64 {
	made := h.made
	if h.made = 0; wall {
		if h.wall == 0 {
			h.wall = 10
		}
		if h.side*at < 0 {
			h.wall = math.Max(1, h.wall/3)
		}
		h.side, h.near = at, false
		return math.Copysign(h.wall, at)
	}
	if d := h.last - at; made != 0 && h.near && math.Abs(d) > .05 {
		h.gain = math.Max(h.gain/2, math.Min(1.5*h.gain, math.Abs(made/d)))
	}
	h.last, h.near = at, true
	return at * h.gain
}

// level brings the bubble of the round level into its ring.
func (m *measurer) level() {
	m.t.Helper()
	roll, swing := homing{gain: 2.4}, homing{gain: 5}
	said := ""
	for range 80 {
		said = m.instrument()
		w := roundWords.FindStringSubmatch(said)
		if w == nil {
			m.t.Fatalf("no round level in %q", said)
		}
		right, forward := number(w[2], w[3], "right"), number(w[4], w[5], "forward")
		side := 1.0
		if !strings.Contains(said, "falls away to the right") {
			side = -1
		}
		switch across, along := math.Abs(right), math.Abs(forward); {
		case w[1] == "inside":
			return
		case across > .12 && across >= along/2:
			roll.made = m.turn("Roll left", "Roll right", roll.next(right, w[1] == "at the wall" && across > .5))
		default:
			swing.made = m.turn("Swing anti", "Swing clock", side*swing.next(forward, w[1] == "at the wall"))
		}
	}
	m.t.Fatalf("the bubble would not come home: %s", said)
}

// said presses the control that tells what the scale shows.
func (m *measurer) said(w *regexp.Regexp) int {
	m.t.Helper()
	m.do("Say what", 1)
	var got []string
	_, err := m.Until("the scale to be told", func(now Tree) bool {
		got = w.FindStringSubmatch(told(now))
		return got != nil
	})
	if err != nil {
		m.t.Fatal(err)
	}
	n, _ := strconv.Atoi(got[1])
	return n
}

func (m *measurer) strike() int {
	m.t.Helper()
	m.level()
	if !strings.Contains(m.instrument(), "falls away to the right") {
		m.do("Turn the plate end", 1)
		m.level()
	}
	m.do("Tap", 1)
	_, err := m.Until("the needle to rest", func(now Tree) bool { return now.Says("Needle at rest") })
	if err != nil {
		m.t.Fatal(err)
	}
	return m.said(northWords)
}

func (m *measurer) dip() int {
	m.t.Helper()
	m.do("Turn the plate on its side", 1)
	m.turn("Swing anti", "Swing clock", 90)
	arm := homing{gain: 1.34}
	said := ""
	for range 50 {
		said = m.instrument()
		w := tubeWords.FindStringSubmatch(said)
		if w == nil {
			m.t.Fatalf("no tube level in %q", said)
		}
		if w[1] == "between" {
			return m.said(indexWords)
		}
		arm.made = m.turn("Turn the arm towards", "Turn the arm away", -arm.next(number(w[2], w[3], "towards"), w[1] == "at the end"))
	}
	m.t.Fatalf("the tube bubble would not come home: %s", said)
	return 0
}

// measure is the whole of it: level, read, write, record, and what is told of
// it then.
func (m *measurer) measure() string {
	m.t.Helper()
	answer := fmt.Sprintf("%03d/%02d", m.strike(), m.dip())
	m.clear()
	if err := m.hand.write(answer); err != nil {
		m.t.Fatal(err)
	}
	m.do("Record", 1)
	return told(settled(m.t, m.Tab))
}

// double makes the text twice as large.
func (m *measurer) double() {
	m.t.Helper()
	m.do("Settings", 1)
	m.do("Text: 200 %", 1)
	m.do("Back to the bench", 1)
}

// A measurement of a plane is done by keyboard alone and by the accessibility
// tree alone: level, read, write, verdict; by the latter in text of twice the size
// (WCAG 2.2, 1.4.4). The plane, 035/30, is ours; what is asked of the reading is
// the bench's own tolerance.
func TestAMeasurement(t *testing.T) {
	t.Parallel()
	for i, way := range ways {
		t.Run(way.name, func(t *testing.T) {
			t.Parallel()
			tab := visit(t, desk, "bench&plane=035/30&seed=3", quick)
			m := &measurer{t: t, Tab: tab, hand: way.hand(tab), step: "Steps of 1°"}
			if i == 1 {
				m.double()
			}
			if got := m.measure(); !strings.Contains(got, "Right") {
				t.Errorf("the verdict is not that it is right:\n%s", got)
			}
		})
	}
}
