package main

import (
	"bytes"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strconv"
	"strings"

	"github.com/spf13/cobra"

	"cuesta/quiz/form"
	"cuesta/quiz/paper"
	"cuesta/scenes/draw"
)

type printer struct {
	env
	roster, folder, seed string
	key                  string
	versions             int
	sheet                paper.Sheet
	force                bool
}

func printCommand(e env) *cobra.Command {
	p := &printer{env: e}
	cmd := &cobra.Command{
		Use:   "print [--roster ROSTER.csv | --versions N] --out DIR BLUEPRINT.toml",
		Short: "The quiz on paper, with its key and a marking sheet",
		Long: "Prints a form for every student of the roster, or N versions to hand out as they\n" +
			"come, into DIR/forms.pdf; the answer key and a marking sheet into DIR/key. The\n" +
			"same blueprint, roster and seed give the same files, and the same questions as\n" +
			"cuesta deal. Part of a roster gets other questions than the whole: to print forms\n" +
			"that were dealt, for all or for some, name their key with --key. Items that are measured at the bench become a table to fill in at a\n" +
			"real slab: measure that one yourself beforehand.",
		Example: "  cuesta print --versions 4 --out sheets quiz.toml\n" +
			"  cuesta print --roster class.csv --paper letter --out sheets quiz.toml\n" +
			"  cuesta print --key forms/key/key.json --roster some.csv --out sheets",
		Args: p.words,
		RunE: func(_ *cobra.Command, files []string) error { return p.run(files) },
	}
	f := cmd.Flags()
	f.StringVar(&p.roster, "roster", "", "the students, a CSV file: a form for each")
	f.StringVar(&p.key, "key", "", "the key to forms that were dealt, key/key.json: print these")
	f.IntVar(&p.versions, "versions", 0, "how many versions to print, where there is no roster (1)")
	f.Var(choose(&p.sheet, named[paper.Sheet]{"a4", paper.A4}, named[paper.Sheet]{"letter", paper.Letter}), "paper", "the size of the sheets")
	f.StringVar(&p.folder, "out", "", "folder for the sheets and the key")
	f.StringVar(&p.seed, "seed", "", "whole number that all is drawn from (that of the blueprint)")
	f.BoolVar(&p.force, "force", false, "replace files that are there")
	return cmd
}

// mostVersions keeps a slip of the finger from printing for hours.
const mostVersions = 500

func (p *printer) words(cmd *cobra.Command, files []string) error {
	asked := cmd.Flags().Changed("versions")
	switch {
	case p.key != "" && (len(files) > 0 || asked || p.seed != ""):
		return misreadf("--key prints forms as they were dealt; write no blueprint, --versions or --seed beside it")
	case p.key == "" && len(files) != 1:
		return misreadf("read %d blueprints; name one, such as cuesta print --versions 4 --out sheets quiz.toml (cuesta deal --example prints one)", len(files))
	case asked && p.roster != "":
		return misreadf("read --roster and --versions; a roster gives each student a form, versions are for none in particular: write one of them")
	case asked && (p.versions < 1 || p.versions > mostVersions):
		return misreadf("--versions read %d; write a number from 1 to %d", p.versions, mostVersions)
	case p.folder == "":
		return misreadf("read no folder for the sheets; write --out and its name")
	}
	return nil
}

func (p *printer) run(files []string) error {
	forms := p.drawn
	if p.key != "" {
		forms = func([]string) ([]form.Form, error) { return p.dealt() }
	}
	all, err := forms(files)
	if err != nil {
		return err
	}
	return p.write(all)
}

// drawn deals the forms anew.
func (p *printer) drawn(files []string) ([]form.Form, error) {
	b, err := readFile(p.env, files[0], form.ReadBlueprint)
	if err != nil {
		return nil, err
	}
	if p.seed != "" {
		if b.Seed, err = p.seedOf(); err != nil {
			return nil, err
		}
	}
	students := paper.Versions(max(1, p.versions))
	if p.roster != "" {
		if students, err = readFile(p.env, p.roster, form.ReadRoster); err != nil {
			return nil, err
		}
	}
	if err := p.free(); err != nil {
		return nil, err
	}
	p.tellUnprinted(students)
	dealing, err := form.Deal(b, students, form.Options{Seed: b.Seed, Progress: progress(p.err, "dealt")})
	return dealing.Forms, err
}

// dealt are the forms of the key, or those of the students on the roster.
func (p *printer) dealt() ([]form.Form, error) {
	k, err := readFile(p.env, p.key, form.DecodeKey)
	if err != nil {
		return nil, err
	}
	forms := k.Dealt()
	if p.roster != "" {
		students, err := readFile(p.env, p.roster, form.ReadRoster)
		if err != nil {
			return nil, err
		}
		if forms, err = formsOf(students, forms, p.key); err != nil {
			return nil, err
		}
	}
	students := make([]form.Student, len(forms))
	for i, f := range forms {
		students[i] = f.Student
	}
	p.tellUnprinted(students)
	return forms, p.free()
}

// formsOf are the forms of students, in their order.
func formsOf(students []form.Student, forms []form.Form, key string) ([]form.Form, error) {
	at := make(map[string]form.Form, len(forms))
	for _, f := range forms {
		at[f.Student.ID] = f
	}
	var out []form.Form
	for _, s := range students {
		f, ok := at[s.ID]
		if !ok {
			return nil, misreadf("the key %s holds no form for %s; cuesta deal --add deals one", key, s.ID)
		}
		out = append(out, f)
	}
	return out, nil
}

// tellUnprinted names who has signs in the name that the sheets have no letters
// for, and how the sheets name them.
func (p *printer) tellUnprinted(students []form.Student) {
	for _, s := range students {
		p.tellSigns(s.ID+", "+s.Name, s.Name, paper.Owner(s))
	}
}

func (p *printer) tellSigns(what, text, printed string) {
	if signs := draw.Unprinted(text); len(signs) > 0 {
		fmt.Fprintf(p.err, "%s: the sheets have no letters for %s; they say %s\n", what, strings.Join(strings.Split(string(signs), ""), " "), printed)
	}
}

func (p *printer) seedOf() (uint64, error) {
	n, err := strconv.ParseUint(p.seed, 10, 64)
	if err != nil || n > mostSeed {
		return 0, misreadf("--seed read %q; write a whole number from 0 to %d, such as --seed 7", p.seed, uint64(mostSeed))
	}
	return n, nil
}

// printed is one file of the sheets.
type printed struct {
	name string
	set  func([]form.Form, paper.Sheet) ([]byte, error)
}

var sheets = []printed{
	{"forms.pdf", paper.Forms},
	{filepath.Join(keyFolder, "answers.pdf"), paper.Key},
	{filepath.Join(keyFolder, "marking.pdf"), paper.Marking},
}

// free says before the work begins whether a file stands in the way.
func (p *printer) free() error {
	if info, err := os.Stat(p.folder); err == nil && !info.IsDir() {
		return misreadf("--out %s is a file; name a folder", p.folder)
	}
	for _, s := range sheets {
		path := filepath.Join(p.folder, s.name)
		if _, err := os.Lstat(path); err == nil && !p.force {
			return alreadyThere(path)
		}
	}
	return nil
}

// write sets every sheet before it writes the first.
func (p *printer) write(forms []form.Form) error {
	for _, text := range []string{forms[0].Blueprint.Title, forms[0].Blueprint.Place} {
		p.tellSigns(text, text, draw.Printed(text))
	}
	files := make([][]byte, len(sheets))
	for i, s := range sheets {
		var err error
		if files[i], err = s.set(forms, p.sheet); err != nil {
			return err
		}
	}
	if err := os.MkdirAll(p.folder, 0o755); err != nil {
		return err
	}
	if err := os.MkdirAll(filepath.Join(p.folder, keyFolder), 0o700); err != nil {
		return err
	}
	for i, s := range sheets {
		fill := func(w io.Writer) error { _, err := io.Copy(w, bytes.NewReader(files[i])); return err }
		if err := writeWhole(filepath.Join(p.folder, s.name), p.force, fill); err != nil {
			return err
		}
	}
	p.tellPlace(forms[0])
	if p.key == "" && p.roster != "" {
		fmt.Fprintln(p.out, "The questions hang on the whole roster: for part of it, or after a change, print the forms that were dealt with --key.")
	}
	if _, err := fmt.Fprintf(p.out, "%s in %s; the answer key and a marking sheet in %s, to be kept apart.\n",
		counted(len(forms), "form"), filepath.Join(p.folder, sheets[0].name), filepath.Join(p.folder, keyFolder)); err != nil {
		return err
	}
	_, err := io.WriteString(p.out, p.nameless())
	return err
}

// nameless says that forms without a roster are for nobody in particular.
func (p *printer) nameless() string {
	switch {
	case p.key != "" || p.roster != "":
		return ""
	case p.versions > 1:
		return "No form bears a name: --roster prints one for each student.\n"
	}
	return "No form bears a name: --roster prints one for each student, --versions N more of these.\n"
}

// tellPlace says whose declination stands on sheets with slabs to be measured,
// which lie in a room and not at the place of the blueprint.
func (p *printer) tellPlace(f form.Form) {
	if place, declination, ok := paper.SlabDeclination(f); ok {
		fmt.Fprintf(p.err, "the sheets give the declination of %s, %s, for the slabs to be measured too: where these stand elsewhere, write the site of their room under [place]\n", place, declination)
	}
}
