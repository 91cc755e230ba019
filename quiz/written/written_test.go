package written_test

import (
	"errors"
	"strings"
	"testing"

	"cuesta/quiz/written"
)

var errList = errors.New("not a list")

type listTOML struct {
	Name   any        `toml:"name"`
	Sure   any        `toml:"sure"`
	Sizes  any        `toml:"sizes"`
	Place  placeTOML  `toml:"place"`
	Things []bookTOML `toml:"book"`
}

type placeTOML struct {
	Words any `toml:"words"`
}

type bookTOML struct {
	Kind  any `toml:"kind"`
	Pages any `toml:"pages"`
}

// check reads all there is in a list.
func check(text string) error {
	var in listTOML
	c, err := written.Decode([]byte(text), &in, written.Kind{Name: "a list", Err: errList, Largest: 1 << 10})
	if err != nil {
		return err
	}
	c.Line("name", in.Name, 10)
	c.Truth("sure", in.Sure, false)
	for i, v := range c.List(in.Sizes) {
		c.Number("sizes."+string(rune('0'+i)), v, 0, 0, 1)
	}
	c.Text("place.words", in.Place.Words, 20)
	for i, b := range in.Things {
		at := "book." + string(rune('0'+i))
		c.Word(at+".kind", b.Kind, 0, "novel", "atlas")
		c.Whole(at+".pages", b.Pages, 0, 1, 100)
	}
	return c.Result()
}

func TestProblemsAndTheirPlaces(t *testing.T) {
	for _, c := range []struct {
		name, text string
		want       []string
	}{
		{"nothing wrong", "name = \"a\"\nsure = true\nsizes = [0, 0.5, 1]\n[place]\nwords = \"\"\"two\nlines\"\"\"\n[[book]]\nkind = \"atlas\"", nil},
		{"a single value is a list of one", "sizes = 1", nil},
		{"all at once, in order", "name = 3\nsizes = [0, 2]\n[[book]]\nkind = \"atlsa\"\npages = 0\n[[book]]\npage = 1\n[plaec]", []string{
			`line 1, column 1: name: read 3; write one line of at most 10 characters`,
			`line 2, column 1: sizes: read 2; write a number from 0 to 1`,
			`line 4, column 1: kind: read "atlsa"; perhaps "atlas" was meant`,
			`line 5, column 1: pages: read 0; write a whole number from 1 to 100`,
			`line 7, column 1: read the key "page", which is not known here; perhaps pages was meant`,
			`line 8, column 2: read the key "plaec", which is not known here; perhaps place was meant`}},
		{"columns count characters", "name = \"é\"\nplace = { wrods = \"é\" }", []string{`line 2, column 11: read the key "wrods", which is not known here; perhaps words was meant`}},
		{"not a number", "sizes = nan", []string{`line 1, column 1: sizes: read NaN`}},
		{"two lines in one", "name = \"a\\nb\"", []string{`line 1, column 1: name: read "a\nb"`}},
		{"not true or false", "sure = \"yes\"", []string{`line 1, column 1: sure: read "yes"; write true or false`}},
		{"no TOML", "name = ", []string{"line 1, column "}},
		{"no table", "place = 3", []string{"line 1, column 9: place: it is a table; start it with a line such as [place]"}},
		{"no array of tables", "book = 3", []string{"line 1, column 8: book: every book starts with the line [[book]]"}},
		{"UTF-16", "\xFF\xFEn\x00", []string{"it is written in UTF-16"}},
		{"bytes", "name = \"\xE4\"", []string{"line 1, column 9: read bytes that are not UTF-8"}},
		{"long", strings.Repeat("#", 1025), []string{"it is longer than 1 KB; a list is a page or two of text"}},
	} {
		err := check(c.text)
		if (err == nil) != (c.want == nil) || err != nil && !errors.Is(err, errList) {
			t.Errorf("%s: got %v", c.name, err)
			continue
		}
		var w *written.Wrong
		if errors.As(err, &w) && len(w.Problems) != len(c.want) {
			t.Errorf("%s: got %v", c.name, err)
			continue
		}
		for i, want := range c.want {
			if got := w.Problems[i].String(); !strings.HasPrefix(got, want) {
				t.Errorf("%s: problem %d: got %q, want %q", c.name, i+1, got, want)
			}
		}
	}
}

func FuzzDecode(f *testing.F) {
	f.Add("name = 1\n[[book]]\nkind = 2")
	f.Add("[book]\n[[book]]\n[place.words]")
	f.Fuzz(func(t *testing.T, text string) {
		var w *written.Wrong
		if err := check(text); err != nil && (!errors.As(err, &w) || len(w.Problems) == 0) {
			t.Errorf("got %v", err)
		}
	})
}
