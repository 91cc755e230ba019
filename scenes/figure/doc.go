// Package figure draws the instrument as display lists in centimetres, and from
// it and from maps, blocks and nets the pictures that questions show: see Of.
//
// # Frames
//
// The face plan has x forward along the left long edge and y to the right of
// it, both from the rear left corner, seen from the front of the face: with y
// down, as on a screen, the plan is not mirrored. An angle in the plan runs
// from forward towards the right, clockwise as seen. Static parts (plate, bars,
// bezel, round level, arc) are drawn in the plan.
//
// Moving parts have frames of their own, so that they are baked once: the
// graduated circle about its centre with 000 forward, the needle about its
// pivot with the north end along x, the arm about its pivot with the index
// along x, each bubble about its own centre.
//
// A Texture maker bakes a part at so many pixels a centimetre; the Under of
// the texture maps the part's own frame to texture pixels, see UV.
package figure
