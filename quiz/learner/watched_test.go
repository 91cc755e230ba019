package learner_test

import (
	"math"
	"testing"

	"cuesta/orient"
	"cuesta/quiz/learner"
	"cuesta/quiz/mistake"
	"cuesta/sim"
	"cuesta/sim/record"
)

// A careful student whom a class watches writes what stands on the scales.
func TestWhatIsWrittenStandsOnTheScales(t *testing.T) {
	setup := sim.Setup{Plane: orient.PlaneOf(71*orient.Degree, 36*orient.Degree), Field: sim.Field{Horizontal: 20e-6}, Seed: 1}
	for seed := range uint64(12) {
		rec, err := record.Start(setup)
		if err != nil {
			t.Fatal(err)
		}
		text, err := (learner.Learner{}).Measure(rec, orient.AzimuthDip, seed)
		if err != nil {
			t.Fatal(err)
		}
		e, err := orient.Parse(text, orient.AzimuthDip)
		if err != nil {
			t.Fatal(err)
		}
		r := mistake.ReadingsOf(rec.World())
		if got, want := e.Plane.Dip.Degrees(), math.Round(r.Side.Shown.Arc.Arm.Degrees()); math.Abs(got-want) > 1e-9 {
			t.Errorf("seed %d: wrote the dip %.0f, and the arc shows %.1f", seed, got, r.Side.Shown.Arc.Arm.Degrees())
		}
		if off := e.Plane.Strike.From(r.Edge.Shown.Dial.North).Abs().Degrees(); off > 0.5+1e-9 {
			t.Errorf("seed %d: wrote %s, and the dial shows %.1f", seed, text, r.Edge.Shown.Dial.North.Degrees())
		}
	}
}
