package figure

import (
	"fmt"

	"cuesta/orient"
	"cuesta/scenes/draw"
	"cuesta/scenes/theme"
)

// MarkAngle is the place of the mark of azimuth a on the graduated circle, in
// the circle's own frame: the numbers run anticlockwise, so that the north end
// of the needle shows the azimuth of the forward direction.
func MarkAngle(a orient.Azimuth) orient.Angle { return -a.Angle() }

// Tick is one graduation: its place and its two ends.
type Tick struct {
	At       orient.Angle
	From, To float64 // cm from the centre
	Heavy    bool
}

// DialTicks are the 360 graduations of the circle in ascending order.
func DialTicks() []Tick {
	return graduations(360, DialBase, [3]float64{tick1, tick5, tick10}, func(a orient.Angle) orient.Angle {
		return MarkAngle(orient.AzimuthOf(a))
	})
}

// graduations are n marks, one a degree from 0 on, from a base outwards; long
// says how long those of one, five and ten degrees are, and place where a mark
// stands.
func graduations(n int, base float64, long [3]float64, place func(orient.Angle) orient.Angle) []Tick {
	t := make([]Tick, n)
	for d := range t {
		to := base + long[0]
		switch {
		case d%10 == 0:
			to = base + long[2]
		case d%5 == 0:
			to = base + long[1]
		}
		t[d] = Tick{place(orient.Angle(d) * orient.Degree), base, to, d%10 == 0}
	}
	return t
}

// DialFigures are the numbers, every 10°, and then the four letters.
func DialFigures(th *theme.Theme) []draw.Text {
	var out []draw.Text
	for d := 0; d < 360; d += 10 {
		a := MarkAngle(orient.AzimuthOf(orient.Angle(d) * orient.Degree))
		out = append(out, label(fmt.Sprintf("%03d", d), at(draw.Point{}, figureRadius, a), figureSize, a+orient.Right, draw.Bold, th.DialInk))
	}
	for i, s := range []string{"N", "E", "S", "W"} {
		a := MarkAngle(orient.AzimuthOf(orient.Angle(i) * orient.Right))
		out = append(out, label(s, at(draw.Point{}, letterRadius, a), letterSize, a+orient.Right, draw.Bold, letterInk(th)))
	}
	return out
}

// letterInk is quieter than the figures, so that the needle stands out above a
// letter. Where the needle has a colour of its own and contrast comes first, it
// is not.
func letterInk(th *theme.Theme) draw.Color {
	if th.Flat && th.North == th.DialInk {
		return mix(th.DialInk, th.Well, .55)
	}
	if th.Flat {
		return th.DialInk
	}
	return mix(th.DialInk, th.Well, .36)
}

// DeclinationMark is the wedge outside 000, its tip towards the case. With no
// declination set it meets the index.
func DeclinationMark() []draw.Point {
	return []draw.Point{{X: markTo}, {X: markFrom, Y: markHalf}, {X: markFrom, Y: -markHalf}}
}

// Dial adds the graduated circle about its centre, 000 forward.
func Dial(l *draw.List, th *theme.Theme) {
	// The border takes the colour of the ring it lies in, so that no seam shows
	// where the texture ends.
	l.Fill(draw.Circle(0, 0, DialRadius), th.Bezel)
	l.Fill(draw.Circle(0, 0, DialRadius-.03), th.Dial)
	l.Fill(draw.Circle(0, 0, DialBase), th.Well)
	if !th.Flat {
		l.Stroke(draw.Circle(0, 0, DialRadius-.045), draw.Stroke{Width: .04, Color: mix(th.Dial, th.Bezel, .35)})
	}
	ticks(l, DialTicks(), th.DialInk)
	l.Stroke(draw.Circle(0, 0, DialBase), draw.Stroke{Width: .03, Color: th.DialInk})
	l.Fill(shape(DeclinationMark()), th.DialInk)
	for _, t := range DialFigures(th) {
		l.Text(t)
	}
}

// ticks strokes graduations about the origin, the heavy ones wider.
func ticks(l *draw.List, ts []Tick, c draw.Color) { ticksAt(l, draw.Point{}, ts, c) }

func ticksAt(l *draw.List, centre draw.Point, ts []Tick, c draw.Color) {
	var fine, heavy draw.Path
	for _, t := range ts {
		p := &fine
		if t.Heavy {
			p = &heavy
		}
		ray(p, centre, t.From, t.To, t.At)
	}
	l.Stroke(fine, draw.Stroke{Width: .024, Color: c})
	l.Stroke(heavy, draw.Stroke{Width: .042, Color: c})
}
