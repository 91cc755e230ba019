package main

import (
	"cuesta/scenes"
	"cuesta/scenes/keep"
)

// hall is the hall with the scene in it that was asked for.
func hall(o options) (*scenes.Hall, error) {
	p := place{options: o}
	if !o.guest {
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
	switch p.scene {
	case benchScene:
		return p.bench()
	case formScene:
		return p.form(p.file)
	case hallScene:
	}
	return nil, nil
}

func (p place) bench() (scenes.Scene, error) {
	return scenes.NewBench(scenes.BenchOptions{Plane: p.plane, Seed: p.seed, Store: p.store})
}

// doors are what can be gone to.
func (p place) doors() []scenes.Door {
	out := []scenes.Door{{Group: scenes.Practice, Title: "The bench", Words: "A slab, an instrument, and as many planes as you like.", Open: p.bench}}
	return append(out, p.files()...)
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
