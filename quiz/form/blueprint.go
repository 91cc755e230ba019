package form

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"reflect"
	"sort"
	"strings"
	"unicode/utf8"

	"github.com/pelletier/go-toml/v2"
)

// LargestBlueprint is the size in bytes above which a blueprint is not read.
const LargestBlueprint = 64 << 10

// blueprintTOML is the shape of the file. Its values are read as they come, so
// that one of the wrong type does not hide what else is wrong.
type blueprintTOML struct {
	Title     any           `toml:"title"`
	Notation  any           `toml:"notation"`
	Pass      any           `toml:"pass"`
	Minutes   any           `toml:"minutes"`
	Due       any           `toml:"due"`
	Cautions  any           `toml:"cautions"`
	Seed      any           `toml:"seed"`
	Place     placeTOML     `toml:"place"`
	Tolerance toleranceTOML `toml:"tolerance"`
	Items     []itemTOML    `toml:"item"`
}

type placeTOML struct {
	Name        any `toml:"name"`
	Site        any `toml:"site"`
	Date        any `toml:"date"`
	Declination any `toml:"declination"`
}

type toleranceTOML struct {
	Reading    any `toml:"reading"`
	Levelling  any `toml:"levelling"`
	Dip        any `toml:"dip"`
	StepStrike any `toml:"step_strike"`
	StepDip    any `toml:"step_dip"`
	StepShare  any `toml:"step_share"`
}

type itemTOML struct {
	Kind      any           `toml:"kind"`
	Count     any           `toml:"count"`
	Points    any           `toml:"points"`
	Attempts  any           `toml:"attempts"`
	HintCost  any           `toml:"hint_cost"`
	Notation  any           `toml:"notation"`
	Dips      any           `toml:"dips"`
	Mix       mixTOML       `toml:"mix"`
	Tolerance toleranceTOML `toml:"tolerance"`
}

type mixTOML struct {
	Gentle   any `toml:"gentle"`
	Moderate any `toml:"moderate"`
	Steep    any `toml:"steep"`
}

// ReadBlueprint reads a blueprint (TOML). It is strict: a key that it does not
// know is refused. An error of the file is a *Wrong that names every problem at
// once with line and column, except that a text which is no TOML at all ends at
// its first one; other errors are those of the reader.
func ReadBlueprint(from io.Reader) (Blueprint, error) {
	var in blueprintTOML
	c, err := readTOML(from, blueprintFile, &in)
	if err != nil {
		return Blueprint{}, err
	}
	b := c.blueprint(in)
	return b, c.result()
}

// fileKind is a kind of TOML file that people write.
type fileKind struct {
	err    error        // that it is none
	called string       // in a sentence
	array  string       // its array of tables
	shape  reflect.Type // what it is decoded into
}

var blueprintFile = fileKind{ErrBlueprint, "a blueprint", "item", reflect.TypeFor[blueprintTOML]()}

// readTOML decodes a file into a shape and returns the checker of its values.
func readTOML(from io.Reader, k fileKind, into any) (*checker, error) {
	text, err := io.ReadAll(io.LimitReader(from, LargestBlueprint+1))
	if err != nil {
		return nil, err
	}
	if text, err = k.plainText(text); err != nil {
		return nil, err
	}
	d := toml.NewDecoder(bytes.NewReader(text)).DisallowUnknownFields()
	err = d.Decode(into)
	var unknown *toml.StrictMissingError
	if err != nil && !errors.As(err, &unknown) {
		return nil, k.decodeProblem(err)
	}
	c := &checker{file: k, at: positions(text)}
	if unknown != nil {
		c.unknown(unknown)
	}
	return c, nil
}

// plainText refuses what is no text, in the words of someone who saved it with
// the wrong program.
func (k fileKind) plainText(text []byte) ([]byte, error) {
	text = bytes.TrimPrefix(text, []byte("\uFEFF"))
	switch {
	case len(text) > LargestBlueprint:
		return nil, wrong(k.err, "it is longer than %d KB; %s is a page or two of text", LargestBlueprint>>10, k.called)
	case bytes.HasPrefix(text, []byte("\xFF\xFE")) || bytes.HasPrefix(text, []byte("\xFE\xFF")):
		return nil, wrong(k.err, "it is written in UTF-16; save it as UTF-8")
	}
	if n := firstInvalid(text); n >= 0 {
		p := placed(text, n)
		return nil, &Wrong{Err: k.err, Problems: []Problem{{p.line, p.column, "read bytes that are not UTF-8; save the file as UTF-8"}}}
	}
	return text, nil
}

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

func (k fileKind) decodeProblem(err error) error {
	var de *toml.DecodeError
	if !errors.As(err, &de) {
		return wrong(k.err, "%v", err)
	}
	line, column := de.Position()
	said := strings.TrimPrefix(de.Error(), "toml: ")
	if strings.Contains(said, "cannot") && len(de.Key()) > 0 {
		said = k.tablesWant(de.Key()[0])
	}
	return &Wrong{Err: k.err, Problems: []Problem{{line, column, said}}}
}

// tablesWant says how a table is written, where something else stands.
func (k fileKind) tablesWant(key string) string {
	if key == k.array {
		return fmt.Sprintf("%[1]s: every %[1]s starts with the line [[%[1]s]]", key)
	}
	return fmt.Sprintf("%s: it is a table; start it with a line such as [%s]", key, key)
}

// checker gathers the problems of a file.
type checker struct {
	file     fileKind
	at       map[string]position
	problems []Problem
}

// blame notes a problem at a path; where the path does not stand in the file,
// at the table around it.
func (c *checker) blame(path, format string, a ...any) {
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

// unknown notes the keys that no field takes.
func (c *checker) unknown(err *toml.StrictMissingError) {
	for _, e := range err.Errors {
		key := e.Key()
		name := key[len(key)-1]
		line, column := e.Position()
		said := fmt.Sprintf("read the key %s, which is not known here; %s", shortened(name), c.wouldKeys(key))
		c.problems = append(c.problems, Problem{line, column, said})
	}
}

// wouldKeys is what could stand in the place of a key.
func (c *checker) wouldKeys(key []string) string {
	known := keysOf(c.file.shape, key[:len(key)-1])
	if n := nearest(key[len(key)-1], known); n != "" {
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
		if t = f.Type; t.Kind() == reflect.Slice {
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

// result is the error of all the problems, in the order of the lines.
func (c *checker) result() error {
	if len(c.problems) == 0 {
		return nil
	}
	sort.SliceStable(c.problems, func(i, j int) bool {
		p, q := c.problems[i], c.problems[j]
		return p.Line < q.Line || p.Line == q.Line && p.Column < q.Column
	})
	return &Wrong{Problems: c.problems, Err: c.file.err}
}
