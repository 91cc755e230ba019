// Package item holds the kinds of question a form can ask. A kind deals items
// from a specification and a source of randomness; an item knows its words, its
// figure, what is asked for, and how an answer is marked. Items are values: the
// same specification and the same seed give the same item, so a form need only
// keep both.
//
// A new kind is one file that implements Kind and Item and registers itself in
// the list of kinds, with its own test. Most of Item comes of embedding what is
// asked for: a quantity (a number with unit, tolerance and wrap-around), a
// planar (a plane in any notation) or a choice. Each knows the wrong answers
// that known mistakes lead to, and explains them; where two mistakes lead to
// the same answer, both are named.
//
// # Difficulty
//
// Parallel forms are made equal by Item.Difficulty, a stated measure and not
// one found from students: for a slab it is 1 − dip/90°, because strikes of
// gentle beds scatter most; for a reading or a reckoned number, how near the
// answers of known mistakes lie (the mean of 1/(1 + distance/15)); for the
// others a sum of what is known to make them harder, such as numbers that wrap,
// the way back, a west declination or the rarer symbol.
//
// # What an item gives away
//
// Prompt, Alt and Hints never hold the key. Ask holds it, for packages that
// mark by themselves, and so does every seed: an item is no secret from someone
// who can run this package.
package item
