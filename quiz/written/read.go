package written

import (
	"bytes"
	"errors"
	"fmt"
	"reflect"
	"regexp"
	"sort"
	"strconv"
	"strings"
	"unicode/utf8"

	"github.com/pelletier/go-toml/v2"
)

// Kind is a kind of file.
type Kind struct {
	Name    string // "a lesson"
	Err     error  // of every problem: what the file is not
	Largest int    // size in bytes above which it is not read
	Table   string // of which there must be one: "step"
}

// kinds are the files that are written by hand, by their tables: what each is,
// and the command that takes it.
var kinds = map[string][2]string{
	"item": {"a blueprint", "cuesta deal"}, "station": {"a file of stations", "cuesta lab"}, "step": {"a lesson", "cuesta lesson"},
}

var tableHead = regexp.MustCompile(`(?m)^[ \t]*\[\[[ \t]*([a-z]+)[ \t]*\]\]`)

// another says that a text is a file of another kind, by the tables in it.
func (k Kind) another(text []byte) error {
	var first Problem
	for _, m := range tableHead.FindAllSubmatchIndex(text, -1) {
		name := string(text[m[2]:m[3]])
		is, known := kinds[name]
		switch {
		case name == k.Table:
			return nil
		case known && first.Said == "":
			at := placed(text, m[2]-2)
			first = Problem{at.line, at.column, fmt.Sprintf("read [[%s]], so this is %s, which %s takes; %s has [[%s]]", name, is[0], is[1], k.Name, k.Table)}
		}
	}
	if k.Table == "" || first.Said == "" {
		return nil
	}
	return k.wrong(first)
}

// Checker gathers the problems of a file.
type Checker struct {
	kind     Kind
	shape    reflect.Type
	at       map[string]position
	problems []Problem
}

// Decode reads text into the struct that into points to. Its fields are of type
// any, or structs and slices of structs for tables, so that a value of the wrong
// type does not hide what else is wrong; the checker's readers take them from
// there. The error, a *Wrong, is of a text that is no TOML or no text at all;
// all else is told by Result.
func Decode(text []byte, into any, k Kind) (*Checker, error) {
	text, err := k.plain(text)
	if err != nil {
		return nil, err
	}
	if err := k.another(text); err != nil {
		return nil, err
	}
	c := &Checker{kind: k, shape: reflect.TypeOf(into).Elem()}
	err = toml.NewDecoder(bytes.NewReader(text)).DisallowUnknownFields().Decode(into)
	var unknown *toml.StrictMissingError
	if err != nil && !errors.As(err, &unknown) {
		return nil, c.undecoded(text, err)
	}
	c.at = positions(text)
	if unknown != nil {
		c.unknown(unknown)
	}
	return c, nil
}

// plain refuses what is no text, in the words of someone who saved it with the
// wrong program.
func (k Kind) plain(text []byte) ([]byte, error) {
	text = bytes.TrimPrefix(text, []byte("\uFEFF"))
	switch {
	case len(text) > k.Largest:
		return nil, k.wrong(Problem{Said: fmt.Sprintf("it is longer than %d KB; %s is a page or two of text", k.Largest>>10, k.Name)})
	case bytes.HasPrefix(text, []byte("\xFF\xFE")) || bytes.HasPrefix(text, []byte("\xFE\xFF")):
		return nil, k.wrong(Problem{Said: "it is written in UTF-16; save it as UTF-8"})
	}
	if n := firstInvalid(text); n >= 0 {
		p := placed(text, n)
		return nil, k.wrong(Problem{p.line, p.column, "read bytes that are not UTF-8; save the file as UTF-8"})
	}
	return text, nil
}

func (k Kind) wrong(p Problem) error { return &Wrong{Problems: []Problem{p}, Err: k.Err} }

// firstInvalid is the offset of the first byte that is not UTF-8, or −1.
func firstInvalid(text []byte) int {
	for i := 0; i < len(text); {
		r, n := utf8.DecodeRune(text[i:])
		if r == utf8.RuneError && n == 1 {
			return i
		}
		i += n
	}
	return -1
}

// undecoded is where the text is no TOML, and what would do.
func (c *Checker) undecoded(text []byte, err error) error {
	var de *toml.DecodeError
	if !errors.As(err, &de) {
		return c.kind.wrong(Problem{Said: "its tables do not fit together; compare it with the example"})
	}
	line, column := de.Position()
	if strings.Contains(de.Error(), "cannot") && len(de.Key()) > 0 {
		return c.kind.wrong(Problem{line, column, c.tablesWant(de.Key())})
	}
	return c.kind.wrong(spotAt(text, line, column, de.Error()).told())
}

// tablesWant says how a table is written, where something else stands.
func (c *Checker) tablesWant(key []string) string {
	name := key[0]
	if f, ok := fieldOf(c.shape, name); ok && f.Type.Kind() == reflect.Slice {
		return fmt.Sprintf("%s: every %s starts with the line [[%s]]", name, name, name)
	}
	return fmt.Sprintf("%s: it is a table; start it with a line such as [%s]", name, name)
}

// Blame notes a problem at a path such as "step.0.pose"; where the path does not
// stand in the file, at the table around it.
func (c *Checker) Blame(path, format string, a ...any) {
	said := fmt.Sprintf(format, a...)
	for p := path; ; {
		if at, ok := c.at[p]; ok {
			c.problems = append(c.problems, Problem{at.line, at.column, said})
			return
		}
		i := strings.LastIndexByte(p, '.')
		if i < 0 {
			c.problems = append(c.problems, Problem{Said: said})
			return
		}
		p = p[:i]
	}
}

// Count is the number of problems so far.
func (c *Checker) Count() int { return len(c.problems) }

// unknown notes the keys that no field takes.
func (c *Checker) unknown(err *toml.StrictMissingError) {
	for _, e := range err.Errors {
		key := e.Key()
		line, column := e.Position()
		said := fmt.Sprintf("read the key %s, which is not known here; %s", Quoted(key[len(key)-1]), c.would(c.whole(key, position{line, column})))
		c.problems = append(c.problems, Problem{line, column, said})
	}
}

// whole is the key at a place with the tables around it: the decoder does not
// tell those of a table in one line.
func (c *Checker) whole(key []string, at position) []string {
	for path, p := range c.at {
		if p != at || !strings.HasSuffix(path, key[len(key)-1]) {
			continue
		}
		var names []string
		for _, part := range strings.Split(path, ".") {
			if _, err := strconv.Atoi(part); err != nil {
				names = append(names, part)
			}
		}
		if len(names) > len(key) {
			key = names
		}
	}
	return key
}

// would is what could stand in the place of a key.
func (c *Checker) would(key []string) string {
	known := keysOf(c.shape, key[:len(key)-1])
	if n := Nearest(key[len(key)-1], known); n != "" {
		return "perhaps " + n + " was meant"
	}
	if len(known) == 0 {
		return "leave it out"
	}
	return "the keys are " + strings.Join(known, ", ")
}

// keysOf are the keys of the table at a path.
func keysOf(t reflect.Type, path []string) []string {
	for _, p := range path {
		f, ok := fieldOf(t, p)
		if !ok {
			return nil
		}
		if t = f.Type; t.Kind() == reflect.Slice || t.Kind() == reflect.Pointer {
			t = t.Elem()
		}
	}
	var keys []string
	for i := 0; t.Kind() == reflect.Struct && i < t.NumField(); i++ {
		keys = append(keys, t.Field(i).Tag.Get("toml"))
	}
	return keys
}

func fieldOf(t reflect.Type, key string) (reflect.StructField, bool) {
	for i := 0; t.Kind() == reflect.Struct && i < t.NumField(); i++ {
		if t.Field(i).Tag.Get("toml") == key {
			return t.Field(i), true
		}
	}
	return reflect.StructField{}, false
}

// Result is the error of all the problems, in the order of the lines, or nil.
func (c *Checker) Result() error {
	if len(c.problems) == 0 {
		return nil
	}
	sort.SliceStable(c.problems, func(i, j int) bool {
		p, q := c.problems[i], c.problems[j]
		return p.Line < q.Line || p.Line == q.Line && p.Column < q.Column
	})
	return &Wrong{Problems: c.problems, Err: c.kind.Err}
}
