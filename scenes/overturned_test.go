package scenes

import (
	"strings"
	"testing"

	"cuesta/quiz/item"
	"cuesta/scenes/describe"
	"cuesta/scenes/input"
)

// overturnedForm is a form with an overturned bed to read, and one to draw.
func overturnedForm(t *testing.T) *memory {
	t.Helper()
	m := newMemory(t, 1)
	kept := m.items[:0]
	for _, name := range []string{"read-symbol", "draw-symbol"} {
		it := overturnedItem(t, name)
		kept = append(kept, it)
	}
	m.items = kept
	return m
}

func overturnedItem(t *testing.T, name string) item.Item {
	t.Helper()
	for seed := range uint64(200) {
		for _, it := range newMemory(t, seed).items {
			if it.Kind().Name() == name && strings.HasSuffix(it.Key(), " overturned") {
				return it
			}
		}
	}
	t.Fatalf("no overturned bed for %s", name)
	return nil
}

// tapper has nothing but a finger.
type tapper struct {
	t *testing.T
	p *Paper
	drive
}

// sees turns to the part of the question with a control, if there is one.
func (f tapper) sees(id describe.ID) bool {
	for range 9 {
		if f.p.Description().Find(id) != nil {
			return true
		}
		n := f.p.Description().Find(idPanelMore)
		if n == nil {
			return false
		}
		f.touch(n.Bounds)
	}
	return false
}

func (f tapper) tap(id describe.ID) {
	f.t.Helper()
	if !f.sees(id) {
		f.t.Fatalf("%v at %v: control %d is nowhere", f.w, f.p.set.Text, id)
	}
	f.touch(f.p.Description().Find(id).Bounds)
}

func (f tapper) touch(r describe.Rect) {
	at := input.Pointer{Kind: input.PointerDown, X: r.X + r.W/2, Y: r.Y + r.H/2, Touch: true}
	f.frame(input.Frame{Ticks: 2, Touch: true, Pointers: []input.Pointer{at}})
}

// In every window and size of text an overturned bed is written by taps alone.
func TestOverturnedIsWrittenByTapsAlone(t *testing.T) {
	for _, size := range append(phones, windows...) {
		for _, text := range textSizes {
			m := overturnedForm(t)
			p := NewPaper(m, Settings{Text: text})
			f := tapper{t, p, drive{size[0], size[1], p}}
			f.wait()
			for i, it := range m.items {
				p.goTo(i)
				f.wait()
				if !p.pad {
					f.tap(idKeypad)
				}
				for _, r := range strings.TrimSuffix(it.Key(), " overturned") {
					f.tap(padKeyOf(t, string(r)))
				}
				if !f.sees(idWayUp) {
					f.tap(idKeypad) // whose keys take the whole of a very small screen
				}
				f.tap(idWayUp)
				f.tap(idPrimary)
				if got := it.Mark(m.Given(i), item.Evidence{}); !got.Right {
					t.Errorf("%v at %v, %s: kept %q for %q (%s)", size, text, it.Kind().Name(), m.Given(i), it.Key(), p.said)
				}
			}
		}
	}
}

// The word is offered where it is asked for, and nowhere else.
func TestTheWordOverturnedIsOfferedWhereItIsAskedFor(t *testing.T) {
	m, p, d := formAt(t, windows[0], Text100)
	for i, it := range m.items {
		p.goTo(i)
		d.wait()
		if has := p.Description().Find(idWayUp) != nil; has != it.Ask().WayUp {
			t.Errorf("%s: the word is offered: %v, want %v", it.Kind().Name(), has, it.Ask().WayUp)
		}
	}
}

// Pressed again the word goes; what is written after it stands before it.
func TestOverturnedComesAndGoes(t *testing.T) {
	m := overturnedForm(t)
	p := NewPaper(m, Settings{})
	d := drive{1280, 720, p}
	d.wait()
	steps := []struct {
		do   func()
		want string
	}{
		{func() { d.act(idWayUp) }, " overturned"},
		{func() { sheetHands{p, 1280, 720}.typing("230/45") }, "230/45 overturned"},
		{func() { d.act(idWayUp) }, "230/45"},
		{func() { d.act(idWayUp) }, "230/45 overturned"},
		{func() { d.act(idKeypad); d.act(padKeyOf(t, "←")) }, "230/4 overturned"},
		{func() { p.control() }, "230/45 overturned"},
		{func() { d.write("230/45 Overturned bed"); d.act(idWayUp) }, "230/45 bed"},
	}
	for i, s := range steps {
		s.do()
		d.wait()
		if got := p.note.String(); got != s.want {
			t.Fatalf("step %d: the field holds %q, want %q", i+1, got, s.want)
		}
		if n := p.Description().Find(idWayUp); n.On != strings.Contains(s.want, "overturned") {
			t.Errorf("step %d: with %q the switch is on: %v", i+1, s.want, n.On)
		}
	}
}
