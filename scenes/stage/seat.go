package stage

import (
	"math"

	"cuesta/orient"
	"cuesta/scenes/stage/rock"
	"cuesta/sim"
)

// tool is the instrument where it lies: the corner at the rear end of the left
// edge on the back of the plate, and its three directions.
type tool struct {
	corner         orient.Vec
	fwd, right, up orient.Vec
	seated         sim.Side
	edge           [2]orient.Vec // ends of the line that touches the rock, rear first
	low            float64       // height of the middle of that line
	offA, offB     float64       // where that middle lies on the slab
	hinged         bool          // the plate is hinged to lid
	lid            lid
}

// at is the point x forward, y to the right and z out of the back.
func (t *tool) at(x, y, z float64) orient.Vec {
	p := t.corner
	p.X += x*t.fwd.X + y*t.right.X + z*t.up.X
	p.Y += x*t.fwd.Y + y*t.right.Y + z*t.up.Y
	p.Z += x*t.fwd.Z + y*t.right.Z + z*t.up.Z
	return p
}

// face is a point of the face.
func (t *tool) face(x, y float64) orient.Vec { return t.at(x, y, plateThick) }

// middle is the middle of the plate.
func (t *tool) middle() orient.Vec { return t.at(plateLong/2, plateWide/2, plateThick/2) }

// spots is how many corners it has, a lid and its hinge plate counted in.
func (t *tool) spots() int {
	if t.hinged {
		return 8 + lidSpots
	}
	return 8
}

// spot is a corner: the first eight are those of the plate.
func (t *tool) spot(i int) orient.Vec {
	if i >= 8 {
		return t.lid.spot(i - 8)
	}
	return t.at(float64(i&1)*plateLong, float64(i>>1&1)*plateWide, float64(i>>2)*plateThick)
}

func (t *tool) eachCorner(f func(orient.Vec)) {
	for i := range t.spots() {
		f(t.spot(i))
	}
}

// box is the bounding box in the picture.
func (t *tool) box(l *lens) (x0, y0, x1, y1 float64) {
	x0, y0, x1, y1 = math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)
	for i := range t.spots() {
		x, y := l.project(t.spot(i))
		x0, y0, x1, y1 = min(x0, x), min(y0, y), max(x1, x), max(y1, y)
	}
	return x0, y0, x1, y1
}

// seatTool lays the instrument on the slab. The seated edge keeps to the slab
// whatever the swing, and the plate touches the rock without cutting it
// whatever the roll.
func seatTool(sc *scene) tool {
	o := &sc.p.Pose
	t := tool{fwd: o.Frame.Forward, right: o.Frame.Right, up: o.Frame.Out, seated: o.Seated}
	y := support(o.Seat, o.Seated)
	t.offA, t.offB = place(sc, o.Seat)
	if off := sc.p.Off; off.Share > 0 {
		a, b := place(sc, off.Seat)
		t.offA, t.offB = lerp(t.offA, a, off.Share), lerp(t.offB, b, off.Share)
		y = lerp(y, support(off.Seat, off.Seated), off.Share)
	}
	if o.Seat == sim.OnLid {
		t.openLid(sc)
		return t
	}
	// The edge of the back and the edge of the face are both candidates: the one
	// that lies lower on the rock is the one that touches.
	z := 0.0
	if dot(t.up, sc.N) < 0 {
		z = plateThick
	}
	t.corner = sub(sc.on(t.offA, t.offB, 0), sub(t.at(plateLong/2, y, z), t.corner))
	lowest := math.Inf(1)
	for i := range 8 {
		_, _, n := sc.coords(t.spot(i))
		lowest = min(lowest, n)
	}
	t.corner = sub(t.corner, mul(lowest, sc.N))
	t.edge = [2]orient.Vec{t.at(0, y, z), t.at(plateLong, y, z)}
	t.low = mix(t.edge[0], t.edge[1], 0.5).Z
	return t
}

// support is how far from the left edge the line lies on which the plate stands.
func support(s sim.Seat, side sim.Side) float64 {
	switch {
	case s == sim.OnBack || s == sim.OnLid:
		return plateWide / 2
	case side == sim.RightSide:
		return plateWide
	}
	return 0
}

// place is where the middle of the seated edge lies: in the upper half with
// room beyond for the plate, kept back from the rim at every swing.
func place(sc *scene, seat sim.Seat) (a, b float64) {
	f := sc.p.Pose.Frame.Forward
	half := plateLong / 2
	mostA := max(0, rock.HalfA-1.0-half*math.Abs(dot(f, sc.S)))
	mostB := max(0, rock.HalfB-1.1-half*math.Abs(dot(f, sc.D)))
	a, b = 2.5, -5.4
	switch seat {
	case sim.OnSide:
		a, b = -1.5, -0.6
	case sim.OnBack:
		a, b = 1, -1
	case sim.OnLid:
		a, b = 0, 0.8 // the hinge plate reaches out behind
	case sim.OnEdge:
	}
	return max(-mostA, min(mostA, a)), max(-mostB, min(mostB, b))
}
