package figure

import (
	"math"
	"testing"

	"cuesta/orient"
	"cuesta/orient/net"
	"cuesta/quiz/item"
	"cuesta/scenes/draw"
	"cuesta/scenes/theme"
)

func deg(d float64) orient.Angle { return orient.Angle(d) * orient.Degree }

func plane(s, d float64) orient.Plane { return orient.PlaneOf(deg(s), deg(d)) }

var everyFigure = map[string]item.Figure{
	"dial":       item.DialFigure{Needle: deg(-57), Ring: deg(12)},
	"arc":        item.ArcFigure{Arm: deg(33)},
	"steep arc":  item.ArcFigure{Arm: deg(90)},
	"level":      item.LevelFigure{Right: 9, Forward: -9},
	"symbol":     item.MapFigure{Plane: plane(35, 30)},
	"overturned": item.MapFigure{Plane: orient.Plane{Strike: orient.AzimuthOf(deg(250)), Dip: deg(62), Overturned: true}},
	"ends":       item.MapFigure{Plane: plane(310, 8), LineOnly: true, Ends: [2]string{"P", "Q"}},
	"blank":      item.MapFigure{Blank: true},
	"block":      item.BlockFigure{Plane: plane(35, 30), Section: orient.AzimuthOf(deg(90))},
	"flat block": item.BlockFigure{Section: orient.AzimuthOf(deg(140))},
	"net":        item.NetFigure{Poles: []orient.Line{{Plunge: deg(60)}, {Trend: orient.AzimuthOf(deg(90))}}, Labels: []string{"1", "station 2"}},
	"table":      item.TableFigure{Head: []string{"reading", "strike"}, Rows: [][]string{{"1", "035"}, {"2"}}},
}

// TestInside: every figure in every palette has something to show, and all of
// it stands inside its box.
func TestInside(t *testing.T) {
	themes := []*theme.Theme{Plain()}
	for _, n := range theme.Names {
		themes = append(themes, theme.Of(n))
	}
	for name, f := range everyFigure {
		for _, th := range themes {
			l := Of(f, 300, th)
			if l.W != 300 || l.H < 40 || l.H > 600 || len(l.Items) == 0 {
				t.Errorf("%s is %v × %v with %d items", name, l.W, l.H, len(l.Items))
			}
			for _, q := range allPoints(l) {
				if !(q.X >= -1 && q.X <= l.W+1 && q.Y >= -1 && q.Y <= l.H+1) {
					t.Errorf("%s: %v lies outside %v × %v", name, q, l.W, l.H)
					break
				}
			}
		}
	}
}

func allPoints(l *draw.List) []draw.Point {
	var out []draw.Point
	for _, f := range l.Fills {
		out = append(out, f.Path.Points...)
	}
	for _, n := range l.Lines {
		out = append(out, n.Path.Points...)
	}
	for _, x := range l.Texts {
		var p draw.Path
		x.AppendOutline(&p)
		out = append(out, p.Points...)
	}
	return out
}

func TestNothing(t *testing.T) {
	for _, l := range []*draw.List{Of(nil, 300, Plain()), Of(item.ArcFigure{}, 0, Plain()), Of(item.ArcFigure{}, math.NaN(), Plain())} {
		if len(l.Items) != 0 {
			t.Errorf("%d items where nothing can be drawn", len(l.Items))
		}
	}
	if l := Of(item.TableFigure{}, 300, Plain()); len(l.Items) != 0 {
		t.Error("an empty table shows something")
	}
}

// TestDialPictureReads: the tip of the needle stands on the way from the centre
// to the figure that is the answer, ring − needle.
func TestDialPictureReads(t *testing.T) {
	for _, c := range []struct {
		needle, ring float64
		want         string
	}{{-30, 0, "030"}, {-40, 10, "050"}, {120, -10, "230"}, {0, 0, "000"}, {15, -5, "340"}} {
		l := Of(item.DialFigure{Needle: deg(c.needle), Ring: deg(c.ring)}, 300, theme.Of(theme.Contrast))
		north := fillOf(l, theme.Of(theme.Contrast).North)
		if north == nil {
			t.Fatal("no north end")
		}
		tip := north.Points[3]
		best, far := "", math.Inf(1)
		for _, x := range l.Texts {
			if m := middle(x); len(x.S) == 3 && math.Hypot(m.X-tip.X, m.Y-tip.Y) < far {
				best, far = x.S, math.Hypot(m.X-tip.X, m.Y-tip.Y)
			}
		}
		if best != c.want {
			t.Errorf("needle %v°, ring %v°: the tip stands nearest to %s, want %s", c.needle, c.ring, best, c.want)
		}
	}
}

func fillOf(l *draw.List, c draw.Color) *draw.Path {
	for i := range l.Fills {
		if l.Fills[i].Color == c {
			return &l.Fills[i].Path
		}
	}
	return nil
}

// TestSymbols after FGDC-STD-013-2006, section 6 (from memory): the long line
// true to the strike, the tick down the dip at its middle, the number upright.
func TestSymbols(t *testing.T) {
	for _, c := range []struct {
		plane  orient.Plane
		lines  int // strokes
		number string
	}{
		{plane(35, 30), 2, "30"}, {plane(270, 7), 2, "7"}, {plane(180, 90), 2, ""}, {plane(0, 0), 3, ""},
		{orient.Plane{Strike: orient.AzimuthOf(deg(250)), Dip: deg(62), Overturned: true}, 2, "62"},
	} {
		l := &draw.List{}
		Symbol(l, Plain(), draw.Point{X: 100, Y: 100}, 80, c.plane)
		if len(l.Lines) != c.lines {
			t.Errorf("%v: %d lines, want %d", c.plane, len(l.Lines), c.lines)
		}
		if c.number == "" && len(l.Texts) == 0 {
			continue
		}
		if len(l.Texts) != 1 || l.Texts[0].S != c.number || l.Texts[0].Rotate != 0 {
			t.Fatalf("%v: the number is %+v, want %s upright", c.plane, l.Texts, c.number)
		}
		line := l.Lines[0].Path.Points
		if got := bearing(line[0], line[1]); got.From(c.plane.Strike).Abs() > 1e-9 {
			t.Errorf("%v: the line runs towards %v", c.plane, got)
		}
		tick := l.Lines[1].Path.Points
		if got := bearing(draw.Point{X: 100, Y: 100}, tick[len(tick)-1]); got.From(c.plane.DipDirection()).Abs() > 1e-9 {
			t.Errorf("%v: the tick points to %v", c.plane, got)
		}
		if got := bearing(draw.Point{X: 100, Y: 100}, middle(l.Texts[0])); got.From(c.plane.DipDirection()).Abs() > deg(1) {
			t.Errorf("%v: the number stands towards %v", c.plane, got)
		}
	}
}

// bearing is the azimuth from a to b on a map with north up.
func bearing(a, b draw.Point) orient.Azimuth { return orient.AzimuthOf(orient.Atan2(b.X-a.X, a.Y-b.Y)) }

// TestBlockShowsApparentDip: a bed joint crosses the front face at the apparent
// dip of the section.
func TestBlockShowsApparentDip(t *testing.T) {
	for _, c := range []struct {
		plane   orient.Plane
		section float64
	}{{plane(35, 30), 90}, {plane(200, 60), 140}, {plane(10, 45), 100}, {plane(90, 20), 180}} {
		section := orient.AzimuthOf(deg(c.section))
		want := c.plane.ApparentDip(section)
		l := Of(item.BlockFigure{Plane: c.plane, Section: section}, 300, Plain())
		front := fillsBox(l)
		var seen int
		for _, n := range l.Lines {
			p := n.Path.Points
			if len(p) != 2 || !inside(front, p[0]) || !inside(front, p[1]) {
				continue
			}
			got := orient.Angle(math.Atan((p[1].Y - p[0].Y) / (p[1].X - p[0].X)))
			if math.Hypot(p[1].X-p[0].X, p[1].Y-p[0].Y) < 5 || onEdge(front, p) {
				continue
			}
			seen++
			if (got - want).Abs() > 1e-9 {
				t.Errorf("%v in section %v°: a joint dips %v°, want %v°", c.plane, c.section, got.Degrees(), want.Degrees())
			}
		}
		if seen < 3 {
			t.Errorf("%v: only %d joints on the front", c.plane, seen)
		}
	}
}

// fillsBox is the front face: the first outline of four corners with upright
// and level sides.
func fillsBox(l *draw.List) draw.Rect {
	for _, n := range l.Lines {
		p := n.Path.Points
		if len(p) == 4 && math.Abs(p[0].Y-p[1].Y) < 1e-9 && math.Abs(p[1].X-p[2].X) < 1e-9 {
			return draw.Rect{X: p[0].X, Y: p[0].Y, W: p[1].X - p[0].X, H: p[2].Y - p[1].Y}
		}
	}
	return draw.Rect{}
}

func inside(r draw.Rect, p draw.Point) bool {
	return p.X >= r.X-1e-6 && p.X <= r.X+r.W+1e-6 && p.Y >= r.Y-1e-6 && p.Y <= r.Y+r.H+1e-6
}

func onEdge(r draw.Rect, p []draw.Point) bool {
	for _, v := range []float64{r.Y, r.Y + r.H} {
		if math.Abs(p[0].Y-v) < 1e-6 && math.Abs(p[1].Y-v) < 1e-6 {
			return true
		}
	}
	for _, v := range []float64{r.X, r.X + r.W} {
		if math.Abs(p[0].X-v) < 1e-6 && math.Abs(p[1].X-v) < 1e-6 {
			return true
		}
	}
	return false
}

// TestNetPicture: a dot stands where the net puts its line, and no label covers
// another pole's dot.
func TestNetPicture(t *testing.T) {
	poles := []orient.Line{
		{Trend: orient.AzimuthOf(deg(305)), Plunge: deg(60)}, {Trend: orient.AzimuthOf(deg(309)), Plunge: deg(57)},
		{Trend: orient.AzimuthOf(deg(90)), Plunge: deg(2)},
	}
	l := Of(item.NetFigure{Poles: poles, Labels: []string{"1", "2", "3"}}, 400, Plain())
	n := Net{List: l, Theme: Plain(), Kind: net.EqualArea, Centre: draw.Point{X: 200, Y: 200}, Radius: 400 * .43}
	dots := l.Fills[len(l.Fills)-3:]
	labels := l.Texts[4:]
	for i, p := range poles {
		c := draw.Point{X: (dots[i].Path.Points[0].X + dots[i].Path.Points[12].X) / 2, Y: dots[i].Path.Points[0].Y}
		if q := n.At(p); math.Hypot(q.X-c.X, q.Y-c.Y) > 2 {
			t.Errorf("dot %d stands at %v, want %v", i, c, q)
		}
		for j := range poles {
			if m, q := middle(labels[j]), n.At(p); math.Hypot(m.X-q.X, m.Y-q.Y) < 400*.43*.03 {
				t.Errorf("label %d covers dot %d", j, i)
			}
		}
	}
}

// TestWideTable: a table shrinks until it fits.
func TestWideTable(t *testing.T) {
	f := item.TableFigure{Head: []string{"a long head indeed", "another that is longer", "and one more of them"}, Rows: [][]string{{"1", "2", "3"}}}
	l := Of(f, 200, Plain())
	for _, q := range allPoints(l) {
		if q.X < 0 || q.X > 200 {
			t.Fatalf("the table reaches %v", q.X)
		}
	}
}
