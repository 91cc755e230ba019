package stage

import (
	"flag"
	"path/filepath"
	"testing"

	"cuesta/orient"
	"cuesta/scenes/draw"
	"cuesta/scenes/draw/golden"
	"cuesta/scenes/draw/raster"
	"cuesta/scenes/theme"
	"cuesta/sim"
)

var update = flag.Bool("update", false, "write the golden pictures anew")

// Pictures that a person has looked at. The tolerance lets fonts and figures
// of the instrument change by a pixel, not light, shape or place.
func TestGoldenPictures(t *testing.T) {
	steep, gentle := planeOf(137, 70), planeOf(35, 30)
	answer := Overlays{Strike: true, Arrow: true, Water: true, Progress: 1, Numbers: true}
	tests := []struct {
		name  string
		theme theme.Name
		p     orient.Plane
		o     sim.Pose
		r     Overlays
		close float64
	}{
		{"strike", theme.Light, gentle, level(gentle), Overlays{}, 0},
		{"dip", theme.Dark, gentle, upright(gentle), Overlays{}, 0},
		{"answer", theme.Light, gentle, level(gentle), answer, 0},
		{"steep", theme.Contrast, steep, poseOf(steep, sim.OnEdge, orient.Half, steep.Dip), answer, 0},
		{"hand", theme.ContrastBlack, steep, level(steep), Overlays{Hand: true, Strike: true}, 0},
		{"close", theme.Light, gentle, level(gentle), Overlays{}, 1},
		{"lid", theme.Light, gentle, lidded(gentle, orient.Right, gentle.Dip), Overlays{}, 0},
		{"lid-dark", theme.Dark, steep, lidded(steep, orient.Right, steep.Dip), Overlays{}, 0},
		{"lid-contrast", theme.Contrast, gentle, lidded(gentle, -orient.Right, degrees(25)), answer, 0},
		{"lid-black", theme.ContrastBlack, steep, lidded(steep, degrees(60), degrees(120)), Overlays{}, 0},
		{"sensor", theme.Light, gentle, flatOn(gentle, orient.Right), answer, 0},
		{"sensor-dark", theme.Dark, gentle, flatOn(gentle, degrees(-20)), Overlays{}, 0},
		{"sensor-contrast", theme.Contrast, steep, flatOn(steep, -orient.Right), Overlays{}, 0},
		{"sensor-close", theme.ContrastBlack, gentle, flatOn(gentle, 0), Overlays{}, 1},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			q := params(tt.p, tt.o)
			q.Rect, q.Unit, q.Coarse = draw.Rect{W: 464, H: 332}, 0.5, false
			q.Theme, q.Reveal, q.Camera.Close = theme.Of(tt.theme), tt.r, tt.close
			q.Observation.Dial.Needle = degrees(-35)
			q.Observation.Arc.Arm = tt.p.Dip
			q.Observation.Sensor = sim.Sensor{Direction: tt.p.DipDirection(), Dip: tt.p.Dip, Calibrated: tt.theme != theme.Dark}
			var l draw.List
			l.Reset(q.Rect.W, q.Rect.H)
			New().Draw(&l, q)
			golden.Scene(t, filepath.Join("testdata", tt.name+".png"), raster.Image(&l), *update)
		})
	}
}

// The same in the picture of a phone.
func TestGoldenPhonePictures(t *testing.T) {
	p := planeOf(35, 30)
	for name, o := range map[string]sim.Pose{"lid-phone": lidded(p, orient.Right, p.Dip), "sensor-phone": flatOn(p, orient.Right)} {
		q := params(p, o)
		q.Rect, q.Coarse = draw.Rect{W: 390, H: 250}, false
		q.Observation.Sensor = sim.Sensor{Direction: p.DipDirection(), Dip: p.Dip}
		var l draw.List
		l.Reset(q.Rect.W, q.Rect.H)
		New().Draw(&l, q)
		golden.Scene(t, filepath.Join("testdata", name+".png"), raster.Image(&l), *update)
	}
}
