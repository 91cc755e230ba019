package scenes

import (
	"strings"

	"cuesta/orient"
	"cuesta/scenes/describe"
	"cuesta/scenes/draw"
	"cuesta/scenes/input"
	"cuesta/scenes/inset"
	"cuesta/scenes/lesson"
	"cuesta/scenes/stage"
	"cuesta/sim"
)

// LectureOptions is what a lecture starts from.
type LectureOptions struct {
	Settings Settings       // text, colours and motion count
	Keep     func(Settings) // keeps settings that are changed here; nil keeps nothing
	Step     int            // the step to begin with, from 0
}

// Lecture is the scene of a lesson on a projector: the slab, the magnified level
// and scale, one line. The presenter goes on and back, and may play with the
// instrument at any step.
type Lecture struct {
	play *lesson.Player
	set  Settings
	keep func(Settings)
	obs  sim.Observation
	hand *Bench // works the instrument in live play, by the handlers of the bench

	leave   func()
	panel   panel
	over    beneath // what the panel was opened over
	page    int
	lines   int // of the keys
	focus   describe.ID
	keyed   bool // the focus came by the keyboard
	idle    int  // ticks since the pointer moved
	blank   bool
	magnify bool
	pointer bool
	spot    draw.Point // what is magnified and pointed at
	moused  bool       // a mouse or a finger has been seen
	drag    drag
	swipe   swipe
	held    held
	notice  string
	notices int // told in live play so far

	turn  turning
	eye   eye
	water float64
	ball  int          // ticks since it was let go
	tilt  orient.Angle // of the edge, as the bubble shows it

	stage  *stage.Stage
	insets *inset.Set
	curve  curvePicture
	screen lectureScreen
	issued []sim.Command
}

var (
	_ Scene    = (*Lecture)(nil)
	_ Chooser  = (*Lecture)(nil)
	_ Observer = (*Lecture)(nil)
	_ Guest    = (*Lecture)(nil)
)

// NewLecture begins a lesson. The error says what in it cannot be carried out.
func NewLecture(l lesson.Lesson, o LectureOptions) (*Lecture, error) {
	p, err := lesson.NewPlayer(l)
	if err != nil {
		return nil, err
	}
	for p.At() < o.Step {
		if ok, err := p.Next(); err != nil {
			return nil, err
		} else if !ok {
			break
		}
	}
	t := &Lecture{play: p, set: o.Settings, keep: o.Keep, stage: stage.New(), insets: inset.New(), idle: hideAfter}
	t.look(true)
	return t, nil
}

// Player is what goes through the lesson.
func (t *Lecture) Player() *lesson.Player { return t.play }

// Settings are the choices in force.
func (t *Lecture) Settings() Settings { return t.set }

// Choose puts settings in force.
func (t *Lecture) Choose(s Settings) {
	if !s.IsValid() || s == t.set {
		return
	}
	t.set = s
	if t.hand != nil {
		t.hand.set = t.handSettings()
	}
	if t.keep != nil {
		t.keep(s)
	}
}

// Observation is the instrument as it stands; false while it is not shown.
func (t *Lecture) Observation() (sim.Observation, bool) {
	return t.obs, t.shows(lesson.Instrument) && !t.blank
}

// Leaves makes the lecture offer the way back.
func (t *Lecture) Leaves(leave func()) { t.leave = leave }

// Close ends the lecture; nothing of it is kept.
func (t *Lecture) Close() error { return nil }

// shows says whether a thing is on the screen. In live play the instrument is
// there with its magnifiers.
func (t *Lecture) shows(x lesson.Thing) bool {
	if t.play.IsLive() {
		switch x {
		case lesson.Instrument, lesson.Levels, lesson.Scale:
			return true
		case lesson.Student:
			return false
		}
	}
	return t.play.Shows(x)
}

// Update takes one frame of input and moves the lesson on.
func (t *Lecture) Update(in input.Frame) []sim.Command {
	t.issued = t.issued[:0]
	t.screen.resize(in)
	t.screen.build(t)
	in.InOrder(t.pressed, t.acted)
	for _, p := range in.Pointers {
		t.point(p)
		t.screen.build(t)
	}
	t.advance(in.Ticks)
	t.screen.build(t)
	return t.issued
}

func (t *Lecture) pressed(p input.Press) {
	t.notice = ""
	t.press(p)
	t.look(false)
	t.screen.build(t)
}

// acted does what was done to a control by its name.
func (t *Lecture) acted(a input.Act) {
	n := t.screen.tree.Find(a.ID)
	if n == nil || !n.Focusable || n.Disabled || a.Kind == input.Write {
		return
	}
	t.notice = ""
	t.focus, t.keyed = a.ID, true
	if a.Kind == input.Activate {
		t.act(a.ID)
	}
	t.look(false)
	t.screen.build(t)
}

// hideAfter is how long the controls stay when the pointer rests: 4 s. They can
// be worked by keys and by name all the time.
const hideAfter = 4 * sim.TicksPerSecond

func (t *Lecture) advance(ticks int) {
	ticks = min(max(ticks, 0), longestFrame)
	t.idle = min(t.idle+ticks, hideAfter)
	t.repeatHeld(ticks)
	t.handled().pass(ticks)
	if !t.blank && t.panel == noPanel || t.play.IsLive() {
		before := t.play.At()
		did, err := t.play.Advance(ticks)
		t.try(err)
		t.issued = append(t.issued, did...)
		if t.play.At() != before {
			t.begun()
		}
	}
	t.look(t.set.Calm)
	t.turn.pass(ticks)
	t.eye.pass(ticks)
	t.rise(ticks)
}

// look takes in the bench as it stands.
func (t *Lecture) look(atOnce bool) {
	w := t.play.Session().World()
	t.obs = w.Observe()
	if t.hand != nil {
		t.hand.obs = t.obs
	}
	t.turn.meet(w.Pose(), atOnce || t.play.IsLive() || !t.shows(lesson.Instrument))
	t.eye.meet(t.wanted(), atOnce || t.set.Calm)
	t.feel()
}

// rise lets the water come up and the ball roll, or puts them where they end
// where motion is reduced.
func (t *Lecture) rise(ticks int) {
	switch {
	case !t.shows(lesson.Water):
		t.water = 0
	case t.set.Calm:
		t.water = 1
	default:
		t.water = min(1, t.water+float64(ticks)/(.7*sim.TicksPerSecond))
	}
	switch {
	case !t.shows(lesson.Ball):
		t.ball = 0
	case t.set.Calm:
		t.ball = longestRoll
	default:
		t.ball = min(t.ball+ticks, longestRoll)
	}
}

// The ball waits for a moment and then rolls at a quarter of its speed, so that
// its way can be followed.
const (
	ballWaits   = sim.TicksPerSecond / 2
	ballSlow    = 4
	longestRoll = 60 * sim.TicksPerSecond
)

func (t *Lecture) ballTime() float64 {
	return float64(max(0, t.ball-ballWaits)) / (ballSlow * sim.TicksPerSecond)
}

// hurry ends at once what moves on the screen.
func (t *Lecture) hurry() {
	t.turn.left, t.eye.left = 0, 0
	if t.shows(lesson.Water) {
		t.water = 1
	}
	if t.shows(lesson.Ball) {
		t.ball = longestRoll
	}
}

func (t *Lecture) try(err error) {
	if err != nil {
		t.notice = err.Error()
	}
}

// Description is the screen in words. What is to be seen is told as the terminal
// tells it.
func (t *Lecture) Description() *describe.Tree {
	tellInstrument(&t.screen.tree, t.play.Session(), t.obs, strings.Join(t.play.Told(), " "))
	t.handled().tell(&t.screen.tree)
	return &t.screen.tree
}

// handled is what is done in live play.
func (t *Lecture) handled() *doings {
	if t.hand == nil {
		return new(doings)
	}
	return &t.hand.done
}

// Picture draws the lecture into l.
func (t *Lecture) Picture(l *draw.List) { t.screen.picture(t, l) }
