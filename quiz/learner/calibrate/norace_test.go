//go:build !race

package calibrate

// enough is how many students of each kind the test asks, and the shares that
// must be found and sound.
const (
	enough = 300
	found  = 0.9
	sound  = 0.95
)
