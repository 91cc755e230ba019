package window

import (
	"fmt"
	"runtime"
	"slices"
	"time"

	"github.com/hajimehoshi/ebiten/v2"
)

// Cost is what frames cost: the middle and the mean of their times.
type Cost struct{ Median, Mean time.Duration }

// Costs compares a scene with an empty frame, which is wiped and shown and
// holds nothing else. Allocs is how many pieces of memory a frame of the scene
// takes in the scene and in its painter; Library is what the window library
// takes besides, a few for each of its calls to the display.
type Costs struct {
	Empty, Scene    Cost
	Allocs, Library float64
}

// Ratio is the cost of a frame of the scene over that of an empty frame.
func (c Costs) Ratio() float64 { return float64(c.Scene.Median) / float64(c.Empty.Median) }

// Measure shows a scene for a number of frames, as fast as they can be had,
// in turns with as many empty ones, and returns what they cost. Like Run it
// may be called once, from main.
func Measure(s Scene, o Options, frames int) (Costs, error) {
	set(o)
	ebiten.SetVsyncEnabled(false)
	m := &meter{game: game{scene: &guarded{scene: s}, painter: NewPainter()}, left: frames}
	err := ebiten.RunGame(m)
	if err != nil {
		return Costs{}, fmt.Errorf("%w: %w", ErrDisplay, err)
	}
	c := Costs{Empty: cost(m.empty), Scene: cost(m.full)}
	c.Allocs = float64(m.own) / countFrames
	c.Library = max(0, float64(m.all)/countFrames-c.Allocs)
	return c, m.scene.close()
}

// Turns are short, so that both kinds of frame meet the same disturbances. The
// first frames after a change and the first of all are not counted.
const (
	turnFrames  = 20
	skipFrames  = 4
	warmFrames  = 60
	countFrames = 40 // after the turns, to count allocations
)

// meter is a game that shows a scene and nothing in turns.
type meter struct {
	game
	left        int // frames of the scene wanted
	n           int // frames so far
	start       time.Time
	empty, full []time.Duration
	own, all    uint64 // pieces of memory
	before      uint64
}

// last is the number of the last frame that is timed.
func (m *meter) last() int { return warmFrames + 2*m.left }

// blank says whether the present frame is an empty one.
func (m *meter) blank() bool {
	return m.n > warmFrames && m.n <= m.last() && (m.n/turnFrames)%2 == 0
}

// Update ends one frame and begins the next.
func (m *meter) Update() error {
	m.time(time.Now())
	if m.n >= m.last()+turnFrames+countFrames {
		m.all = mallocs() - m.all
		return ebiten.Termination
	}
	m.n++
	if !m.counting() {
		m.start = time.Now()
		return m.game.Update()
	}
	// What the display still does for the last frame must not be counted.
	time.Sleep(20 * time.Millisecond)
	m.before = mallocs()
	if m.n == m.last()+turnFrames+1 {
		m.all = m.before
	}
	return m.game.Update()
}

// counting says whether memory is counted in the present frame.
func (m *meter) counting() bool { return m.n > m.last()+turnFrames }

func mallocs() uint64 {
	var s runtime.MemStats
	runtime.ReadMemStats(&s)
	return s.Mallocs
}

// time books the frame that has just ended.
func (m *meter) time(now time.Time) {
	if m.n <= warmFrames || m.n > m.last() || m.n%turnFrames <= skipFrames {
		return
	}
	if m.blank() {
		m.empty = append(m.empty, now.Sub(m.start))
	} else {
		m.full = append(m.full, now.Sub(m.start))
	}
}

// Draw paints the scene or wipes the screen.
func (m *meter) Draw(screen *ebiten.Image) {
	if m.blank() {
		screen.Clear()
		m.painter.Repaint()
		return
	}
	m.game.Draw(screen)
	if m.counting() {
		m.own += mallocs() - m.before
	}
}

func cost(times []time.Duration) Cost {
	if len(times) == 0 {
		return Cost{}
	}
	slices.Sort(times)
	var sum time.Duration
	for _, t := range times {
		sum += t
	}
	return Cost{times[len(times)/2], sum / time.Duration(len(times))}
}
