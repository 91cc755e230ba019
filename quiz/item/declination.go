package item

import (
	"math"
	"strconv"

	"cuesta/orient"
)

// declinationWords writes a declination: 12° east.
func declinationWords(d orient.Angle) string {
	side := "east"
	if d < 0 {
		side = "west"
	}
	return strconv.FormatFloat(hundredths(d.Abs().Degrees()), 'f', -1, 64) + "° " + side
}

// hundredths rounds to 0.01 and never writes −0.
func hundredths(x float64) float64 { return math.Round(x*100)/100 + 0 }
