package browse

import (
	"fmt"
	"strings"
	"testing"

	"github.com/chromedp/chromedp/kb"
)

// hand works the page in one way and no other.
type hand interface {
	press(name string, times int) error
	write(text string) error
}

// ways are the hands by which all must be possible.
var ways = []struct {
	name string
	hand func(*Tab) hand
}{
	{"by keyboard", func(tab *Tab) hand { return byKeys{tab} }},
	{"by accessibility tree", func(tab *Tab) hand { return byTree{tab} }},
}

// reach opens what lies before a control: a small screen tells a reading on a
// sheet of its own, and has the rest of its controls in another, page by page.
func reach(h hand, t *Tab, name string) error {
	for range 12 {
		now, err := t.Tree()
		if err != nil || now.holds(name) {
			return err
		}
		way := now.way(name)
		if way == "" {
			return nil
		}
		if err := h.press(way, 1); err != nil {
			return err
		}
		if err := t.Do(`cuestaRest()`); err != nil {
			return err
		}
	}
	return nil
}

// way is what leads on to controls that are not shown, if anything does.
func (t Tree) way(name string) string {
	for _, way := range []string{"Next page", "Next part", "Back to the bench", "All controls"} {
		if way != name && t.holds(way) {
			return way
		}
	}
	return ""
}

// holds says whether a control can be pressed whose name begins so.
func (t Tree) holds(name string) bool {
	for _, n := range t {
		if strings.HasPrefix(n.Name, name) && !n.Disabled && n.Role != "StaticText" && n.Role != "heading" {
			return true
		}
	}
	return false
}

// byTree presses what the accessibility tree holds, as a screen reader does.
type byTree struct{ *Tab }

func (h byTree) press(name string, times int) error {
	if err := reach(h, h.Tab, name); err != nil {
		return err
	}
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
	if err := reach(h, h.Tab, name); err != nil {
		return err
	}
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

// restScript tells how long the page has been at rest: in how many frames, and
// for how long by its own clock, neither its document nor a field has changed,
// nor the focus moved.
const restScript = `"use strict";
(() => {
  let frames = 0, since = performance.now(), fields = "";
  const stir = () => { frames = 0; since = performance.now(); };
  const tick = () => {
    frames++;
    let now = document.activeElement ? document.activeElement.outerHTML.slice(0, 80) : "";
    for (const f of document.querySelectorAll("input")) now += "\n" + f.value;
    if (now !== fields) { fields = now; stir(); }
    requestAnimationFrame(tick);
  };
  new MutationObserver(stir).observe(document, {subtree: true, childList: true, characterData: true, attributes: true});
  requestAnimationFrame(tick);
  window.cuestaRest = () => new Promise(done => {
    const end = Date.now() + 25000;
    stir();
    const look = () => {
      if (frames >= 4 && performance.now() - since >= 150 || Date.now() > end) { done(); } else { requestAnimationFrame(look); }
    };
    look();
  });
})();`

// settled waits until what was done has come to rest: until the page has stayed
// the same for some frames, and for longer than the program lets pass between
// two looks at its screen. What never rests is taken as it is in the end.
func settled(t *testing.T, tab *Tab) Tree {
	t.Helper()
	if err := tab.Do(`cuestaRest()`); err != nil {
		t.Fatal(err)
	}
	return tree(t, tab)
}
