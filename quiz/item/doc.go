// Package item holds the kinds of question a form can ask. A kind deals items
// from a specification and a source of randomness; an item knows its words, its
// figure, what is asked for, and how an answer is marked. Items are values: the
// same specification and the same seed give the same item, so a form need only
// keep both.
//
// A new kind is one file that implements Kind and Item and registers itself in
// the list of kinds, with its own test.
package item
