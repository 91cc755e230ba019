package draw

import "math"

// Taps is how many places of a texture, along each side of a pixel, a painter
// mixes for one pixel of a mesh: 1, 2 or 4. It is one number for a whole mesh.
// Fine lines and figures, which a texture with a List holds, break up into
// dots when they are drawn smaller than they are, unless they are mixed.
func (m *Mesh) Taps() int {
	if m.Texture == nil || m.Texture.List == nil || m.Nearest {
		return 1
	}
	switch f := m.footprint(); {
	case f <= 1.55:
		return 1
	case f <= 2.6:
		return 2
	default:
		return 4
	}
}

// FarthestTap keeps the places that are mixed for a pixel together: along each
// side of the pixel they are spread over so many pixels of the texture at most.
const FarthestTap = 7

// footprint is how many pixels of the texture, side by side, fall on one pixel
// of the picture in the direction in which it is most: the mean over the area
// of the mesh.
func (m *Mesh) footprint() float64 {
	var sum, total float64
	for i := 0; i+2 < len(m.Indices); i += 3 {
		a, b, c := &m.Vertices[m.Indices[i]], &m.Vertices[m.Indices[i+1]], &m.Vertices[m.Indices[i+2]]
		bx, by, cx, cy := float64(b.X-a.X), float64(b.Y-a.Y), float64(c.X-a.X), float64(c.Y-a.Y)
		bu, bv, cu, cv := float64(b.U-a.U), float64(b.V-a.V), float64(c.U-a.U), float64(c.V-a.V)
		area := bx*cy - by*cx
		if area == 0 {
			continue
		}
		x := math.Hypot(bu*cy-cu*by, bv*cy-cv*by)
		y := math.Hypot(cu*bx-bu*cx, cv*bx-bv*cx)
		sum += max(x, y) // of length per pixel times area
		total += math.Abs(area)
	}
	if total == 0 {
		return 0
	}
	return sum / total
}
