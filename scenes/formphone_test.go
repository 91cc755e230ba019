package scenes

import (
	"strings"
	"testing"

	"cuesta/quiz/item"
	"cuesta/scenes/describe"
	"cuesta/scenes/input"
)

// formAt is a form in a window.
func formAt(t *testing.T, size [2]float64, text TextSize) (*memory, *Paper, drive) {
	t.Helper()
	m := newMemory(t, 4)
	p := NewPaper(m, Settings{Text: text})
	d := drive{size[0], size[1], p}
	d.wait()
	return m, p, d
}

// What is written stays in view beside the keypad of a form.
func TestTheFieldIsInViewBesideTheKeypad(t *testing.T) {
	for _, size := range append(phones, windows...) {
		for _, text := range textSizes {
			m, p, d := formAt(t, size, text)
			for i, it := range m.items {
				if a := it.Ask().Kind; a == item.AskChoice || p.atBench() {
					continue
				}
				p.goTo(i)
				if p.atBench() {
					continue
				}
				p.pad = true
				d.wait()
				tree := p.Description()
				field, keyed := tree.Find(idNotebook), tree.Find(padKeyOf(t, "7"))
				if field == nil || keyed == nil {
					t.Errorf("%v at %v, %s: field shown %v, key shown %v", size, text, it.Kind().Name(), field != nil, keyed != nil)
				}
			}
		}
	}
}

// Buttons keep their place when a hint has been taken, an answer kept or the
// form handed in; what cannot be used is disabled and says why.
func TestButtonsOfAFormKeepTheirPlace(t *testing.T) {
	for _, size := range append(phones, windows...) {
		m, p, d := formAt(t, size, Text100)
		p.goTo(1)
		d.wait()
		at := func(id describe.ID) *describe.Node { return p.Description().Find(id) }
		first, hint, next := at(idPrimary).Bounds, at(idSecondary), at(idForward).Bounds
		same := func(when string) {
			t.Helper()
			if at(idPrimary).Bounds != first || at(idForward).Bounds != next {
				t.Errorf("%v, %s: buttons at %.0f and %.0f, at first at %.0f and %.0f", size, when, at(idPrimary).Bounds, at(idForward).Bounds, first, next)
			}
			if hint != nil && (at(idSecondary) == nil || at(idSecondary).Bounds != hint.Bounds) {
				t.Errorf("%v, %s: the hint has moved", size, when)
			}
		}
		for range m.items[1].Hints() {
			p.hint()
		}
		d.wait()
		same("all hints taken")
		if n := at(idSecondary); n != nil && (!n.Disabled || n.Value != "no more hints") {
			t.Errorf("%v: with no more hints the button is %+v", size, n)
		}
		for range 2 {
			p.note.set("12")
			p.record()
			d.wait()
			same("kept")
		}
		if n := at(idPrimary); !n.Disabled || n.Value != "no attempt left" {
			t.Errorf("%v: with no attempt left the button is %+v", size, n)
		}
		p.finish()
		d.wait()
		if n := at(idPrimary); !n.Disabled || n.Value != "handed in" {
			t.Errorf("%v: after handing in the button is %+v", size, n)
		}
	}
}

func TestHandingInNamesWhatIsOpen(t *testing.T) {
	m, p, d := formAt(t, phones[0], Text100)
	for i := range m.items {
		if i != 2 && i != 4 {
			m.given[i] = []string{"A"}
		}
	}
	d.wait()
	d.act(idMore)
	d.act(idFinish)
	said := ""
	visit(&p.Description().Root, func(n *describe.Node) {
		if n.Role == describe.Status {
			said += n.Name
		}
	})
	if want := "Questions 3 and 5 are open. Press Hand in again to hand in all the same."; m.handed || !strings.Contains(said, want) {
		t.Errorf("handed in %v, told %q, want %q first", m.handed, said, want)
	}
	d.act(idFinish)
	if !m.handed {
		t.Fatal("pressed once more, it is not handed in")
	}
	m.handed = false
	d.act(idMore)
	d.act(idSaveAgain)
	if !m.handed || !strings.HasPrefix(p.said, "Saved again") {
		t.Errorf("saved again %v, told %q", m.handed, p.said)
	}
}

func TestAFormGoesOnWhereOneWas(t *testing.T) {
	m, _, d := formAt(t, phones[0], Text100)
	for range 3 {
		d.key(input.PageDown)
	}
	if again := NewPaper(m, Settings{}); again.at != 3 {
		t.Errorf("opened again at question %d, want 4", again.at+1)
	}
}

// A control is called by what stands on it, so that who speaks it is understood
// (WCAG 2.2, 2.5.3). Signs that are no words are named in words.
func TestNamesHoldTheVisibleWords(t *testing.T) {
	someStations(t, func(t *testing.T, s still) {
		for _, z := range s.zones {
			for _, w := range z.widgets {
				text := strings.Join(strings.Fields(w.text), " ")
				if !pressable(w) || w.look == box || !strings.ContainsFunc(text, isWord) {
					continue
				}
				if !strings.Contains(plainName(w.name), plainName(text)) {
					t.Errorf("%s: the control %q is called %q", s.name, text, w.name)
				}
			}
		}
	})
}

func isWord(r rune) bool { return r >= '0' && r <= '9' || r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z' }

// plainName leaves out what is not spoken.
func plainName(s string) string {
	return strings.Join(strings.FieldsFunc(strings.ToLower(s), func(r rune) bool { return !isWord(r) && r != '°' && r != '%' }), " ")
}
