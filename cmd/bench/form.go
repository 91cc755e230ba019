package main

import (
	"bytes"
	"errors"
	"fmt"
	"os"
	"strings"
	"time"

	"cuesta/quiz/form"
	"cuesta/quiz/sitting"
	"cuesta/scenes"
	"cuesta/scenes/input"
	"cuesta/scenes/keep"
	"cuesta/scenes/window"
)

// openForm shows a form until its window is closed. It goes on where an earlier
// sitting stopped.
func openForm(o options) error {
	file, err := os.Open(o.form)
	if err != nil {
		return err
	}
	defer file.Close()
	f, err := form.DecodeForm(file)
	if err != nil {
		return fmt.Errorf("%s: %w", o.form, err)
	}
	base := strings.TrimSuffix(strings.TrimSuffix(o.form, form.FormEnding), ".json")
	to := base + form.SubmissionEnding
	if _, err := os.Lstat(to); err == nil {
		return fmt.Errorf("%s is already there: the form has been handed in; cuesta take --force answers it anew", to)
	}
	j, err := sitting.Open(base+sitting.Ending, f, now())
	if err != nil {
		return err
	}
	done := false
	handIn := func(s form.Submission) (string, error) {
		var b bytes.Buffer
		if err := s.Encode(&b); err != nil {
			return "", err
		}
		err := keep.File{Path: to}.Save(b.Bytes())
		done = err == nil
		return to, err
	}
	p := scenes.NewPaper(scenes.NewDesk(j, now, handIn), choices(o))
	err = window.Run(paper{p}, window.Options{Title: f.Blueprint.Title, W: o.w, H: o.h, FullScreen: o.full})
	err = errors.Join(err, j.Close())
	if done { // the submission holds all that the journal did
		err = errors.Join(err, os.Remove(base+sitting.Ending))
	}
	return err
}

// choices are text size, colours and motion as the student uses them at the
// bench.
func choices(o options) scenes.Settings {
	if o.guest {
		return scenes.Settings{}
	}
	b, err := scenes.NewBench(scenes.BenchOptions{Store: store()})
	if err != nil {
		return scenes.Settings{}
	}
	return b.Settings()
}

func now() string { return time.Now().Format(time.RFC3339) }

// paper is a form whose commands need not be handed on.
type paper struct{ *scenes.Paper }

func (s paper) Update(f input.Frame) { s.Paper.Update(f) }

var _ window.Scene = paper{}
