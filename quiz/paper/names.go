package paper

import (
	"strings"
	"unicode"

	"cuesta/quiz/form"
	"cuesta/scenes/draw"
)

// Owner names who a form is for as the sheets do: by name and id, or by those
// words of the name that can be printed, or by the id alone.
func Owner(s form.Student) string {
	var words []string
	for _, w := range strings.Fields(strings.Map(seen, s.Name)) {
		if len(draw.Unprinted(w)) == 0 {
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
