package main

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"time"

	"github.com/spf13/cobra"

	"cuesta/quiz/form"
	"cuesta/quiz/sitting"
	"cuesta/scenes/spoken/taking"
)

type taker struct {
	env
	file  string // the submission
	force bool
	now   func() string // RFC 3339
}

func takeCommand(e env) *cobra.Command {
	t := &taker{env: e, now: func() string { return time.Now().UTC().Format(time.RFC3339) }}
	cmd := &cobra.Command{
		Use:   "take FORM",
		Short: "Answer a form line by line",
		Long: "Answers a form line by line on standard input. Every entry is safe on the disk\n" +
			"before it is confirmed: after a crash, or quit, the same command goes on where it\n" +
			"stopped. The line finish writes the submission, ID.submission.json, beside the\n" +
			"form; that file goes back to the instructor. The line help lists the lines.",
		Example: "  cuesta take tf01.form.json",
		Args:    oneForm,
		RunE:    func(_ *cobra.Command, files []string) error { return t.run(files[0]) },
	}
	cmd.Flags().StringVar(&t.file, "out", "", "file for the submission (ID.submission.json beside the form)")
	cmd.Flags().BoolVar(&t.force, "force", false, "answer a form anew that was handed in, and replace its submission")
	return cmd
}

func oneForm(_ *cobra.Command, files []string) error {
	if len(files) != 1 {
		return misreadf("read %d files; name one form, such as cuesta take tf01.form.json", len(files))
	}
	return nil
}

func (t *taker) run(path string) error {
	f, err := readFile(t.env, path, form.DecodeForm)
	if err != nil {
		return err
	}
	if t.file == "" {
		t.file = strings.TrimSuffix(path, form.FormEnding)
		t.file = strings.TrimSuffix(t.file, ".json") + form.SubmissionEnding
	}
	if err := t.mayAnswer(f); err != nil {
		return err
	}
	j, err := t.open(f)
	if err != nil {
		return t.noJournal(err)
	}
	defer j.Close()
	p := t.taking(j)
	if err := t.answer(p, j); err != nil {
		return err
	}
	if !j.Finished() {
		_, err := fmt.Fprintf(t.out, "Not handed in yet: %s. cuesta take %s goes on from here.\n", p.Progress(), path)
		return err
	}
	return t.handIn(j)
}

func (t *taker) taking(j *sitting.Journal) *taking.Taking {
	return taking.New(j, taking.Options{Out: t.out, Now: t.now, Painter: picture, Quit: "stops here; the same command goes on later"})
}

// answer takes the lines until quit, finish or the end of the input.
func (t *taker) answer(p *taking.Taking, j *sitting.Journal) error {
	if j.Finished() {
		return nil
	}
	p.Welcome()
	in, stop := untilInterrupt(t.in)
	defer stop()
	if err := eachLine(in, func() bool { return p.Ended() || p.Err() != nil }, p.Line); err != nil {
		return err
	}
	return p.Err()
}

// open begins the journal or goes on with it. One whose form has been handed in
// already, and is to be answered anew, makes room.
func (t *taker) open(f form.Form) (*sitting.Journal, error) {
	j, err := sitting.Open(t.journal(), f, t.now())
	if err != nil || !j.Finished() {
		return j, err
	}
	if _, err := os.Lstat(t.file); err != nil {
		return j, nil // it was not written yet
	}
	if err := errors.Join(j.Close(), os.Remove(t.journal())); err != nil {
		return nil, err
	}
	return sitting.Open(t.journal(), f, t.now())
}

// journal is the file that keeps the entries until they are handed in.
func (t *taker) journal() string {
	return strings.TrimSuffix(strings.TrimSuffix(t.file, form.SubmissionEnding), ".json") + sitting.Ending
}

// mayAnswer says why a form is not to be answered, or not any more.
func (t *taker) mayAnswer(f form.Form) error {
	if _, err := os.Lstat(t.file); err == nil && !t.force {
		return fmt.Errorf("%s is already there: the form has been handed in; --force answers it anew and replaces that file", t.file)
	}
	if err := writable(t.file, true); err != nil {
		return err
	}
	if _, err := os.Lstat(t.journal()); !errors.Is(err, fs.ErrNotExist) {
		return nil // what was kept can still be handed in
	}
	s, err := sitting.New(f, t.now())
	if err != nil {
		return wrongWords{err}
	}
	if left, ok := s.Left(t.now()); ok && left < 0 {
		return fmt.Errorf("this quiz was due on %s and takes no answers any more; ask the instructor", f.Blueprint.Due)
	}
	return nil
}

func (t *taker) noJournal(err error) error {
	if errors.Is(err, sitting.ErrJournal) {
		return wrongWords{fmt.Errorf("%s: %w; it was left as it is, and moving it away starts anew", t.journal(), err)}
	}
	return err
}

// handIn writes the submission, and only then lets the journal go.
func (t *taker) handIn(j *sitting.Journal) error {
	if err := writeWhole(t.file, t.force, func(w io.Writer) error { return j.Submission().Encode(w) }); err != nil {
		return fmt.Errorf("%w; every entry is still in %s", err, t.journal())
	}
	if err := errors.Join(j.Close(), os.Remove(t.journal())); err != nil {
		fmt.Fprintf(t.err, "the journal could not be removed: %v\n", err)
	}
	_, err := fmt.Fprintf(t.out, "Handed in: %s. Send this file to your instructor.\n", filepath.Clean(t.file))
	return err
}
