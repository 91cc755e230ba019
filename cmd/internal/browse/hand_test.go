package browse

import (
	"fmt"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/chromedp/kb"
)

// hand works the page in one way and no other.
type hand interface {
	press(name string, times int) error
	write(text string) error
}

// byTree presses what the accessibility tree holds, as a screen reader does.
type byTree struct{ *Tab }

func (h byTree) press(name string, times int) error {
	for range times {
		n, err := h.named(name)
		if err != nil {
			return err
		}
		if err := h.Press(n); err != nil {
			return err
		}
	}
	return nil
}

func (h byTree) write(text string) error {
	n, err := h.field()
	if err != nil {
		return err
	}
	return h.Write(n, text)
}

// byKeys presses keys only: those the tree names, or Tab until a control has
// the keyboard, and Space.
type byKeys struct{ *Tab }

// arrows are the keys of the instrument, which work while it has the keyboard.
var arrows = map[string]string{"←": kb.ArrowLeft, "→": kb.ArrowRight, "↑": kb.ArrowUp, "↓": kb.ArrowDown}

func (h byKeys) press(name string, times int) error {
	n, err := h.named(name)
	if err != nil {
		return err
	}
	key, to := " ", n
	if n.Role == "button" && len(n.Keys) == 1 { // several choices may share a key
		return h.strike(n.Keys, times)
	}
	for sign, k := range arrows {
		if strings.Contains(n.Description, "Keys: "+sign+".") {
			key = k
			if to, err = h.named("Instrument"); err != nil {
				return err
			}
		}
	}
	if err := h.tabTo(to); err != nil {
		return err
	}
	return h.strike(key, times)
}

func (h byKeys) strike(key string, times int) error {
	for range times {
		if err := h.Keys(strings.ToLower(key)); err != nil {
			return err
		}
	}
	return nil
}

// tabTo presses Tab until a control has the keyboard.
func (h byKeys) tabTo(want Node) error {
	for range 60 {
		now, err := h.Tree()
		if err != nil {
			return err
		}
		if f, ok := now.Focused(); ok && f.Role == want.Role && f.Name == want.Name {
			return nil
		}
		if err := h.Keys(kb.Tab); err != nil {
			return err
		}
	}
	return fmt.Errorf("Tab does not come to %s", want)
}

func (h byKeys) write(text string) error {
	n, err := h.field()
	if err != nil {
		return err
	}
	if err := h.tabTo(n); err != nil {
		return err
	}
	for range len(n.Value) {
		if err := h.Keys(kb.Backspace); err != nil {
			return err
		}
	}
	return h.Keys(text)
}

// named is the control whose name begins so.
func (t *Tab) named(name string) (Node, error) {
	var found Node
	_, err := t.Until(name, func(now Tree) bool {
		for _, n := range now {
			if strings.HasPrefix(n.Name, name) && !n.Disabled && n.Role != "StaticText" && n.Role != "heading" {
				found = n
				return true
			}
		}
		return false
	})
	return found, err
}

func (t *Tab) field() (Node, error) {
	now, err := t.Tree()
	if err != nil {
		return Node{}, err
	}
	return now.Find("textbox", "")
}

// told is what the page says besides its controls.
func told(now Tree) string {
	var out []string
	for _, n := range now {
		switch n.Role {
		case "StaticText", "status", "heading", "paragraph", "image", "log", "alert":
			out = append(out, n.Name)
		}
	}
	return strings.Join(out, "\n")
}

// settled waits until what was done has come to rest: until the tree says the
// same for some frames, however long a frame takes.
func settled(t *testing.T, tab *Tab) Tree {
	t.Helper()
	const frames = 6
	last, since := "", 0.0
	for end := time.Now().Add(60 * time.Second); ; time.Sleep(20 * time.Millisecond) {
		n := must[float64](t)(Value[float64](tab, `cuestaClock.frames`))
		now := tree(t, tab)
		if s := now.String(); s != last {
			last, since = s, n
		}
		if n-since >= frames || time.Now().After(end) {
			return now
		}
	}
}
