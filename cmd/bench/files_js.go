package main

import (
	"errors"

	"cuesta/scenes"
)

// files is the door to a form that the page asks for.
func (p place) files() []scenes.Door {
	return []scenes.Door{{Group: scenes.Practice, Title: "Open a form", Words: "A quiz that your teacher gave you, as a file.", Wants: scenes.WantForm}}
}

// form cannot be opened by its name: a page has no folder.
func (p place) form(string) (scenes.Scene, error) {
	return nil, errors.New("a form is opened from the hall")
}
