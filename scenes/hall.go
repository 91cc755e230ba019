package scenes

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"cuesta/scenes/describe"
	"cuesta/scenes/draw"
	"cuesta/scenes/input"
	"cuesta/scenes/keymap"
	"cuesta/sim"
)

// Want is what a front end must bring before a door can be gone through.
type Want uint8

// The wants.
const (
	NoWant     Want = iota
	WantForm        // the file of a form
	WantLesson      // the file of a lesson
	WantWords       // the place where all goes line by line
)

// The groups of doors.
const (
	Practice = "Practice"
	Lectures = "Lectures"
)

// Door is one thing that can be gone to from the hall.
type Door struct {
	Group string // doors of one group stand together, below this heading
	Title string
	Words string // one sentence
	Place string // what the front end calls the way there, such as the address of a page
	Open  func() (Scene, error)
	Wants Want // in place of Open
}

// HallOptions is what a hall starts from.
type HallOptions struct {
	Doors    []Door
	First    Scene          // what stands open at the start; nil shows the doors
	Place    string         // of First
	Settings Settings       // where First has none of its own
	Keep     func(Settings) // keeps settings that are changed in the hall; nil keeps nothing
}

// Hall is the screen from which everything is gone to, and holds the scene
// that is open. Going back to it leaves the scene as it stands.
type Hall struct {
	doors   []Door
	set     Settings
	keep    func(Settings)
	inside  Scene  // the scene that was opened last, or nil
	place   string // of inside
	open    bool   // inside is on the screen
	title   string
	wants   Want
	said    string
	focus   describe.ID
	page    int
	age     int // frames in which the doors were shown
	keys    keyList
	listing bool // the list of keys is open, over the doors or the scene
	advised bool // what is said is about the settings, until the next key
	frame   input.Frame
	screen  hallScreen
	vitrine vitrine
	issued  []sim.Command
	closing error
}

// NewHall builds a hall.
func NewHall(o HallOptions) *Hall {
	h := &Hall{doors: o.Doors, set: o.Settings, keep: o.Keep, focus: idDoor}
	if o.First != nil {
		h.enter(o.First, o.Place, false)
	}
	return h
}

// Enter opens the scene of a place, with the settings in force. The scene that
// was open is closed.
func (h *Hall) Enter(s Scene, place string) { h.enter(s, place, true) }

// Place is where one is: that of the scene on the screen, or "" in the hall.
func (h *Hall) Place() string {
	if h.open {
		return h.place
	}
	return ""
}

func (h *Hall) enter(s Scene, place string, settle bool) {
	h.shut()
	h.inside, h.place, h.open, h.said = s, place, true, ""
	if c, ok := s.(Chooser); ok && settle {
		c.Choose(h.set)
	}
	if g, ok := s.(Guest); ok {
		g.Leaves(h.leave)
	}
}

// shut closes the scene that was open.
func (h *Hall) shut() {
	if h.inside == nil {
		return
	}
	h.set = h.Settings()
	if err := h.inside.Close(); err != nil {
		h.closing = errors.Join(h.closing, err)
		h.said = err.Error()
	}
	h.inside, h.open = nil, false
}

// leave goes back to the doors.
func (h *Hall) leave() {
	if !h.open {
		return
	}
	h.set = h.Settings()
	h.title = titleOf(h.inside)
	h.open, h.page, h.age = false, 0, 0
	h.focus = idGoOn
	h.screen.made = false
}

// titled is a scene that can say what it is, whatever is open on it.
type titled interface{ title() string }

func (b *Bench) title() string {
	if b.exam != nil {
		return b.exam.name
	}
	return fmt.Sprintf("The bench, station %d", b.number)
}

func (p *Paper) title() string { return p.sit.Title() + ", " + strings.ToLower(p.name(p.at)) }

func (t *Lecture) title() string { return t.play.Lesson().Title }

// titleOf is what a scene is called where it is gone back to.
func titleOf(s Scene) string {
	if t, ok := s.(titled); ok {
		return t.title()
	}
	return headingOf(s.Description())
}

// headingOf is the name of a screen: its first heading.
func headingOf(t *describe.Tree) string {
	name := ""
	visit(&t.Root, func(n *describe.Node) {
		if name == "" && n.Role == describe.Heading {
			name = n.Name
		}
	})
	if name == "" {
		return t.Root.Name
	}
	return name
}

// Wanted is what the front end is asked to bring; asking once answers it.
func (h *Hall) Wanted() Want {
	w := h.wants
	h.wants = NoWant
	return w
}

// Say tells something in the hall, such as why a file cannot be opened.
func (h *Hall) Say(s string) { h.said = s }

// Settings are those of the scene that is open, or the hall's.
func (h *Hall) Settings() Settings {
	if c, ok := h.inside.(Chooser); ok {
		return c.Settings()
	}
	return h.set
}

// Choose puts settings in force, here and in the scene that is open.
func (h *Hall) Choose(s Settings) {
	if !s.IsValid() {
		return
	}
	h.set = s
	if c, ok := h.inside.(Chooser); ok {
		c.Choose(s)
	} else if h.keep != nil {
		h.keep(s)
	}
}

// Observation is that of the scene on the screen.
func (h *Hall) Observation() (sim.Observation, bool) {
	if o, ok := h.inside.(Observer); ok && h.shows() {
		return o.Observation()
	}
	return sim.Observation{}, false
}

// Update takes one frame of input.
func (h *Hall) Update(in input.Frame) []sim.Command {
	h.frame = in
	h.issued = h.issued[:0]
	if h.lists(in.Presses) {
		h.list()
		in.Presses, in.Pointers, in.Acts = nil, nil, nil
	}
	if h.shows() {
		if !h.does(in.Presses, keymap.Menu) {
			return h.inside.Update(in)
		}
		h.leave()
		in.Presses, in.Pointers, in.Acts = nil, nil, nil
	}
	h.age++
	h.screen.build(h)
	in.InOrder(h.pressed, h.acted)
	for _, p := range in.Pointers {
		h.pointer(p)
	}
	if h.shows() { // the scene must stand on the screen before it is drawn
		return h.inside.Update(input.Frame{W: in.W, H: in.H, Scale: in.Scale, Touch: in.Touch})
	}
	h.screen.build(h)
	return h.issued
}

// shows says that the scene inside is on the screen.
func (h *Hall) shows() bool { return h.open && !h.listing }

// does says that the key of an action was pressed.
func (h *Hall) does(ps []input.Press, a keymap.Action) bool {
	key := h.Settings().Keys.Of(a)
	return slices.ContainsFunc(ps, func(p input.Press) bool { return keymap.Of(p) == key })
}

// Picture draws the doors, or the scene that is open.
func (h *Hall) Picture(l *draw.List) {
	if h.shows() {
		h.inside.Picture(l)
		return
	}
	h.screen.picture(h, l)
}

// Description is the screen in words.
func (h *Hall) Description() *describe.Tree {
	if h.shows() {
		return h.inside.Description()
	}
	return &h.screen.tree
}

// Close closes the scene that is open. Errors of scenes closed before it are
// told again.
func (h *Hall) Close() error {
	h.shut()
	return h.closing
}

func (h *Hall) pressed(p input.Press) {
	switch {
	case h.shows():
		return
	case h.keys.asking:
		h.rekey(h.keys.give(p, h.Settings()))
		h.screen.build(h)
		return
	}
	if h.advised {
		h.advised, h.said = false, ""
	}
	if h.everywhere(p) {
		return
	}
	switch p.Key {
	case input.Tab:
		h.focus = nextFocus(&h.screen.tree, h.focus, p.Mods&input.Shift != 0)
	case input.Left, input.Right, input.Up, input.Down:
		h.arrow(p.Key)
	case input.Home:
		h.focus = h.firstDoor()
	case input.Enter, input.Space:
		if !p.Repeat {
			h.act(h.focus)
		}
	case input.Escape, input.F10:
		h.escape()
	}
	if !h.shows() {
		h.screen.build(h)
	}
}

// arrow moves the focus. Below the last row the next page begins.
func (h *Hall) arrow(k input.Key) {
	t, turns := &h.screen.tree, false
	if h.focus, turns = inPanel(t, draw.Rect{W: h.frame.W, H: h.frame.H}, h.focus, k, 0); !turns {
		return
	}
	h.page, h.focus = h.page+1, idPanelMore
	h.screen.build(h)
	if h.focus = inForce(t.Order(), h.firstDoor()); h.listing {
		h.focus = firstInPanel(t)
	}
}

func (h *Hall) firstDoor() describe.ID {
	if o := h.screen.tree.Order(); len(o) > 0 {
		return o[0].ID
	}
	return idNone
}

func (h *Hall) acted(a input.Act) {
	n := h.screen.tree.Find(a.ID)
	if h.shows() || n == nil || !n.Focusable || n.Disabled {
		return
	}
	h.focus = a.ID
	if a.Kind == input.Activate {
		h.act(a.ID)
	}
	if !h.shows() {
		h.screen.build(h)
	}
}

func (h *Hall) pointer(p input.Pointer) {
	if h.shows() || p.Kind != input.PointerDown {
		return
	}
	if n := hitIn(&h.screen.tree, p.X, p.Y, p.Touch, h.screen.lay.Unit); n != nil {
		h.acted(input.Act{Kind: input.Activate, ID: n.ID})
	}
}

// act does what a control of the hall says.
func (h *Hall) act(id describe.ID) {
	switch i := int(id) - int(idDoor); {
	case id == idGoOn:
		h.goOn()
	case id == idPanelMore:
		h.page++
	case id == idClosePanel:
		h.unlist()
	case id == idUsualKeys:
		h.rekey(h.keys.usual(h.Settings()))
	case id >= idKeyRow && id < idKeyRow+describe.ID(keymap.Actions):
		h.keys.ask(keymap.Action(id - idKeyRow))
	case i >= 0 && i < len(h.doors):
		h.through(h.doors[i])
	case id >= idSetNotation && id < idHelpLine:
		h.Choose(h.Settings().with(id))
	}
}

// goOn goes back into the scene that was left.
func (h *Hall) goOn() {
	if h.inside != nil {
		h.open, h.said = true, ""
	}
}

// through opens a door.
func (h *Hall) through(d Door) {
	h.said = ""
	if d.Open == nil {
		h.wants = d.Wants
		return
	}
	h.set = h.Settings()
	s, err := d.Open()
	if err != nil {
		h.said = err.Error()
		return
	}
	h.Enter(s, d.Place)
}

var (
	_ Scene    = (*Hall)(nil)
	_ Chooser  = (*Hall)(nil)
	_ Observer = (*Hall)(nil)
)
