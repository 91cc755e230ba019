package orient_test

import (
	"fmt"

	"cuesta/orient"
)

// Any notation comes in; the others go out.
func ExampleParse() {
	e, err := orient.Parse("215/30 SE", orient.AzimuthDip)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(e.Understood())
	fmt.Println(orient.Format(e.Plane, orient.AzimuthDip))
	fmt.Println(orient.Format(e.Plane, orient.Quadrant))
	fmt.Println(orient.Format(e.Plane, orient.DirectionDip))
	fmt.Println(orient.Format(e.Plane, orient.PoleNotation))
	// Output:
	// Strike 035° (written from the other end, 215°), dip 30° to the SE.
	// 035/30
	// N35E 30SE
	// 125/30
	// 305/60
}

// The course's notation decides what a bare pair of numbers is.
func ExampleParse_assume() {
	for _, course := range []orient.Notation{orient.AzimuthDip, orient.DirectionDip} {
		e, _ := orient.Parse("125/30", course)
		fmt.Println(e.Understood())
	}
	// Output:
	// Strike 125°, dip 30° to the SW.
	// Dip direction 125°, dip 30°, so strike 035°.
}

// A refusal says where, what was read and what would do.
func ExampleParse_refused() {
	_, err := orient.Parse("040/30NE", orient.Quadrant)
	fmt.Println(err)
	// Output:
	// "040/30NE", character 7: NE was read, but a plane striking 040 dips SE or NW; write SE or NW, or 30→040 if 040 is the dip direction
}

// A notebook shows what is understood so far.
func ExampleParsePartial() {
	e, _ := orient.ParsePartial("036/", orient.AzimuthDip)
	fmt.Println(e.Understood())
	// Output:
	// Strike 036°, dips to the SE side. The dip is still missing.
}

// A section oblique to the dip shows less of it.
func ExamplePlane_ApparentDip() {
	p := orient.PlaneOf(35*orient.Degree, 30*orient.Degree)
	for _, section := range []orient.Angle{125, 80, 35} {
		z := orient.AzimuthOf(section * orient.Degree)
		fmt.Printf("%s: %.1f\n", z, p.ApparentDip(z).Degrees())
	}
	// Output:
	// 125: 30.0
	// 080: 22.2
	// 035: 0.0
}

// Two apparent dips make a plane.
func ExamplePlaneThrough() {
	a := orient.Line{Trend: orient.AzimuthOf(296 * orient.Degree), Plunge: 20 * orient.Degree}
	b := orient.Line{Trend: orient.AzimuthOf(46 * orient.Degree), Plunge: 30 * orient.Degree}
	p, ok := orient.PlaneThrough(a, b)
	fmt.Println(orient.Format(p.Rounded(orient.Degree), orient.AzimuthDip), ok)
	// Output: 270/40 true
}

func ExampleIntersection() {
	p := orient.PlaneOf(35*orient.Degree, 30*orient.Degree)
	q := orient.PlaneOf(305*orient.Degree, 90*orient.Degree)
	l, ok := orient.Intersection(p, q)
	fmt.Println(l, ok)
	// Output: 125/30 true
}

// A bubble left one degree off matters more the gentler the bed.
func ExampleStrikeError() {
	for _, dip := range []orient.Angle{60, 30, 10, 2} {
		fmt.Printf("dip %v°: %.1f°\n", float64(dip), orient.StrikeError(orient.Degree, dip*orient.Degree).Degrees())
	}
	// Output:
	// dip 60°: 0.6°
	// dip 30°: 1.7°
	// dip 10°: 5.7°
	// dip 2°: 30.0°
}
