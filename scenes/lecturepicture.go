package scenes

import (
	"cuesta/scenes/draw"
	"cuesta/scenes/lesson"
	"cuesta/scenes/stage"
	"cuesta/scenes/theme"
	"cuesta/sim"
)

// magnified is how much larger a place is drawn.
const magnified = 2.5

// picture draws the screen, region by region.
func (s *lectureScreen) picture(t *Lecture, l *draw.List) {
	l.Reset(s.w, s.h)
	th := theme.Of(t.set.Theme)
	whole := draw.Rect{W: s.w, H: s.h}
	switch {
	case t.blank:
		l.Region(whole)
		flood(l, whole, draw.Color{A: 255}) // dark in every palette: the room is to look away
		return
	case s.lay.TooTiny:
		l.Region(whole)
		s.sprite(l, barZone)
		return
	case t.panel != noPanel:
		l.Region(s.lay.Sheet)
		s.sprite(l, sheetZone)
		return
	default:
		s.scene(t, l, th)
		s.column(t, l, th)
	}
	bar := s.zones[barZone].rect
	if !s.lay.Phone {
		bar = s.lay.Bar
	}
	l.Region(bar)
	s.sprite(l, barZone)
	s.mark(t, l, th, bar)
	if s.lay.Seated {
		l.Region(s.zones[stripZone].rect)
		s.sprite(l, stripZone)
		s.mark(t, l, th, s.zones[stripZone].rect)
	}
}

func (s *lectureScreen) sprite(l *draw.List, z zoneName) {
	zone := &s.zones[z]
	if zone.texture.W > 0 && zone.texture.H > 0 {
		l.Sprite(&zone.texture, zone.rect.X, zone.rect.Y, 1, 1)
	}
}

func flood(l *draw.List, r draw.Rect, c draw.Color) {
	p := l.Open(nil)
	p.Quad(corner(&p, r.X, r.Y, c), corner(&p, r.X+r.W, r.Y, c), corner(&p, r.X+r.W, r.Y+r.H, c), corner(&p, r.X, r.Y+r.H, c))
	p.Done()
}

// scene is the slab, or a magnifier in its place where that is looked at.
func (s *lectureScreen) scene(t *Lecture, l *draw.List, th *theme.Theme) {
	r := s.lay.Scene
	t.insets.Unit = s.lay.Unit
	if which := s.looksAt(t); which != noMagnifier {
		l.Region(r)
		flood(l, r, th.Panel)
		s.inset(t, l, th, which, circle{r.X + r.W/2, r.Y + r.H/2 + .02*r.H, .42 * min(r.W, r.H)})
	} else {
		t.stage.Draw(l, t.stageParams(th))
	}
	apart := s.lay.Title.H > 0
	if !apart {
		s.sprite(l, titleZone)
		s.sprite(l, menuZone)
	}
	if !s.lay.Phone {
		s.sprite(l, barZone) // it may reach up over the picture
	}
	if t.controls() && !s.lay.Seated {
		s.sprite(l, stripZone)
	}
	s.mark(t, l, th, r)
	if apart {
		l.Region(s.zones[titleZone].rect)
		s.sprite(l, titleZone)
		s.sprite(l, menuZone)
		s.mark(t, l, th, s.zones[titleZone].rect)
	}
}

// looksAt is the inset that is magnified.
func (s *lectureScreen) looksAt(t *Lecture) magnifier {
	if !t.magnify {
		return noMagnifier
	}
	in := func(c circle) bool {
		dx, dy := t.spot.X-c.X, t.spot.Y-c.Y
		return c.R > 0 && dx*dx+dy*dy <= c.R*c.R
	}
	switch {
	case in(s.lay.Round):
		return levelMagnifier
	case in(s.lay.Dial):
		return scaleMagnifier
	}
	return noMagnifier
}

// inset draws one of the magnifiers in a circle.
func (s *lectureScreen) inset(t *Lecture, l *draw.List, th *theme.Theme, which magnifier, c circle) {
	o, at := t.turn.seenBy(t.obs), draw.Point{X: c.X, Y: c.Y}
	side := o.Seat == sim.OnSide
	switch {
	case c.R <= 0:
	case which == levelMagnifier && side:
		t.insets.Tube(l, th, at, c.R, o)
	case which == levelMagnifier:
		t.insets.Round(l, th, at, c.R, o.Round)
	case side:
		t.insets.Arc(l, th, at, c.R, o)
	default:
		t.insets.Dial(l, th, at, c.R, o.Dial, false)
	}
}

// column is what stands beside the slab.
func (s *lectureScreen) column(t *Lecture, l *draw.List, th *theme.Theme) {
	if s.lay.Column.W == 0 {
		return
	}
	l.Region(s.zones[columnZone].rect)
	s.sprite(l, columnZone)
	s.inset(t, l, th, levelMagnifier, s.lay.Round)
	s.inset(t, l, th, scaleMagnifier, s.lay.Dial)
	if r := s.lay.Curve; r.W > 0 && r.H > 0 {
		dip := t.play.Session().Truth().Dip
		size := lectureType * s.lay.Type * s.text
		t.curve.draw(l, curveKey{rect: r, th: th, size: size, u: s.lay.Unit / 1.5, words: curveWords(t.tilt, dip), steep: dip > gentleDips}, t.tilt, dip)
	}
	s.mark(t, l, th, s.zones[columnZone].rect)
}

func (t *Lecture) stageParams(th *theme.Theme) stage.Params {
	s, ses := &t.screen, t.play.Session()
	p := stage.Params{
		Rect: s.lay.Scene, Unit: s.lay.Unit, TextScale: lectureType * s.lay.Type * s.text / (17 * s.lay.Unit),
		Theme: th, Plane: ses.Truth(), Pose: t.turn.seen(), Off: t.turn.off(), Observation: t.turn.seenBy(t.obs),
		Camera: t.eye.now, Reveal: t.overlays(), RockSeed: ses.Seed(), Bare: !t.shows(lesson.Instrument),
		MuteNeedle: t.obs.Seat == sim.OnSide || t.shows(lesson.Strike),
		Keep:       [4]draw.Rect{s.zones[titleZone].rect, s.zones[menuZone].rect},
	}
	if t.magnify {
		p.Zoom = stage.Zoom{K: magnified, X: t.spot.X, Y: t.spot.Y}
	}
	return p
}

// overlays are the things on the rock.
func (t *Lecture) overlays() stage.Overlays {
	return stage.Overlays{
		Water: t.shows(lesson.Water), Progress: ease(t.water), Strike: t.shows(lesson.Strike), Arrow: t.shows(lesson.Arrow),
		Hand: t.shows(lesson.Hand), Numbers: t.shows(lesson.Numbers), Ends: t.shows(lesson.Ends),
		Ball: t.shows(lesson.Ball), BallTime: t.ballTime(),
	}
}

// mark draws the pointer where it lies in a region: a ring about the place and
// an arrow that comes to it from the lower right, both cased.
func (s *lectureScreen) mark(t *Lecture, l *draw.List, th *theme.Theme, r draw.Rect) {
	u := s.lay.Unit / 1.5
	reach := 150 * u
	at := t.spot
	if !t.pointer || at.X < r.X-reach || at.X > r.X+r.W+reach || at.Y < r.Y-reach || at.Y > r.Y+r.H+reach {
		return
	}
	p := l.Open(nil)
	p.Ring(at, 40*u, 14*u, 1, th.Panel)
	arrow(&p, at, u, 3, th.Panel)
	p.Ring(at, 40*u, 7*u, 1, th.Ink)
	arrow(&p, at, u, 0, th.Ink)
	p.Done()
}

// arrow adds a broad arrow whose tip stands at the ring, grown by d.
func arrow(p *draw.Pen, at draw.Point, u, d float64, c draw.Color) {
	const k = .70710678
	place := func(along, aside float64) draw.Point {
		return draw.Point{X: at.X + u*k*(along-aside), Y: at.Y + u*k*(along+aside)}
	}
	p.FeatherPolygon([]draw.Point{
		place(47-2.4*d, 0), place(87+d, 26+1.6*d), place(87+d, 9+d), place(130+d, 9+d), place(130+d, -9-d), place(87+d, -9-d), place(87+d, -26-1.6*d),
	}, 1, c)
}
