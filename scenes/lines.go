package scenes

import (
	"fmt"
	"slices"

	"cuesta/scenes/describe"
)

// A text of lines is gone through line by line, in a panel of one page or of
// several.

// linesOf says how many lines a text has.
func linesOf(n int) string { return fmt.Sprintf("%d lines", n) }

// lineBeside is the line after one, or before it, of n lines; false where now is
// no line or there is none beside it.
func lineBeside(now describe.ID, back bool, n int) (describe.ID, bool) {
	at, d := int(now)-int(idHelpLine), 1
	if back {
		d = -1
	}
	if at < 0 || at >= n || at+d < 0 || at+d >= n {
		return now, false
	}
	return idHelpLine + describe.ID(at+d), true
}

// pageOf is the page on which a line begins or a control stands, or at where it
// stands there or on none.
func pageOf(pages [][]block, at int, now describe.ID) int {
	on := func(page []block) bool {
		return slices.ContainsFunc(page, func(b block) bool {
			return slices.ContainsFunc(b.parts, func(w widget) bool { return w.focus && w.id == now })
		})
	}
	if on(pages[at%len(pages)]) {
		return at
	}
	if i := slices.IndexFunc(pages, on); i >= 0 {
		return i
	}
	return at
}

// nextPage is the way from one page to the next, or from the last to the first:
// its name, and its words.
func nextPage(at, pages int) (name, text string) { return nextOf("page", at, pages) }

// nextOf is the same of parts that are called otherwise.
func nextOf(part string, at, parts int) (name, text string) {
	word, to := "Next "+part, (at+1)%parts
	if to == 0 {
		word = "First " + part
	}
	return fmt.Sprintf("%s: %d of %d", word, to+1, parts), word
}
