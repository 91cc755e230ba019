package assets

import "embed"

// Lessons are the lessons that travel inside the programs, as files
// lessons/NAME.toml.
//
//go:embed lessons/*.toml
var Lessons embed.FS
