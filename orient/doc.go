// Package orient holds the orientations of planes and lines in rock, and the
// ways they are written.
//
// # Conventions
//
// They stand here once and hold everywhere in the module.
//
// The world frame is x east, y north, z up, right-handed. An azimuth A is
// counted clockwise from true north, in [0, 2π): its horizontal unit vector is
// h(A) = (sin A, cos A, 0).
//
// A plane has the right-hand strike s and the dip d in [0, π/2]. Looking along
// the strike line S = h(s), the surface drops to the right: the dip direction
// is s + 90°, the line of steepest descent D = cos d · h(s+90°) − sin d · z,
// the upward normal N = sin d · h(s+90°) + cos d · z, and D × S = N.
//
// A line has a trend t and a plunge p in [0, π/2], positive downwards:
// cos p · h(t) − sin p · z. Poles and lines are axes: v and −v are the same.
//
// Declination is positive when magnetic north lies east of true north:
// true = magnetic + declination.
//
// Angles are radians inside; degrees stand only where a person or a file meets
// the program.
package orient
