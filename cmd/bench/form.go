package main

import (
	"bytes"
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

// formEnding is the ending of a form's file; its journal and its submission
// stand beside it under the same name.
const formEnding = ".form.json"

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
	base := strings.TrimSuffix(o.form, formEnding)
	j, err := sitting.Open(base+sitting.Ending, f, now())
	if err != nil {
		return err
	}
	defer j.Close()
	handIn := func(s form.Submission) (string, error) {
		var b bytes.Buffer
		if err := s.Encode(&b); err != nil {
			return "", err
		}
		to := base + ".submission.json"
		return to, keep.File{Path: to}.Save(b.Bytes())
	}
	p := scenes.NewPaper(scenes.NewDesk(j, now, handIn), choices(o))
	return window.Run(paper{p}, window.Options{Title: f.Blueprint.Title, W: o.w, H: o.h, FullScreen: o.full})
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
