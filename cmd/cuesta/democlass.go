package main

import (
	"bytes"
	"fmt"
	"io"
	"path/filepath"
	"strconv"

	"github.com/spf13/cobra"

	"cuesta/assets"
	"cuesta/quiz/form"
	"cuesta/quiz/learner"
)

// demo makes the whole life of a quiz with an invented class.
type demo struct {
	env
	students, seed string
	force          bool
}

func demoClassCommand(e env) *cobra.Command {
	d := &demo{env: e}
	cmd := &cobra.Command{
		Use:   "demo-class DIR",
		Short: "An invented class, from roster to report",
		Long: "Writes a folder with a roster and a blueprint of an invented field school, deals\n" +
			"the forms, lets simulated students sit them, marks what they hand in, and reports\n" +
			"on the class, and on a lab with slabs that its first thirty students measure. Every\n" +
			"step is one that an instructor takes with the commands deal, take, lab and grade;\n" +
			"the students are as invented as their answers. With the same seed it is the same\n" +
			"class again.",
		Example: "  cuesta demo-class tarn-fell\n" +
			"  cuesta demo-class --students 120 --seed 7 big-class",
		Args: func(_ *cobra.Command, words []string) error {
			if len(words) != 1 {
				return misreadf("read %d folders; name one, such as cuesta demo-class tarn-fell", len(words))
			}
			return nil
		},
		RunE: func(_ *cobra.Command, words []string) error { return d.run(words[0]) },
	}
	f := cmd.Flags()
	f.StringVar(&d.students, "students", "", "how many students; other names are invented for a larger class (those of the roster)")
	f.StringVar(&d.seed, "seed", "", "whole number that forms and answers are drawn from (that of the blueprint)")
	f.BoolVar(&d.force, "force", false, "replace files that are there")
	return cmd
}

// Names of the files and folders.
const (
	demoBlueprint   = "blueprint.toml"
	demoRoster      = "roster.csv"
	demoForms       = "forms"
	demoSubmissions = "submissions"
	demoGrades      = "grades.csv"
	demoReport      = "report"
)

func (d *demo) run(dir string) error {
	b, err := form.ReadBlueprint(bytes.NewReader(assets.CourseBlueprint))
	if err != nil {
		return err
	}
	if b.Seed, err = (&dealer{seed: d.seed}).seedOf(b); err != nil {
		return err
	}
	roster, err := d.roster()
	if err != nil {
		return err
	}
	names, err := d.make(dir, b, roster)
	if err != nil {
		return err
	}
	if err := d.grade(dir, names); err != nil {
		return err
	}
	if err := d.gradeLab(dir); err != nil {
		return err
	}
	return d.tell(dir)
}

// make writes all but the marks.
func (d *demo) make(dir string, b form.Blueprint, roster []form.Student) (names []string, err error) {
	to, err := newFolder(dir, d.force)
	if err != nil {
		return nil, err
	}
	defer func() {
		if err != nil {
			to.drop()
		}
	}()
	if err := to.write(demoBlueprint, text(assets.CourseBlueprint)); err != nil {
		return nil, err
	}
	if err := to.write(demoRoster, func(w io.Writer) error { return writeRoster(w, roster) }); err != nil {
		return nil, err
	}
	dealing, err := form.Deal(b, roster, form.Options{Seed: b.Seed, Progress: progress(d.err, "dealt")})
	if err != nil {
		return nil, err
	}
	if err := d.forms(to, dealing); err != nil {
		return nil, err
	}
	if names, err = d.sit(to, dealing.Forms, b.Seed); err != nil {
		return nil, err
	}
	if err = d.measureSlabs(to, roster, b.Seed); err != nil {
		return nil, err
	}
	return names, to.keep()
}

func text(b []byte) func(io.Writer) error {
	return func(w io.Writer) error {
		_, err := w.Write(b)
		return err
	}
}

// forms writes the forms and the key.
func (d *demo) forms(to *folder, dealing form.Dealing) error {
	if err := to.below(demoForms); err != nil {
		return err
	}
	_, err := (&dealer{env: d.env}).stage(filepath.Join(to.temp, demoForms), dealing)
	return err
}

// grade marks as the command does.
func (d *demo) grade(dir string, names []string) error {
	g := &grader{
		env: d.env, roster: filepath.Join(dir, demoRoster), force: d.force,
		out: filepath.Join(dir, demoGrades), report: filepath.Join(dir, demoReport),
	}
	files := make([]string, len(names))
	for i, n := range names {
		files[i] = filepath.Join(dir, n)
	}
	return g.run(files)
}

func (d *demo) tell(dir string) error {
	_, err := fmt.Fprintf(d.out, "An invented class in %s:\n"+
		"  %-16s the quiz\n  %-16s the students\n  %-16s what each was dealt, and the key\n"+
		"  %-16s what simulated students handed in\n  %-16s the marks\n  %-16s begin with report.html\n"+
		"  %-16s the same students at slabs in a room: stations, readings, marks and report\n",
		dir, demoBlueprint, demoRoster, demoForms, demoSubmissions, demoGrades, demoReport, demoLab)
	return err
}

// roster is the one that ships, or a larger or smaller one.
func (d *demo) roster() ([]form.Student, error) {
	own, err := form.ReadRoster(bytes.NewReader(assets.CourseRoster))
	if err != nil || d.students == "" {
		return own, err
	}
	n, err := strconv.Atoi(d.students)
	if err != nil || n < 2 || n > form.MostStudents {
		return nil, misreadf("--students read %q; write a whole number from 2 to %d, such as --students 120", d.students, form.MostStudents)
	}
	if n <= len(own) {
		return own[:n], nil
	}
	return learner.Roster(own, n), nil
}
