package form

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"unicode"

	"cuesta/orient"
)

// The readers of single values: each notes what is wrong and then gives the
// default, so that the reading goes on.

// number reads a number in [lo, hi].
func (c *checker) number(path string, v any, def, lo, hi float64) float64 {
	x, ok := def, true
	switch n := v.(type) {
	case nil:
		return def
	case int64:
		x = float64(n)
	case float64:
		x = n
	default:
		ok = false
	}
	if !ok || !(x >= lo && x <= hi) {
		c.blame(path, "%s: read %s; write a number from %s to %s", last(path), shown(v), plain(lo), plain(hi))
		return def
	}
	return x
}

// whole reads a whole number in [lo, hi].
func (c *checker) whole(path string, v any, def, lo, hi int64) int64 {
	if v == nil {
		return def
	}
	n, ok := v.(int64)
	if !ok || n < lo || n > hi {
		c.blame(path, "%s: read %s; write a whole number from %d to %d", last(path), shown(v), lo, hi)
		return def
	}
	return n
}

// angle reads degrees in [0, hi].
func (c *checker) angle(path string, v any, def orient.Angle, hi float64) orient.Angle {
	if v == nil {
		return def
	}
	return degrees(c.number(path, v, inDegrees(def), 0, hi))
}

// longestText bounds a text of a blueprint, in characters.
const longestText = 200

// text reads a line of text.
func (c *checker) text(path string, v any) string {
	if v == nil {
		return ""
	}
	s, ok := v.(string)
	if !ok || !isLine(s) {
		c.blame(path, "%s: read %s; write one line of at most %d characters, in quotes", last(path), shown(v), longestText)
		return ""
	}
	return strings.TrimSpace(s)
}

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

// truth reads true or false.
func (c *checker) truth(path string, v any, def bool) bool {
	b, ok := v.(bool)
	if v != nil && !ok {
		c.blame(path, "%s: read %s; write true or false, without quotes", last(path), shown(v))
	}
	if !ok {
		return def
	}
	return b
}

// word reads one of a few words and gives its place among them.
func (c *checker) word(path string, v any, def int, words ...string) int {
	if v == nil {
		return def
	}
	s, _ := v.(string)
	for i, w := range words {
		if s == w {
			return i
		}
	}
	would := "write one of " + strings.Join(words, ", ")
	if n := nearest(strings.ToLower(s), words); n != "" {
		would = "perhaps " + strconv.Quote(n) + " was meant"
	}
	c.blame(path, "%s: read %s; %s", last(path), shown(v), would)
	return def
}

// last is the key at the end of a path.
func last(path string) string { return path[strings.LastIndexByte(path, '.')+1:] }

// shown is a value as it was read.
func shown(v any) string {
	switch x := v.(type) {
	case string:
		return shortened(x)
	case float64, int64, bool:
		return fmt.Sprint(x)
	case map[string]any:
		return "a table"
	case []any:
		return "a list"
	}
	return shortened(fmt.Sprint(v))
}

func plain(x float64) string { return strconv.FormatFloat(x, 'f', -1, 64) }

// inDegrees is an angle as files hold it: degrees to the billionth, so that it
// comes back from degrees bit for bit.
func inDegrees(a orient.Angle) float64 { return math.Round(a.Degrees()*1e9)/1e9 + 0 }

func degrees(x float64) orient.Angle { return orient.Angle(math.Round(x*1e9)/1e9+0) * orient.Degree }

// inNanotesla is a field strength as files hold it, to the thousandth.
func inNanotesla(t float64) float64 { return math.Round(t*1e12)/1e3 + 0 }

func nanotesla(x float64) float64 { return (math.Round(x*1e3)/1e3 + 0) * 1e-9 }
