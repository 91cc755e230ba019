package orient

import (
	"math"
	"strings"
)

// points are the sixteen points of the compass, 22.5° apart, from north.
var points = [16]string{
	"N", "NNE", "NE", "ENE", "E", "ESE", "SE", "SSE",
	"S", "SSW", "SW", "WSW", "W", "WNW", "NW", "NNW",
}

const (
	pointStep = 22.5
	octant    = 45.0
)

// Letters is the nearest of the eight points N, NE, E, SE, S, SW, W, NW.
func (z Azimuth) Letters() string {
	n := int(math.Round(z.Degrees()/octant)) % 8
	return points[2*n]
}

// pointDegrees is the azimuth of a compass point in degrees.
func pointDegrees(letters string) (deg float64, ok bool) {
	for i, p := range points {
		if p == letters {
			return float64(i) * pointStep, true
		}
	}
	return 0, false
}

// Quadrant writes the azimuth as a quadrant bearing: N35E, S65W. Due east is
// N90E, due west N90W, due south S0E.
func (z Azimuth) Quadrant() string {
	d := hundredths(z.Degrees())
	switch {
	case d <= 90:
		return "N" + short(d) + "E"
	case d <= 180:
		return "S" + short(180-d) + "E"
	case d < 270:
		return "S" + short(d-180) + "W"
	case d < 360:
		return "N" + short(360-d) + "W"
	}
	return "N0E"
}

// String writes three digits, 035, with up to two decimals where they are
// needed: 035.25.
func (z Azimuth) String() string {
	return padded(math.Mod(hundredths(z.Degrees()), 360), 3)
}

// line splits a word such as NS, EW or NESW, which names both ends of a line.
func line(word string) (first string, ok bool) {
	half := len(word) / 2
	first = word[:half]
	return first, half > 0 && opposite(first, word[half:])
}

func opposite(a, b string) bool {
	x, okA := pointDegrees(a)
	y, okB := pointDegrees(b)
	return okA && okB && math.Abs(x-y) == 180
}

// longNames are the spelt-out directions.
var longNames = strings.NewReplacer("NORTH", "N", "SOUTH", "S", "EAST", "E", "WEST", "W")
