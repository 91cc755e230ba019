// Package sim is the world of the bench: one rock surface, one instrument on
// it, and time that passes in fixed steps. It is driven by typed commands and
// by nothing else; the same set-up and the same commands give the same state,
// bit for bit, on every target whose floating point is IEEE 754.
package sim
