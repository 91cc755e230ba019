package stage

import (
	"fmt"
	"image"
	"testing"

	"cuesta/scenes/draw"
	"cuesta/scenes/draw/raster"
	"cuesta/scenes/figure"
	"cuesta/scenes/theme"
	"cuesta/sim"
)

// The parts of the drawn instrument stand out by 3 to 1 (WCAG 2.2, 1.4.11) as
// they are lit, in every palette and for every kind of colour vision.
func TestShadedPartsStandOut(t *testing.T) {
	for _, n := range theme.Names {
		for _, strike := range []float64{35} {
			for _, dip := range []float64{20, 70} {
				plane := planeOf(strike, dip)
				for seat, pose := range map[string]sim.Pose{"on its edge": level(plane), "on its side": upright(plane)} {
					where := fmt.Sprintf("%v, %03.0f/%02.0f, %s", n, strike, dip, seat)
					checkParts(t, where, theme.Of(n), params(plane, pose))
				}
			}
		}
	}
}

func checkParts(t *testing.T, where string, th *theme.Theme, q Params) {
	t.Helper()
	q.Theme = th
	var l draw.List
	l.Reset(q.Rect.W, q.Rect.H)
	st := New()
	st.Draw(&l, q)
	img := raster.Image(&l)
	at := func(x, y float64) draw.Color {
		px, py := st.sc.lens.project(st.sc.tool.at(x, y, plateThick))
		return middle(img, int(px), int(py))
	}
	// A place on each part, in the plan of the plate, clear of marks.
	c := figure.DialCentre
	parts := map[string][2]draw.Color{
		"seating edge on the body":  {at(7.5, .5), at(15.3, figure.Bar+.4)},
		"further edge on the body":  {at(7.5, plateWide-.5), at(15.3, plateWide-figure.Bar-.4)},
		"ring of the dial and dial": {at(c.X-figure.DialBezel+.1, c.Y), at(c.X-1.2, c.Y+.5)},
	}
	for what, p := range parts {
		for _, v := range theme.Visions {
			if got := theme.Ratio(v.See(p[0]), v.See(p[1])); got < 3 {
				t.Errorf("%s, %v: %s: %v on %v is %.2f to 1, want 3", where, v, what, p[0], p[1], got)
			}
		}
	}
}

// middle is the mean colour of three by three pixels.
func middle(img *image.RGBA, x, y int) draw.Color {
	var sum [3]int
	for dy := -1; dy <= 1; dy++ {
		for dx := -1; dx <= 1; dx++ {
			c := img.RGBAAt(x+dx, y+dy)
			sum[0], sum[1], sum[2] = sum[0]+int(c.R), sum[1]+int(c.G), sum[2]+int(c.B)
		}
	}
	return draw.Color{R: uint8(sum[0] / 9), G: uint8(sum[1] / 9), B: uint8(sum[2] / 9), A: 255}
}
