//go:build race

package calibrate

// enough is how many students of each kind the test asks; the race detector
// takes ten times as long. With so few the shares found and sound scatter.
const (
	enough = 20
	found  = 0.75
	sound  = 0.8
)
