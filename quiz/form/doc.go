// Package form holds what passes between instructor and student: the
// blueprint an instructor writes, the roster, the form each student is dealt,
// and the submission that comes back.
package form
