package main

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"cuesta/quiz/form"
	"cuesta/quiz/grade"
	"cuesta/quiz/gradebook"
	"cuesta/scenes/draw/pdf"
)

type grader struct {
	env
	roster    string
	blueprint string
	stations  string
	key       string
	out       string
	report    string
	json      bool
	force     bool

	spreadsheet bool // the table of grades is for a spreadsheet
}

func gradeCommand(e env) *cobra.Command {
	g := &grader{env: e}
	cmd := &cobra.Command{
		Use:   "grade [flags] SUBMISSION...",
		Short: "Mark submissions, with reasons, and report on the class",
		Long: "Marks submissions and writes the grades of the class as CSV, to standard output\n" +
			"or with --out to a file. A SUBMISSION is a file that cuesta take leaves, or a\n" +
			"folder that holds such files. Recordings of the bench are run again; what does\n" +
			"not fit is reported and takes no points off.\n\n" +
			"--report writes a folder: the grades, a page of feedback for each student, and\n" +
			"a report on the class as a page and as PDF. With --force pages of students who are\n" +
			"not in this marking go, unless somebody changed them; no other file is removed.\n\n" +
			"--blueprint marks once more by another blueprint: its tolerances, points, costs\n" +
			"of hints and pass mark. What was asked stays as it was dealt.\n\n" +
			"--stations marks what cuesta lab left: no submission says how the slabs lie. What\n" +
			"a student left at several machines, in several folders, is put together first.\n\n" +
			"A file that cannot be read is named with the reason and the others are marked;\n" +
			"the exit status is then 1.",
		Example: "  cuesta grade submissions/\n" +
			"  cuesta grade --roster roster.csv --out grades.csv --report report submissions/\n" +
			"  cuesta grade --stations stations.toml --report report tablet-1/ tablet-2/\n" +
			"  cuesta grade --blueprint kinder.toml --out regraded.csv submissions/",
		Args: someSubmissions,
		RunE: func(_ *cobra.Command, files []string) error { return g.run(files) },
	}
	f := cmd.Flags()
	f.StringVar(&g.roster, "roster", "", "the class (CSV), to list who is missing or a stranger")
	f.StringVar(&g.blueprint, "blueprint", "", "mark by this blueprint (TOML) instead of that of the forms")
	f.StringVar(&g.stations, "stations", "", "mark a lab by this file of stations (TOML), which holds the true values")
	f.StringVar(&g.key, "key", "", "the key that cuesta deal left (key.json), to find forms that were changed")
	f.StringVar(&g.out, "out", "", "write the grades (CSV) to this file")
	f.StringVar(&g.report, "report", "", "write grades, feedback and class report to this folder")
	f.BoolVar(&g.json, "json", false, "one JSON object a line: each student, then the class")
	f.BoolVar(&g.spreadsheet, "spreadsheet", false, "begin the grades with a byte-order mark, for a spreadsheet that garbles names without it")
	f.BoolVar(&g.force, "force", false, "replace files that are there already")
	return cmd
}

func someSubmissions(_ *cobra.Command, files []string) error {
	if len(files) == 0 {
		return misreadf("read no submission; name files or a folder, such as cuesta grade submissions/")
	}
	return nil
}

func (g *grader) run(files []string) error {
	sources, err := submissions(files)
	if err != nil {
		return err
	}
	var roster []form.Student
	if g.roster != "" {
		if roster, err = readFile(g.env, g.roster, form.ReadRoster); err != nil {
			return err
		}
	}
	changed, err := g.changed()
	if err != nil {
		return err
	}
	if g.stations != "" {
		sources = gathered(sources)
	}
	class := grade.NewClass(roster)
	if g.key != "" {
		k, err := readFile(g.env, g.key, form.DecodeKey)
		if err != nil {
			return err
		}
		class.HoldTo(k)
	}
	if g.out != "" {
		if err := writable(g.out, g.force); err != nil {
			return err
		}
	}
	return g.grade(sources, class, changed)
}

// changed is the blueprint to mark by, where it is not that of the forms.
func (g *grader) changed() (*form.Blueprint, error) {
	path, read := g.blueprint, form.ReadBlueprint
	switch {
	case g.blueprint != "" && g.stations != "":
		return nil, misreadf("read --blueprint and --stations; a lab is marked by its file of stations, a quiz by a blueprint: write one of them")
	case g.stations != "":
		path, read = g.stations, form.ReadStations
	case path == "":
		return nil, nil
	}
	b, err := readFile(g.env, path, read)
	if err == nil && g.stations != "" && !b.Keyed() {
		err = misreadf("--stations %s: this file does not say how the stations lie; name the one that does", path)
	}
	return &b, err
}

// submissions are the files named, and those in the folders named by their
// ending, each once.
func submissions(names []string) ([]grade.Source, error) {
	var paths []string
	for _, name := range names {
		info, err := os.Stat(name)
		switch {
		case errors.Is(err, fs.ErrNotExist):
			return nil, fmt.Errorf("%s: there is no such file or folder", name)
		case err != nil:
			return nil, err
		case !info.IsDir():
			paths = append(paths, name)
			continue
		}
		found, err := inFolder(name)
		if err != nil {
			return nil, err
		}
		if len(found) == 0 {
			return nil, misreadf("read the folder %s, which holds no file named *%s", name, form.SubmissionEnding)
		}
		paths = append(paths, found...)
	}
	seen := map[string]bool{}
	var out []grade.Source
	for _, p := range paths {
		if clean := filepath.Clean(p); !seen[clean] {
			seen[clean] = true
			out = append(out, grade.Source{Name: p, Open: func() (io.ReadCloser, error) { return openPlain(p) }})
		}
	}
	return out, nil
}

// openPlain opens a file that is a file: a pipe would never end.
func openPlain(path string) (io.ReadCloser, error) {
	info, err := os.Stat(path)
	switch {
	case err != nil:
		return nil, err
	case !info.Mode().IsRegular():
		return nil, errors.New("it is no plain file")
	}
	return os.Open(path)
}

func inFolder(dir string) ([]string, error) {
	var found []string
	err := filepath.WalkDir(dir, func(path string, d fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		if !d.IsDir() && (strings.HasSuffix(d.Name(), form.SubmissionEnding) || saysSubmission(path)) {
			found = append(found, path)
		}
		return nil
	})
	slices.Sort(found)
	return found, err
}

// saysSubmission looks into a file of another name for the words a submission
// begins with: mail and browsers rename what is handed in.
func saysSubmission(path string) bool {
	if !strings.HasSuffix(path, ".json") {
		return false
	}
	f, err := openPlain(path)
	if err != nil {
		return false
	}
	defer f.Close()
	var head [64]byte
	n, _ := io.ReadFull(f, head[:])
	_, kind, ok := strings.Cut(string(head[:n]), `"cuesta"`)
	return ok && strings.HasPrefix(strings.TrimLeft(kind, ": \t\r\n"), `"submission"`)
}

// grade marks all sources and writes what is asked for.
func (g *grader) grade(sources []grade.Source, class *grade.Class, changed *form.Blueprint) (err error) {
	var dir *folder
	if g.report != "" {
		if dir, err = newFolder(g.report, g.force); err != nil {
			return err
		}
		defer func() {
			if err != nil {
				dir.drop()
			}
		}()
	}
	n, tell := 0, progress(g.err, "marked")
	err = grade.Many(sources, changed, func(o grade.Outcome) error {
		n++
		tell(n, len(sources))
		if !class.Add(o) || dir == nil {
			return nil
		}
		return dir.write(feedbackName(o.Graded.Form.Student.ID), func(w io.Writer) error {
			return gradebook.WriteFeedback(w, o.Graded)
		})
	})
	if err != nil {
		return err
	}
	rep := class.Report()
	if len(rep.Results) == 0 { // nothing was marked: no file is to look as if it were
		return g.summary(rep, len(sources))
	}
	if err := g.write(rep, dir); err != nil {
		return err
	}
	return g.summary(rep, len(sources))
}

const feedbackFolder = "feedback"

func feedbackName(id string) string {
	return filepath.Join(feedbackFolder, gradebook.FeedbackName(id))
}

func (g *grader) write(rep grade.Report, dir *folder) error {
	grades := func(w io.Writer) error { return g.grades(w, rep) }
	if g.out != "" {
		if err := writeWhole(g.out, g.force, grades); err != nil {
			return err
		}
		fmt.Fprintf(g.err, "grades in %s\n", g.out)
	}
	if dir != nil {
		if err := g.writeReport(rep, dir, grades); err != nil {
			return err
		}
		fmt.Fprintf(g.err, "report in %s\n", filepath.Join(g.report, "report.html"))
	}
	switch {
	case g.json:
		return g.writeJSON(rep)
	case g.out == "" && dir == nil:
		return grades(g.env.out)
	}
	return nil
}

// grades writes the table of grades. Other programs take a byte-order mark for a
// part of the first name, so it stands there only when it is asked for.
func (g *grader) grades(w io.Writer, rep grade.Report) error {
	if g.spreadsheet {
		if _, err := io.WriteString(w, "\uFEFF"); err != nil {
			return err
		}
	}
	return gradebook.WriteGrades(w, rep)
}

func (g *grader) writeReport(rep grade.Report, dir *folder, grades func(io.Writer) error) error {
	for _, f := range []struct {
		name string
		fill func(io.Writer) error
	}{
		{"grades.csv", grades},
		{"report.html", func(w io.Writer) error { return gradebook.WriteReport(w, rep, feedbackFolder) }},
		{"report.pdf", func(w io.Writer) error { return gradebook.PrintReport(w, rep, pdf.A4) }},
	} {
		if err := dir.write(f.name, f.fill); err != nil {
			return err
		}
	}
	return g.keep(dir)
}

// keep puts the report in its place. Pages of feedback of an earlier marking that
// nobody has changed go, for their students are not in this one; what else lies
// there stays, and is named.
func (g *grader) keep(dir *folder) error {
	old, others, err := dir.stale(feedbackFolder, gradebook.IsFeedback)
	if err != nil {
		return err
	}
	if err := dir.keep(); err != nil {
		return err
	}
	for _, name := range old {
		if err := os.Remove(filepath.Join(g.report, name)); err != nil {
			return err
		}
	}
	g.tellStale("removed %s of students who are not in this marking: %s\n", "page of feedback", old)
	g.tellStale("left %s in "+filepath.Join(g.report, feedbackFolder)+" that this marking did not write: %s\n", "page", others)
	return nil
}

func (g *grader) tellStale(format, what string, names []string) {
	if len(names) == 0 {
		return
	}
	var base []string
	for i, n := range names {
		if i == mostTold {
			base = append(base, fmt.Sprintf("and %d more", len(names)-mostTold))
			break
		}
		base = append(base, filepath.Base(n))
	}
	fmt.Fprintf(g.err, format, counted(len(names), what), strings.Join(base, ", "))
}

// mostTold is how many refused files are named one by one.
const mostTold = 20

// summary tells in a few lines what came of it; refused files are an error.
func (g *grader) summary(rep grade.Report, of int) error {
	fmt.Fprintf(g.err, "%s marked\n", counted(len(rep.Results), "submission"))
	for _, l := range []struct {
		n    int
		what string
	}{
		{len(rep.Missing), "of the roster without a submission"},
		{len(rep.Doubles), "handed in more than once"},
		{gradebook.Remarked(rep), "with a remark"},
	} {
		if l.n > 0 {
			fmt.Fprintf(g.err, "%d %s\n", l.n, l.what)
		}
	}
	for i, r := range rep.Refused {
		if i == mostTold {
			fmt.Fprintf(g.err, "and %d more\n", len(rep.Refused)-mostTold)
			break
		}
		fmt.Fprintf(g.err, "refused %s: %s\n", r.Source, r.Reason)
	}
	if n := len(rep.Refused); n > 0 && len(rep.Results) == 0 {
		return fmt.Errorf("%d of %s refused, for the reasons above; nothing was marked", n, counted(of, "file"))
	} else if n > 0 {
		return fmt.Errorf("%d of %s refused, for the reasons above; the others are marked", n, counted(of, "file"))
	}
	return nil
}

func counted(n int, what string) string {
	if n == 1 {
		return "1 " + what
	}
	return fmt.Sprintf("%d %ss", n, what)
}
