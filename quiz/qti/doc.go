// Package qti writes a quiz as a question package of the 1EdTech QTI 3.0
// standard, for learning systems that read it: numbers with absolute
// tolerances, choices, figures as SVG with alternative texts that do not give
// the answer away, and several variants of each item, of which a student is
// asked one.
//
// A learning system has no bench: items that are measured at one, and items
// whose answer is a drawing, are left out, and Package says which. It does not
// read notations either: a plane becomes two numbers, or, as a quadrant
// bearing, a line of text in any of its usual forms.
//
// The names of elements and namespaces are those of the standard (1EdTech QTI
// 3.0; the shapes from its published examples, from memory). The same quiz and
// the same variants give the same bytes.
package qti
