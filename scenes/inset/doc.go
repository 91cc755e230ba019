// Package inset draws the magnifiers beside the rock: the round level, the dial
// at the north end of the needle, the tube level and the inclination arc, the
// hinge of the lid, and the display of the sensor.
//
// They show the same drawing as the face of the instrument, through a round
// window, and are never a second design. The textures are baked once for a
// theme and a size; a frame only adds triangles, which end at the rim by
// construction, and allocates nothing.
//
// The magnifiers show and do not tell: the words of a State describe where
// bubble and needle are, without praise and without a number.
package inset
