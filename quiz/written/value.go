package written

import (
	"fmt"
	"strconv"
	"strings"
	"unicode"
)

// The readers of single values: each notes what is wrong and then gives the
// default, so that the reading goes on.

// Number reads a number in [lo, hi].
func (c *Checker) Number(path string, v any, def, lo, hi float64) float64 {
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
		c.Blame(path, "%s: read %s; write a number from %s to %s", last(path), Shown(v), plain(lo), plain(hi))
		return def
	}
	return x
}

// Whole reads a whole number in [lo, hi].
func (c *Checker) Whole(path string, v any, def, lo, hi int64) int64 {
	if v == nil {
		return def
	}
	n, ok := v.(int64)
	if !ok || n < lo || n > hi {
		c.Blame(path, "%s: read %s; write a whole number from %d to %d", last(path), Shown(v), lo, hi)
		return def
	}
	return n
}

// Line reads one line of text of at most so many characters.
func (c *Checker) Line(path string, v any, most int) string {
	if v == nil {
		return ""
	}
	s, ok := v.(string)
	if !ok || !printable(s, false) || len([]rune(s)) > most {
		c.Blame(path, "%s: read %s; write one line of at most %d characters, in quotes", last(path), Shown(v), most)
		return ""
	}
	return strings.TrimSpace(s)
}

// Text reads text of any lines, of at most so many characters.
func (c *Checker) Text(path string, v any, most int) string {
	if v == nil {
		return ""
	}
	s, ok := v.(string)
	if !ok || !printable(s, true) || len([]rune(s)) > most {
		c.Blame(path, "%s: read %s; write text of at most %d characters, in quotes, or in three quotes over several lines", last(path), Shown(v), most)
		return ""
	}
	return strings.TrimSpace(s)
}

func printable(s string, lines bool) bool {
	for _, r := range s {
		if r == '\n' || r == '\r' && lines || r == '\t' {
			if !lines {
				return false
			}
			continue
		}
		if unicode.IsControl(r) || r == unicode.ReplacementChar {
			return false
		}
	}
	return true
}

// Truth reads true or false.
func (c *Checker) Truth(path string, v any, def bool) bool {
	b, ok := v.(bool)
	if v != nil && !ok {
		c.Blame(path, "%s: read %s; write true or false, without quotes", last(path), Shown(v))
	}
	if !ok {
		return def
	}
	return b
}

// Word reads one of a few words and gives its place among them.
func (c *Checker) Word(path string, v any, def int, words ...string) int {
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
	if n := Nearest(strings.ToLower(s), words); n != "" {
		would = "perhaps " + strconv.Quote(n) + " was meant"
	}
	c.Blame(path, "%s: read %s; %s", last(path), Shown(v), would)
	return def
}

// List reads a list; a single value is a list of one.
func (c *Checker) List(v any) []any {
	switch l := v.(type) {
	case nil:
		return nil
	case []any:
		return l
	}
	return []any{v}
}

// last is the last key of a path that is no number of an element.
func last(path string) string {
	parts := strings.Split(path, ".")
	for i := len(parts) - 1; i > 0; i-- {
		if _, err := strconv.Atoi(parts[i]); err != nil {
			return parts[i]
		}
	}
	return parts[0]
}

// Shown is a value as it was read.
func Shown(v any) string {
	switch x := v.(type) {
	case string:
		return Quoted(x)
	case float64:
		return strings.ToLower(strings.TrimPrefix(fmt.Sprint(x), "+"))
	case int64, bool:
		return fmt.Sprint(x)
	case map[string]any:
		return "a table"
	case []any:
		return "a list"
	}
	return Quoted(fmt.Sprint(v))
}

func plain(x float64) string { return strconv.FormatFloat(x, 'f', -1, 64) }

// Nearest is the known word that s was probably meant to be, or "": at most
// two letters away, and no more than half of the word.
func Nearest(s string, known []string) string {
	best, least := "", 3
	for _, k := range known {
		if d := edits(s, k); d < least && 2*d <= len(k) {
			best, least = k, d
		}
	}
	return best
}

// edits is Levenshtein's distance in bytes.
func edits(a, b string) int {
	row := make([]int, len(b)+1)
	for j := range row {
		row[j] = j
	}
	for i := range len(a) {
		diagonal := row[0]
		row[0] = i + 1
		for j := range len(b) {
			cost := diagonal
			if a[i] != b[j] {
				cost++
			}
			diagonal = row[j+1]
			row[j+1] = min(cost, row[j]+1, diagonal+1)
		}
	}
	return row[len(b)]
}
