package figure

import (
	"math"
	"testing"

	"cuesta/orient"
	"cuesta/scenes/draw"
	"cuesta/scenes/theme"
)

// least is the least gap, in cm, that reads as one on the screen.
const least = 0.02

// TestFiguresKeepClear holds every figure off the ticks, off its neighbours,
// off the edge of its plate and off whatever moves.
func TestFiguresKeepClear(t *testing.T) {
	th := theme.Of(theme.Light)
	for _, c := range []struct {
		name     string
		texts    []draw.Text
		ticks    []Tick
		from, to float64 // between which radii the figures may lie
	}{
		{"dial", DialFigures(th)[:36], DialTicks(), DialBase + tick10, markFrom},
		{"letters", DialFigures(th)[36:], DialTicks(), NeedleHub, DialBase},
		{"arc, left edge", ArcFigures(th, OnLeft), append(DegreeTicks(), PercentTicks()...), ArcInner, ArcOuter},
		{"arc, right edge", ArcFigures(th, OnRight), append(DegreeTicks(), PercentTicks()...), ArcInner, ArcOuter},
	} {
		for i, x := range c.texts {
			p := patchOf(x)
			if lo, hi := p.radii(); lo < c.from+least || hi > c.to-least {
				t.Errorf("%s: %s lies between %.3f and %.3f cm, want inside %.3f to %.3f", c.name, x.S, lo, hi, c.from, c.to)
			}
			for _, k := range c.ticks {
				a, b := at(draw.Point{}, k.From, k.At), at(draw.Point{}, k.To, k.At)
				if g := p.gap(strip(a, b, .042)); g < least {
					t.Errorf("%s: %s is %.3f cm from the tick at %.1f°", c.name, x.S, g, k.At.Degrees())
				}
			}
			for _, y := range c.texts[i+1:] {
				if g := p.gap(patchOf(y)); g < least {
					t.Errorf("%s: %s and %s are %.3f cm apart", c.name, x.S, y.S, g)
				}
			}
		}
	}
}

// TestPointerCoversNoFigure: the needle ends inside the base circle, the
// pointer of the arm runs outside of the percent figures and inside of the
// degree figures.
func TestPointerCoversNoFigure(t *testing.T) {
	if NeedleTip >= DialBase {
		t.Errorf("the needle ends at %v, want inside the ticks at %v", NeedleTip, DialBase)
	}
	from := math.Inf(1)
	for _, p := range Pointer() {
		from = min(from, p.X)
	}
	for _, u := range []Upright{OnLeft, OnRight} {
		for _, x := range ArcFigures(theme.Of(theme.Light), u) {
			if lo, hi := patchOf(x).radii(); hi > from && lo < ArmTip {
				t.Errorf("the pointer, from %.2f to %.2f cm, sweeps over %s, at %.2f to %.2f", from, ArmTip, x.S, lo, hi)
			}
		}
	}
	if from > PercentBase-percentTick {
		t.Errorf("the pointer begins at %v cm and misses the percent ticks", from)
	}
}

// TestPartsKeepApart: dial, round level, arc and the arm at every angle leave
// one another, the bars and the groove alone.
func TestPartsKeepApart(t *testing.T) {
	in := Bar + Rim
	type disc struct {
		name string
		c    draw.Point
		r    float64
	}
	discs := []disc{{"dial", DialCentre, DialBezel}, {"round level", RoundCentre, RoundBezel}}
	for i, d := range discs {
		room := min(d.c.X-Rim, Length-Rim-d.c.X, d.c.Y-in, Width-in-d.c.Y) - d.r
		if room < .03 {
			t.Errorf("%s: %.3f cm from the groove", d.name, room)
		}
		for _, e := range discs[i+1:] {
			if g := far(d.c, e.c) - d.r - e.r; g < .3 {
				t.Errorf("%s and %s are %.3f cm apart", d.name, e.name, g)
			}
		}
		if g := far(d.c, ArmPivot) - d.r - ArcOuter; g < .3 {
			t.Errorf("%s is %.3f cm from the arc", d.name, g)
		}
	}
	if g := min(ArmPivot.X-arcMargin-Rim, ArmPivot.Y-arcMargin-in); g < .05 {
		t.Errorf("the arc is %.3f cm from the groove", g)
	}
	if x := ArmPivot.X + ArcOuter; x > ArrowFrom {
		t.Errorf("the arc reaches %.2f cm, under the arrow from %.2f", x, ArrowFrom)
	}
	for a := orient.Angle(0); a <= orient.Right; a += orient.Degree {
		for _, p := range ArmOutline() {
			s, k := math.Sincos(a.Radians())
			if y := ArmPivot.Y + s*p.X + k*p.Y; y < Bar+.05 {
				t.Fatalf("the arm at %.0f° reaches y %.3f, over the bar", a.Degrees(), y)
			}
		}
	}
}

func far(a, b draw.Point) float64 { return math.Hypot(a.X-b.X, a.Y-b.Y) }

// TestIndexMeetsMark: with no declination set the index on the case and the
// wedge on the circle stand tip to tip.
func TestIndexMeetsMark(t *testing.T) {
	index, mark := IndexMark()[0], DeclinationMark()[0]
	if gap := index.X - mark.X; index.Y != 0 || mark.Y != 0 || gap <= 0 || gap > .05 {
		t.Errorf("index at %v, mark at %v, want tip to tip on the forward line", index, mark)
	}
	if DialRadius <= mark.X || DialBezel <= index.X || indexFrom > Length-Rim-DialCentre.X-.03 {
		t.Error("the mark must lie on the circle, the index on the ring of the case, both inside the groove")
	}
}
