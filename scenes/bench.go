package scenes

import (
	"cuesta/orient"
	"cuesta/quiz"
	"cuesta/scenes/describe"
	"cuesta/scenes/draw"
	"cuesta/scenes/input"
	"cuesta/scenes/inset"
	"cuesta/scenes/keep"
	"cuesta/scenes/session"
	"cuesta/scenes/spoken"
	"cuesta/scenes/stage"
	"cuesta/sim"
)

// phase is how far the student is with this plane.
type phase uint8

const (
	measuring phase = iota
	judged          // the answer has been given and graded
	shown           // the student asked for the answer instead
)

// panel is what is open over the rock.
type panel uint8

const (
	noPanel panel = iota
	settingsPanel
	helpPanel
	keysPanel
	controlsPanel
	whyPanel
	keypadPanel
)

// BenchOptions is what a bench starts from.
type BenchOptions struct {
	Seed  uint64
	Plane *orient.Plane // a given first plane, or nil for one from the seed
	Store keep.Store    // where settings and progress are kept; nil keeps nothing

	Method *Method // in place of the one that is kept, or nil

	// Session is a practice under way to take up, as another front end has left
	// it; nil begins a new one.
	Session *session.Session
}

// Bench is the scene of one student at one slab.
type Bench struct {
	store  keep.Store
	seed   uint64
	number int // of the plane, from 1
	set    Settings
	tally  quiz.Tally
	ses    *session.Session
	field  sim.Field
	obs    sim.Observation
	sensed sim.Sensor // as the last move left it: its noise is not told

	phase         phase
	note          field
	rewritten     []rewriting // of the note
	text          string      // of the note
	caret         int
	complete      bool // the note reads as a whole plane
	strikeWritten bool
	echo          string
	verdict       quiz.Verdict
	reveal        stage.Overlays
	answer        orient.Plane // what the student wrote
	notice        string
	notices       int // told so far

	panel   panel
	over    beneath // what the panel was opened over
	page    int     // of the panel
	lines   int     // of the help
	keys    keyList // of the panel of keys
	knob    int     // the stepper in reach where there is room for one only
	focus   describe.ID
	keyed   bool // the focus came by the keyboard and must be seen
	step    Step
	view    view
	turn    turning // of the plate, in the picture
	held    held
	drag    drag
	doubled doubled
	blink   int
	water   float64
	stage   *stage.Stage
	insets  *inset.Set
	screen  screen
	issued  []sim.Command
	done    doings
	closing error
	exam    *exam  // where the bench answers a question of a form
	leave   func() // for the hall, where there is one
	manner  manner
	frames  int // shown so far
}

// NewBench sets up a bench. What cannot be loaded from the store is told on
// the screen; the bench works without it.
func NewBench(o BenchOptions) (*Bench, error) {
	b := &Bench{store: o.Store, seed: o.Seed, step: Normal, focus: idInstrument,
		stage: stage.New(), insets: inset.New()}
	b.load()
	if o.Method != nil {
		b.set.Method = *o.Method
	}
	if o.Session != nil {
		b.take(o.Session)
		return b, nil
	}
	if err := b.deal(o.Plane); err != nil {
		return nil, err
	}
	return b, nil
}

// take goes on with a practice as it stands.
func (b *Bench) take(s *session.Session) {
	b.ses, b.field, b.seed = s, s.Options().Field, s.Seed()
	b.set.Notation = s.Options().Notation
	b.set.Method = methodOf(s.Options().Method)
	if b.field.Declination != 0 {
		b.set.Declination = DeclinationYours
		if s.Options().RingPreset {
			b.set.Declination = DeclinationSet
		}
	}
	b.number++
	b.begin()
	if s.Revealed() {
		b.phase, b.reveal, b.water = shown, allOverlays, 1
	}
}

// allOverlays is the answer as it is shown first.
var allOverlays = stage.Overlays{Strike: true, Arrow: true, Water: true, Numbers: true}

// deal lays the next plane on the bench.
func (b *Bench) deal(p *orient.Plane) error {
	s, err := session.New(session.Options{
		Plane: p, Seed: b.seed, Field: b.fieldHere(), RingPreset: b.set.Declination != DeclinationYours,
		Notation: b.set.Notation, Tolerance: quiz.DefaultTolerance, Mix: b.set.Mix(b.tally),
		Tool: b.set.Method.tool(), Method: b.set.Method.Seat(),
	})
	if err != nil {
		return err
	}
	b.ses, b.field = s, b.fieldHere()
	b.number++
	b.begin()
	b.reveal, b.view.turn = stage.Overlays{}, 0
	return nil
}

// begin goes back to measuring, on the same plane.
func (b *Bench) begin() {
	b.phase = measuring
	b.note.clear()
	b.rewritten = nil
	b.edited()
	b.water = 0
	b.done = doings{}
	b.focus = idInstrument
	b.obs = b.ses.World().Observe()
	b.sensed = b.obs.Sensor
	b.turn.meet(b.ses.World().Pose(), true)
	b.view.follow(b, true)
}

// fieldHere is the field at the bench: none of the declination of a place, or
// one of 4 to 20 whole degrees either way, from the seed.
func (b *Bench) fieldHere() sim.Field {
	if b.set.Declination == DeclinationNone {
		return sim.Field{}
	}
	h := b.seed*0x9e3779b97f4a7c15 + 0x632be59bd9b4e019
	d := orient.Angle(4+(h>>33)%17) * orient.Degree
	if h>>63 == 1 {
		d = -d
	}
	return sim.Field{Declination: d, Horizontal: 20e-6}
}

// World is the world under the scene.
func (b *Bench) World() *sim.World { return b.ses.World() }

// Settings are the choices in force.
func (b *Bench) Settings() Settings { return b.set }

// Observation is the instrument as it stands, while it is there to be measured
// with.
func (b *Bench) Observation() (sim.Observation, bool) { return b.obs, b.phase == measuring }

// Choose puts settings in force, as the settings panel does.
func (b *Bench) Choose(s Settings) {
	if !s.IsValid() || s == b.set {
		return
	}
	if kept := b.worn(s); b.exam != nil && kept != s {
		b.say("Notation, declination, planes and method are those of the form.")
		s = kept
	}
	fresh := s.Declination != b.set.Declination || s.Dips != b.set.Dips
	other := s.Method != b.set.Method
	was := b.set.Notation
	b.set = s
	b.ses.Write(s.Notation)
	b.rewrite(was)
	b.edited()
	switch untouched := b.phase == measuring && b.text == ""; {
	case untouched && fresh:
		b.number--
		b.try(b.deal(nil))
	case untouched && other && !b.ses.Answered() && !b.ses.Revealed():
		p := b.ses.Truth()
		b.number--
		b.try(b.deal(&p))
	}
	b.save()
}

// wear takes over what of the settings is a matter of eyes, ears and hands;
// what is asked of the student stays as it is.
func (b *Bench) wear(s Settings) {
	b.set = b.worn(s)
}

// worn are settings s with what is asked of the student as it is.
func (b *Bench) worn(s Settings) Settings {
	s.Notation, s.Declination, s.Dips, s.Method = b.set.Notation, b.set.Declination, b.set.Dips, b.set.Method
	return s
}

// Leaves offers the way back to the hall.
func (b *Bench) Leaves(leave func()) { b.leave = leave; b.screen.made = false }

// Close saves what is to be kept; it is called once, at the end.
func (b *Bench) Close() error {
	b.save()
	return b.closing
}

// do sends a command to the world and keeps it for the caller of Update.
func (b *Bench) do(c sim.Command) {
	from, before := b.ses.World().Pose(), b.obs
	if err := b.ses.Do(c); err != nil {
		b.say(err.Error())
		return
	}
	b.issued = append(b.issued, c)
	b.obs = b.ses.World().Observe()
	if c.Kind != sim.Read {
		b.sensed = b.obs.Sensor
	}
	b.done.add(c, from, b.ses.World().Pose(), before, b.obs)
	turned := c.Kind == sim.Place || c.Kind == sim.Flip
	b.turn.meet(b.ses.World().Pose(), b.set.Calm || !turned)
}

// hurry ends at once what moves in the picture only.
func (b *Bench) hurry() {
	b.turn.left = 0
	b.view.hurry()
}

func (b *Bench) say(s string) {
	b.notice = s
	b.notices++
}

func (b *Bench) try(err error) {
	if err != nil {
		b.say(err.Error())
	}
}

// Update takes one frame of input, moves the world on and returns the commands
// that were carried out.
func (b *Bench) Update(in input.Frame) []sim.Command {
	b.issued = b.issued[:0]
	b.frames++
	b.manner = mannerOf(in.Touch)
	b.screen.resize(in)
	b.screen.build(b)
	b.insets.Unit = b.screen.lay.Unit
	if b.screen.lay.TooTiny { // nothing is to happen that cannot be seen
		in.Presses, in.Pointers, in.Acts = nil, nil, nil
	}
	b.doubled.pass(in.Ticks)
	in.InOrder(b.pressed, b.acted)
	for _, p := range in.Pointers {
		b.pointer(p)
		b.screen.build(b)
	}
	b.advance(in.Ticks)
	b.screen.build(b)
	return b.issued
}

func (b *Bench) pressed(p input.Press) {
	b.notice = ""
	b.press(p)
	b.screen.build(b)
}

// acted does what was done to a control by its name.
func (b *Bench) acted(a input.Act) {
	n := b.screen.tree.Find(a.ID)
	if n == nil || !n.Focusable || n.Disabled {
		return
	}
	b.notice = ""
	b.hurry()
	b.focus, b.keyed = a.ID, true
	switch a.Kind {
	case input.Activate:
		b.act(a.ID)
	case input.Write:
		if a.ID == idNotebook && b.phase == measuring && b.note.replace(a.Text) {
			b.edited()
			b.read()
		}
	case input.Focus:
	}
	b.screen.build(b)
}

// longestFrame is the most time one frame may bring: after a pause the bench
// goes on where it was.
const longestFrame = sim.TicksPerSecond / 4

func (b *Bench) advance(ticks int) {
	ticks = min(max(ticks, 0), longestFrame)
	b.repeatHeld(ticks)
	b.ses.Advance(ticks)
	b.done.pass(ticks)
	b.obs = b.ses.World().Observe()
	b.blink = (b.blink + ticks) % (2 * caretTicks)
	b.turn.meet(b.ses.World().Pose(), true) // however it came there
	b.turn.pass(ticks)
	b.view.advance(b, ticks)
	b.rise(ticks)
}

// caretTicks is half the period of the caret, 530 ms.
const caretTicks = 530 * sim.TicksPerSecond / 1000

// rise lets the water come up over 700 ms, or at once where motion is reduced.
func (b *Bench) rise(ticks int) {
	switch {
	case !b.reveal.Water:
		b.water = 0
	case b.set.Calm:
		b.water = 1
	default:
		b.water = min(1, b.water+float64(ticks)/(.7*sim.TicksPerSecond))
	}
}

// Description is the screen in words. The instrument is described as it stands
// now, in the words of the spoken bench.
func (b *Bench) Description() *describe.Tree {
	t := &b.screen.tree
	o := b.obs
	o.Sensor = b.sensed
	tellInstrument(t, b.ses, o, spoken.Glance(b.ses, o))
	b.done.tell(t)
	return t
}

// tellInstrument fills in what is to be seen of an instrument, of its level and
// of its needle.
func tellInstrument(t *describe.Tree, s *session.Session, o sim.Observation, seen string) {
	if n := t.Find(idInstrument); n != nil {
		n.Value = seen
	}
	if n := t.Find(idRound); n != nil && o.Seat != sim.OnBack {
		n.Value = spoken.Level(o)
	}
	if n := t.Find(idDial); n != nil && o.Seat == sim.OnBack {
		n.Value = spoken.Level(o)
	}
	if n := t.Find(idHinge); n != nil {
		n.Value = spoken.Hinge(s)
	}
	if n, words := t.Find(idDial), spoken.Needle(s); n != nil && words != "" {
		n.Value = words
	}
}

// Picture draws the bench into l.
func (b *Bench) Picture(l *draw.List) { b.screen.picture(b, l) }
