package lab

import _ "embed"

// exampleText is the annotated example.
//
//go:embed example.toml
var exampleText string

// Example is a file of stations with remarks, to start from: form.ReadStations
// takes it.
func Example() string { return exampleText }
