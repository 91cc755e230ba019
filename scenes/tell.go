package scenes

// Told is a scene that shows, and has said, what its front end must tell: that
// there is no sound device, for instance.
type Told interface{ Tell(string) }

// Tell shows a notice.
func (b *Bench) Tell(s string) { b.say(s) }

// Tell shows a notice, at the bench where the question is answered there.
func (p *Paper) Tell(s string) {
	if p.bench != nil {
		p.bench.Tell(s)
		return
	}
	p.said = s
}

// Tell shows a notice where what came of a reading stands.
func (l *Lab) Tell(s string) { l.said, l.page = s, 0 }

// Tell shows a notice under the title.
func (t *Lecture) Tell(s string) { t.notice = s }

// Tell shows a notice where the eyes are: in the scene that is open, or in the
// hall.
func (h *Hall) Tell(s string) {
	if t, ok := h.inside.(Told); ok && h.open {
		t.Tell(s)
		return
	}
	h.Say(s)
}

// Tell shows a notice in the scene.
func (s *Switched) Tell(words string) {
	if t, ok := s.Scene.(Told); ok {
		t.Tell(words)
	}
}

var (
	_ Told = (*Bench)(nil)
	_ Told = (*Paper)(nil)
	_ Told = (*Lab)(nil)
	_ Told = (*Lecture)(nil)
	_ Told = (*Hall)(nil)
	_ Told = (*Switched)(nil)
)
