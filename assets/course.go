package assets

import _ "embed"

// The demo course: an invented field school at an invented place, with a
// roster of invented students.
var (
	//go:embed course/blueprint.toml
	CourseBlueprint []byte
	//go:embed course/roster.csv
	CourseRoster []byte
)
