package main

import (
	"bufio"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"

	"github.com/spf13/cobra"

	"cuesta/quiz/written"
	"cuesta/scenes/draw/pdf"
	"cuesta/scenes/lesson"
	"cuesta/scenes/spoken/telling"
)

// teacher gives a lesson line by line, or prints what its presenter needs.
type teacher struct {
	env
	notes         string // file for the presenter's notes
	sheet         pdf.Size
	example       bool
	force, object bool
}

func lessonCommand(e env) *cobra.Command {
	t := &teacher{env: e}
	cmd := &cobra.Command{
		Use:        "lesson [NAME | FILE.toml]",
		SuggestFor: []string{"lecture", "lectures"},
		Short:      "A lesson, line by line, and the notes of its presenter",
		Long: "Without a name it lists the lessons that come with the program. With one, or with\n" +
			"a file of your own, it gives the lesson in words: Enter or next goes on, back goes\n" +
			"back, reveal shows the answer to a question, every line of the spoken bench works\n" +
			"the instrument, and return puts it back as the step left it. The line help lists\n" +
			"the lines. On a screen the same lesson is shown by cuesta open lecture.\n\n" +
			"--notes prints what the presenter may say and ask, with a picture of each step.",
		Example: "  cuesta lesson\n" +
			"  cuesta lesson two-readings\n" +
			"  cuesta lesson two-readings --notes notes.pdf\n" +
			"  cuesta lesson --example > mine.toml",
		Args: t.words,
		RunE: func(_ *cobra.Command, names []string) error { return t.run(names) },
	}
	f := cmd.Flags()
	f.StringVar(&t.notes, "notes", "", "print the presenter's notes into this PDF file instead")
	f.Var(choose(&t.sheet, named[pdf.Size]{"a4", pdf.A4}, named[pdf.Size]{"letter", pdf.Letter}), "paper", "the size of the sheets")
	f.BoolVar(&t.example, "example", false, "print a lesson file with remarks, to start from")
	f.BoolVar(&t.force, "force", false, "replace a file that is there")
	f.BoolVar(&t.object, "json", false, "one JSON object a line")
	return cmd
}

func (t *teacher) words(cmd *cobra.Command, names []string) error {
	switch {
	case len(names) > 1:
		return misreadf("read %d lessons; name one, such as cuesta lesson two-readings", len(names))
	case t.example && (len(names) > 0 || t.notes != "" || t.object):
		return misreadf("read something beside --example; it stands alone")
	case t.notes != "" && len(names) == 0:
		return misreadf("read --notes but no lesson; name one, such as cuesta lesson two-readings --notes %s", t.notes)
	case t.notes != "" && t.object:
		return misreadf("read --notes and --json; the notes are a PDF file: leave one of the two out")
	case t.notes == "" && (cmd.Flags().Changed("paper") || t.force):
		return misreadf("read --paper or --force but no --notes; they are for the file of the notes")
	}
	return nil
}

func (t *teacher) run(names []string) error {
	switch {
	case t.example:
		_, err := io.WriteString(t.out, lesson.Words())
		return err
	case len(names) == 0:
		return t.list()
	}
	l, err := t.read(names[0])
	if err != nil {
		return err
	}
	if t.notes != "" {
		return t.print(l)
	}
	return t.teach(l)
}

// listed is a lesson as programs read the list.
type listed struct {
	Name    string `json:"name"`
	Title   string `json:"title"`
	Summary string `json:"summary"`
	Minutes int    `json:"minutes"`
	Steps   int    `json:"steps"`
}

// list tells the lessons that come with the program.
func (t *teacher) list() error {
	if t.object {
		out := json.NewEncoder(t.out)
		for _, l := range lesson.Shipped() {
			if err := out.Encode(listed{l.Name, l.Title, l.Summary, l.Minutes, len(l.Steps)}); err != nil {
				return err
			}
		}
		return nil
	}
	for _, l := range lesson.Shipped() {
		if _, err := fmt.Fprintf(t.out, "%-21s %s, %d minutes\n", l.Name, l.Title, l.Minutes); err != nil {
			return err
		}
	}
	return nil
}

// read finds a lesson by its name, or in a file.
func (t *teacher) read(name string) (lesson.Lesson, error) {
	if l, ok := lesson.Named(name); ok {
		return l, nil
	}
	text, err := readAtMost(name, lesson.Largest)
	switch {
	case errors.Is(err, os.ErrNotExist) && !strings.ContainsAny(name, `/\.`):
		return lesson.Lesson{}, misreadf("read %q, which is no lesson; write one of %s, or a file", name, strings.Join(lessonNames(), ", "))
	case err != nil:
		return lesson.Lesson{}, err
	}
	base := filepath.Base(name)
	l, err := lesson.Parse(strings.TrimSuffix(base, filepath.Ext(base)), text)
	return l, t.problems(name, err)
}

func lessonNames() []string {
	var names []string
	for _, l := range lesson.Shipped() {
		names = append(names, l.Name)
	}
	return names
}

// readAtMost reads a file that need not be looked at further when it is longer.
func readAtMost(path string, most int64) ([]byte, error) {
	f, err := os.Open(path)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	if info, err := f.Stat(); err == nil && info.IsDir() {
		return nil, misreadf("%s is a folder; name a file in it", path)
	}
	return io.ReadAll(io.LimitReader(f, most+1))
}

// problems tells what is wrong with a file, one line for each problem.
func (t *teacher) problems(path string, err error) error {
	var wrong *written.Wrong
	switch {
	case !errors.As(err, &wrong):
		return err
	case len(wrong.Problems) == 1:
		return wrongWords{fmt.Errorf("%s: %w", path, err)}
	}
	for _, p := range wrong.Problems {
		fmt.Fprintf(t.err, "%s: %s\n", path, oneLine(p.String()))
	}
	return misreadf("%s: %w; %d problems, told above", path, wrong.Err, len(wrong.Problems))
}

// teach gives a lesson until its end is left or the input ends.
func (t *teacher) teach(l lesson.Lesson) error {
	p, err := lesson.NewPlayer(l)
	if err != nil {
		return wrongWords{err}
	}
	s := telling.New(p, telling.Options{Out: t.out, Remarks: t.err, Object: t.object, Painter: picture})
	s.Welcome()
	in, stop := untilInterrupt(t.in)
	defer stop()
	return give(s, in)
}

// give takes the lines of a lesson. An empty one is Enter; the end of the input
// is none.
func give(s *telling.Telling, in io.Reader) error {
	lines := bufio.NewReaderSize(in, 1<<12)
	for !s.Ended() && s.Err() == nil {
		text, err := boundedLine(lines)
		switch {
		case err != nil && !errors.Is(err, io.EOF):
			return err
		case err != nil && text == "":
			return s.Err()
		}
		s.Line(text)
	}
	return s.Err()
}
