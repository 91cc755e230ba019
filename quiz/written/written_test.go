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
		{"not a number", "sizes = nan", []string{`line 1, column 1: sizes: read nan; write a number from 0 to 1`}},
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

// TestSlipsOfWriting are the usual ones of people who have never written such a
// file: each is told with its place, what was read and what would do.
func TestSlipsOfWriting(t *testing.T) {
	for _, c := range []struct{ name, text, want string }{
		{"curly quotes", "name = “Ostby Fell”\n", `line 1, column 8: read “; write straight quotes, such as "Ostby Fell"`},
		{"a curly quote at the end", "name = \"é”\nsure = true", `line 1, column 10: read ”; write straight quotes, such as "Ostby Fell"`},
		{"curly quotes in a list", "sizes = [“x”]", `line 1, column 10: read “; write straight quotes, such as "Ostby Fell"`},
		{"no closing quote", "name = \"Ostby\nsure = true", `line 1, column 8: read "Ostby" without a closing quote; end it with " on the same line`},
		{"no closing quote at the end", "name = 'x", `line 1, column 8: read "x" without a closing quote; end it with ' on the same line`},
		{"no end of three quotes", "name = \"\"\"\nabc\n", `line 1, column 8: the text in three quotes that begins here has no end; close it with """`},
		{"no quotes", "name = Ostby Fell # a place", `line 1, column 8: read "Ostby Fell"; write text in straight quotes, "Ostby Fell"`},
		{"a plane without quotes", "name = 035/30", `line 1, column 8: read "035/30"; write a number, or text in straight quotes, "035/30"`},
		{"a quote within", `name = "He said "hi""`, `line 1, column 17: read a quote within a text; write \" for one, or put the text in single quotes`},
		{"nan", "sizes = nan", `line 1, column 1: sizes: read nan; write a number from 0 to 1`},
		{"inf", "sizes = -inf", `line 1, column 1: sizes: read -inf; write a number from 0 to 1`},
		{"NaN", "sizes = NaN", `line 1, column 9: read NaN; write a number, or leave the line out`},
		{"true for a number", "sizes = true", `line 1, column 1: sizes: read true; write a number from 0 to 1`},
		{"capitals", "sure = True", `line 1, column 8: read True; write true, in small letters`},
		{"yes", "sure = yes", `line 1, column 8: read yes; write true`},
		{"no equals sign", "name \"x\"", `line 1, column 6: there is no = behind name; write name = and its value`},
		{"a colon", "name: \"x\"", `line 1, column 5: read : behind name; write =`},
		{"no value", "name =\nsure = true", `line 1, column 6: there is no value behind the =; write one: a number, true or false, or a text in quotes`},
		{"no end of a list", "sizes = [0, 1\nsure = true", `line 1, column 9: the list that begins here has no end; write ] behind its last value`},
		{"no end of a last list", "sizes = [\n0,\n1", `line 1, column 9: the list that begins here has no end; write ] behind its last value`},
		{"no comma in a list", "sizes = [0 1]", `line 1, column 12: read "1]" in a list; put a comma between its values, and ] behind the last`},
		{"no end of a table", "[place\nwords = \"x\"", `line 1, column 1: read "[place"; write [place]`},
		{"half an end", "[[book]\nkind = \"atlas\"", `line 1, column 1: read "[[book]"; write [[book]]`},
		{"no end of braces", "place = { words = \"x\"\nsure = true", `line 1, column 9: the table in braces that begins here has no end; write } behind its last value`},
		{"a key twice", "name = \"x\"\nname = \"y\"", `line 2, column 1: read name for the second time; leave one of the two lines out`},
		{"a table twice", "[place]\n[place]", `line 2, column 2: read [place] for the second time; put its lines below the first one`},
		{"a carriage return", "name = \"x\"\rsure = true\r", `line 1, column 11: the line ends with a carriage return alone; save the file with the usual ends of lines`},
		{"a decimal comma", "sizes = 0,5", `line 1, column 9: read 0,5; write the decimal point, 0.5`},
		{"a decimal comma in braces", "place = { words = 0,5 }", `line 1, column 19: read 0,5; write the decimal point, 0.5`},
		{"no figure before the point", "sizes = .5", `line 1, column 9: read .5; write a figure before the point, 0.5`},
		{"no figure behind it", "sizes = 1.", `line 1, column 9: read 1.; write a figure behind the point, or leave it out`},
		{"a unit", "sizes = 3°", `line 1, column 9: read "3°"; write the number alone, 3`},
		{"a unit in words", "sizes = 1.5 km", `line 1, column 9: read "1.5 km"; write the number alone, 1.5`},
		{"zeros", "sizes = 007", `line 1, column 9: read 007; write the number without zeros before it, or in quotes where a text is due`},
		{"a long minus", "sizes = −5", `line 1, column 9: read −; write the minus sign of the keyboard, -`},
		{"a hard space", "name =\u00A0\"x\"", `line 1, column 7: read a space that is not the usual one; delete it and type it anew`},
		{"a bell", "name = \"x\a\"", `line 1, column 10: read a sign that cannot be seen (\a); delete it`},
		{"a date", "name = 14.9.2026", `line 1, column 8: read "14.9.2026"; write a day as 2026-09-14`},
		{"two in a line", "name = \"x\" sure = true", `line 1, column 12: read "sure = true" behind the value; put it on a line of its own, or behind # if it is a remark`},
		{"a semicolon", "name = \"x\";", `line 1, column 11: read ; at the end of the line; leave it out`},
		{"another remark", "// a list", `line 1, column 1: read "// a list"; write a remark behind #`},
		{"another remark behind", "name = \"x\" // a list", `line 1, column 12: read "// a list"; write a remark behind #`},
		{"a letter in a key", "näme = 1", `line 1, column 2: read ä in a key; keys are of the letters a to z, figures, _ and -`},
		{"a backslash", `name = "a\d"`, `line 1, column 10: read a backslash in a text; write \\ for one, or put the text in single quotes`},
		{"anything", "= 3", `line 1, column 1: read "= 3"; a line is a key = value, a [table], or a remark behind #`},
	} {
		var w *written.Wrong
		if err := check(c.text); !errors.As(err, &w) || w.Problems[0].String() != c.want {
			t.Errorf("%s: got %v, want %s", c.name, err, c.want)
		}
	}
	for _, text := range []string{"\tname\t=\t\"x\"\r\n\tsure = true\r\n", "\uFEFFname = \"x\"", "name = \"“x”, 2,5\" # 2,5"} {
		if err := check(text); err != nil {
			t.Errorf("%q: got %v, want it taken", text, err)
		}
	}
}

func FuzzDecode(f *testing.F) {
	f.Add("name = 1\n[[book]]\nkind = 2")
	f.Add("[book]\n[[book]]\n[place.words]")
	for _, s := range []string{"name = “x", "sizes = [0,5", "a = {b = 1", "x = \"\r", "=", "[", "é = 3", "a = 1\na.b = 2", "a = '"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, text string) {
		var w *written.Wrong
		if err := check(text); err != nil && (!errors.As(err, &w) || len(w.Problems) == 0) {
			t.Errorf("got %v", err)
		}
	})
}
