//go:build !js

package main

import (
	"bytes"
	"cmp"
	"fmt"
	"io"
	"os"
	"path/filepath"

	"cuesta/quiz/form"
	"cuesta/quiz/lab"
	"cuesta/scenes"
	"cuesta/scenes/keep"
)

// lab opens the station screen of a file of stations. It goes on where the
// folder of its readings stands.
func (p place) lab(path string) (scenes.Scene, error) {
	b, err := decoded(path, form.ReadStations)
	if err != nil {
		return nil, err
	}
	var roster []form.Student
	if p.Room.Roster != "" {
		if roster, err = decoded(p.Room.Roster, form.ReadRoster); err != nil {
			return nil, err
		}
	}
	out := cmp.Or(p.Room.Out, filepath.Join(p.Folder, "readings"))
	if err := os.MkdirAll(out, 0o755); err != nil {
		return nil, err
	}
	r, err := lab.NewRoom(b, lab.Options{Roster: roster, Folder: out, Withhold: p.Room.Withhold, Now: now,
		Keep: func(s form.Submission) error { return handOn(out, s) }})
	if err != nil {
		return nil, err
	}
	l, err := scenes.NewLab(scenes.LabOptions{Room: r, Station: p.Room.Station, Settings: p.settings(), Keep: p.keep})
	if err != nil {
		return nil, fmt.Errorf("--station: %w", err)
	}
	return l, nil
}

// handOn writes what a student has read up to now into the folder.
func handOn(out string, s form.Submission) error {
	var b bytes.Buffer
	if err := s.Encode(&b); err != nil {
		return err
	}
	return keep.File{Path: filepath.Join(out, form.FileName(s.Form.Student.ID)+form.SubmissionEnding)}.Save(b.Bytes())
}

// decoded reads a file that a person has written.
func decoded[T any](path string, read func(io.Reader) (T, error)) (v T, err error) {
	file, err := os.Open(path)
	if err != nil {
		return v, err
	}
	defer file.Close()
	if v, err = read(file); err != nil {
		return v, fmt.Errorf("%s: %w", path, err)
	}
	return v, nil
}
