package paper_test

import (
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"cuesta/quiz/form"
	"cuesta/quiz/paper"
	"cuesta/scenes/draw"
)

// Names in scripts of the world, each written as its people write it; that the
// printing face lacks all but Latin, Greek and Cyrillic is common practice.
func TestNamesWithoutLetters(t *testing.T) {
	for _, c := range []struct{ name, owner, unprinted string }{
		{"Ailbe Thornwick", "Ailbe Thornwick (a1)", ""},
		{"Íñigo Ståhlbäck-Łużycki", "Íñigo Ståhlbäck-Łużycki (a1)", ""},
		{"Ελένη Ωραία", "Ελένη Ωραία (a1)", ""},
		{"Юлия", "Юлия (a1)", ""},
		{"王小明", "a1", "王小明"},
		{"Ann 王王", "Ann (a1)", "王"},
		{"שירה", "a1", "שירה"},
		{"سارة Reed", "Reed (a1)", "سارة"},
		{"Bo\u200F Reed", "Bo Reed (a1)", ""},
		{"\U0001F9ED", "a1", "\U0001F9ED"},
		{"", "a1", ""},
	} {
		if got := string(draw.Unprinted(c.name)); got != c.unprinted {
			t.Errorf("%q: got %q without letters, want %q", c.name, got, c.unprinted)
		}
		if got := paper.Owner(form.Student{ID: "a1", Name: c.name}); got != c.owner {
			t.Errorf("%q: got %q on the sheet, want %q", c.name, got, c.owner)
		}
	}
}

// The sheet of a student whose name cannot be printed says whose it is all the
// same, and has no box.
func TestASheetWithoutBoxes(t *testing.T) {
	b, err := form.ReadBlueprint(strings.NewReader(form.Example()))
	if err != nil {
		t.Fatal(err)
	}
	d, err := form.Deal(b, []form.Student{{ID: "b07", Name: "王小明", ExtraTime: 1}}, form.Options{Seed: 1})
	if err != nil {
		t.Fatal(err)
	}
	for name, print := range map[string]func([]form.Form, paper.Sheet) ([]byte, error){"forms": paper.Forms, "key": paper.Key, "marking": paper.Marking} {
		text, err := print(d.Forms, paper.A4)
		if err != nil {
			t.Fatal(err)
		}
		path := filepath.Join(t.TempDir(), "x.pdf")
		if err := os.WriteFile(path, text, 0o600); err != nil {
			t.Fatal(err)
		}
		out, err := exec.Command("pdftotext", "-layout", path, "-").Output()
		if err != nil {
			t.Fatal(err)
		}
		if !strings.Contains(string(out), "b07") || strings.ContainsAny(string(out), "王小明\uFFFD") {
			t.Errorf("%s: got %q, want b07 and nothing that has no letters", name, strings.SplitN(string(out), "\n", 12)[:11])
		}
	}
}
