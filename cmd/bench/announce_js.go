package main

import (
	"io"

	"cuesta/scenes"
)

// crier is not wanted on a page, which says what changes by itself.
type crier struct{}

func newCrier(options, io.Writer) *crier { return nil }

func (*crier) hear(scenes.Scene, bool, int) string { return "" }
func (*crier) close()                              {}
