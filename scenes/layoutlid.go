package scenes

// three places level and hinge side by side, with their words under them, and
// the dial below: as large as the notebook leaves room for.
func (l *layout) three(room, gap, d1, d2 float64) {
	u, t, in := l.Unit, l.Text, l.Inner
	l.Caps = 4
	spare := func() float64 { return room - 6*u - float64(l.Caps)*21*t - gap - 8*u - 22*t - 16*u }
	if spare() < d1+.75*d2 {
		l.Caps = 1
	}
	d1 = floor4(min(d1, .36*spare()))
	d2 = floor4(min(d2, spare()-d1))
	l.Round = circle{in.X + in.W/4, in.Y + d1/2, d1 / 2}
	l.Hinge = circle{in.X + 3*in.W/4, in.Y + d1/2, d1 / 2}
	y := in.Y + d1 + 6*u + float64(l.Caps)*21*t + gap
	l.Dial = circle{in.X + in.W/2, y + d2/2, d2 / 2}
	l.Notes = y + d2 + 8*u + 22*t + 16*u
}

// third makes room for the hinge beside a pair of magnifiers.
func (l *layout) third(f frameOf) {
	if !f.Hinged {
		return
	}
	was, x, w := 2*l.Round.R, l.Inner.X, l.Inner.W
	d := floor4(min(was, (w-16*l.Unit)/3))
	y := l.Round.Y - was/2 + d/2
	l.Round, l.Hinge, l.Dial = circle{x + w/6, y, d / 2}, circle{x + w/2, y, d / 2}, circle{x + 5*w/6, y, d / 2}
	switch {
	case w/3 < 84*l.Text:
		l.Caps = 0
	case l.Caps == 3 && was-d >= 21*l.Text:
		l.Caps = 4 // the words are narrower
	}
}
