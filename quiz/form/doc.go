// Package form holds what passes between instructor and student: the
// blueprint an instructor writes, the roster, the form each student is dealt,
// the key to a class, and the submission that comes back.
//
// # Files
//
// A blueprint is TOML and a roster is CSV, written by people: they are read
// with every problem told at once and with its place. Forms, keys and
// submissions are JSON, written by this program, whose first two fields are
// "cuesta", the kind of file, and "version". They are taken only as they were
// written, white space aside, and refused whole otherwise. Angles in files are
// degrees, shares run from 0 to 1.
//
// # What a form gives away
//
// A form keeps the specification of each item and the seed it follows from, for
// the simulation needs them. It does not show the answers, but whoever reads
// this program can work them out from it. Its code shows damage and careless
// changes; it is no seal.
package form
