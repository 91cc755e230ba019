package draw

import "math"

// Flat is a path as straight lines. The zero value is empty; Reset keeps its
// memory.
type Flat struct {
	Points []Point
	Runs   []Run
}

// Run is one outline of a Flat: Points[From:To], with no point twice in a row.
// A closed run does not repeat its first point.
type Run struct {
	From, To int
	Closed   bool
}

// Reset empties it.
func (f *Flat) Reset() { f.Points, f.Runs = f.Points[:0], f.Runs[:0] }

// Add adds a path, mapped by m. No line strays from its curve by more than
// tol, in mapped units.
func (f *Flat) Add(p Path, m Affine, tol float64) {
	var start, pen Point
	open, k := false, 0
	begin := func(q Point) {
		f.Runs = append(f.Runs, Run{From: len(f.Points), To: len(f.Points)})
		f.point(q)
		open = true
	}
	for _, kind := range p.Kinds {
		if kind != Move && kind != Close && !open {
			begin(pen)
		}
		switch kind {
		case Move:
			start = m.At(p.Points[k])
			begin(start)
			pen = start
			k++
		case LineTo:
			pen = m.At(p.Points[k])
			f.point(pen)
			k++
		case Quad:
			b, c := m.At(p.Points[k]), m.At(p.Points[k+1])
			f.quad(pen, b, c, tol)
			pen = c
			k += 2
		case Cube:
			b, c, d := m.At(p.Points[k]), m.At(p.Points[k+1]), m.At(p.Points[k+2])
			f.cube(pen, b, c, d, tol)
			pen = d
			k += 3
		case Close:
			if open {
				f.close()
			}
			pen, open = start, false
		}
	}
}

// AddOutline adds a run of points as they are.
func (f *Flat) AddOutline(closed bool, pts ...Point) {
	f.Runs = append(f.Runs, Run{From: len(f.Points), To: len(f.Points)})
	for _, q := range pts {
		f.point(q)
	}
	if closed {
		f.close()
	}
}

// Extend adds a point to the last run.
func (f *Flat) Extend(q Point) { f.point(q) }

func (f *Flat) point(q Point) {
	r := &f.Runs[len(f.Runs)-1]
	if r.To > r.From && f.Points[r.To-1] == q {
		return
	}
	f.Points = append(f.Points, q)
	r.To++
}

func (f *Flat) close() {
	r := &f.Runs[len(f.Runs)-1]
	r.Closed = true
	if r.To-r.From > 1 && f.Points[r.To-1] == f.Points[r.From] {
		r.To--
		f.Points = f.Points[:r.To]
	}
}

// quad cuts a quadratic curve in equal steps of its parameter. The error of a
// step h is h²·|a−2b+c|/4.
func (f *Flat) quad(a, b, c Point, tol float64) {
	bend := math.Hypot(a.X-2*b.X+c.X, a.Y-2*b.Y+c.Y)
	n := steps(math.Sqrt(bend / (4 * tol)))
	for i := 1; i < n; i++ {
		t := float64(i) / float64(n)
		u := 1 - t
		f.point(Point{u*u*a.X + 2*u*t*b.X + t*t*c.X, u*u*a.Y + 2*u*t*b.Y + t*t*c.Y})
	}
	f.point(c)
}

// cube cuts a cubic curve in equal steps. The second derivative is at most six
// times the larger second difference, the error of a step h is h²/8 of it.
func (f *Flat) cube(a, b, c, d Point, tol float64) {
	bend := max(math.Hypot(a.X-2*b.X+c.X, a.Y-2*b.Y+c.Y), math.Hypot(b.X-2*c.X+d.X, b.Y-2*c.Y+d.Y))
	n := steps(math.Sqrt(0.75 * bend / tol))
	for i := 1; i < n; i++ {
		t := float64(i) / float64(n)
		u := 1 - t
		k0, k1, k2, k3 := u*u*u, 3*u*u*t, 3*u*t*t, t*t*t
		f.point(Point{k0*a.X + k1*b.X + k2*c.X + k3*d.X, k0*a.Y + k1*b.Y + k2*c.Y + k3*d.Y})
	}
	f.point(d)
}

func steps(x float64) int { return int(max(1, min(math.Ceil(x), 500))) }
