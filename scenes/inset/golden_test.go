package inset

import (
	"flag"
	"testing"

	"cuesta/orient"
	"cuesta/scenes/draw"
	"cuesta/scenes/draw/golden"
	"cuesta/scenes/draw/raster"
	"cuesta/scenes/theme"
	"cuesta/sim"
)

var update = flag.Bool("update", false, "write the pictures anew; look at them before they are kept")

func TestInsetsGolden(t *testing.T) {
	const r = 64
	o := onSide(30*orient.Degree, 30.5*orient.Degree, sim.Left)
	shows := sim.Sensor{Direction: orient.AzimuthOf(125 * orient.Degree), Dip: 7 * orient.Degree, Calibrated: true}
	turned := sim.Dial{Needle: -36 * orient.Degree, Ring: 12 * orient.Degree, North: orient.AzimuthOf(48 * orient.Degree)}
	for _, c := range []struct {
		file string
		th   theme.Name
		add  func(s *Set, l *draw.List, th *theme.Theme, c draw.Point)
	}{
		{"round", theme.Light, func(s *Set, l *draw.List, th *theme.Theme, c draw.Point) {
			s.Round(l, th, c, r, sim.RoundLevel{Right: .4, Forward: .7})
		}},
		{"dial", theme.Light, func(s *Set, l *draw.List, th *theme.Theme, c draw.Point) { s.Dial(l, th, c, r, turned, false) }},
		{"tube", theme.Dark, func(s *Set, l *draw.List, th *theme.Theme, c draw.Point) { s.Tube(l, th, c, r, o) }},
		{"hinge", theme.Light, func(s *Set, l *draw.List, th *theme.Theme, c draw.Point) { s.Hinge(l, th, c, r, 30*orient.Degree) }},
		{"hinge-closed", theme.Contrast, func(s *Set, l *draw.List, th *theme.Theme, c draw.Point) { s.Hinge(l, th, c, r, 0) }},
		{"display", theme.Dark, func(s *Set, l *draw.List, th *theme.Theme, c draw.Point) { s.Display(l, th, c, r, shows) }},
		{"display-black", theme.ContrastBlack, func(s *Set, l *draw.List, th *theme.Theme, c draw.Point) { s.Display(l, th, c, r, shows) }},
		{"raw", theme.Light, func(s *Set, l *draw.List, th *theme.Theme, c draw.Point) { s.Ready(l, th, c, r, sim.Sensor{}) }},
		{"ready", theme.Light, func(s *Set, l *draw.List, th *theme.Theme, c draw.Point) { s.Ready(l, th, c, r, shows) }},
		{"arc", theme.ContrastBlack, func(s *Set, l *draw.List, th *theme.Theme, c draw.Point) { s.Arc(l, th, c, r, o) }},
	} {
		th := theme.Of(c.th)
		var l draw.List
		l.Reset(2*r+32, 2*r+32)
		l.Fill(draw.Box(draw.Rect{W: l.W, H: l.H}), th.Panel)
		c.add(New(), &l, th, draw.Point{X: r + 16, Y: r + 16})
		golden.Drawing(t, "testdata/"+c.file+".png", raster.Image(&l), *update)
	}
}
