//go:build race

package calibrate

// enough is how many students of each kind the test asks; the race detector
// takes ten times as long.
const enough = 40
