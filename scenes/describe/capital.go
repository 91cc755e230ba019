package describe

import (
	"strings"
	"unicode/utf8"
)

// Capital is s with a capital at its head.
func Capital(s string) string {
	_, n := utf8.DecodeRuneInString(s)
	return strings.ToUpper(s[:n]) + s[n:]
}
