package theme

import (
	"math"
	"testing"

	"cuesta/scenes/draw"
)

// Ratios that follow from the definition of WCAG 2.2 by hand: white on black is
// 1.05/0.05; #767676 is the lightest grey and #777777 no longer one that reads
// on white at 4.5 (common knowledge of the trade, from memory).
func TestContrastIsThatOfWCAG(t *testing.T) {
	white, black := rgb(0xFFFFFF), rgb(0)
	for _, k := range []struct {
		a, b draw.Color
		want float64
	}{
		{white, black, 21}, {black, white, 21}, {white, white, 1},
		{rgb(0x767676), white, 4.54}, {rgb(0x777777), white, 4.48},
		{rgb(0xFF0000), white, 1.05 / (.2126 + .05)}, {rgb(0x0000FF), black, (.0722 + .05) / .05},
	} {
		if got := Ratio(k.a, k.b); math.Abs(got-k.want) > .005 {
			t.Errorf("contrast of %v and %v: got %.3f, want %.3f", k.a, k.b, got, k.want)
		}
	}
}

func TestVisionsKeepGreysAndConfuseWhatTheyMust(t *testing.T) {
	for _, v := range Visions {
		for g := range 256 {
			c := draw.Color{R: uint8(g), G: uint8(g), B: uint8(g), A: 255}
			s := v.See(c)
			for _, got := range []uint8{s.R, s.G, s.B} {
				if d := int(got) - g; d < -1 || d > 1 {
					t.Fatalf("%v: grey %d becomes %v", v, g, s)
				}
			}
		}
	}
	// To a protanope a pure red is far darker than to others; red and green of
	// like lightness fall together for the first two, blue and green for the
	// third (textbook knowledge, from memory).
	red := rgb(0xFF0000)
	if got, most := Luminance(Protan.See(red)), .6*Luminance(red); got > most {
		t.Errorf("protanopia: red keeps a luminance of %.3f, want at most %.3f", got, most)
	}
	apart := func(v Vision, a, b draw.Color) float64 {
		p, q := v.See(a), v.See(b)
		sq := func(x, y uint8) float64 { d := float64(x) - float64(y); return d * d }
		return math.Sqrt(sq(p.R, q.R) + sq(p.G, q.G) + sq(p.B, q.B))
	}
	for _, k := range []struct {
		v    Vision
		a, b draw.Color
	}{
		{Deutan, rgb(0xC05040), rgb(0x7A7A3C)},
		{Protan, rgb(0xB05A50), rgb(0x666A50)},
		{Tritan, rgb(0x3C7ACC), rgb(0x2D8A8A)},
	} {
		if now, usual := apart(k.v, k.a, k.b), apart(Usual, k.a, k.b); now > .55*usual {
			t.Errorf("%v: %v and %v stay %.0f apart of %.0f", k.v, k.a, k.b, now, usual)
		}
	}
}

// Every pair keeps its ratio in every palette, for everyone.
func TestPairsKeepTheirRatios(t *testing.T) {
	for _, n := range Names {
		th := Of(n)
		for _, p := range th.Pairs() {
			for _, v := range Visions {
				if got, want := Ratio(v.See(p.Ink), v.See(p.Under)), th.Least(p); got < want {
					t.Errorf("%v, %v: %s has %.2f to 1, want %.1f", n, v, p.What, got, want)
				}
			}
		}
	}
}

// The face of the instrument is drawn in a light of 0.85 to 1.04 of its
// palette, applied to the written numbers of a colour. Nothing may sink below
// its ratio by that.
func TestLightOnTheFaceKeepsRatios(t *testing.T) {
	lit := func(c draw.Color, k float64) draw.Color {
		f := func(v uint8) uint8 { return uint8(min(255, math.Round(k*float64(v)))) }
		return draw.Color{R: f(c.R), G: f(c.G), B: f(c.B), A: 255}
	}
	for _, n := range Names {
		th := Of(n)
		for _, p := range th.Pairs() {
			for _, k := range []float64{.85, 1.04} {
				for _, v := range Visions {
					if !p.Lit || v != Usual && p.Text {
						continue
					}
					if got, want := Ratio(v.See(lit(p.Ink, k)), v.See(lit(p.Under, k))), th.Least(p); got < want {
						t.Errorf("%v, light %.2f, %v: %s has %.2f to 1, want %.1f", n, k, v, p.What, got, want)
					}
				}
			}
		}
	}
}
