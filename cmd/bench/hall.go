package main

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"cuesta/cmd/bench/asked"
	"cuesta/scenes"
	"cuesta/scenes/keep"
	"cuesta/scenes/lesson"
)

// hall is the hall with the scene in it that was asked for.
func hall(o options) (*scenes.Hall, error) {
	p := place{options: o}
	if !o.Guest {
		p.store = store()
	}
	first, err := p.first()
	if err != nil {
		return nil, err
	}
	return scenes.NewHall(scenes.HallOptions{Doors: p.doors(), First: first, Settings: p.settings(), Keep: p.keep}), nil
}

// place is where scenes are opened: the options of the command line and the
// store of this person.
type place struct {
	options
	store keep.Store
}

// first is the scene that was asked for, or nil for the hall alone.
func (p place) first() (scenes.Scene, error) {
	switch p.Scene {
	case asked.Bench:
		return p.bench()
	case asked.Lecture:
		return p.lecture(p.File)
	case asked.Lab:
		return p.lab(p.File)
	case asked.Form:
		return p.form(p.File)
	case asked.Hall:
	}
	return nil, nil
}

func (p place) bench() (scenes.Scene, error) {
	return scenes.NewBench(scenes.BenchOptions{Plane: p.plane, Seed: p.Seed, Store: p.store, Method: p.method()})
}

// method is the one that was asked for, or nil.
func (p place) method() *scenes.Method {
	if i := slices.Index(asked.Methods[:], p.Method); i >= 0 {
		m := scenes.Method(i)
		return &m
	}
	return nil
}

// doors are what can be gone to.
func (p place) doors() []scenes.Door {
	out := []scenes.Door{{Group: scenes.Practice, Title: "The bench", Words: "A slab, an instrument, and as many planes as you like.", Place: "bench", Open: p.bench}}
	out = append(out, p.files()...)
	for _, l := range lesson.Heads() {
		out = append(out, scenes.Door{Group: scenes.Lectures, Title: l.Title, Words: fmt.Sprintf("%s %d minutes.", l.Summary, l.Minutes), Place: "lecture=" + l.Name,
			Open: func() (scenes.Scene, error) { return p.lecture(l.Name) }})
	}
	return append(out, p.ownLessons()...)
}

// lecture is the lesson of a name, or of a file.
func (p place) lecture(name string) (scenes.Scene, error) {
	if l, ok := lesson.Named(name); ok {
		return p.play(l)
	}
	data, err := os.ReadFile(name)
	if errors.Is(err, os.ErrNotExist) {
		return nil, fmt.Errorf("there is no lesson %s; cuesta lesson lists them, and a lesson of your own is named by its file", name)
	}
	if err != nil {
		return nil, err
	}
	return p.read(name, data)
}

// read reads a lesson from its file. The first problem is told; cuesta lesson
// lists them all.
func (p place) read(path string, data []byte) (scenes.Scene, error) {
	l, err := lessonOf(path, data)
	if err != nil {
		return nil, err
	}
	return p.play(l)
}

// lessonOf is the lesson in a file.
func lessonOf(path string, data []byte) (lesson.Lesson, error) {
	l, err := lesson.Parse(strings.TrimSuffix(filepath.Base(path), ".toml"), data)
	if err != nil {
		return l, fmt.Errorf("%s: %w", path, err)
	}
	return l, nil
}

func (p place) play(l lesson.Lesson) (scenes.Scene, error) {
	return scenes.NewLecture(l, scenes.LectureOptions{Settings: p.settings(), Keep: p.keep})
}

// settings are text size, colours and motion as this person uses them at the
// bench.
func (p place) settings() scenes.Settings {
	b, err := scenes.NewBench(scenes.BenchOptions{Store: p.store})
	if err != nil {
		return scenes.Settings{}
	}
	return b.Settings()
}

// keep keeps settings that are changed in the hall, where the bench keeps its
// own.
func (p place) keep(s scenes.Settings) {
	b, err := scenes.NewBench(scenes.BenchOptions{Store: p.store})
	if err == nil {
		b.Choose(s)
	}
}
