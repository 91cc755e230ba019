//go:build !race

package calibrate

// enough is how many students of each kind the test asks.
const enough = 300
