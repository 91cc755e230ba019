package describe

import (
	"slices"
	"strings"
)

// Herald says what changes on a screen, for those who do not see it. The zero
// value has heard nothing yet. It says what the description says and nothing
// else, so it tells no answer before the screen does.
//
// A status is told without moving the focus (WCAG 2.2, 4.1.3). What a picture
// shows may change many times a second; it is told when it has come to rest and
// nothing is being done, and now and then while it goes on changing.
type Herald struct {
	now int // ticks that have passed
	heard
	left  []heard // the screens before, as they were left
	focus Node
	said  []string // in this call
	whole ID       // the picture that has been told whole in this call, as the focus
}

// heard is what is known of a screen.
type heard struct {
	headings []string
	labels   []told
	statuses []told
	images   []picture
}

// told is what a node has last been told as.
type told struct {
	id    ID
	text  string
	again int
	keys  string
}

// picture is an image and what has been told of it.
type picture struct {
	id          ID
	name, value string // as told
	next        string // the value that waits
	since, last int    // when the waiting value came, when it was last known to be as told
	told        int    // when it was told
}

// A picture is told when it has been the same for still ticks, or when it has
// kept changing for most, in ticks of 1/120 s.
const (
	still = 36  // 0.3 s
	most  = 300 // 2.5 s
)

// Pass lets ticks of 1/120 s go by. Without it pictures are told when they
// appear and not when they change.
func (h *Herald) Pass(ticks int) { h.now += max(ticks, 0) }

// Hear returns the sentences to say since the last call, the most wanted first:
// the heading of a new screen and the words under it, or of one that was left and
// is come back to the heading alone, the control that got the
// focus or how it has changed, statuses, and what pictures show. A sentence is
// not said twice in one call. Most calls return nil.
func (h *Herald) Hear(t *Tree) []string {
	h.said, h.whole = nil, 0
	back := h.comeBack(t)
	fresh := h.hearHeadings(t)
	h.hearFocus(t, fresh, back)
	h.hearStatuses(t, back)
	h.hearImages(t)
	return h.said
}

// mostLeft bounds the screens that are remembered.
const mostLeft = 8

// comeBack looks whether another screen stands there, keeps what is known of the
// one before, and says whether it is one that was left: of it only what has
// changed is told, and where one is.
func (h *Herald) comeBack(t *Tree) bool {
	var now []string
	t.Root.walk(func(n *Node) {
		if n.Role == Heading {
			now = append(now, n.words())
		}
	})
	if slices.ContainsFunc(now, func(s string) bool { return slices.Contains(h.headings, s) }) || len(now) == 0 || len(h.headings) == 0 {
		return false
	}
	was := h.heard
	i := slices.IndexFunc(h.left, func(l heard) bool { return slices.Equal(l.headings, now) })
	if i >= 0 {
		h.heard = h.left[i]
		h.left = slices.Delete(h.left, i, i+1)
		h.say(now[0])
	}
	h.left = append(h.left, was)
	h.left = h.left[max(0, len(h.left)-mostLeft):]
	return i >= 0
}

// say adds sentences that have not been said in this call.
func (h *Herald) say(words string) {
	for _, s := range sentences(arrows.Replace(words)) {
		if s = sentence(s); !slices.Contains(h.said, s) {
			h.said = append(h.said, s)
		}
	}
}

// arrows are said in words, also within a text.
var arrows = strings.NewReplacer("← → ↑ ↓", "arrow keys", "← →", "left and right arrow", "↑ ↓", "up and down arrow",
	"←", "left arrow", "→", "right arrow", "↑", "up arrow", "↓", "down arrow")

// hearHeadings tells headings that were not on the last screen, with the labels
// under them, and labels that were not there before. It says whether there was
// such a heading.
func (h *Herald) hearHeadings(t *Tree) bool {
	var headings []string
	var labels []told
	fresh, any := false, false
	t.Root.walk(func(n *Node) {
		switch n.Role {
		case Heading:
			fresh = !slices.Contains(h.headings, n.words())
			headings = append(headings, n.words())
			any = any || fresh
			if fresh {
				h.say(sentence(n.words()))
			}
		case Label:
			labels = append(labels, told{id: n.ID})
			if fresh || !has(h.labels, n.ID) && n.ID != 0 {
				h.say(sentence(n.words()))
			}
		case Group, Image, Button, Field, Toggle, Choice, Status, Line:
		}
	})
	h.headings, h.labels = headings, labels
	return any
}

func has(ts []told, id ID) bool {
	return slices.ContainsFunc(ts, func(t told) bool { return t.id == id })
}

// words are the name and the value of a node that is no control.
func (n *Node) words() string {
	if n.Value == "" {
		return n.Name
	}
	return join(n.Name, ": ", n.Value)
}

// hearFocus tells the control that got the focus or stands on a fresh screen,
// or what has changed of it. Of a picture that is come back to the name is
// enough.
func (h *Herald) hearFocus(t *Tree, fresh, back bool) {
	n := t.Find(t.Focus)
	if n == nil {
		h.focus = Node{}
		return
	}
	old := h.focus
	h.focus = *n
	h.focus.Children = nil
	if back && n.Role == Image {
		h.say(sentence(n.Name))
		return
	}
	if fresh || back || n.ID != old.ID || n.Role != old.Role || n.Name != old.Name {
		h.say(n.Say())
		if n.Role == Image {
			h.whole = n.ID
		}
		return
	}
	if n.On != old.On || n.Disabled != old.Disabled {
		h.say(sentence(capital(strings.Trim(n.state()+", "+n.withheld(), ", "))))
	}
	if n.Value != old.Value && n.Role != Image {
		h.say(changed(old.Value, n.Value))
	}
}

// changed are the sentences of a value that were not in the old one.
func changed(old, now string) string {
	if now == "" {
		return "Empty."
	}
	before := sentences(old)
	var out []string
	for _, s := range sentences(now) {
		if !slices.Contains(before, s) {
			out = append(out, sentence(s))
		}
	}
	return strings.Join(out, " ")
}

// hearStatuses tells those that are new, and where nothing has the focus on a
// screen that is come back to, the first that tells how things are. While
// something is being done those that may change to and fro wait until it is over:
// all but those that count.
func (h *Herald) hearStatuses(t *Tree, back bool) {
	var statuses []told
	again := back && h.focus.ID == 0
	t.Root.walk(func(n *Node) {
		if n.Role != Status || n.words() == "" {
			return
		}
		now := told{n.ID, n.words(), n.Again, n.Keys}
		if t.Acting && n.Again == 0 {
			statuses = append(statuses, h.toldOf(n.ID)...)
			return
		}
		statuses = append(statuses, now)
		first := again && n.Again == 0
		again = again && !first
		if slices.Contains(h.statuses, now) && !first {
			return
		}
		if first || !slices.ContainsFunc(h.statuses, func(t told) bool { t.keys = n.Keys; return t == now }) { // else the keys alone are new
			h.say(sentence(n.words()))
		}
		if n.Keys != "" {
			h.say(sentence("Keys: " + KeyWords(n.Keys)))
		}
	})
	h.statuses = statuses
}

// toldOf is what has been told of a status.
func (h *Herald) toldOf(id ID) []told {
	if i := slices.IndexFunc(h.statuses, func(t told) bool { return t.id == id }); i >= 0 {
		return h.statuses[i : i+1]
	}
	return nil
}

func (h *Herald) hearImages(t *Tree) {
	var images []picture
	t.Root.walk(func(n *Node) {
		if n.Role == Image && n.Value != "" {
			images = append(images, h.hearImage(n, t.Acting))
		}
	})
	h.images = images
}

// hearImage tells of a picture what is due, and returns what is then known of
// it.
func (h *Herald) hearImage(n *Node, acting bool) picture {
	i := slices.IndexFunc(h.images, func(p picture) bool { return p.id == n.ID })
	if i < 0 || h.images[i].name != n.Name || h.whole == n.ID {
		if h.whole != n.ID {
			h.say(pictureWords(n.Name, n.Value))
		}
		return picture{id: n.ID, name: n.Name, value: n.Value, next: n.Value, since: h.now, last: h.now, told: h.now}
	}
	p := h.images[i]
	if n.Value != p.next {
		p.next, p.since = n.Value, h.now
	}
	if p.next == p.value {
		if h.now-p.since >= still {
			p.last = h.now
		}
		return p
	}
	if h.now-p.since >= still && !acting || h.now-p.last >= most {
		if s := h.news(p); s != "" {
			h.say(pictureWords(n.Name, s))
		}
		p.value, p.last, p.told = p.next, h.now, h.now
	}
	return p
}

// news is what has changed of a picture, but for what another has told since:
// two may show the same thing.
func (h *Herald) news(p picture) string {
	known := p.value
	for _, q := range h.images {
		if q.told > p.told {
			known = join(sentence(known), " ", q.value)
		}
	}
	return changed(known, p.next)
}

// pictureWords names the picture before a state in a few words; whole sentences
// stand by themselves.
func pictureWords(name, value string) string {
	if whole(value) {
		return value
	}
	return sentence(join(name, ": ", value))
}
