// Package instrument holds the parts of the instrument, each by itself: the
// round level, the tube level, the needle, the dial and the inclination arc.
//
// A part is a set of fixed figures (its zero value is no part; take the
// Standard one) with methods that turn a state into the next state. No part
// knows the rock, the bench or the clock: the length of a step is an argument.
// Lengths are in metres, time in seconds, fields in tesla, torques in newton
// metres.
//
// No method uses math.Exp, math.Pow or math.Hypot, whose last bits differ
// between targets; products that meet a sum are rounded first, so that no
// compiler fuses the two.
package instrument

// Millimetre is one millimetre in metres.
const Millimetre = 1e-3

// travel is the bubble travel by which the sensitivity of a level is quoted
// (Level Developments Ltd 2020, Sensitivity and accuracy of spirit level vials).
const travel = 2 * Millimetre
