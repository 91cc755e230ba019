package gradebook

import (
	"math"
	"strings"
	"testing"

	"cuesta/orient"
	"cuesta/orient/net"
	"cuesta/quiz"
	"cuesta/quiz/form"
	"cuesta/quiz/grade"
	"cuesta/quiz/item"
	"cuesta/quiz/mistake"
	"cuesta/scenes/draw"
)

const degree = orient.Degree

func read(strike, dip, turn, more float64) grade.PlaneResult {
	return grade.PlaneResult{
		Truth:  orient.PlaneOf(orient.Angle(strike)*degree, orient.Angle(dip)*degree),
		Answer: orient.PlaneOf(orient.Angle(strike+turn)*degree, orient.Angle(dip+more)*degree),
	}
}

// A pole lies from the truth by the angle between the planes, at the radius
// √2·sin(c/2) of the equal-area net (J. P. Snyder 1987, USGS Prof. Paper 1395,
// ch. 24), right for a strike too far clockwise and up for too steep a dip.
func TestPolesAboutTheTruth(t *testing.T) {
	for _, strike := range []float64{0, 35, 90, 215, 300} {
		for _, c := range []struct {
			turn, more float64
			x, y       float64 // −1, 0 or 1
		}{{0, 0, 0, 0}, {0, 5, 0, 1}, {0, -5, 0, -1}, {3, 0, 1, 0}, {-3, 0, -1, 0}} {
			q := read(strike, 40, c.turn, c.more)
			at := poleAbout(q)
			if r, want := math.Hypot(at.X, at.Y), radiusOf(q.Truth.AngleTo(q.Answer)); math.Abs(r-want) > 1e-9 {
				t.Errorf("%v off by %v, %v: radius %v, want %v", strike, c.turn, c.more, r, want)
			}
			if toward(at.X, 0.005) != c.x || toward(at.Y, 0.005) != c.y {
				t.Errorf("%v off by %v, %v: at %v", strike, c.turn, c.more, at)
			}
		}
	}
}

func toward(x, least float64) float64 {
	if math.Abs(x) < least {
		return 0
	}
	return math.Copysign(1, x)
}

// The other end of the strike dips the other way: its pole lies twice the dip
// from the true one, or the rest of the half circle.
func TestTheOtherEndOnTheNet(t *testing.T) {
	for _, c := range []struct{ dip, angle float64 }{{20, 40}, {45, 90}, {60, 60}, {90, 0}} {
		at := poleAbout(read(100, c.dip, 180, 0))
		if got, want := math.Hypot(at.X, at.Y), radiusOf(orient.Angle(c.angle)*degree); math.Abs(got-want) > 1e-9 {
			t.Errorf("dip %v: radius %v, want %v", c.dip, got, want)
		}
	}
	if r := radiusOf(orient.Right); math.Abs(r-1) > 1e-12 {
		t.Errorf("the primitive has the radius %v", r)
	}
}

func TestTheNetIsOneOfUnitVectors(t *testing.T) {
	n := about(orient.PlaneOf(35*degree, 30*degree))
	for _, v := range []orient.Vec{n.Down, n.East, n.North} {
		if d := v.X*v.X + v.Y*v.Y + v.Z*v.Z; math.Abs(d-1) > 1e-12 {
			t.Errorf("%v has the length %v", v, math.Sqrt(d))
		}
	}
	if n.Kind != net.EqualArea || n.Down.Z >= 0 {
		t.Errorf("not the lower equal-area net: %+v", n)
	}
}

// The dashed curve is asin(tan τ/tan d): 1° of levelling turns a strike by
// 11.5° on a bed of 5° and by 1° on one of 45° (identity of D. M. Ragan,
// Structural Geology, ch. 1, from memory).
func TestTheCurveIsTheLevellingError(t *testing.T) {
	tol := quiz.DefaultTolerance
	s := newSheet(400, 400)
	p := errorPlot{s, 0, 0, 90, 40, 20 * degree}
	p.band(tol)
	curve := dashed(t, s.List)
	tan := func(d float64) float64 { return math.Tan(d * math.Pi / 180) }
	for _, c := range []struct{ dip, off float64 }{{5, math.Asin(tan(1)/tan(5)) * 180 / math.Pi}, {45, math.Asin(tan(1)) * 180 / math.Pi}, {90, 0}} {
		at := curve.Points[int(c.dip*4)]
		if math.Abs(at.X-c.dip) > 1e-9 || math.Abs((20-at.Y)-c.off) > 1e-6 {
			t.Errorf("at dip %v the curve is at %.4f°, want %.4f°", at.X, 20-at.Y, c.off)
		}
	}
}

func dashed(t *testing.T, l *draw.List) draw.Path {
	t.Helper()
	for _, line := range l.Lines {
		if len(line.Style.Dash) > 0 {
			return line.Path
		}
	}
	t.Fatal("no dashed curve")
	return draw.Path{}
}

func TestScoreBins(t *testing.T) {
	got := scoreBins([]float64{0, 0.0999, 0.1, 0.7, 0.99, 1}, 10)
	want := []int{2, 1, 0, 0, 0, 0, 0, 1, 0, 2}
	for i := range want {
		if got[i] != want[i] {
			t.Errorf("from %d percent: %d, want %d", i*10, got[i], want[i])
		}
	}
}

func TestTheScaleOfErrorsHoldsMost(t *testing.T) {
	off := func(errors ...float64) []grade.PlaneResult {
		var ps []grade.PlaneResult
		for _, e := range errors {
			ps = append(ps, grade.PlaneResult{StrikeAsked: true, LineError: orient.Angle(e) * degree})
		}
		return ps
	}
	for _, c := range []struct {
		errors []float64
		want   orient.Angle
	}{{nil, 20}, {[]float64{1, 2, 3, 80}, 20}, {[]float64{1, 25, 25, 25}, 30}, {[]float64{80, 80, 1, 1}, 90}} {
		if got := mostShown(off(c.errors...)); math.Abs(float64(got-c.want*degree)) > 1e-9 {
			t.Errorf("%v: up to %v°, want %v°", c.errors, got.Degrees(), float64(c.want))
		}
	}
}

func TestMedian(t *testing.T) {
	for _, c := range []struct {
		x    []float64
		want float64
	}{{nil, 0}, {[]float64{3}, 3}, {[]float64{9, 1, 2}, 2}, {[]float64{4, 1, 2, 3}, 2.5}} {
		if got := median(c.x); got != c.want {
			t.Errorf("%v: %v, want %v", c.x, got, c.want)
		}
	}
}

// Nothing may be drawn outside a figure.
func TestFiguresStayInside(t *testing.T) {
	a := grade.Analysis{Students: 2, Shares: []float64{0, 1}}
	for i := range 20 {
		a.Items = append(a.Items, grade.ItemAnalysis{
			Number: i + 1, Title: "A question with quite a long name indeed", Difficulty: grade.Stat{Value: 1},
			Biserial: grade.Stat{Value: -1}, Rest: grade.Stat{Undefined: "all totals are the same"},
		})
	}
	a.Items[3].Biserial = grade.Stat{Undefined: "all have the same mark"}
	for _, e := range []float64{-90, -20, 0, 20, 90} {
		a.Planes = append(a.Planes, read(300, 88, e, 1))
	}
	a.Mistakes = []grade.MistakeCount{{Kind: 1, Alone: 3, Shared: 2}, {Kind: 2, Shared: 1}}
	for _, f := range Figures(grade.Report{Analysis: a}) {
		for _, x := range f.List.Texts {
			w := draw.Measure(x.Font, x.Size, x.S, 0)
			from, to := x.At.X, x.At.X+w
			switch {
			case x.Rotate != 0:
				from, to = x.At.X-x.Size, x.At.X
			case x.Align == draw.AlignCentre:
				from, to = x.At.X-w/2, x.At.X+w/2
			case x.Align == draw.AlignRight:
				from, to = x.At.X-w, x.At.X
			}
			if from < 0 || to > f.List.W || x.At.Y < x.Size/2 || x.At.Y > f.List.H {
				t.Errorf("%s: %q from %.0f to %.0f at %.0f, in %.0f × %.0f", f.Name, x.S, from, to, x.At.Y, f.List.W, f.List.H)
			}
		}
		for _, p := range f.List.Fills {
			for _, q := range p.Path.Points {
				if q.X < 0 || q.Y < 0 || q.X > f.List.W || q.Y > f.List.H {
					t.Fatalf("%s: something is filled at %v", f.Name, q)
				}
			}
		}
		if f.Alt == "" || f.Caption == "" || f.Title == "" {
			t.Errorf("%s has no words", f.Name)
		}
	}
}

// The pass mark runs through no figure of the chart, wherever it lies.
func TestThePassMarkCrossesNoFigure(t *testing.T) {
	for pass := 0.01; pass < 1; pass += 0.01 {
		shares := []float64{0.05, 0.15, 0.25, 0.35, 0.45, 0.55, 0.65, 0.75, 0.85, 0.95}
		for range 120 {
			shares = append(shares, pass)
		}
		var b form.Blueprint
		b.PassShare = pass
		f := scoresFigure(grade.Report{Blueprint: b, Analysis: grade.Analysis{Shares: shares}})
		line := dashed(t, f.List).Points
		for _, x := range f.List.Texts {
			if x.At.Y > line[1].Y || x.Rotate != 0 {
				continue // below the axis
			}
			w := draw.Measure(x.Font, x.Size, x.S, 0)
			from := x.At.X - w/2
			switch x.Align {
			case draw.AlignLeft:
				from = x.At.X
			case draw.AlignRight:
				from = x.At.X - w
			case draw.AlignCentre:
			}
			if from-2 < line[0].X && line[0].X < from+w+2 || from < 0 {
				t.Errorf("pass mark at %.2f, x %.0f: it crosses %q from %.0f to %.0f", pass, line[0].X, x.S, from, from+w)
			}
		}
	}
}

// What to tell a class that measured joints speaks of joints.
func TestAdviceSpeaksOfTheSurface(t *testing.T) {
	station := func(s item.Surface) form.Part { return form.Part{Spec: item.Spec{Station: item.Station{Surface: s}}} }
	r := grade.Report{Analysis: grade.Analysis{Mistakes: []grade.MistakeCount{{Kind: mistake.OtherEnd, Alone: 1}}}}
	for want, parts := range map[string][]form.Part{
		"right hand on the joint": {station(item.Joint), station(item.Joint)},
		"right hand on the bed":   {station(item.Joint), station(item.Bedding)},
		"the right hand on the":   nil,
	} {
		r.Blueprint.Parts = parts
		if got := mistakeTable(r).Rows[0][3].Text; !strings.Contains(got, want) {
			t.Errorf("got %q, want %q in it", got, want)
		}
	}
}
