package draw

import (
	"image"
	"image/color"
)

// Color is not premultiplied.
type Color = color.NRGBA

// Point is a place in the picture.
type Point struct{ X, Y float64 }

// Rect is an axis-aligned rectangle.
type Rect struct{ X, Y, W, H float64 }

// Affine maps (x, y) to (A·x + C·y + E, B·x + D·y + F).
type Affine struct{ A, B, C, D, E, F float64 }

// Identity leaves every point where it is.
var Identity = Affine{A: 1, D: 1}

// Font is one of the two weights in use. Signs that the reading face lacks
// come from a fallback face.
type Font uint8

// The fonts.
const (
	Regular Font = iota
	Bold
)

// Align says which point of a text stands at its place.
type Align uint8

// The alignments; the vertical place is always the baseline.
const (
	AlignLeft Align = iota
	AlignCentre
	AlignRight
)

// Cap and Join are the ends and corners of strokes.
type (
	Cap  uint8
	Join uint8
)

// Ends and corners.
const (
	ButtCap Cap = iota
	RoundCap
	SquareCap
)

// The joins.
const (
	MiterJoin Join = iota
	RoundJoin
	BevelJoin
)

// MitreLimit is how far, in widths of the line, a pointed corner may reach;
// sharper corners are cut off.
const MitreLimit = 4

// Stroke is the style of a line. Dash holds lengths that are drawn and left
// out in turn, in units of the picture.
type Stroke struct {
	Width float64
	Color Color
	Cap   Cap
	Join  Join
	Dash  []float64
}

// Text is one line of text. Size is the font size in units of the picture
// (the em), Rotate turns it clockwise about At, in radians as seen with y down.
type Text struct {
	S      string
	At     Point
	Size   float64
	Font   Font
	Color  Color
	Align  Align
	Rotate float64
	Track  float64 // extra space after each sign, in em
}

// Op is the kind of an item.
type Op uint8

// The kinds of item.
const (
	OpFill Op = iota
	OpStroke
	OpText
	OpMesh
	OpRegion
)

// Item is one step of the painting: its kind and where its data stands in the
// list's slice of that kind.
type Item struct {
	Op Op
	N  int
}

// Fill is a filled path, non-zero winding. To is the second colour of a
// gradient from the point A to the point B, used when Gradient is set.
type Fill struct {
	Path     Path
	Color    Color
	Gradient Gradient
}

// Gradient blends Fill.Color at A into To at B, linearly or (Radial) by the
// distance from A with |AB| the radius.
type Gradient struct {
	Kind GradientKind
	A, B Point
	To   Color
}

// GradientKind is the kind of a gradient.
type GradientKind uint8

// The gradients.
const (
	NoGradient GradientKind = iota
	Linear
	Radial
)

// Line is a stroked path.
type Line struct {
	Path  Path
	Style Stroke
}

// Vertex is a corner of a triangle: its place, its place in the texture in
// texture pixels, and a factor for the texture's premultiplied colour.
type Vertex struct {
	X, Y, U, V float32
	R, G, B, A float32
}

// Mesh is a run of textured triangles in painting order, three indices each.
// A nil Texture is plain white, so that the vertex colours show.
type Mesh struct {
	Texture  *Texture
	Vertices []Vertex
	Indices  []uint16
	Nearest  bool // no filtering, for pixel-aligned copies
}

// Texture is an image that stays the same from frame to frame: either Pixels
// or a List painted at W×H. A painter may keep what it made of it for as long
// as Version stays the same; the pointer is its identity.
type Texture struct {
	W, H    int
	Version uint64
	Pixels  *image.RGBA // premultiplied, as image.RGBA is
	List    *List
	Under   Affine // maps List coordinates to texture pixels; zero means Identity
}

// Region marks the start of a part of the picture that covers Rect wholly and
// stays inside it. A painter clips to it, and may leave it as it was in the
// last frame when nothing in it has changed.
type Region struct{ Rect Rect }

// List is a picture. The zero value is empty; Reset keeps its memory for the
// next frame.
type List struct {
	W, H    float64
	Live    bool // one of many pictures a second: what takes long to paint may be rough at first
	Items   []Item
	Fills   []Fill
	Lines   []Line
	Texts   []Text
	Meshes  []Mesh
	Regions []Region

	vertices []Vertex // arena of the meshes
	indices  []uint16
	ring     []int // corners not yet cut off, while a polygon is cut up
}
