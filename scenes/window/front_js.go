package window

import (
	"hash/maphash"
	"syscall/js"

	"cuesta/scenes/describe"
	"cuesta/scenes/input"
)

// thePage is the script of the page that the program runs on: the object
// cuesta. Without it, as under a test, nothing is mirrored and nothing comes in.
var thePage = page{script: js.Global().Get("cuesta")}

type page struct {
	script js.Value
	seen   int // events taken so far
}

// drain takes the events noted down so far, as JSON, or "".
func (p *page) drain() string {
	if !p.script.Truthy() {
		return ""
	}
	if v := p.script.Call("drain"); v.Type() == js.TypeString {
		return v.String()
	}
	return ""
}

// scale is how many device pixels a pixel of the page has now.
func (p *page) scale() float64 { return deviceScale(1) }

// deviceScale is how many device pixels a pixel of the page has. The library
// keeps the number it found at the start, and a page can be zoomed.
func deviceScale(float64) float64 {
	if v := js.Global().Get("devicePixelRatio"); v.Type() == js.TypeNumber && v.Float() > 0 {
		return v.Float()
	}
	return 1
}

// front mirrors the description of the screen on the page.
type front struct {
	hash   maphash.Hash
	mark   uint64
	wait   int // ticks until the description is looked at again without input
	told   int // events of the page that it has been told are known
	herald describe.Herald
	shown  bool
}

// lookEvery is how often a screen is compared with its mirror while nobody does
// anything, in ticks: needle and bubble move in every frame.
const lookEvery = 12

// show hands the description to the page where it has changed. The first one
// waits until the first frame can be seen, which it would only delay.
func (f *front) show(s *guarded, in input.Frame) {
	if !f.shown || !thePage.script.Truthy() {
		return
	}
	f.herald.Pass(in.Ticks)
	did := thePage.seen != f.told
	if f.wait -= in.Ticks; f.wait > 0 && !did {
		return
	}
	f.wait = lookEvery
	t := s.description()
	if t == nil {
		return
	}
	say := f.news(t)
	now := markOf(&f.hash, t)
	if now == f.mark && !did && len(say) == 0 {
		return
	}
	f.mark, f.told = now, thePage.seen
	if text, err := mirrorOf(t, thePage.seen, say, in.Scale); err == nil {
		thePage.script.Call("mirror", string(text))
	}
}

// news is what is to be said by a live region: all but the focus, which a
// reader of the page tells by itself.
func (f *front) news(t *describe.Tree) []string {
	without := *t
	without.Focus = 0
	return f.herald.Hear(&without)
}

// drawn tells the page that the first frame can be seen.
func (f *front) drawn() {
	if f.shown || !thePage.script.Truthy() {
		return
	}
	f.shown = true
	thePage.script.Call("drawn")
}

// description is the screen in words, or nil where the scene has none.
func (g *guarded) description() *describe.Tree {
	g.mu.Lock()
	defer g.mu.Unlock()
	if d, ok := g.scene.(Described); ok && !g.closed {
		return d.Description()
	}
	return nil
}
