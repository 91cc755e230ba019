package stage_test

import (
	"fmt"

	"cuesta/orient"
	"cuesta/scenes/draw"
	"cuesta/scenes/stage"
	"cuesta/scenes/theme"
	"cuesta/sim"
)

func ExampleDefaultCamera() {
	rock := orient.PlaneOf(35*orient.Degree, 30*orient.Degree)
	pose := sim.Pose{Seat: sim.OnEdge, Frame: sim.Frame{
		Forward: rock.StrikeVec(), Right: rock.DipDirection().Vec(), Out: orient.Up,
	}}
	c := stage.DefaultCamera(rock, pose)
	fmt.Printf("azimuth %.0f, elevation %.0f\n", c.Azimuth.Degrees(), c.Elevation.Degrees())
	c = c.Orbit(90*orient.Degree, 0, rock, pose)
	fmt.Printf("after a quarter turn it stands at %.0f\n", c.Azimuth.Degrees())
	// Output:
	// azimuth 182, elevation 30
	// after a quarter turn it stands at 242
}

func ExampleStage_Draw() {
	rock := orient.PlaneOf(35*orient.Degree, 30*orient.Degree)
	pose := sim.Pose{Seat: sim.OnEdge, Frame: sim.Frame{
		Forward: rock.StrikeVec(), Right: rock.DipDirection().Vec(), Out: orient.Up,
	}}
	var l draw.List
	l.Reset(640, 480)
	stage.New().Draw(&l, stage.Params{
		Rect: draw.Rect{W: 640, H: 480}, Unit: 1, Theme: theme.Of(theme.Light),
		Plane: rock, Pose: pose, Camera: stage.DefaultCamera(rock, pose), RockSeed: 1,
	})
	fmt.Println(len(l.Regions), "region, nothing but meshes:", len(l.Meshes)+1 == len(l.Items))
	// Output: 1 region, nothing but meshes: true
}
