package scenes

import (
	"cuesta/scenes/describe"
	"cuesta/scenes/draw"
	"cuesta/scenes/input"
	"cuesta/scenes/inset"
	"cuesta/scenes/stage"
	"cuesta/scenes/theme"
	"cuesta/sim"
)

// zone is a part of the screen that is drawn anew only when something in it
// changes.
type zone struct {
	rect    draw.Rect
	ground  ground
	widgets []widget
	baked   baked
	list    draw.List
	texture draw.Texture
}

// last is the widget that was added last.
func (z *zone) last() *widget { return &z.widgets[len(z.widgets)-1] }

// baked is what a zone's texture was last made of.
type baked struct {
	widgets []widget
	rect    draw.Rect
	ground  ground
	th      *theme.Theme
	u       float64
	focused describe.ID
}

// ground is what lies under the widgets of a zone.
type ground uint8

const (
	noGround ground = iota
	panelGround
	barGround
	tableGround // goes on from the backdrop of the rock
	sheetGround // a panel over the rock
	tableTop    // a row above the rock
	plateGround // a plate under words on the rock
)

type zoneName uint8

const (
	titleZone zoneName = iota
	menuZone
	stripZone
	barZone
	magnifierZone // of the column: the captions, under the insets
	columnZone    // the rest of it
	sheetZone
	zoneCount
)

// screen is the bench as it stands on the screen: layout, words and baked
// text. It is made anew when its key changes.
type screen struct {
	w, h, scale float64
	key         screenKey
	made        bool
	lay         layout
	tree        describe.Tree
	zones       [zoneCount]zone
	usual       usual
	bands       []draw.Rect // of the column, top to bottom
	told        bool        // a notice is told in the place of a panel
}

// usual is the layout at the usual size of text, which a larger one is held to.
type usual struct {
	key   screenKey
	share share
	zones [zoneCount]zone // never shown
}

// screenKey is all that the words and controls on the screen depend on.
type screenKey struct {
	w, h, scale float64
	set         Settings
	phase       phase
	seat        sim.Seat
	seated      sim.Side
	needle      sim.NeedleState
	resting     bool
	ring        float64
	round, tube inset.State
	hinge, sens inset.State
	task        int
	hint        hint
	homing      homing
	text, echo  string
	caret       int
	caretOn     bool
	notice      string
	notices     int
	focus       describe.ID
	panel       panel
	page, knob  int
	manner      manner
	keys        keyList
	step        Step
	reveal      stage.Overlays
	close       bool
	large       magnifier
	number      int
	right       bool
}

func (s *screen) resize(in input.Frame) { s.w, s.h, s.scale = in.W, in.H, in.Scale }

func (s *screen) keyOf(b *Bench) screenKey {
	return screenKey{
		w: s.w, h: s.h, scale: s.scale, set: b.set, phase: b.phase,
		seat: b.obs.Seat, seated: b.obs.Seated, needle: b.obs.Dial.State, resting: b.obs.Dial.Resting,
		ring: b.obs.Dial.Ring.Degrees(), round: inset.RoundState(b.obs.Round), tube: inset.TubeState(b.obs.Tube),
		hinge: inset.HingeState(b.obs.Hinge), sens: inset.SensorState(b.obs.Sensor),
		task: b.task(), hint: b.nextHint(), homing: b.homing(), text: b.text, echo: b.echo, caret: b.caret,
		caretOn: b.caretOn(), notice: b.notice, notices: b.notices, focus: b.focus, panel: b.panel, page: b.page, keys: b.keys, knob: b.knob, manner: b.manner, step: b.step,
		reveal: b.reveal, close: b.view.close, large: b.magnified(), number: b.number, right: b.verdict.Right,
	}
}

func (b *Bench) caretOn() bool {
	return b.focus == idNotebook && b.phase == measuring && (b.set.Calm || b.blink < caretTicks)
}

// build makes layout, controls and description for the state of the bench.
func (s *screen) build(b *Bench) {
	k := s.keyOf(b)
	if s.made && k == s.key {
		return
	}
	s.key, s.made = k, true
	m := maker{b: b, s: s, sketch: sketch{th: theme.Of(b.set.Theme), zones: &s.zones}}
	m.make()
}

// hitIn returns the control at a place, or nil. A finger may miss by a little.
func hitIn(t *describe.Tree, x, y float64, touch bool, unit float64) *describe.Node {
	slack := 0.0
	if touch {
		slack = 6 * unit
	}
	var best *describe.Node
	visit(&t.Root, func(n *describe.Node) {
		r := n.Bounds
		if !n.Focusable || n.Disabled || n.ID == idInstrument || n.ID == idView || r.W == 0 {
			return
		}
		r = describe.Rect{X: r.X - slack, Y: r.Y - slack, W: r.W + 2*slack, H: r.H + 2*slack}
		if r.Contains(x, y) && (best == nil || n.Bounds.Contains(x, y)) {
			best = n
		}
	})
	return best
}

func visit(n *describe.Node, f func(*describe.Node)) {
	f(n)
	for i := range n.Children {
		visit(&n.Children[i], f)
	}
}

// covers says whether a panel, or a notice told in its place, lies over a zone.
func (s *screen) covers(p panel, z zoneName) bool {
	if p == noPanel && !s.told || z == sheetZone || s.lay.TooTiny {
		return false
	}
	r := s.zones[z].rect
	if r.W == 0 { // nothing of it is drawn, but it may be described
		r = s.lay.Scene
	}
	return meets(s.lay.Sheet, r)
}

// meets says whether two boxes have a part in common.
func meets(a, b draw.Rect) bool {
	return a.X < b.X+b.W && b.X < a.X+a.W && a.Y < b.Y+b.H && b.Y < a.Y+a.H
}

// caretAt is the place in the notebook nearest to x.
func (s *screen) caretAt(b *Bench, x float64) int {
	n := s.tree.Find(idNotebook)
	if n == nil {
		return len(b.note.text)
	}
	size, at := fieldSize*s.lay.Text, n.Bounds.X+fieldPad*s.lay.Unit
	from, to := fieldPart(b.note.String(), b.note.caret, size, n.Bounds.W-2*fieldPad*s.lay.Unit)
	best := from
	for i := from; i <= to; i++ {
		w := draw.Measure(draw.Regular, size, string(b.note.text[from:i]), fieldTrack)
		before := draw.Measure(draw.Regular, size, string(b.note.text[from:best]), fieldTrack)
		if abs(at+w-x) < abs(at+before-x) {
			best = i
		}
	}
	return best
}

func abs(x float64) float64 { return max(x, -x) }

// picture draws the screen, region by region.
func (s *screen) picture(b *Bench, l *draw.List) {
	l.Reset(s.w, s.h)
	if s.lay.TooTiny {
		l.Region(draw.Rect{W: s.w, H: s.h})
		s.sprite(l, barZone)
		return
	}
	if b.panel != noPanel || s.told {
		l.Region(s.lay.Sheet)
		s.sprite(l, sheetZone)
	} else {
		s.rock(b, l)
	}
	for _, z := range [...]zoneName{stripZone, barZone} {
		if !s.covers(b.panel, z) {
			l.Region(s.zones[z].rect)
			s.sprite(l, z)
		}
	}
	if s.covers(b.panel, columnZone) {
		return
	}
	for i, band := range s.bands {
		l.Region(band)
		if i == len(s.bands)-1 {
			s.sprite(l, columnZone)
			continue
		}
		s.sprite(l, magnifierZone)
		if !l.Live || b.frames > late {
			s.insets(b, l, i)
		}
	}
}

// rock is the rock with its title and its menu.
func (s *screen) rock(b *Bench, l *draw.List) {
	l.Region(s.lay.Scene)
	if b.magnified() == noMagnifier {
		b.stage.Draw(l, b.stageParams())
	} else {
		s.large(b, l)
	}
	if b.keyed && b.focus == idInstrument {
		s.frame(b, l)
	}
	s.sprite(l, menuZone)
	if s.lay.Title.H == 0 {
		s.sprite(l, titleZone)
	} else {
		l.Region(s.lay.Title)
		s.sprite(l, titleZone)
	}
}

// frame is the mark of the focus round the rock.
func (s *screen) frame(b *Bench, l *draw.List) {
	u, r := s.lay.Unit, s.lay.Scene
	w := 2 * u
	th := theme.Of(b.set.Theme)
	if th.Flat {
		w = 3 * u
	}
	r = grow(r, -4*u)
	p := l.Open(nil)
	for _, q := range [...]draw.Rect{
		{X: r.X, Y: r.Y, W: r.W, H: w}, {X: r.X, Y: r.Y + r.H - w, W: r.W, H: w},
		{X: r.X, Y: r.Y, W: w, H: r.H}, {X: r.X + r.W - w, Y: r.Y, W: w, H: r.H},
	} {
		p.Quad(corner(&p, q.X, q.Y, th.Ink), corner(&p, q.X+q.W, q.Y, th.Ink),
			corner(&p, q.X+q.W, q.Y+q.H, th.Ink), corner(&p, q.X, q.Y+q.H, th.Ink))
	}
	p.Done()
}

func corner(p *draw.Pen, x, y float64, c draw.Color) uint16 {
	return p.Vertex(draw.Vertex{X: float32(x), Y: float32(y),
		R: float32(c.R) / 255, G: float32(c.G) / 255, B: float32(c.B) / 255, A: 1})
}

func (s *screen) sprite(l *draw.List, z zoneName) {
	zone := &s.zones[z]
	if zone.texture.W > 0 {
		l.Sprite(&zone.texture, zone.rect.X, zone.rect.Y, 1, 1)
	}
}

// insets draws the magnifiers that stand in a band of the column.
func (s *screen) insets(b *Bench, l *draw.List, band int) {
	if s.lay.Lone {
		return
	}
	th := theme.Of(b.set.Theme)
	if band == 0 {
		b.levelInset(l, th, s.lay.Round)
		if h := s.lay.Hinge; h.R != 0 {
			b.insets.Hinge(l, th, draw.Point{X: h.X, Y: h.Y}, h.R, b.obs.Hinge)
		}
	}
	if band == 1 || band == 0 && s.lay.TwoCaps {
		b.scaleInset(l, th, s.lay.Dial)
	}
}

// levelInset draws the first magnifier.
func (b *Bench) levelInset(l *draw.List, th *theme.Theme, c circle) {
	at := draw.Point{X: c.X, Y: c.Y}
	switch b.obs.Seat {
	case sim.OnSide:
		b.insets.Tube(l, th, at, c.R, b.obs)
	case sim.OnBack:
		b.insets.Ready(l, th, at, c.R, b.obs.Sensor)
	case sim.OnEdge, sim.OnLid:
		b.insets.Round(l, th, at, c.R, b.obs.Round)
	}
}

// scaleInset draws the second magnifier.
func (b *Bench) scaleInset(l *draw.List, th *theme.Theme, c circle) {
	at := draw.Point{X: c.X, Y: c.Y}
	switch b.obs.Seat {
	case sim.OnSide:
		b.insets.Arc(l, th, at, c.R, b.obs)
	case sim.OnBack:
		b.insets.Display(l, th, at, c.R, b.obs.Sensor)
	case sim.OnEdge, sim.OnLid:
		b.insets.Dial(l, th, at, c.R, b.obs.Dial, b.phase != measuring)
	}
}

func (b *Bench) stageParams() stage.Params {
	return stage.Params{
		Rect: b.screen.lay.Scene, Unit: b.screen.lay.Unit, TextScale: b.set.Text.Factor(),
		Theme: theme.Of(b.set.Theme), Plane: b.ses.Truth(), Pose: b.turn.seen(), Off: b.turn.off(),
		Observation: b.turn.seenBy(b.obs), Camera: b.view.camera(), Reveal: b.overlays(),
		MuteNeedle: b.phase != measuring || b.obs.Seat == sim.OnSide, RockSeed: b.ses.Seed(),
		Keep: [4]draw.Rect{b.screen.zones[titleZone].rect, b.screen.zones[menuZone].rect},
	}
}

func (b *Bench) overlays() stage.Overlays {
	o := b.reveal
	o.Progress = b.water
	if b.phase == judged {
		o.YoursPlane = b.answer
	} else {
		o.Yours = false
	}
	return o
}
