package scenes

import (
	"cuesta/scenes/describe"
	"cuesta/scenes/draw"
	"cuesta/scenes/input"
	"cuesta/scenes/keymap"
	"cuesta/sim"
)

// Switched is a scene that can be worked with one switch or two, where its
// settings say so: a mark goes over the controls, and the switch presses the
// one that is marked. The switch is the space bar, Enter, the key chosen for
// it, a click or touch anywhere, or an act on any control. With two, the space
// bar or the key chosen moves the mark, and the others press. Keys that are no
// switch work as ever. Everything else of the scene is as it is.
type Switched struct {
	Scene
	scan   scanner
	tree   describe.Tree
	issued []sim.Command
	frame  input.Frame
}

// NewSwitched lets a scene be worked with switches.
func NewSwitched(s Scene) *Switched { return &Switched{Scene: s} }

// Settings are those of the scene.
func (s *Switched) Settings() Settings {
	if c, ok := s.Scene.(Chooser); ok {
		return c.Settings()
	}
	return Settings{}
}

// Choose puts settings in force.
func (s *Switched) Choose(set Settings) {
	if c, ok := s.Scene.(Chooser); ok {
		c.Choose(set)
	}
}

// Observation is that of the scene.
func (s *Switched) Observation() (sim.Observation, bool) {
	if o, ok := s.Scene.(Observer); ok {
		return o.Observation()
	}
	return sim.Observation{}, false
}

func (s *Switched) on() bool { return s.Settings().Scan != ScanOff }

// Update takes one frame of input and returns the commands that were carried
// out at a bench.
func (s *Switched) Update(in input.Frame) []sim.Command {
	s.frame = in
	if !s.on() {
		s.scan = scanner{}
		return s.Scene.Update(in)
	}
	s.issued = s.issued[:0]
	s.scan.meet(s.Scene.Description())
	in.InOrder(s.pressed, func(a input.Act) {
		if a.Kind == input.Activate {
			s.press()
		}
	})
	for _, p := range in.Pointers {
		if p.Kind == input.PointerDown {
			s.press()
		}
	}
	in.Presses, in.Pointers, in.Acts = nil, nil, nil
	s.pass(in)
	if set := s.Settings(); set.Scan == ScanItself {
		s.scan.pass(max(in.Ticks, 0), set.Pace.Ticks())
	}
	return s.issued
}

// pass hands a frame on to the scene and looks what has come of it.
func (s *Switched) pass(in input.Frame) {
	s.issued = append(s.issued, s.Scene.Update(in)...)
	s.scan.meet(s.Scene.Description())
}

// empty is a frame in which no time passes.
func (s *Switched) empty() input.Frame {
	return input.Frame{W: s.frame.W, H: s.frame.H, Scale: s.frame.Scale, Touch: s.frame.Touch}
}

// pressed takes a press of a key: one of a switch, or one for the scene.
func (s *Switched) pressed(p input.Press) {
	set, stroke := s.Settings(), keymap.Of(p)
	moves := set.Scan == ScanTwo && (p.Key == input.Space || stroke == set.Keys.Of(keymap.SwitchMove))
	switch {
	case set.Scan == ScanOff: // switched off by the press before
		s.hand(p)
	case moves && p.Repeat:
	case moves:
		s.scan.next(true)
	case p.Key == input.Space, p.Key == input.Enter, stroke == set.Keys.Of(keymap.Switch):
		if !p.Repeat {
			s.press()
		}
	default:
		s.hand(p)
	}
}

func (s *Switched) hand(p input.Press) {
	f := s.empty()
	f.Presses = []input.Press{p}
	s.pass(f)
}

// press presses what the mark is on.
func (s *Switched) press() {
	if !s.on() {
		return
	}
	id, ok := s.scan.press()
	if !ok {
		return
	}
	f := s.empty()
	f.Acts = []input.Act{{Kind: input.Activate, ID: id}}
	s.pass(f)
}

// groupID is the node of a group with the mark; no scene has it.
const groupID describe.ID = 65000

// Description is the screen in words. While scanning, what has the mark has
// the focus, so that it is announced as the focus is.
func (s *Switched) Description() *describe.Tree {
	t := s.Scene.Description()
	p := s.scan.at()
	if !s.on() || p.id == 0 && p.sub == nil {
		return t
	}
	s.tree = *t
	if s.tree.Focus = p.id; p.sub != nil {
		s.tree.Focus = groupID
		s.tree.Root.Children = append(append([]describe.Node(nil), t.Root.Children...),
			describe.Node{ID: groupID, Role: describe.Group, Name: p.name, Bounds: p.box})
	}
	return &s.tree
}

// Picture draws the scene and the mark over it.
func (s *Switched) Picture(l *draw.List) {
	s.Scene.Picture(l)
	if p := s.scan.at(); s.on() && (p.id != 0 || p.sub != nil) {
		scanMark{s.Settings(), s.frame}.draw(l, p)
	}
}

var (
	_ Scene    = (*Switched)(nil)
	_ Chooser  = (*Switched)(nil)
	_ Observer = (*Switched)(nil)
)
