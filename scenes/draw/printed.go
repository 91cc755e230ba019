package draw

import (
	"strings"
	"unicode"
)

// Unprinted are the signs of a text that the faces have no letters for, each
// once, in their order: a box would stand there. Letters that are written from
// right to left, or join, are among them, for text is set one sign behind the
// other.
func Unprinted(text string) []rune {
	var out []rune
	for _, r := range text {
		if !prints(r) && !strings.ContainsRune(string(out), r) {
			out = append(out, r)
		}
	}
	return out
}

func prints(r rune) bool {
	if unicode.In(r, unicode.Hebrew, unicode.Arabic, unicode.Syriac, unicode.Thaana, unicode.Nko) {
		return false
	}
	return unicode.Is(unicode.Cf, r) || unicode.IsSpace(r) || HasGlyph(Regular, r) && HasGlyph(Bold, r)
}

// Cut stands for signs that are left out.
const Cut = "…"

// Printed is a text without the signs that the faces have no letters for: Cut
// stands for each run of words of them.
func Printed(text string) string {
	var b strings.Builder
	cut, spaces := false, "" // what lies between two runs goes with them
	for _, r := range text {
		switch {
		case cut && r == ' ':
			spaces += " "
		case prints(r):
			b.WriteString(spaces + string(r))
			cut, spaces = false, ""
		case !cut:
			b.WriteString(Cut)
			cut = true
		default:
			spaces = ""
		}
	}
	return b.String()
}
