package form

import (
	"bytes"
	"errors"
	"fmt"
	"reflect"
	"strings"
	"testing"

	"cuesta/orient"
	"cuesta/quiz"
)

// said are the problems of an error, one a line.
func said(t testing.TB, err error) []string {
	t.Helper()
	if err == nil {
		return nil
	}
	var w *Wrong
	if !errors.As(err, &w) {
		t.Fatalf("got %v, want a *Wrong", err)
	}
	lines := make([]string, len(w.Problems))
	for i, p := range w.Problems {
		lines[i] = p.String()
	}
	return lines
}

const oneItem = "\n[[item]]\nkind = \"read-dial\"\n"

func TestEveryProblemIsToldAtOnce(t *testing.T) {
	_, err := ReadBlueprint(strings.NewReader(`titel = "x"
notation = "azimut"
pass = 60
minutes = "ten"
due = "tomorrow"
seed = -1
cautions = "yes"
[place]
site = "95,3"
date = 2026-09-14
declination = "none"
[tolerance]
redaing = 3
dip = -1
[[item]]
kind = "mesure-slab"
count = 0
dips = [60, 10]
mix = { gentle = 0 }
[[item]]
points = nan
attempts = 1.5
[item.tolerance]
reading = 99
`))
	want := []string{
		`there is no title`, `line 1, column 1: read the key "titel", which is not known here; perhaps title was meant`,
		`line 2, column 1: notation: read "azimut"; perhaps "azimuth" was meant`,
		`line 3, column 1: pass: read 60; write a number from 0 to 1`, `line 4, column 1: minutes: read "ten"`,
		`line 5, column 1: due: read "tomorrow"`, `line 6, column 1: seed: read -1`,
		`line 7, column 1: cautions: read "yes"; write true or false`, `line 9, column 1: site: "95,3"`,
		`line 11, column 1: declination: read "none"; write one of preset, student`,
		`line 13, column 1: read the key "redaing", which is not known here; perhaps reading was meant`,
		`line 14, column 1: dip: read -1; write a number from 0 to 45`,
		`line 16, column 1: kind: read "mesure-slab"; perhaps "measure-slab" was meant`,
		`line 17, column 1: count: read 0; write a whole number from 1 to 200`,
		`line 18, column 1: dips: read 60 to 10`, `line 19, column 1: mix: it deals no plane`,
		`line 20, column 3: kind: there is none; write one of `, `line 21, column 1: points: read nan`,
		`line 22, column 1: attempts: read 1.5`, `line 24, column 1: reading: read 99`,
	}
	got := said(t, err)
	if len(got) != len(want) {
		t.Fatalf("got %d problems, want %d:\n%s", len(got), len(want), strings.Join(got, "\n"))
	}
	for i := range want {
		if !strings.HasPrefix(got[i], want[i]) {
			t.Errorf("problem %d: got %q, want %q", i+1, got[i], want[i])
		}
	}
}

// A file of the other kind is named for what it is.
func TestAFileOfAnotherKind(t *testing.T) {
	stations := "title = \"a\"\n\n[[station]]\nname = \"A\"\n"
	_, err := ReadBlueprint(strings.NewReader(stations))
	want := "this blueprint cannot be used yet: line 3, column 1: read [[station]], so this is a file of stations, which cuesta lab takes; a blueprint has [[item]]"
	if err == nil || err.Error() != want {
		t.Errorf("got %v, want %s", err, want)
	}
	_, err = ReadStations(strings.NewReader(Example()))
	if err == nil || !strings.Contains(err.Error(), "so this is a blueprint, which cuesta deal takes; a file of stations has [[station]]") {
		t.Errorf("got %v, want it named a blueprint", err)
	}
}

func TestBlueprintsThatAreRefused(t *testing.T) {
	for _, c := range []struct{ name, text, want string }{
		{"empty", "", "there is no title"},
		{"no items", `title = "x"`, "there is no item"},
		{"no TOML", "title = ", "line 1, column"},
		{"a key twice", "title = \"a\"\ntitle = \"b\"" + oneItem, "line 2"},
		{"octal", "title = \"a\"\nseed = 012" + oneItem, "line 2"},
		{"item is no table", "title = \"a\"\nitem = 3", "item: every item starts with the line [[item]]"},
		{"place is no table", "title = \"a\"\nplace = 3", "place: it is a table"},
		{"UTF-16", "\xFF\xFEt\x00", "UTF-16"},
		{"Latin-1", "title = \"Gel\xE4nde\"", "line 1, column 13: read bytes that are not UTF-8"},
		{"zeros", strings.Repeat("\x00", 1000), "line 1"},
		{"long", strings.Repeat("#", LargestBlueprint+1), "longer than 64 KB"},
		{"deep", "title = " + strings.Repeat("[", 30000), "line 1"},
		{"deep and closed", "title = " + strings.Repeat("[", 30000) + strings.Repeat("]", 30000), ""},
		{"long title", `title = "` + strings.Repeat("x", 201) + `"` + oneItem, "at most 200 characters"},
		{"line in the title", `title = "a\nb"` + oneItem, "one line"},
		{"infinite", "title = \"a\"\npass = inf" + oneItem, "pass: read inf"},
		{"date alone", "title = \"a\"\n[place]\ndate = 2026-09-14" + oneItem, "there is a date but no site"},
		{"site alone", "title = \"a\"\n[place]\nsite = \"60,9\"" + oneItem, "there is a site but no date"},
		{"day in no calendar", "title = \"a\"\n[place]\nsite = \"60,9\"\ndate = \"2026-02-30\"" + oneItem, "line 4, column 1: date:"},
		{"far date", "title = \"a\"\n[place]\nsite = \"60,9\"\ndate = 1850-01-01" + oneItem, "50 years"},
		{"too many", "title = \"a\"" + strings.Repeat("\n[[item]]\nkind = \"read-dial\"\ncount = 100", 3), "line 10, column 1: count: with this item a form has 300 items"},
		{"a kind that cannot be met", "title = \"a\"\n[[item]]\nkind = \"apparent-dip\"\ndips = [89.2, 89.8]", "line 2, column 3: apparent-dip:"},
	} {
		_, err := ReadBlueprint(strings.NewReader(c.text))
		if !errors.Is(err, ErrBlueprint) || !strings.Contains(err.Error(), c.want) || len(err.Error()) > 3000 {
			t.Errorf("%s: got %v, want %q", c.name, err, c.want)
		}
	}
}

func TestWhatABlueprintMeans(t *testing.T) {
	b, err := ReadBlueprint(strings.NewReader("\uFEFFtitle = \"a\"\r\nnotation = \"quadrant\"\r\n[tolerance]\r\ndip = 4\r\n" +
		"[[item]]\r\nkind = \"read-dial\"\r\n[[item]]\r\nkind = \"read-arc\"\r\nnotation = \"pole\"\r\ntolerance = { reading = 1.1 }\r\n"))
	if err != nil {
		t.Fatal(err)
	}
	first, second := b.Parts[0], b.Parts[1]
	tolerance := quiz.DefaultTolerance
	tolerance.Dip = 4 * orient.Degree
	if first.Count != 1 || first.Points != 1 || first.Attempts != 1 || first.Spec.Notation != orient.Quadrant || first.Spec.Tolerance != tolerance {
		t.Errorf("got %+v", first)
	}
	if second.Spec.Notation != orient.PoleNotation || second.Spec.Tolerance.Reading != 1.1*orient.Degree || second.Spec.Tolerance.Dip != 4*orient.Degree {
		t.Errorf("got %+v", second)
	}
}

// World Magnetic Model 2025, technical report, first test row: 2025.0, latitude
// 80, longitude 0, height 0 gives D 1.28° and H 6523.2 nT.
func TestThePlaceGivesTheField(t *testing.T) {
	b, err := ReadBlueprint(strings.NewReader("title = \"a\"\n[place]\nsite = \"80,0,0\"\ndate = 2025.0\ndeclination = \"student\"" + oneItem))
	if err != nil {
		t.Fatal(err)
	}
	f := b.Parts[0].Spec.Field
	if d := f.Declination.Degrees() - 1.28; d > 0.005 || d < -0.005 {
		t.Errorf("declination %v, want 1.28", f.Declination.Degrees())
	}
	if h := f.Horizontal*1e9 - 6523.2; h > 0.05 || h < -0.05 {
		t.Errorf("horizontal %v nT, want 6523.2", f.Horizontal*1e9)
	}
	if b.RingPreset || b.Parts[0].Spec.RingPreset || b.Parts[0].Spec.Declination != f.Declination {
		t.Errorf("got %+v", b.Parts[0].Spec)
	}
}

func FuzzReadBlueprint(f *testing.F) {
	f.Add(Example())
	f.Add("title = \"a\"" + oneItem)
	f.Add("[[item]]\n[item.tolerance]\na.b.c = {d = [1, {e = 2}]}")
	f.Fuzz(func(t *testing.T, text string) {
		b, err := ReadBlueprint(strings.NewReader(text))
		if err != nil {
			if len(said(t, err)) == 0 {
				t.Error("an error without a problem")
			}
			return
		}
		var out strings.Builder
		if err := b.Write(&out); err != nil {
			t.Fatal(err)
		}
		again, err := ReadBlueprint(strings.NewReader(out.String()))
		if err != nil || !reflect.DeepEqual(again, b) {
			t.Errorf("got %+v, %v; want %+v; written as\n%s", again, err, b, out.String())
		}
	})
}

func ExampleReadBlueprint() {
	_, err := ReadBlueprint(strings.NewReader(`title = "First quiz"
[[item]]
kind = "read-dail"
point = 2
`))
	var wrong *Wrong
	if errors.As(err, &wrong) {
		for _, p := range wrong.Problems {
			fmt.Println(p)
		}
	}
	// Output:
	// line 3, column 1: kind: read "read-dail"; perhaps "read-dial" was meant
	// line 4, column 1: read the key "point", which is not known here; perhaps points was meant
}

func TestTheShareOfTheSideIsReadStrictly(t *testing.T) {
	for text, want := range map[string]float64{"": 0, "side = 0.25": 0, "side = 0.4": 0.4, "side = 0.5": 0.5} {
		b, err := ReadBlueprint(strings.NewReader("title = \"Side\"\n[tolerance]\n" + text + oneItem))
		if err != nil || b.Tolerance.Side != want {
			t.Errorf("%q: got %g, %v, want %g", text, b.Tolerance.Side, err, want)
		}
	}
	for _, text := range []string{"side = 0", "side = 0.6", "side = -1", `side = "half"`} {
		_, err := ReadBlueprint(strings.NewReader("title = \"Side\"\n[tolerance]\n" + text + oneItem))
		if got := said(t, err); len(got) != 1 || !strings.HasPrefix(got[0], "line 3, column 1: side: read") {
			t.Errorf("%q: got %q, want one problem with the side", text, got)
		}
	}
}

// An item may hold another share than the quiz, and both come back from a file.
func TestTheShareOfTheSideComesBack(t *testing.T) {
	b, err := ReadBlueprint(strings.NewReader("title = \"Side\"\n[tolerance]\nside = 0.4" + oneItem + "[item.tolerance]\nside = 0.25\n"))
	if err != nil {
		t.Fatal(err)
	}
	if got := b.Parts[0].Spec.Tolerance.Side; got != 0 {
		t.Errorf("got %g for the item, want the usual share, 0", got)
	}
	d := dealt(t, b, roster(1), 1)
	var text bytes.Buffer
	if err := d.Forms[0].Encode(&text); err != nil {
		t.Fatal(err)
	}
	back, err := DecodeForm(&text)
	if err != nil || back.Blueprint.Tolerance.Side != 0.4 || back.Part(0).Spec.Tolerance.Side != 0 {
		t.Errorf("got %g and %g, %v, want 0.4 and 0", back.Blueprint.Tolerance.Side, back.Part(0).Spec.Tolerance.Side, err)
	}
}
