package paper

import (
	"strings"
	"unicode"

	"cuesta/quiz/form"
	"cuesta/scenes/draw"
)

// Unprinted are the signs of a name that the sheets have no letters for, each
// once, in their order: a box would stand there. Letters that are written from
// right to left, or join, are among them, for the sheets set signs one behind
// the other.
func Unprinted(name string) []rune {
	var out []rune
	for _, r := range name {
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
	return unicode.Is(unicode.Cf, r) || unicode.IsSpace(r) || draw.HasGlyph(draw.Regular, r) && draw.HasGlyph(draw.Bold, r)
}

// Owner names who a form is for as the sheets do: by name and id, or by those
// words of the name that can be printed, or by the id alone.
func Owner(s form.Student) string {
	var words []string
	for _, w := range strings.Fields(strings.Map(seen, s.Name)) {
		if len(Unprinted(w)) == 0 {
			words = append(words, w)
		}
	}
	s.Name = strings.Join(words, " ")
	return owner(s)
}

// seen leaves out what is not seen.
func seen(r rune) rune {
	if unicode.Is(unicode.Cf, r) {
		return -1
	}
	return r
}

// owner names who a form is for, whatever the signs.
func owner(s form.Student) string {
	switch {
	case s.Name != "" && s.ID != "" && s.Name != s.ID:
		return s.Name + " (" + s.ID + ")"
	case s.Name != "":
		return s.Name
	}
	return s.ID
}
