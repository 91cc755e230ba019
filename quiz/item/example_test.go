package item_test

import (
	"fmt"
	"math/rand/v2"

	"cuesta/orient"
	"cuesta/quiz/item"
)

// A kind deals an item from a specification and a seed; the item marks what is
// typed and explains it.
func Example() {
	kind, _ := item.KindNamed("apply-declination")
	it, err := kind.Deal(item.Spec{}, rand.New(rand.NewPCG(3, 0)))
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(it.Prompt())
	fmt.Println("Key:", it.Key())
	for _, typed := range []string{it.Key(), "400", "east"} {
		m := it.Mark(typed, item.Evidence{})
		fmt.Println(typed, m.Right, m.Said)
	}
	// Output:
	// A bed strikes 215° from true north. The declination is 8° west. What does the needle read while the ring of the dial stands at zero?
	// Key: 223°
	// 223° true Right.
	// 400 false This could not be read: an azimuth goes from 000 to 360.
	// east false This is not the magnetic azimuth.
}

// The same plane earns the same mark in any notation.
func ExampleItem() {
	kind, _ := item.KindNamed("measure-slab")
	it, _ := kind.Deal(item.Spec{Notation: orient.DirectionDip}, rand.New(rand.NewPCG(1, 0)))
	fmt.Println(it.Ask().Label, it.Key())
	e, _ := orient.Parse(it.Key(), orient.DirectionDip)
	for _, n := range []orient.Notation{orient.Quadrant, orient.DirectionDip} {
		m := it.Mark(orient.Format(e.Plane, n), item.Evidence{})
		fmt.Println(m.Right, m.Understood)
	}
	// Output:
	// dip direction and dip 342/06
	// true Strike 252° (written N72E), dip 06° to the N.
	// true Dip direction 342°, dip 06°, so strike 252°.
}
