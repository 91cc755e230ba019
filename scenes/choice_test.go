package scenes

import (
	"strings"
	"testing"

	"cuesta/quiz/item"
	"cuesta/scenes/describe"
	"cuesta/scenes/input"
)

// oneTry is a form in which each question may be answered once.
type oneTry struct{ *memory }

func (m oneTry) Left(i int) int { return 1 - len(m.given[i]) }

// A choice that is kept can be changed by another tap until one goes on, though
// no attempt is left, and no tap costs a second attempt; what is on the screen
// says so.
func TestAKeptChoiceCanBeChangedUntilOneGoesOn(t *testing.T) {
	letter := func(p *Paper, d drive, r rune) {
		d.frame(input.Frame{Ticks: 2, Presses: []input.Press{{Rune: r}}})
		d.key(input.Enter)
	}
	tap := func(p *Paper, d drive, r rune) {
		tapper{t, p, d}.tap(idChoice + describe.ID(r-'a'))
	}
	for name, pick := range map[string]func(*Paper, drive, rune){"letter": letter, "tap": tap} {
		for _, size := range append(phones, windows...) {
			m := newMemory(t, 4)
			p := NewPaper(oneTry{m}, Settings{})
			d := drive{size[0], size[1], p}
			d.wait()
			for i, it := range m.items {
				if it.Ask().Kind != item.AskChoice {
					continue
				}
				p.goTo(i)
				d.wait()
				for _, r := range "abba" {
					pick(p, d, r)
					if want := strings.ToUpper(string(r)); m.Given(i) != want || len(m.given[i]) != 1 {
						t.Fatalf("%s, %v, %s: after %c kept %v, told %q", name, size, it.Kind().Name(), r, m.given[i], p.said)
					}
					if want := "until you go on"; !strings.Contains(toldOf(p), want) || strings.Contains(toldOf(p), "attempt") {
						t.Errorf("%s, %v, %s: told %q, want it to hold %q", name, size, it.Kind().Name(), toldOf(p), want)
					}
				}
				p.goTo(i)
				d.wait()
				d.act(idChoice + 1)
				if m.Given(i) != "A" || !strings.Contains(toldOf(p), "No attempt is left") || !strings.Contains(toldOf(p), "Undo") {
					t.Errorf("%s, %v, %s: gone on and back, kept %v, told %q", name, size, it.Kind().Name(), m.given[i], toldOf(p))
				}
			}
		}
	}
}

// toldOf is what stands on the screen of what has come of it.
func toldOf(p *Paper) string {
	said := ""
	visit(&p.Description().Root, func(n *describe.Node) {
		if n.Role == describe.Status || n.ID == idWorth {
			said += n.Name + " "
		}
	})
	return said
}
