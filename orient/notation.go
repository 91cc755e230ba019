package orient

// Notation is a way to write a plane.
type Notation uint8

// The notations in use (common practice; direction/dip is the order of
// ISO 14689 and the ISRM suggested methods).
const (
	AzimuthDip   Notation = iota // 035/30, right-hand convention; with letters 215/30 SE
	Quadrant                     // N35E 30SE
	DirectionDip                 // 125/30, dip direction and dip
	PoleNotation                 // trend/plunge of the pole, 305/60
)

// Entry is a plane as someone wrote it, and how it was understood.
type Entry struct {
	Plane      Plane
	Notation   Notation
	Written    Azimuth // the azimuth as written: strike end, or dip direction
	Letters    string  // the dip letters as written, in capitals, or ""
	HasStrike  bool    // false for a horizontal bed
	DipMissing bool    // the writer has not come to the whole dip yet: "036/"
	// SideMissing: what is missing is the side, as in "N35E 30"; it comes with
	// DipMissing, and with a dip that has been written already.
	SideMissing bool
}
