package form

import _ "embed"

// exampleText is the annotated example.
//
//go:embed example.toml
var exampleText string

// Example is a blueprint with remarks, to start from: ReadBlueprint takes it.
func Example() string { return exampleText }
