package raster

import "math"

// area adds up, pixel by pixel, how much of it lies inside an outline. Each
// edge adds to a pixel the change in coverage from the pixel on its left, so
// that a running sum along a row is the winding number where a pixel is
// uncut, and the share covered where it is cut.
type area struct {
	w, h   int
	change []float32 // rows of w+2
	lo, hi []int     // pixels of a row that were changed
}

// reset makes ready for an outline within w×h pixels. The changes are zero
// already: rows clears what it has read.
func (a *area) reset(w, h int) {
	if n := (w + 2) * h; n > len(a.change) {
		a.change = make([]float32, n)
	}
	if h > len(a.lo) {
		a.lo, a.hi = make([]int, h), make([]int, h)
	}
	a.w, a.h = w, h
	for y := range h {
		a.lo[y], a.hi[y] = w, 0
	}
}

// line adds an edge. Both ends must lie in [0, w]×[0, h].
func (a *area) line(x0, y0, x1, y1 float64) {
	dir := 1.0
	if y0 > y1 {
		x0, y0, x1, y1, dir = x1, y1, x0, y0, -1
	}
	if y0 == y1 {
		return
	}
	slope, x := (x1-x0)/(y1-y0), x0
	least, most := min(x0, x1), max(x0, x1)
	for y := int(y0); y < a.h && float64(y) < y1; y++ {
		dy := min(float64(y+1), y1) - max(float64(y), y0)
		next := max(least, min(x+slope*dy, most))
		a.row(y, min(x, next), max(x, next), dir*dy)
		x = next
	}
}

// row adds the part of an edge that crosses row y between x0 ≤ x1 and covers
// d of its height.
func (a *area) row(y int, x0, x1, d float64) {
	i, j := int(x0), int(math.Ceil(x1))
	line := a.change[y*(a.w+2) : (y+1)*(a.w+2)]
	a.lo[y], a.hi[y] = min(a.lo[y], i), max(a.hi[y], max(j, i+1)+1)
	if j <= i+1 {
		right := (x0+x1)/2 - float64(i)
		line[i] += float32(d - d*right)
		line[i+1] += float32(d * right)
		return
	}
	// The edge crosses several pixels: s of its height in each whole one.
	s := 1 / (x1 - x0)
	f0, f1 := 1-(x0-float64(i)), x1-float64(j-1)
	first, last := s*f0*f0/2, s*f1*f1/2
	line[i] += float32(d * first)
	line[j] += float32(d * last)
	if j == i+2 {
		line[i+1] += float32(d * (1 - first - last))
		return
	}
	second := s * (f0 + 0.5)
	line[i+1] += float32(d * (second - first))
	for k := i + 2; k < j-1; k++ {
		line[k] += float32(d * s)
	}
	line[j-1] += float32(d * (1 - second - float64(j-i-3)*s - last))
}

// rows calls span for every run of pixels with the same coverage, in
// (0, 65535], and clears the area.
func (a *area) rows(span func(y, x0, x1 int, cover uint32)) {
	for y := range a.h {
		line := a.change[y*(a.w+2) : (y+1)*(a.w+2)]
		from, hi, cover, sum := a.lo[y], min(a.hi[y], a.w+2), uint32(0), float32(0)
		for x := from; x < hi; x++ {
			if line[x] == 0 {
				continue
			}
			sum += line[x]
			line[x] = 0
			if c := share(sum); c != cover {
				if cover > 0 && x > from {
					span(y, from, min(x, a.w), cover)
				}
				from, cover = x, c
			}
		}
		if cover > 0 && from < a.w {
			span(y, from, a.w, cover)
		}
	}
}

func share(sum float32) uint32 {
	return uint32(min(max(sum, -sum), 1)*65535 + 0.5)
}
