package geomag_test

import (
	"fmt"

	"cuesta/orient/geomag"
)

// A mountain hut of our own on a day in the autumn of 2026.
func Example() {
	site, err := geomag.ParseSite("46.6,8.0,1500")
	if err != nil {
		fmt.Println(err)
		return
	}
	day, err := geomag.ParseYear("2026-09-14")
	if err != nil {
		fmt.Println(err)
		return
	}
	f, err := geomag.At(site, day)
	fmt.Printf("declination %.1f° ± %.1f°, inclination %.0f°, %v\n",
		f.Declination.Degrees(), f.DeclinationError.Degrees(), f.Inclination.Degrees(), err)
	// Output: declination 3.5° ± 0.4°, inclination 63°, <nil>
}
