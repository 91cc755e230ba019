package scenes_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"cuesta/orient"
	"cuesta/scenes"
	"cuesta/scenes/describe"
	"cuesta/scenes/input"
)

// room is a scene as someone has it who does not see it: frames go in, the
// description comes out. Nothing else of the scene is looked at.
type room struct {
	t       testing.TB
	s       scenes.Scene
	presses int // of keys or of the switch
}

func enter(t testing.TB, s scenes.Scene) *room {
	r := &room{t: t, s: s}
	r.frame(input.Frame{})
	return r
}

func (r *room) frame(in input.Frame) {
	in.W, in.H, in.Scale = 1280, 720, 1
	r.s.Update(in)
}

// wait lets time pass, in frames of a twentieth of a second.
func (r *room) wait(ticks int) {
	for ; ticks > 0; ticks -= 6 {
		r.frame(input.Frame{Ticks: 6})
	}
}

func (r *room) press(p input.Press) {
	r.presses++
	r.frame(input.Frame{Ticks: 6, Presses: []input.Press{p}})
}

func (r *room) tree() *describe.Tree { return r.s.Description() }

// named is the control whose name begins so, or nil.
func (r *room) named(name string) *describe.Node {
	for _, n := range r.tree().Order() {
		if strings.HasPrefix(n.Name, name) {
			return n
		}
	}
	return nil
}

// told is everything the description says of a role.
func (r *room) told(role describe.Role) string {
	var out []string
	var walk func(*describe.Node)
	walk = func(n *describe.Node) {
		if n.Role == role {
			out = append(out, n.Name+" "+n.Value)
		}
		for i := range n.Children {
			walk(&n.Children[i])
		}
	}
	walk(&r.tree().Root)
	return strings.Join(out, "\n")
}

// hand presses controls by their names and writes.
type hand interface {
	press(name string, times int)
	write(text string)
}

var (
	roundWords = regexp.MustCompile(`Bubble (inside|not inside|at the wall).*?: ([0-9.]+) (right|left), ([0-9.]+) (forward|back)`)
	tubeWords  = regexp.MustCompile(`Tube bubble (between|not between|at the end).*?: ([0-9.]+) (towards|away)`)
	northWords = regexp.MustCompile(`north end stands at (\d+)`)
	indexWords = regexp.MustCompile(`index stands at (\d+) on the degree scale`)
)

// measurer takes a measurement at a bench from its description alone.
type measurer struct {
	*room
	hand
	step string
}

func (m *measurer) instrument() string {
	n := m.named("Instrument")
	if n == nil {
		m.t.Fatal("the instrument is not described")
	}
	return n.Value
}

func number(s, word, plus string) float64 {
	x, _ := strconv.ParseFloat(s, 64)
	if word != plus {
		return -x
	}
	return x
}

// round is what the description says of the round level.
func (m *measurer) round() (right, forward float64, inside, wall bool) {
	w := roundWords.FindStringSubmatch(m.instrument())
	if w == nil {
		m.t.Fatalf("no round level in %q", m.instrument())
	}
	return number(w[2], w[3], "right"), number(w[4], w[5], "forward"), w[1] == "inside", w[1] == "at the wall"
}

// turn makes one kind of turn, in the largest of the three steps that fits, and
// returns the size of what it has made.
func (m *measurer) turn(less, more string, a float64) float64 {
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
		m.hand.press(step, 1)
		m.step = step
	}
	times := math.Max(1, math.Round(a/size))
	m.hand.press(name, int(times))
	m.wait(90)
	return times * size
}

// homing is a search for where a bubble comes home: in coarse turns while it
// lies at a wall, smaller whenever it has gone past, then by what the last turn
// has done to it.
type homing struct {
	gain       float64 // degrees of turn for one unit of the bubble
	last, made float64
	near       bool    // it lay at no wall before the last turn
	side, wall float64 // of the wall it lay at last, and the turn there
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

func (m *measurer) fallsRight() bool {
	return strings.Contains(m.instrument(), "falls away to the right")
}

// level brings the bubble of the round level into its ring.
func (m *measurer) level() {
	m.t.Helper()
	roll, swing := homing{gain: 2.4}, homing{gain: 5}
	for range 120 {
		right, forward, inside, wall := m.round()
		switch across, along := math.Abs(right), math.Abs(forward); {
		case inside:
			return
		case across > .12 && across >= along/2:
			roll.made = m.turn("Roll left", "Roll right", roll.next(right, wall && across > .5))
		default:
			side := 1.0
			if !m.fallsRight() {
				side = -1
			}
			swing.made = m.turn("Swing anti", "Swing clock", side*swing.next(forward, wall))
		}
	}
	m.t.Fatalf("the bubble would not come home: %s", m.instrument())
}

// said presses the control that tells what the scale shows.
func (m *measurer) said(w *regexp.Regexp) int {
	m.t.Helper()
	m.hand.press("Say what", 1)
	m.wait(6)
	got := w.FindStringSubmatch(m.told(describe.Status))
	if got == nil {
		m.t.Fatalf("the scale is not told: %q", m.told(describe.Status))
	}
	n, _ := strconv.Atoi(got[1])
	return n
}

func (m *measurer) strike() int {
	m.t.Helper()
	m.level()
	if !m.fallsRight() {
		m.hand.press("Turn the plate end", 1)
		m.wait(90)
		m.level()
	}
	for range 12 {
		m.hand.press("Tap", 1)
		if m.wait(480); strings.Contains(m.instrument(), "Needle at rest") {
			return m.said(northWords)
		}
	}
	m.t.Fatalf("the needle does not come to rest: %s", m.instrument())
	return 0
}

func (m *measurer) dip() int {
	m.t.Helper()
	m.hand.press("Turn the plate on its side", 1)
	m.turn("Swing anti", "Swing clock", 90)
	arm := homing{gain: 1.34}
	for range 60 {
		w := tubeWords.FindStringSubmatch(m.instrument())
		if w == nil {
			m.t.Fatalf("no tube level in %q", m.instrument())
		}
		if w[1] == "between" {
			return m.said(indexWords)
		}
		arm.made = m.turn("Turn the arm towards", "Turn the arm away", -arm.next(number(w[2], w[3], "towards"), w[1] == "at the end"))
	}
	m.t.Fatalf("the tube bubble would not come home: %s", m.instrument())
	return 0
}

// measure is the whole of it: level, read, write, record. It returns the
// verdict in words and what was written.
func (m *measurer) measure() (verdict string, strike, dip int) {
	m.t.Helper()
	strike, dip = m.strike(), m.dip()
	m.hand.write(fmt.Sprintf("%03d/%02d", strike, dip))
	m.hand.press("Record", 1)
	return m.told(describe.Status), strike, dip
}

// planes draws beds: strikes from the whole circle, dips from 5° to 85°.
func planes(seed uint64, n int) []orient.Plane {
	r := rand.New(rand.NewPCG(seed, 1))
	var out []orient.Plane
	for range n {
		out = append(out, orient.PlaneOf(orient.Angle(360*r.Float64())*orient.Degree, orient.Angle(5+80*r.Float64())*orient.Degree))
	}
	return out
}

// within says whether an answer is as near as a careful reading allows: 2° for
// the reading, and what an edge 1° off level does to the strike,
// asin(tan 1°/tan d) (Ragan, Structural Geology); 3° for the dip (common
// practice).
func within(p orient.Plane, strike, dip int) bool {
	off := math.Abs(math.Mod(float64(strike)-p.Strike.Degrees()+540, 360) - 180)
	most := 2 + 180/math.Pi*math.Asin(math.Min(1, math.Tan(math.Pi/180)/math.Tan(p.Dip.Radians())))
	return off <= most && math.Abs(float64(dip)-p.Dip.Degrees()) <= 3
}
