package quiz_test

import (
	"encoding/json"
	"fmt"
	"math/rand/v2"

	"cuesta/orient"
	"cuesta/quiz"
)

// A bed strikes 035 and dips 30 to the south-east. The student writes the
// other end of the strike line, and no letters to settle the side.
func ExampleJudge() {
	entry, err := orient.Parse("215/31", orient.AzimuthDip)
	if err != nil {
		fmt.Println(err)
		return
	}
	v := quiz.Judge(quiz.Case{Entry: entry, Truth: orient.PlaneOf(35*orient.Degree, 30*orient.Degree), Tolerance: quiz.DefaultTolerance})
	fmt.Println("right:", v.Right)
	fmt.Println("strike line:", v.StrikeRight, "side:", v.SideRight, "dip:", v.DipRight)
	for _, m := range v.Mistakes {
		fmt.Println("perhaps:", m.Kind)
	}
	// Output:
	// right: false
	// strike line: true side: false dip: true
	// perhaps: other-end
	// perhaps: south-end
}

func ExampleVerdict_MarshalJSON() {
	entry, err := orient.Parse("N36E 30SE", orient.AzimuthDip)
	if err != nil {
		fmt.Println(err)
		return
	}
	v := quiz.Judge(quiz.Case{Entry: entry, Truth: orient.PlaneOf(35*orient.Degree, 30*orient.Degree), Tolerance: quiz.DefaultTolerance})
	data, err := json.Marshal(v)
	fmt.Println(string(data), err)
	// Output:
	// {"understood":"036/30","right":true,"points":1,"of":1,"strike_error":1,"dip_error":0,"pole_angle":0.5,"mistakes":[]} <nil>
}

// On a bed of 60° a strike may be off by little more than the reading; on one
// of 5° the levelling alone turns it by more than 11°.
func ExampleTolerance_Strike() {
	for _, dip := range []orient.Angle{60, 30, 5} {
		fmt.Printf("%2.0f°: %.1f°\n", float64(dip), quiz.DefaultTolerance.Strike(dip*orient.Degree).Degrees())
	}
	// Output:
	// 60°: 2.6°
	// 30°: 3.7°
	//  5°: 13.5°
}

// The same seed deals the same planes.
func ExampleMix_Plane() {
	r := rand.New(rand.NewPCG(1, 0))
	for range 3 {
		p := quiz.DefaultMix.Plane(r)
		fmt.Println(orient.Format(p, orient.AzimuthDip), quiz.ClassOf(p.Dip))
	}
	// Output:
	// 180.33/06.25 gentle
	// 270.01/47.18 moderate
	// 002.04/24.28 gentle
}

// A student who gets steep beds right and gentle ones wrong is dealt more
// gentle ones.
func ExampleTally_Mix() {
	var t quiz.Tally
	for range 4 {
		t = t.Add(orient.PlaneOf(0, 70*orient.Degree), quiz.Verdict{Right: true})
		t = t.Add(orient.PlaneOf(0, 10*orient.Degree), quiz.Verdict{})
	}
	m := t.Mix()
	fmt.Printf("gentle %.0f %%, moderate %.0f %%, steep %.0f %%\n", 100*m.Share(quiz.Gentle), 100*m.Share(quiz.Moderate), 100*m.Share(quiz.Steep))
	// Output:
	// gentle 46 %, moderate 33 %, steep 21 %
}
