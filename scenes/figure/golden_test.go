package figure

import (
	"flag"
	"testing"

	"cuesta/orient"
	"cuesta/scenes/draw"
	"cuesta/scenes/draw/golden"
	"cuesta/scenes/draw/raster"
	"cuesta/scenes/theme"
)

var update = flag.Bool("update", false, "write the pictures anew; look at them before they are kept")

// lay adds the whole of a part, placed on the plan at px pixels a centimetre.
func lay(l *draw.List, t *draw.Texture, px float64, origin draw.Point, a orient.Angle) {
	m := t.Map()
	p := l.Open(t)
	for _, q := range []draw.Point{{}, {X: float64(t.W)}, {X: float64(t.W), Y: float64(t.H)}, {Y: float64(t.H)}} {
		c := draw.Point{X: (q.X - m.E) / m.A, Y: (q.Y - m.F) / m.D}
		x, y := at(origin, c.X, a), at(draw.Point{}, c.Y, a+orient.Right)
		p.Vertex(draw.Vertex{X: float32(px * (x.X + y.X)), Y: float32(px * (x.Y + y.Y)), U: float32(q.X), V: float32(q.Y), R: 1, G: 1, B: 1, A: 1})
	}
	p.Quad(0, 1, 2, 3)
	p.Done()
}

func TestFaceGolden(t *testing.T) {
	const px = 44
	th := theme.Of(theme.Light)
	var l draw.List
	l.Reset(Length*px, Width*px)
	lay(&l, FaceTexture(th, px, OnLeft), px, draw.Point{}, 0)
	lay(&l, DialTexture(th, px), px, DialCentre, 12*orient.Degree)
	lay(&l, NeedleTexture(th, px, false), px, DialCentre, -36*orient.Degree)
	lay(&l, RoundBubbleTexture(th, px), px, draw.Point{X: RoundCentre.X + .2, Y: RoundCentre.Y - .1}, 0)
	lay(&l, RoundMarksTexture(th, px), px, RoundCentre, 0)
	lay(&l, ArmTexture(th, px), px, ArmPivot, 25*orient.Degree)
	lay(&l, TubeBubbleTexture(th, px), px, at(ArmPivot, TubeAt+.1, 25*orient.Degree), 25*orient.Degree)
	lay(&l, TubeMarksTexture(th, px), px, ArmPivot, 25*orient.Degree)
	golden.Drawing(t, "testdata/face.png", raster.Image(&l), *update)
}
