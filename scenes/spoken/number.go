package spoken

import (
	"strconv"
	"strings"
	"unicode/utf8"
)

// isSign says whether r is a plus, a hyphen, or one of the dashes that stand
// for a minus.
func isSign(r rune) bool { return r == '+' || isMinus(r) }

func isMinus(r rune) bool {
	switch r {
	case '-', '\u2212', '\u2010', '\u2011', '\u2012', '\u2013', '\u2014', '\uFE63', '\uFF0D':
		return true
	}
	return false
}

// number reads a decimal number with an optional sign and one of the units
// behind it. A comma is a decimal point too; there are no exponents.
func number(text string, units ...string) (x float64, ok bool) {
	text = strings.ToLower(strings.TrimSpace(text))
	for _, u := range units {
		if strings.HasSuffix(text, u) {
			text = strings.TrimSpace(strings.TrimSuffix(text, u))
			break
		}
	}
	sign := 1.0
	if r, size := utf8.DecodeRuneInString(text); isSign(r) {
		if isMinus(r) {
			sign = -1
		}
		text = strings.TrimSpace(text[size:])
	}
	if !plainDecimal(text) {
		return 0, false
	}
	x, err := strconv.ParseFloat(strings.Replace(text, ",", ".", 1), 64)
	return sign*x + 0, err == nil
}

// plainDecimal wants digits, at most one point or comma among them, and no
// more than fits a bench.
func plainDecimal(s string) bool {
	digits, points := 0, 0
	for _, r := range s {
		switch {
		case r >= '0' && r <= '9':
			digits++
		case r == '.' || r == ',':
			points++
		default:
			return false
		}
	}
	return digits > 0 && digits <= 30 && points <= 1
}
