package stage

import "cuesta/orient"

const mostSides = 5

// prism is a convex solid with two like ends p and q of n corners each. Face i
// below n lies between corners i and i+1; face n is the end p, n+1 the end q.
type prism struct {
	n      int
	p, q   [mostSides]orient.Vec
	norm   [mostSides + 2]orient.Vec
	seen   [mostSides + 2]bool
	pk, qk [mostSides]float64 // light left at the corners, 1 is all of it
	mid    orient.Vec
}

// prepare finds the normals and what the eye sees; all corners keep their
// light where it has not been set.
func (s *prism) prepare(l *lens) {
	s.mid = orient.Vec{}
	for i := range s.n {
		s.mid = add(s.mid, mul(0.5/float64(s.n), add(s.p[i], s.q[i])))
		if s.pk[i] == 0 {
			s.pk[i] = 1
		}
		if s.qk[i] == 0 {
			s.qk[i] = 1
		}
	}
	for f := range s.n + 2 {
		a, b, c := s.three(f)
		n := orient.Unit(cross(sub(b, a), sub(c, a)))
		if dot(n, sub(a, s.mid)) < 0 {
			n = mul(-1, n)
		}
		s.norm[f], s.seen[f] = n, l.sees(a, n) && n != orient.Vec{}
	}
}

// three returns corners of a face that do not lie in a row.
func (s *prism) three(f int) (a, b, c orient.Vec) {
	switch f {
	case s.n:
		return s.p[0], s.p[1], s.p[2]
	case s.n + 1:
		return s.q[0], s.q[1], s.q[2]
	default:
		return s.p[f], s.p[(f+1)%s.n], s.q[f]
	}
}

// face paints a face if it is seen, in the colour given, less what its corners
// lack of light.
func (s *prism) face(b *brush, f int, c tint) {
	if !s.seen[f] {
		return
	}
	var cs [mostSides]corner
	switch f {
	case s.n:
		for i := range s.n {
			cs[i] = corner{at: s.p[i], c: c.dim(s.pk[i])}
		}
		b.polygon(cs[:s.n]...)
	case s.n + 1:
		for i := range s.n {
			cs[i] = corner{at: s.q[i], c: c.dim(s.qk[i])}
		}
		b.polygon(cs[:s.n]...)
	default:
		j := (f + 1) % s.n
		b.polygon(corner{at: s.p[f], c: c.dim(s.pk[f])}, corner{at: s.p[j], c: c.dim(s.pk[j])},
			corner{at: s.q[j], c: c.dim(s.qk[j])}, corner{at: s.q[f], c: c.dim(s.qk[f])})
	}
}

// dim takes light from a colour and leaves its alpha.
func (c tint) dim(k float64) tint { f := float32(k); return tint{c.r * f, c.g * f, c.b * f, c.a} }

// fade makes a colour clearer.
func (c tint) fade(k float64) tint {
	f := float32(k)
	return tint{c.r * f, c.g * f, c.b * f, c.a * f}
}

// edge is an edge of a prism with the two faces that meet in it.
type edge struct {
	a, b   orient.Vec
	ka, kb float64
	f, g   int
}

// edge returns edge i of 3n: around p, around q, then from p to q.
func (s *prism) edge(i int) edge {
	k := i % s.n
	j := (k + 1) % s.n
	switch i / s.n {
	case 0:
		return edge{s.p[k], s.p[j], s.pk[k], s.pk[j], k, s.n}
	case 1:
		return edge{s.q[k], s.q[j], s.qk[k], s.qk[j], k, s.n + 1}
	default:
		return edge{s.p[k], s.q[k], s.pk[k], s.qk[k], k, (k + s.n - 1) % s.n}
	}
}

// outer returns the face that is seen when exactly one of the two is.
func (s *prism) outer(e edge) (face int, ok bool) {
	if s.seen[e.f] == s.seen[e.g] {
		return 0, false
	}
	if s.seen[e.f] {
		return e.f, true
	}
	return e.g, true
}

// outline draws the edges that are seen.
func (s *prism) outline(b *brush, width float64, c tint) {
	for i := range 3 * s.n {
		if e := s.edge(i); s.seen[e.f] || s.seen[e.g] {
			b.line(e.a, e.b, width, c)
		}
	}
}
