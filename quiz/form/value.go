package form

import (
	"math"
	"strconv"
	"unicode"

	"cuesta/orient"
	"cuesta/quiz/written"
)

// angle reads degrees in [0, hi].
func (c checker) angle(path string, v any, def orient.Angle, hi float64) orient.Angle {
	if v == nil {
		return def
	}
	return degrees(c.Number(path, v, inDegrees(def), 0, hi))
}

// longestText bounds a text of a blueprint, in characters.
const longestText = 200

// text reads a line of text.
func (c checker) text(path string, v any) string { return c.Line(path, v, longestText) }

// isLine says whether s is one line that can be printed, and not too long.
func isLine(s string) bool {
	n := 0
	for _, r := range s {
		if n++; unicode.IsControl(r) || r == unicode.ReplacementChar || n > longestText {
			return false
		}
	}
	return true
}

// shown is a value as it was read.
func shown(v any) string { return written.Shown(v) }

func plain(x float64) string { return strconv.FormatFloat(x, 'f', -1, 64) }

// inDegrees is an angle as files hold it: degrees to the billionth, so that it
// comes back from degrees bit for bit.
func inDegrees(a orient.Angle) float64 { return math.Round(a.Degrees()*1e9)/1e9 + 0 }

func degrees(x float64) orient.Angle { return orient.Angle(math.Round(x*1e9)/1e9+0) * orient.Degree }

// inNanotesla is a field strength as files hold it, to the thousandth.
func inNanotesla(t float64) float64 { return math.Round(t*1e12)/1e3 + 0 }

func nanotesla(x float64) float64 { return (math.Round(x*1e3)/1e3 + 0) * 1e-9 }
