package sound

// ticker is the needle: ticks while it moves, a bell when it has come to rest.
type ticker struct {
	was         Needle
	rate        float64
	at          cycle
	tick, drag  struck
	bell, fifth struck
	made        bool
}

func (t *ticker) aim(s State) {
	if !t.made {
		t.made = true
		t.tick = struck{hertz: 880, loud: .05, dies: .012}
		t.drag = struck{hertz: 220, loud: .04, dies: .05}
		t.bell = struck{hertz: 660, loud: .05, dies: .3}
		t.fifth = struck{hertz: 440, loud: .03, dies: .3}
	}
	t.rate = s.Ticks()
	if s.Needle == Resting && t.was == Swinging && s.Volume > 0 {
		t.bell.strike()
		t.fifth.strike()
	}
	t.was = s.Needle
}

func (t *ticker) next() float64 {
	before := t.at
	if t.rate > 0 && t.at.next(t.rate) < float64(before) {
		if t.was == Rubbing {
			t.drag.strike()
		} else {
			t.tick.strike()
		}
	}
	return sum(&t.tick, &t.drag, &t.bell, &t.fifth)
}

func (t *ticker) settle() { still(&t.tick, &t.drag, &t.bell, &t.fifth) }

// events are the short sounds of what happens once.
type events struct {
	known                 bool
	taps, turns, contacts int
	tap, turn, contact    struck
}

// hear strikes what has happened since the last state. What happened before the
// first is not heard.
func (e *events) hear(s State) {
	if !e.known {
		e.known = true
		e.tap = struck{hertz: 440, loud: .06, dies: .02}
		e.turn = struck{hertz: 330, loud: .05, dies: .06}
		e.contact = struck{hertz: 247, loud: .05, dies: .09}
		e.taps, e.turns, e.contacts = s.Taps, s.Turns, s.Contacts
	}
	if s.Taps != e.taps {
		e.tap.strike()
	}
	if s.Turns != e.turns {
		e.turn.strike()
	}
	if s.Contacts != e.contacts {
		e.contact.strike()
	}
	e.taps, e.turns, e.contacts = s.Taps, s.Turns, s.Contacts
}

func (e *events) settle() { still(&e.tap, &e.turn, &e.contact) }

func (e *events) next() float64 { return sum(&e.tap, &e.turn, &e.contact) }

// still ends sounds that cannot be heard.
func still(sounds ...*struck) {
	for _, s := range sounds {
		s.env, s.rising = 0, false
	}
}

func sum(sounds ...*struck) float64 {
	x := 0.0
	for _, s := range sounds {
		if !s.silent() {
			x += s.next()
		}
	}
	return x
}
