package item

import "cuesta/orient"

// Figure is a picture as data; scenes/figure draws it. The set is closed.
type Figure interface{ figure() }

// DialFigure is the dial with its needle, forward up.
type DialFigure struct {
	Needle orient.Angle // the north end, clockwise from forward
	Ring   orient.Angle // the declination set, east positive
}

// ArcFigure is the inclination arm on its two scales.
type ArcFigure struct{ Arm orient.Angle }

// LevelFigure is the round level, forward up; the bubble's offset in radii of
// the ring.
type LevelFigure struct{ Right, Forward float64 }

// MapFigure is a small map, north up: a symbol for a plane, or, with
// LineOnly, its strike line with a letter at each end and a tick down the dip.
type MapFigure struct {
	Plane    orient.Plane
	LineOnly bool
	Ends     [2]string // with LineOnly: the letters at the right-hand end of the line and at the other end
	Blank    bool      // only the map's frame and north arrow: the student draws
}

// BlockFigure is a block diagram: a plane crops out on top and on the sides.
type BlockFigure struct {
	Plane   orient.Plane
	Section orient.Azimuth // the direction of the front face
}

// NetFigure is a lower-hemisphere equal-area net with poles.
type NetFigure struct {
	Poles  []orient.Line
	Labels []string
}

// TableFigure is a small table of readings.
type TableFigure struct {
	Head []string
	Rows [][]string
}

func (DialFigure) figure()  {}
func (ArcFigure) figure()   {}
func (LevelFigure) figure() {}
func (MapFigure) figure()   {}
func (BlockFigure) figure() {}
func (NetFigure) figure()   {}
func (TableFigure) figure() {}
