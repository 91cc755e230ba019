// Package sitting is a form being answered: where the student stands, what has
// been answered, taken back, flagged and helped with, and the journal that
// keeps each entry on the disk before it is confirmed.
//
// A sitting is the sum of its entries: the same entries give the same state, so
// that a journal read again after a crash stands where it stopped. Nothing here
// reads a clock: every entry brings its time with it.
package sitting
