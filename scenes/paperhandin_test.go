package scenes

import (
	"strings"
	"testing"

	"cuesta/scenes/describe"
	"cuesta/scenes/input"
)

// handWay is a way to press a control of a form.
type handWay struct {
	name  string
	press func(*testing.T, *Paper, drive, describe.ID)
}

var handWays = []handWay{
	{"name", func(_ *testing.T, _ *Paper, d drive, id describe.ID) { d.act(id) }},
	{"tap", func(t *testing.T, p *Paper, d drive, id describe.ID) { tapper{t, p, d}.tap(id) }},
	{"key", func(_ *testing.T, p *Paper, d drive, id describe.ID) {
		for range 60 {
			if p.focus == id {
				break
			}
			d.key(input.Tab)
		}
		d.key(input.Enter)
	}},
	{"switch", func(t *testing.T, p *Paper, d drive, id describe.ID) {
		p.Choose(Settings{Scan: ScanTwo})
		s := NewSwitched(p)
		d.s = s
		d.wait()
		for range 60 {
			if s.scan.at().id == id && s.scan.at().sub == nil {
				break
			}
			if find(s.scan.at().sub, id, nil) != nil {
				d.key(input.Enter)
				continue
			}
			d.key(input.Space)
		}
		d.key(input.Enter)
	}},
}

// openBut has every question answered but some.
func openBut(m *memory, open ...int) {
	for i := range m.items {
		m.given[i] = []string{"A"}
	}
	for _, i := range open {
		m.given[i] = nil
	}
}

// One press does not close a form in which a question is open, wherever it comes
// from; the second does, if nothing else was done between.
func TestOnePressHandsNothingInWithAQuestionOpen(t *testing.T) {
	const want = "Question 4 is open. Press Hand in again to hand in all the same."
	for _, way := range handWays {
		for _, size := range append(phones, windows...) {
			m, p, d := formAt(t, size, Text100)
			openBut(m, 3)
			p.goTo(p.sit.Count() - 1)
			d.wait()
			d.key(input.PageDown)
			if p.focus == idFinish || !p.review {
				t.Errorf("%s, %v: next at the last question leads to %d, want a question that is open", way.name, size, p.focus)
			}
			way.press(t, p, d, idFinish)
			if m.handed || !strings.Contains(toldOf(p), want) {
				t.Errorf("%s, %v: pressed once, handed in %v, told %q", way.name, size, m.handed, toldOf(p))
			}
			d.key(input.F1)
			way.press(t, p, d, idFinish)
			if m.handed || !strings.Contains(toldOf(p), want) {
				t.Errorf("%s, %v: pressed after help, handed in %v, told %q", way.name, size, m.handed, toldOf(p))
			}
			way.press(t, p, d, idFinish)
			if !m.handed {
				t.Errorf("%s, %v: pressed again, it is not handed in; told %q", way.name, size, toldOf(p))
			}
		}
	}
}

// What is asked goes from the screen as soon as something else is done; to look
// at the button again is nothing.
func TestWhatIsAskedBeforeHandingInGoesWithTheNextThing(t *testing.T) {
	m, p, d := formAt(t, phones[0], Text100)
	openBut(m, 3)
	d.act(idOverview)
	d.act(idMore)
	d.act(idOverview)
	d.act(idFinish)
	if d.frame(input.Frame{Acts: []input.Act{{Kind: input.Focus, ID: idFinish}}}); !strings.Contains(toldOf(p), "again") {
		t.Errorf("looked at, told %q", toldOf(p))
	}
	if d.key(input.Tab); strings.Contains(toldOf(p), "again") {
		t.Errorf("the focus gone on, told %q", toldOf(p))
	}
}

// With every question answered, the overview hands in at once.
func TestTheOverviewHandsInAtOnceWithNothingOpen(t *testing.T) {
	for _, size := range append(phones, windows...) {
		m, p, d := formAt(t, size, Text100)
		openBut(m)
		p.goTo(p.sit.Count() - 1)
		d.wait()
		d.key(input.PageDown)
		d.key(input.Enter)
		if !m.handed {
			t.Errorf("%v: not handed in; focus %d, told %q", size, p.focus, toldOf(p))
		}
	}
}

// On every screen the question that is open is in view with the focus.
func TestNextAtTheLastQuestionShowsTheFirstThatIsOpen(t *testing.T) {
	for _, size := range append(phones, windows...) {
		for _, text := range textSizes {
			m, p, d := formAt(t, size, text)
			openBut(m, 16)
			p.goTo(p.sit.Count() - 1)
			d.wait()
			d.key(input.PageDown)
			if n := p.Description().Find(idQuestion + 16); n == nil || p.Description().Focus != n.ID {
				t.Errorf("%v at %v: the focus is on %d", size, text, p.Description().Focus)
			}
		}
	}
}

// That a choice can be changed is told no more when one has gone on.
func TestWhatWasKeptIsToldNoMoreInTheOverview(t *testing.T) {
	m, p, d := formAt(t, phones[0], Text100)
	last := len(m.items) - 1
	for i := range m.items {
		if p.goTo(i); p.chooses() {
			m.items[last] = m.items[i]
		}
	}
	p.goTo(last)
	d.wait()
	d.act(idChoice + 2)
	if !strings.Contains(toldOf(p), "Kept: C.") {
		t.Fatalf("told %q", toldOf(p))
	}
	d.act(idForward)
	if told := toldOf(p); !p.review || strings.Contains(told, "until you go on") {
		t.Errorf("in the overview %v, told %q", p.review, told)
	}
}
