package form

import (
	"bytes"
	"errors"
	"reflect"
	"strings"
	"testing"

	"cuesta/orient"
	"cuesta/quiz/item"
)

const oneStation = "\n[[station]]\nname = \"A\"\nplane = \"035/30\"\n"

func TestEveryProblemOfStationsIsToldAtOnce(t *testing.T) {
	_, err := ReadStations(strings.NewReader(`notation = "quadrent"
readings = 0
counts = "median"
seed = 3
[place]
site = "60,9"
[tolerance]
dip = 50
[[station]]
name = "A B"
plane = "040/30 NE"
strike_uncertainty = -1
[[station]]
plane = 35
words = "two\nlines"
[[station]]
name = "x"
plane = "N35E 30SE"
dip_uncertainty = 21
nmae = "y"
[[station]]
name = "X"
points = 2000
dip_uncertainty = 1
`))
	want := []string{
		`there is no title`, `line 1, column 1: notation: read "quadrent"; perhaps "quadrant" was meant`,
		`line 2, column 1: readings: read 0; write a whole number from 1 to 20`,
		`line 3, column 1: counts: read "median"; perhaps "mean" was meant`,
		`line 4, column 1: read the key "seed", which is not known here; the keys are title`,
		`line 6, column 1: site: there is a site but no date`, `line 8, column 1: dip: read 50`,
		`line 10, column 1: name: read "A B"; write one word of at most 6 letters and figures`,
		`line 11, column 1: plane: `, `line 12, column 1: strike_uncertainty: read -1; write a number from 0 to 20`,
		`line 13, column 3: name: there is none`, `line 14, column 1: plane: read 35; write it in quotes`,
		`line 15, column 1: words: read "two\nlines"; write one line`,
		`line 19, column 1: dip_uncertainty: read 21`, `line 20, column 1: read the key "nmae", which is not known here; perhaps name was meant`,
		`line 21, column 3: station "X": it has an uncertainty but no plane`, `line 21, column 3: plane: there is none`,
		`line 22, column 1: name: read "X", which names another station too (x)`, `line 23, column 1: points: read 2000`,
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
	if !errors.Is(err, ErrStations) {
		t.Errorf("got %v, want ErrStations", err)
	}
}

func TestStationsThatAreRefused(t *testing.T) {
	for _, c := range []struct{ name, text, want string }{
		{"empty", "", "there is no title"},
		{"no stations", `title = "x"`, "there is no station"},
		{"no TOML", "title = ", "line 1, column"},
		{"station is no table", "title = \"a\"\nstation = 3", "station: every station starts with the line [[station]]"},
		{"UTF-16", "\xFF\xFEt\x00", "UTF-16"},
		{"Latin-1", "title = \"Gel\xE4nde\"", "line 1, column 13: read bytes that are not UTF-8"},
		{"long", strings.Repeat("#", LargestBlueprint+1), "a file of stations is a page or two"},
		{"strike alone", "title = \"a\"\n[[station]]\nname = \"A\"\nplane = \"035\"", "line 4, column 1: plane:"},
		{"too many", "title = \"a\"" + strings.Repeat(oneStation, 61), "at most 60"},
		{"a quiz", "title = \"a\"" + oneItem, "so this is a blueprint, which cuesta deal takes"},
	} {
		_, err := ReadStations(strings.NewReader(c.text))
		if !errors.Is(err, ErrStations) || !strings.Contains(err.Error(), c.want) || len(err.Error()) > 20_000 {
			t.Errorf("%s: got %v, want %q", c.name, err, c.want)
		}
	}
}

// TestALabIsNoBlueprint keeps files of one kind from being taken for another.
func TestALabIsNoBlueprint(t *testing.T) {
	_, err := ReadBlueprint(strings.NewReader("title = \"a\"\n[[item]]\nkind = \"lab-station\"\n"))
	if !errors.Is(err, ErrBlueprint) {
		t.Errorf("got %v, want ErrBlueprint", err)
	}
}

func TestWhatStationsMean(t *testing.T) {
	b, err := ReadStations(strings.NewReader("\uFEFFtitle = \"a\"\r\nnotation = \"direction\"\r\ncounts = \"mean\"\r\n" +
		"[[station]]\r\nname = 3\r\nplane = \"125/30\"\r\nstrike_uncertainty = 1.5\r\ndip_uncertainty = 0.5\r\nnote = \"n\"\r\npoints = 2\r\n" +
		"[[station]]\r\nname = \"B-2\"\r\nplane = \"215/30 SE\"\r\n"))
	if err != nil {
		t.Fatal(err)
	}
	three, two := b.Parts[0], b.Parts[1]
	if p := three.Spec.Station; p.Name != "3" || !p.Mean || p.Plane.Strike.String() != "035" || p.Strike != 1.5*orient.Degree || p.Dip != 0.5*orient.Degree || p.Note != "n" {
		t.Errorf("got %+v", p)
	}
	if p := two.Spec.Station; p.Name != "B-2" || p.Plane.Strike.String() != "035" || p.Strike != 0 {
		t.Errorf("got %+v", p)
	}
	if three.Points != 2 || two.Points != 1 || two.Attempts != 5 || two.Kind != LabStation || !b.Keyed() || b.PassShare != 0.5 || !b.Cautions {
		t.Errorf("got %+v", b)
	}
}

// TestFixedFormsComeBack writes and reads a form of a lab: its code holds, and
// how the stations lie is gone.
func TestFixedFormsComeBack(t *testing.T) {
	b, err := ReadStations(strings.NewReader("title = \"a\"\n[place]\nsite = \"60,9\"\ndate = 2026-09-14\n" + oneStation))
	if err != nil {
		t.Fatal(err)
	}
	f, err := b.Fixed(Student{ID: "a1"})
	if err != nil {
		t.Fatal(err)
	}
	var text bytes.Buffer
	if err := f.Encode(&text); err != nil {
		t.Fatal(err)
	}
	back, err := DecodeForm(&text)
	if err != nil {
		t.Fatal(err)
	}
	if back.Blueprint.Keyed() || !f.Blueprint.Keyed() {
		t.Error("the file knows how the stations lie, or the form in memory does not")
	}
	var blank bytes.Buffer
	if err := b.WriteBlind(&blank); err != nil {
		t.Fatal(err)
	}
	again, err := ReadStations(&blank)
	if err != nil {
		t.Fatal(err)
	}
	g, err := again.Fixed(Student{ID: "a1"})
	if err != nil || !reflect.DeepEqual(g, back) {
		t.Errorf("got %+v, %v, want %+v", g, err, back)
	}
}

// FuzzReadStations: whatever is read as a lab makes forms that come back, and
// whatever is not is refused with a *Wrong.
func FuzzReadStations(f *testing.F) {
	f.Add("title = \"a\"" + oneStation)
	f.Add("title = \"a\"\nnotation = \"pole\"\ncounts = \"mean\"\nreadings = 20\n[tolerance]\nreading = 0.1\n[[station]]\nname = 7\nplane = \"305/60\"\nstrike_uncertainty = 20\ndip_uncertainty = 20\n")
	f.Add("title = \"a\"\n[place]\nsite = \"-60,9,100\"\ndate = 2026.7\ndeclination = \"student\"\n[[station]]\nname = \"ä\"\nwords = \"\\\"\"\n")
	f.Add("[[station]]\nname = 1e400\nplane = nan\n")
	f.Fuzz(func(t *testing.T, text string) {
		b, err := ReadStations(strings.NewReader(text))
		if err != nil {
			var w *Wrong
			if !errors.As(err, &w) || len(w.Problems) == 0 {
				t.Fatalf("got %v, want a *Wrong", err)
			}
			return
		}
		form, err := b.Fixed(Student{ID: "a1"})
		if err != nil {
			t.Fatal(err)
		}
		if _, err := form.All(); err != nil {
			t.Fatal(err)
		}
		var file bytes.Buffer
		if err := form.Encode(&file); err != nil {
			t.Fatal(err)
		}
		if _, err := DecodeForm(&file); err != nil {
			t.Fatal(err)
		}
		var blank bytes.Buffer
		if err := b.WriteBlind(&blank); err != nil {
			t.Fatal(err)
		}
		again, err := ReadStations(&blank)
		if err != nil {
			t.Fatal(err)
		}
		if g, err := again.Fixed(Student{ID: "a1"}); err != nil || g.Code != form.Code {
			t.Fatalf("the copy for the room has code %s, %v, want %s", g.Code, err, form.Code)
		}
	})
}

// A lab holds other surfaces than bedding, from a closed list.
func TestASurfaceIsOneOfTheTrade(t *testing.T) {
	lab := func(lines string) string { return "title = \"a\"\n[[station]]\nname = \"A\"\n" + lines }
	for line, want := range map[string]item.Surface{
		"": item.Bedding, "surface = \"joint\"\n": item.Joint, "surface = \"fault\"\n": item.Fault, "surface = \"slab\"\n": item.BareSlab,
	} {
		b, err := ReadStations(strings.NewReader(lab(line + "plane = \"035/30\"\n")))
		if err != nil || b.Parts[0].Spec.Station.Surface != want {
			t.Errorf("%q: got %v, %v, want %v", line, b.Parts, err, want)
			continue
		}
		var blind bytes.Buffer
		if err := b.WriteBlind(&blind); err != nil {
			t.Fatal(err)
		}
		if c, err := ReadStations(&blind); err != nil || c.Parts[0].Spec.Station.Surface != want {
			t.Errorf("%q: the copy for the room says %v, %v, want %v", line, c.Parts, err, want)
		}
	}
	for lines, want := range map[string]string{
		"surface = \"foliaton\"\nplane = \"035/30\"\n":         `line 4, column 1: surface: read "foliaton"; perhaps "foliation" was meant`,
		"surface = \"table\"\nplane = \"035/30\"\n":            `line 4, column 1: surface: read "table"; write one of bedding, joint, cleavage, foliation, fault, slab`,
		"surface = 3\nplane = \"035/30\"\n":                    `line 4, column 1: surface: read 3; write one of bedding`,
		"surface = \"joint\"\nplane = \"035/30 overturned\"\n": `line 5, column 1: plane: a joint has no way up; leave out "overturned"`,
	} {
		_, err := ReadStations(strings.NewReader(lab(lines)))
		if got := said(t, err); len(got) != 1 || !strings.HasPrefix(got[0], want) {
			t.Errorf("got %q, want %q", got, want)
		}
	}
}
