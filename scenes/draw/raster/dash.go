package raster

import (
	"math"

	"cuesta/scenes/draw"
)

// dash is a pattern of lengths, drawn and left out in turn. A pattern of odd
// length is run through twice, so that its parts alternate.
type dash struct {
	lengths []float64
	total   float64
}

func newDash(lengths []float64) dash {
	d := dash{lengths: lengths}
	for _, v := range lengths {
		if !(v >= 0) || math.IsInf(v, 0) {
			return dash{}
		}
		d.total += v
	}
	return d
}

// cut adds the drawn parts of the lines to out. Each run starts the pattern
// anew; the corners inside a drawn part stay joined.
func (d dash) cut(out, lines *draw.Flat) {
	for _, r := range lines.Runs {
		d.run(out, lines.Points[r.From:r.To], r.Closed)
	}
}

func (d dash) run(out *draw.Flat, pts []draw.Point, closed bool) {
	n := len(pts)
	segs := n - 1
	if closed && n > 2 {
		segs = n
	}
	i, on := 0, true
	left := d.lengths[0]
	if n > 1 {
		out.AddOutline(false, pts[0])
	}
	for s := range segs {
		a, b := pts[s], pts[(s+1)%n]
		long := math.Hypot(b.X-a.X, b.Y-a.Y)
		at := 0.0
		for long-at > left {
			at += left
			q := draw.Point{X: a.X + (b.X-a.X)*at/long, Y: a.Y + (b.Y-a.Y)*at/long}
			if on {
				out.Extend(q)
			} else {
				out.AddOutline(false, q)
			}
			on = !on
			i = (i + 1) % len(d.lengths)
			left = d.lengths[i]
		}
		left -= long - at
		if on {
			out.Extend(b)
		}
	}
}
