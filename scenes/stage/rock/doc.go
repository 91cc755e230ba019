// Package rock makes the picture of a laminated sandstone slab from a seed:
// the bedding surface on top, the four broken sides that cut one list of beds,
// and the chips along the rim. The same seed gives the same stone.
//
// Lengths are centimetres in the slab's own frame: a along the strike, b
// straight down the dip, both from the middle of the top; depth below the top.
package rock
