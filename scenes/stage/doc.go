// Package stage draws the bench in three dimensions: a slab of rock on its
// stand inside a horizon ring, the instrument seated on it, and what explains
// the answer: the strike line, the way down the dip, a level sheet of water.
//
// There is no depth buffer. The painting order is exact all the same: the
// slab lies wholly below the plane of its top, the instrument wholly above it,
// and no camera that Clamp allows has its eye below it. Lengths are
// centimetres, x east, y north, z up, the middle of the ring at the origin.
package stage
