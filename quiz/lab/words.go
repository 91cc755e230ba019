package lab

// Cautions are the usual ones where people handle slabs in a room (common
// practice).
var Cautions = []string{
	"A slab is heavy and its edges are sharp: two people lift one, with straight backs and gloves, and nobody lifts alone.",
	"Keep fingers, hands and feet from under a slab and its wedge, and see that it rests firmly before you lean on it.",
	"Leave nothing over the edge of a table, and wear closed shoes.",
	"The rules of the building and local codes come first; a licensed practitioner judges whatever bears on safety or building. Practice readings are never data for design.",
}
