package scenes

// tapLines are what controls do, by what stands on them: for those who tap, in
// place of the keys.
var tapLines = [][2]string{
	{"− +", "beside a name: turn the plate by one step; kept down, they go on. Or drag the plate: across swings it, up and down does the rest"},
	{"10° 1° 0.1°", "the size of a step. A turn is taken back by the same turn the other way"},
	{"On its side", "turns the plate on its side, On its edge back; End for end turns it round"},
	{"Tap", "taps the case, so that the needle comes to rest"},
	{"Magnifiers", "touched, fill the place of the rock, and touched again go back; a touch beside them tells in words what they show"},
	{"123", "opens keys to write with; what is written stays in view"},
	{"All controls", "opens what finds no room: the eye, the settings, this help, the menu"},
	{"Ground", "dragged, walks you round the rock; Closer brings you nearer"},
}
