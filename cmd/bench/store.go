//go:build !js

package main

import (
	"path/filepath"

	"cuesta/scenes/keep"
)

// store is where practice is kept between one day and the next, or nil where
// the system has no place for it.
func store() keep.Store {
	dir, err := keep.DataFolder()
	if err != nil {
		return nil
	}
	return keep.File{Path: filepath.Join(dir, "cuesta", "practice.json")}
}
