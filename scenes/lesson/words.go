package lesson

import _ "embed"

// exampleText is the annotated example.
//
//go:embed example.toml
var exampleText string

// Words explain the format of a lesson file by an annotated example, which Parse
// takes.
func Words() string { return exampleText }
