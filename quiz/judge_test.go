package quiz_test

import (
	"encoding/json"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"cuesta/orient"
	"cuesta/quiz"
	"cuesta/quiz/mistake"
)

// judged reads the text in the notation and judges it by the defaults.
func judged(t *testing.T, text string, n orient.Notation, truth orient.Plane) quiz.Verdict {
	t.Helper()
	e, err := orient.Parse(text, n)
	if err != nil {
		t.Fatalf("%q: %v", text, err)
	}
	return quiz.Judge(quiz.Case{Entry: e, Truth: truth, Notation: n, Tolerance: quiz.DefaultTolerance})
}

type parts struct{ right, line, side, end, dip bool }

func partsOf(v quiz.Verdict) parts {
	return parts{v.Right, v.StrikeRight, v.SideRight, v.EndRight, v.DipRight}
}

func TestVerdictByParts(t *testing.T) {
	all := parts{true, true, true, true, true}
	steep, upright, level := plane(35, 89), plane(35, 90), plane(0, 0)
	for _, c := range []struct {
		text   string
		n      orient.Notation
		truth  orient.Plane
		want   parts
		points float64
	}{
		{"035/30", orient.AzimuthDip, plane(35, 30), all, 1},
		{"038/33", orient.AzimuthDip, plane(35, 30), all, 1},
		{"039/30", orient.AzimuthDip, plane(35, 30), parts{false, false, true, true, true}, 0.5},
		{"035/34", orient.AzimuthDip, plane(35, 30), parts{false, true, true, true, false}, 0.5},
		{"215/30", orient.AzimuthDip, plane(35, 30), parts{false, true, false, false, true}, 0.75},
		{"215/30 SE", orient.AzimuthDip, plane(35, 30), all, 1},
		{"035/30 SE", orient.AzimuthDip, plane(35, 30), all, 1},
		{"035/30 NW", orient.AzimuthDip, plane(35, 30), parts{false, true, false, true, true}, 0.75},
		{"N35E 30SE", orient.Quadrant, plane(35, 30), all, 1},
		{"S35W 30SE", orient.Quadrant, plane(35, 30), all, 1},
		{"N35W 30NE", orient.Quadrant, plane(35, 30), parts{false, false, true, true, true}, 0.5},
		{"125/30", orient.DirectionDip, plane(35, 30), all, 1},
		{"305/30", orient.DirectionDip, plane(35, 30), parts{false, true, false, true, true}, 0.75},
		{"305/60", orient.PoleNotation, plane(35, 30), all, 1},
		{"359/30", orient.AzimuthDip, plane(1, 30), all, 1},
		// The vertical: either end, and a little past it on either side.
		{"035/90", orient.AzimuthDip, upright, all, 1},
		{"215/90", orient.AzimuthDip, upright, all, 1},
		{"215/88", orient.AzimuthDip, upright, all, 1},
		{"215/86", orient.AzimuthDip, upright, parts{false, true, true, true, false}, 0.5}, // a vertical bed has no side
		{"305/86", orient.DirectionDip, upright, parts{false, true, true, true, false}, 0.5},
		{"035/86", orient.AzimuthDip, upright, parts{false, true, true, true, false}, 0.5},
		{"035/90", orient.AzimuthDip, steep, all, 1},
		{"215/88", orient.AzimuthDip, steep, all, 1},
		{"215/87", orient.AzimuthDip, steep, parts{false, true, false, false, true}, 0.75},
		{"vertical 035", orient.AzimuthDip, upright, all, 1},
		// The horizontal: no strike to get wrong.
		{"horizontal", orient.AzimuthDip, level, all, 1},
		{"123/03", orient.AzimuthDip, level, all, 1},
		{"123/04", orient.AzimuthDip, level, parts{false, true, true, true, false}, 0},
		{"300/01", orient.AzimuthDip, plane(20, 1.9), all, 1},
		{"horizontal", orient.AzimuthDip, plane(20, 3), parts{false, false, false, true, true}, 0.5},
		{"horizontal", orient.AzimuthDip, plane(20, 30), parts{false, false, false, true, false}, 0},
	} {
		v := judged(t, c.text, c.n, c.truth)
		if got := partsOf(v); got != c.want {
			t.Errorf("%s for %v: got %+v, want %+v", c.text, c.truth, got, c.want)
		}
		if v.Points != c.points || v.Of != 1 {
			t.Errorf("%s for %v: got %g of %g points, want %g of 1", c.text, c.truth, v.Points, v.Of, c.points)
		}
	}
}

// Pole angles from the dot product of the normals, worked out with Python's
// math module.
func TestVerdictErrors(t *testing.T) {
	for _, c := range []struct {
		text                    string
		truth                   orient.Plane
		strike, line, dip, pole float64
	}{
		{"036/31", plane(35, 30), 1, 1, 1, 1.1214},
		{"045/30", plane(35, 30), 10, 10, 0, 4.9952},
		{"215/30", plane(35, 30), 180, 0, 0, 60},
		{"215/88", plane(35, 89), 0, 0, 3, 3},
		{"358/30", plane(3, 30), -5, -5, 0, 2.4994},
	} {
		v := judged(t, c.text, orient.AzimuthDip, c.truth)
		for _, e := range []struct {
			name      string
			got, want float64
		}{
			{"strike", v.StrikeError.Degrees(), c.strike},
			{"line", v.LineError.Degrees(), c.line},
			{"dip", v.DipError.Degrees(), c.dip},
			{"poles", v.PoleAngle.Degrees(), c.pole},
		} {
			if math.Abs(e.got-e.want) > 1e-4 {
				t.Errorf("%s, %s: got %.4f, want %.4f", c.text, e.name, e.got, e.want)
			}
		}
	}
}

func TestAskedParts(t *testing.T) {
	for _, c := range []struct {
		text        string
		n           orient.Notation
		truth       orient.Plane
		strike, end bool
	}{
		{"035/30", orient.AzimuthDip, plane(35, 30), true, true},
		{"035/30 SE", orient.AzimuthDip, plane(35, 30), true, false},
		{"N35E 30SE", orient.Quadrant, plane(35, 30), true, false},
		{"125/30", orient.DirectionDip, plane(35, 30), true, false},
		{"035/01", orient.AzimuthDip, plane(35, 1), false, false},
		{"215/90", orient.AzimuthDip, plane(35, 90), true, false},
	} {
		v := judged(t, c.text, c.n, c.truth)
		if v.StrikeAsked != c.strike || v.EndAsked != c.end {
			t.Errorf("%s: got strike %t end %t, want %t %t", c.text, v.StrikeAsked, v.EndAsked, c.strike, c.end)
		}
	}
}

func TestWayUp(t *testing.T) {
	over := plane(35, 60)
	over.Overturned = true
	for _, c := range []struct {
		text  string
		truth orient.Plane
		right bool
		want  float64
	}{
		{"035/60 overturned", over, true, 1},
		{"035/60", over, false, 0.75},
		{"035/60 overturned", plane(35, 60), false, 0.75},
	} {
		v := judged(t, c.text, orient.AzimuthDip, c.truth)
		if v.Right != c.right || v.Points != c.want || len(v.Mistakes) > 0 {
			t.Errorf("%s: got right %t, %g points, %v; want %t, %g, none", c.text, v.Right, v.Points, v.Mistakes, c.right, c.want)
		}
	}
}

// The same plane, written in every notation by Format and read back, earns the
// same mark and the same errors.
func TestNotationsEarnTheSame(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 5))
	for range 500 {
		truth := quiz.DefaultMix.Plane(r)
		answer := orient.PlaneOf(truth.Strike.Angle()+deg(r.NormFloat64()*4), max(deg(1), min(deg(89), truth.Dip+deg(r.NormFloat64()*3))))
		want := judged(t, orient.Format(answer, orient.AzimuthDip), orient.AzimuthDip, truth)
		for _, n := range []orient.Notation{orient.Quadrant, orient.DirectionDip, orient.PoleNotation} {
			text := orient.Format(answer, n)
			got := judged(t, text, n, truth)
			if got.Points != want.Points || got.Right != want.Right || (got.LineError-want.LineError).Abs() > deg(0.02) {
				t.Errorf("%s for %v: got %g points, off %v; want %g, off %v", text, truth, got.Points, got.LineError, want.Points, want.LineError)
			}
		}
	}
}

func TestVerdictJSON(t *testing.T) {
	v := judged(t, "215/30", orient.AzimuthDip, plane(35.4, 30.2))
	data, err := json.Marshal(v)
	if err != nil {
		t.Fatal(err)
	}
	var got map[string]json.RawMessage
	if err := json.Unmarshal(data, &got); err != nil {
		t.Fatal(err)
	}
	for k, want := range map[string]string{
		"understood": `"215/30"`, "right": "false", "points": "0.75", "of": "1",
		"strike_error": "179.6", "dip_error": "-0.2", "pole_angle": "60.2", "mistakes": "",
	} {
		if want != "" && string(got[k]) != want {
			t.Errorf("%s: got %s, want %s", k, got[k], want)
		}
	}
	if len(got) != 8 {
		t.Errorf("got %d keys in %s, want 8", len(got), data)
	}
	var fs []map[string]any
	if err := json.Unmarshal(got["mistakes"], &fs); err != nil {
		t.Fatal(err)
	}
	if len(fs) != 2 || fs[0]["kind"] != "other-end" || fs[1]["kind"] != "south-end" || len(fs[0]) != 3 {
		t.Errorf("got mistakes %s, want other-end and south-end with kind, probability and said", got["mistakes"])
	}
}

func TestRightVerdictHasAnEmptyList(t *testing.T) {
	data, err := json.Marshal(judged(t, "035/30", orient.AzimuthDip, plane(35, 30)))
	want := `{"understood":"035/30","right":true,"points":1,"of":1,"strike_error":0,"dip_error":0,"pole_angle":0,"mistakes":[]}`
	if got := string(data); got != want || err != nil {
		t.Errorf("got %s, %v, want %s", got, err, want)
	}
}

func TestMissingDip(t *testing.T) {
	e := orient.Entry{Plane: plane(35, 0), HasStrike: true, DipMissing: true}
	v := quiz.Judge(quiz.Case{Entry: e, Truth: plane(35, 30), Tolerance: quiz.DefaultTolerance})
	if got, want := partsOf(v), (parts{false, true, true, true, false}); got != want || v.Points != 0.5 {
		t.Errorf("got %+v, %g points, want %+v, 0.5", got, v.Points, want)
	}
}

func TestSaid(t *testing.T) {
	const other = "Either the other end of the strike line was written, or the south end of the needle was read; this answer does not tell which. " +
		"Lay the right hand on the bed, fingers down the dip: the thumb points to the end to write. Find the north end by its shape, and read the number there."
	for _, c := range []struct {
		text  string
		n     orient.Notation
		truth orient.Plane
		want  string
	}{
		{"035/30", orient.AzimuthDip, plane(35, 30), "Right: strike and dip are within what a careful reading allows."},
		{"horizontal", orient.AzimuthDip, plane(0, 1), "Right: this bed is as good as level, and has no strike to write."},
		{"horizontal", orient.AzimuthDip, plane(0, 20), "This bed is not level: it has a strike and a dip to write."},
		{"215/30", orient.AzimuthDip, plane(35, 30), "The dip is right. The strike line is right, but written from its other end the bed would dip to the wrong side. " + other},
		{"035/30 NW", orient.AzimuthDip, plane(35, 30), "The dip is right. The strike line is right, but the bed dips to its other side. " +
			"Probably the letters name the side that rises. Look which way water would run down the bed, and write the letters of that side."},
		// The side is told by itself where the strike line is off too.
		{"310/14 SW", orient.AzimuthDip, plane(320, 14), "The dip is right. The strike is off, and the bed dips to its other side."},
		{"140/14", orient.AzimuthDip, plane(310, 14), "The dip is right. The strike is off, and written from this end the bed would dip to the wrong side."},
		{"200/30 NW", orient.AzimuthDip, plane(35, 50), "The strike is off, and the bed dips to its other side. The dip is off too."},
		{"200/30", orient.AzimuthDip, plane(35, 50), "The strike is off, and written from this end the bed would dip to the wrong side. The dip is off too."},
		{"035/58", orient.AzimuthDip, plane(35, 30), "The strike is right, the dip is off. " +
			"Either the percent scale was read as degrees, or the angle was counted from the vertical; this answer does not tell which. " +
			"Read the degree scale: 45° is 100 percent. Dip is counted from the horizontal: a level bed is 0°, an upright one 90°."},
	} {
		if got := judged(t, c.text, c.n, c.truth).Said; got != c.want {
			t.Errorf("%s:\n got %s\nwant %s", c.text, got, c.want)
		}
	}
}

// By how much and to which side, worked out by hand from the written figures.
func TestFigures(t *testing.T) {
	for _, c := range []struct {
		text  string
		truth orient.Plane
		want  string
	}{
		{"040/33", plane(35, 30), "In figures: the strike line is 5.0° clockwise, the dip is 3.0° too steep."},
		{"030/27.5", plane(35, 30), "In figures: the strike line is 5.0° anticlockwise, the dip is 2.5° too gentle."},
		{"355/30", plane(5, 30), "In figures: the strike line is 10.0° anticlockwise, the dip is 0.0° off."},
		{"220/30", plane(35, 30), "In figures: the strike line is 5.0° clockwise, the dip is 0.0° off."}, // from the other end
		{"123/03", plane(0, 0), "In figures: the dip is 3.0° too steep."},
		{"horizontal", plane(0, 20), ""},
	} {
		if got := judged(t, c.text, orient.AzimuthDip, c.truth).Figures(); got != c.want {
			t.Errorf("%s for %v:\n got %s\nwant %s", c.text, c.truth, got, c.want)
		}
	}
}

// No answer whatever makes Judge panic, or gives a number that JSON cannot
// write, or says more points than there are.
func FuzzJudge(f *testing.F) {
	nan, inf := math.NaN(), math.Inf(1)
	f.Add(0.6, 0.5, uint8(0), "", true, false, 0.6, 0.5, 0.2, 0.1, 0.5, uint8(3))
	f.Add(nan, inf, uint8(9), "SE", true, true, 0.6, 0.5, nan, inf, nan, uint8(3))
	f.Add(1e300, -1.0, uint8(2), "", false, false, 7.0, 1.5707963267948966, 0.0, 0.0, 0.0, uint8(1))
	f.Add(3.0, 1.5707963267948966, uint8(1), "N", true, false, -1.0, 0.0, 0.3, 9.9, 1e9, uint8(2))
	f.Fuzz(func(t *testing.T, strike, dip float64, n uint8, letters string, has, missing bool,
		trueStrike, trueDip, dec, dial, arm float64, taken uint8) {
		e := orient.Entry{
			Plane:    orient.Plane{Strike: orient.Azimuth(strike), Dip: orient.Angle(dip)},
			Notation: orient.Notation(n), Letters: letters, HasStrike: has, DipMissing: missing,
		}
		c := quiz.Case{Entry: e, Truth: orient.Plane{Strike: orient.Azimuth(trueStrike), Dip: orient.Angle(trueDip)},
			Declination: orient.Angle(dec), Tolerance: quiz.DefaultTolerance,
			Readings: mistake.Readings{HasEdge: taken&1 != 0, HasSide: taken&2 != 0, HasLid: taken&4 != 0, HasBack: taken&8 != 0, Watched: taken&16 != 0}}
		c.Edge.Shown.Dial.North = orient.Azimuth(dial)
		c.Edge.Shown.Frame.Forward = orient.Vec{X: math.Sin(arm), Y: math.Cos(dial)}
		c.Side.Along, c.Side.Across, c.Side.Shown.Arc.Arm = orient.Angle(dial), orient.Angle(arm), orient.Angle(arm)
		v := quiz.Judge(c)
		if _, err := json.Marshal(v); err != nil {
			t.Errorf("got %v, want a verdict that can be written", err)
		}
		if !(v.Points >= 0 && v.Points <= v.Of) || v.Said == "" {
			t.Errorf("got %g of %g points, said %q", v.Points, v.Of, v.Said)
		}
		for _, m := range v.Mistakes {
			if !(m.Probability > 0 && m.Probability <= 1+1e-9) || !m.Kind.IsValid() {
				t.Errorf("got %v at %g", m.Kind, m.Probability)
			}
		}
		mistake.Evidence{Truth: c.Truth, Entry: e}.Apart(mistake.OtherEnd)
	})
}

// A course may find the wrong side graver, or less so; line and side together
// stay the half that the dip leaves.
func TestTheShareOfTheSideIsTheCourses(t *testing.T) {
	for _, c := range []struct {
		side         float64
		end, outside float64 // written from the other end; that and the line outside the tolerance
		words        string
	}{
		{0, 0.75, 0.5, "50 % are for the dip, 25 % for the strike line and 25 % for the side"},
		{0.5, 0.5, 0.5, "50 % are for the dip, 0 % for the strike line and 50 % for the side"},
		{0.4, 0.6, 0.5, "10 % for the strike line and 40 % for the side"},
		{0.1, 0.9, 0.5, "40 % for the strike line and 10 % for the side"},
	} {
		tol := quiz.DefaultTolerance
		tol.Side = c.side
		for text, want := range map[string]float64{"035/30": 1, "215/30": c.end, "225/30": c.outside, "045/30": 0.5} {
			e, err := orient.Parse(text, orient.AzimuthDip)
			if err != nil {
				t.Fatal(err)
			}
			if got := quiz.Judge(quiz.Case{Entry: e, Truth: plane(35, 30), Tolerance: tol}).Points; math.Abs(got-want) > 1e-9 {
				t.Errorf("side %g, %s: got %g, want %g", c.side, text, got, want)
			}
		}
		if got := tol.Shares(); !strings.Contains(got, c.words) {
			t.Errorf("side %g: got %q, want %q in it", c.side, got, c.words)
		}
	}
}
