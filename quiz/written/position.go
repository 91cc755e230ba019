package written

import (
	"strconv"
	"strings"
	"unicode/utf8"

	"github.com/pelletier/go-toml/v2/unstable"
)

// position is a place in a text, from 1.
type position struct{ line, column int }

// positions finds where each key of a TOML text stands: "place.site",
// "item.0.kind". A table has the position of its header. The text must be one
// that the decoder has taken.
func positions(text []byte) map[string]position {
	f := finder{at: map[string]position{}, count: map[string]int{}}
	f.parser.Reset(text)
	var table []string
	for f.parser.NextExpression() {
		switch e := f.parser.Expression(); e.Kind {
		case unstable.Table:
			table = f.header(e)
		case unstable.ArrayTable:
			table = f.element(e)
		case unstable.KeyValue:
			f.keyValue(table, e)
		}
	}
	return f.at
}

type finder struct {
	parser unstable.Parser
	at     map[string]position
	count  map[string]int // elements of each array of tables so far
}

func path(parts []string) string { return strings.Join(parts, ".") }

// header is the path of a table; a part that names an array of tables means its
// last element.
func (f *finder) header(e *unstable.Node) []string {
	var parts []string
	for keys := e.Key(); keys.Next(); {
		parts = f.into(append(parts, string(keys.Node().Data)))
		f.keep(parts, keys.Node())
	}
	return parts
}

func (f *finder) into(parts []string) []string {
	if n := f.count[path(parts)]; n > 0 {
		return append(parts, strconv.Itoa(n-1))
	}
	return parts
}

// element is the path of a new element of an array of tables.
func (f *finder) element(e *unstable.Node) []string {
	var parts []string
	var last *unstable.Node
	for keys := e.Key(); keys.Next(); {
		if last != nil {
			parts = f.into(parts)
		}
		last = keys.Node()
		parts = append(parts, string(last.Data))
	}
	n := f.count[path(parts)]
	f.count[path(parts)]++
	parts = append(parts, strconv.Itoa(n))
	f.keep(parts, last)
	return parts
}

func (f *finder) keyValue(table []string, e *unstable.Node) {
	parts := append([]string(nil), table...)
	for keys := e.Key(); keys.Next(); {
		parts = append(parts, string(keys.Node().Data))
		f.keep(parts, keys.Node())
	}
	f.value(parts, e.Value())
}

func (f *finder) value(parts []string, v *unstable.Node) {
	switch v.Kind {
	case unstable.InlineTable:
		for kids := v.Children(); kids.Next(); {
			f.keyValue(parts, kids.Node())
		}
	case unstable.Array:
		i := 0
		for kids := v.Children(); kids.Next(); i++ {
			f.value(append(append([]string(nil), parts...), strconv.Itoa(i)), kids.Node())
		}
	}
}

func (f *finder) keep(parts []string, key *unstable.Node) {
	p := path(parts)
	if _, known := f.at[p]; known {
		return
	}
	f.at[p] = placed(f.parser.Data(), int(key.Raw.Offset))
}

// Place is the line and column, from 1, of an offset in a text; the column in
// characters.
func Place(text []byte, offset int) (line, column int) {
	p := placed(text, offset)
	return p.line, p.column
}

// placed is the position of an offset, the column in characters.
func placed(text []byte, offset int) position {
	before := text[:min(offset, len(text))]
	line := 1 + strings.Count(string(before), "\n")
	start := strings.LastIndexByte(string(before), '\n') + 1
	return position{line, 1 + utf8.RuneCount(before[start:])}
}
