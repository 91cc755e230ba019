//go:build !js

package main

import (
	"bytes"
	"cmp"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"time"

	"cuesta/quiz/form"
	"cuesta/quiz/sitting"
	"cuesta/scenes"
	"cuesta/scenes/keep"
)

// files are the doors to what lies in the current folder.
func (p place) files() []scenes.Door {
	var out []scenes.Door
	for _, path := range formsIn(cmp.Or(p.Folder, ".")) {
		out = append(out, fileDoor(path, func() (scenes.Scene, error) { return p.form(path) }))
	}
	if len(out) == 0 {
		out = append(out, scenes.Door{Group: scenes.Practice, Title: "A form", Words: "A quiz that your teacher gave you, as a file.",
			Open: func() (scenes.Scene, error) { return nil, errNoForm }})
	}
	return out
}

var errNoForm = errors.New("no form lies in this folder: start the program where it lies, or name its file, such as cuesta open a17.form.json")

// mostForms bounds the forms of a folder that are offered.
const mostForms = 12

// formsIn are the forms that lie in a folder.
func formsIn(dir string) []string {
	entries, err := os.ReadDir(dir)
	if err != nil {
		return nil
	}
	var found []string
	for _, e := range entries {
		if strings.HasSuffix(e.Name(), form.FormEnding) {
			found = append(found, filepath.Join(dir, e.Name()))
		}
	}
	return found[:min(len(found), mostForms)]
}

func fileDoor(path string, open func() (scenes.Scene, error)) scenes.Door {
	name := strings.TrimSuffix(filepath.Base(path), form.FormEnding)
	words := "A form in this folder, not yet handed in."
	if _, err := os.Lstat(strings.TrimSuffix(path, form.FormEnding) + form.SubmissionEnding); err == nil {
		words = "Handed in."
	}
	return scenes.Door{Group: scenes.Practice, Title: "Form " + name, Words: words, Open: open}
}

// ownLessons is empty where files are named on the command line.
func (p place) ownLessons() []scenes.Door { return nil }

// form opens a form. It goes on where an earlier sitting stopped.
func (p place) form(path string) (scenes.Scene, error) {
	file, err := os.Open(path)
	if err != nil {
		return nil, err
	}
	defer file.Close()
	f, err := form.DecodeForm(file)
	if err != nil {
		return nil, fmt.Errorf("%s: %w", path, err)
	}
	base := strings.TrimSuffix(strings.TrimSuffix(path, form.FormEnding), ".json")
	s := &sat{journal: base + sitting.Ending, submission: base + form.SubmissionEnding}
	if _, err := os.Lstat(s.submission); err == nil {
		return nil, fmt.Errorf("%s is already there: the form has been handed in; cuesta take --force answers it anew", s.submission)
	}
	if s.log, err = sitting.Open(s.journal, f, now()); err != nil {
		return nil, err
	}
	s.Paper = scenes.NewPaper(scenes.NewDesk(s.log, now, s.handIn), p.settings())
	return s, nil
}

// sat is a form in a window and its files.
type sat struct {
	*scenes.Paper
	log                 *sitting.Journal
	journal, submission string // their files
	done                bool   // the submission is written
}

// handIn writes the submission beside the form.
func (s *sat) handIn(sub form.Submission) (scenes.Handed, error) {
	var b bytes.Buffer
	if err := sub.Encode(&b); err != nil {
		return scenes.Handed{}, err
	}
	err := keep.File{Path: s.submission}.Save(b.Bytes())
	s.done = err == nil
	return scenes.Handed{File: filepath.Base(s.submission), Where: "at " + s.submission}, err
}

// Close ends the sitting. A submission that is written holds all that the
// journal did.
func (s *sat) Close() error {
	err := errors.Join(s.Paper.Close(), s.log.Close())
	if s.done {
		err = errors.Join(err, os.Remove(s.journal))
	}
	return err
}

func now() string { return time.Now().Format(time.RFC3339) }
