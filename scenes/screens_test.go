package scenes

import (
	"fmt"
	"testing"

	"cuesta/orient"
	"cuesta/scenes/describe"
	"cuesta/scenes/draw"
	"cuesta/scenes/input"
	"cuesta/scenes/stage"
	"cuesta/sim"
)

// windows are the sizes in which nothing may be cut: a laptop, a projector, a
// small window, a phone upright, and the smallest one laid out wide.
var windows = [][2]float64{{1280, 720}, {1920, 1080}, {800, 600}, {390, 844}, {640, 360}}

var textSizes = []TextSize{Text100, Text125, Text150, Text200}

// station is one state of a scene that a test looks at.
type station struct {
	name  string
	scene Scene
}

// drive gives a scene frames of one size.
type drive struct {
	w, h float64
	s    Scene
}

func (d drive) frame(in input.Frame) {
	in.W, in.H, in.Scale = d.w, d.h, 1
	d.s.Update(in)
}

func (d drive) wait() { d.frame(input.Frame{Ticks: 2}) }

func (d drive) act(id describe.ID) {
	d.frame(input.Frame{Ticks: 2, Acts: []input.Act{{Kind: input.Activate, ID: id}}})
}

func (d drive) write(s string) {
	d.frame(input.Frame{Ticks: 2, Acts: []input.Act{{Kind: input.Write, ID: idNotebook, Text: s}}})
}

func (d drive) key(k input.Key) {
	d.frame(input.Frame{Ticks: 2, Presses: []input.Press{{Key: k}}})
}

// asGuest lets a scene offer the way back to the hall, where it can.
func asGuest(s Scene) {
	if g, ok := s.(Guest); ok {
		g.Leaves(func() {})
	}
}

// benchStations are the bench in every phase, seat and panel, one after the
// other; look is called at each.
func benchStations(t *testing.T, w, h float64, set Settings, look func(station)) {
	t.Helper()
	plane := orient.PlaneOf(35*orient.Degree, 30*orient.Degree)
	stone := stage.New() // painted once: all benches have the same
	start := func(set Settings) (*Bench, drive) {
		b, err := NewBench(BenchOptions{Seed: 7, Plane: &plane})
		if err != nil {
			t.Fatal(err)
		}
		b.stage = stone
		b.Choose(set)
		asGuest(b)
		d := drive{w, h, b}
		d.wait()
		return b, d
	}
	b, d := start(set)
	show := func(name string) { look(station{"bench " + name, b}) }
	show("fresh")
	panels := func(ps ...panel) {
		for _, p := range ps {
			b.open(p)
			d.wait()
			eachPage(d, func(i int) { show(fmt.Sprintf("panel %d, page %d", p, i)) })
			d.key(input.Escape)
		}
	}
	panels(settingsPanel, helpPanel, controlsPanel, keypadPanel, keysPanel)
	b.say("The record of earlier practice could not be read (unexpected end of JSON input); it now lies at practice.json.aside, and a new one begins.")
	d.wait()
	show("notice")
	b.notice = ""
	for _, g := range []magnifier{levelMagnifier, scaleMagnifier} {
		b.magnify(g)
		d.wait()
		show(fmt.Sprintf("magnifier %d", g))
	}
	panels(controlsPanel, keypadPanel)
	b.magnify(b.magnified())
	d.write("12z")
	show("slip in the note")
	d.write("035/")
	show("strike noted")
	b.turnOver()
	d.wait()
	show("on its side")
	d.write("035/30")
	show("complete")
	b.record()
	d.wait()
	show("right")
	b, d = start(set)
	d.write("215/48")
	b.record()
	d.wait()
	show("wrong")
	b.toggle(idShowYours)
	b.toggle(idShowHand)
	d.wait()
	show("wrong, overlays")
	panels(whyPanel)
	b, d = start(set)
	b.secondary()
	d.wait()
	show("shown")
	set.Declination = DeclinationYours
	set.Notation = orient.Quadrant
	b, d = start(set)
	show("declination to set")
	b.view.act(b, idViewCloser)
	d.frame(input.Frame{Ticks: 120})
	show("close")
	set.Declination, set.Notation = DeclinationSet, orient.DirectionDip
	b, d = start(set)
	show("declination set")
	b.exam = &exam{name: "Question 12 of 17"}
	b.edited()
	b.screen.made = false
	d.wait()
	show("of a form")
	set.Declination, set.Notation, set.Method = DeclinationYours, orient.AzimuthDip, MethodLid
	b, d = start(set)
	show("on its lid")
	panels(controlsPanel)
	b.toLevel()
	d.frame(input.Frame{Ticks: 360})
	show("level on its lid")
	b.do(sim.Command{Kind: sim.Roll, Angle: orient.Half})
	d.wait()
	show("folded back on its lid")
	d.write("125/40")
	b.record()
	d.wait()
	show("wrong on its lid")
	set.Declination, set.Method = DeclinationNone, MethodSensor
	b, d = start(set)
	show("sensor not calibrated")
	panels(controlsPanel)
	d.act(idCalibrate)
	show("sensor calibrated")
	d.write("035/30")
	show("sensor, complete")
	b.secondary()
	d.wait()
	show("sensor, shown")
}

// toLevel levels the instrument on its lid.
func (b *Bench) toLevel() {
	p := b.ses.World().Pose()
	b.do(sim.Command{Kind: sim.Swing, Angle: (orient.Right - p.Swing).Wrapped()})
	b.do(sim.Command{Kind: sim.Roll, Angle: b.ses.Truth().Dip - b.obs.Hinge})
}

// eachPage turns the pages of what is open, once round.
func eachPage(d drive, look func(page int)) {
	title := ""
	for i := range 60 {
		n := d.s.Description().Find(idPanelTitle)
		if n == nil || n.Name == title {
			return
		}
		if i == 0 {
			title = n.Name
		}
		look(i + 1)
		if d.s.Description().Find(idPanelMore) == nil {
			return
		}
		d.act(idPanelMore)
	}
}

// paperStations are every kind of question, and what a form shows besides.
func paperStations(t *testing.T, w, h float64, set Settings, look func(station)) {
	t.Helper()
	m := newMemory(t, 4)
	p := NewPaper(m, set)
	asGuest(p)
	d := drive{w, h, p}
	d.wait()
	show := func(name string) { look(station{"form, " + name, p}) }
	parts := func(name string) {
		show(name)
		for range 20 {
			before := p.page
			if p.screen.tree.Find(idPanelMore) == nil {
				return
			}
			d.act(idPanelMore)
			if p.page <= before {
				return
			}
			show(fmt.Sprintf("%s, part %d", name, p.page+1))
		}
	}
	for i := range m.items {
		p.goTo(i)
		d.wait()
		name := m.items[i].Kind().Title()
		parts(name)
		for range m.items[i].Hints() {
			p.hint()
		}
		d.wait()
		parts(name + ", hints taken")
		if p.atBench() {
			continue
		}
		p.pad = true
		d.wait()
		parts(name + ", keypad")
		p.pad = false
		p.note.set("no number at all")
		p.record()
		d.wait()
		parts(name + ", kept")
	}
	for i := range m.flags {
		m.flags[i] = i%3 == 0
	}
	p.shut()
	p.review = true
	d.wait()
	eachPage(d, func(i int) { show(fmt.Sprintf("overview, page %d", i)) })
	p.shut()
	p.more = true
	d.wait()
	if p.screen.tree.Find(idPanelTitle) != nil {
		eachPage(d, func(i int) { show(fmt.Sprintf("controls, page %d", i)) })
	}
	p.shut()
	p.goTo(0)
	p.finish()
	d.wait()
	parts("handed in")
}

// zonesOf are the parts of a scene that are on the screen now, and its layout.
func zonesOf(s Scene) ([]*zone, layout) {
	switch s := s.(type) {
	case *Bench:
		return shownZones(&s.screen.zones, func(z zoneName) bool { return s.screen.covers(s.panel, z) }), s.screen.lay
	case *Hall:
		return shownZones(&s.screen.zones, func(zoneName) bool { return false }), s.screen.lay
	case *Lecture:
		return shownZones(&s.screen.zones, func(z zoneName) bool { return s.screen.zones[z].texture.W == 0 }), layout{W: s.screen.w, H: s.screen.h, Phone: s.screen.lay.Phone}
	case *Paper:
		if s.bench != nil {
			return zonesOf(s.bench)
		}
		return shownZones(&s.screen.zones, func(zoneName) bool { return false }), s.screen.lay
	case *Lab:
		return shownZones(&s.screen.zones, func(zoneName) bool { return false }), s.screen.lay
	}
	return nil, layout{}
}

func shownZones(zs *[zoneCount]zone, hide func(zoneName) bool) []*zone {
	var out []*zone
	for i := range zs {
		if z := &zs[i]; !hide(zoneName(i)) && z.rect.W > 0 {
			out = append(out, z)
		}
	}
	return out
}

// inkBox is the room a widget takes up: its box, or for bare text the text
// itself.
func inkBox(w widget) draw.Rect {
	switch w.look {
	case plain, tab, caption:
	default:
		return w.rect
	}
	wide := 0.0
	lines := splitLines(w.text)
	for _, s := range lines {
		wide = max(wide, draw.Measure(w.font(), w.size, s, 0))
	}
	lead := w.leading
	if lead == 0 {
		lead = 1.4 * w.size
	}
	r := draw.Rect{X: w.rect.X + w.pad, Y: w.rect.Y, W: wide, H: lead * float64(len(lines))}
	if w.middle() {
		r.Y = w.rect.Y + (w.rect.H-r.H)/2
	}
	switch w.align {
	case draw.AlignCentre:
		r.X += (w.rect.W - wide) / 2
	case draw.AlignRight:
		r.X += w.rect.W - wide
	}
	return r
}
