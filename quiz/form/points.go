package form

import (
	"math"
	"strconv"
)

// Points are so many points in words, to the hundredth: 1 point, 0.5 points.
func Points(n float64) string {
	s := strconv.FormatFloat(math.Round(n*100)/100+0, 'f', -1, 64)
	if s == "1" {
		return "1 point"
	}
	return s + " points"
}
