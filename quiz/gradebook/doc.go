// Package gradebook writes what leaves the marking: the grades of a class as a
// table (CSV after RFC 4180), a page of feedback for each student, and a
// report on the class with its figures, as a page (HTML) and as PDF.
//
// The pages are plain and need nothing else: no script, no font or picture
// from elsewhere. Each figure says in words what it shows, and the numbers of
// each stand in a table too.
package gradebook
