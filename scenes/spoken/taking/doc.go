// Package taking is a form answered line by line, in words and figures that need
// no picture. Where the journal lies and what becomes of the submission is for
// the program around it.
package taking
