package stage

import (
	"math"

	"cuesta/orient"
	"cuesta/scenes/draw"
	"cuesta/scenes/stage/rock"
	"cuesta/scenes/theme"
)

// The ball: its radius, and where down the dip it is let go and comes to rest,
// at the stop on the lower rim, in cm.
const (
	ballRadius = 1.5
	ballFrom   = -8.2
	ballTo     = rock.HalfB - ballRadius
)

// gravity in cm/s², the standard value (ISO 80000-3).
const gravity = 980.665

// BallRoll is how far, in cm, a solid ball has rolled down a bed of the dip t
// seconds after it was let go, without slipping: half of 5/7·g·sin(dip)·t², the
// textbook result for a solid sphere; it stops at the rim. On a level bed it
// stays.
func BallRoll(dip orient.Angle, t float64) float64 {
	return min(ballTo-ballFrom, 0.5*5/7*gravity*dip.Sin()*t*t)
}

// BallRests says whether the ball has come to the rim, or will not roll.
func BallRests(dip orient.Angle, t float64) bool {
	return dip < levelDip || BallRoll(dip, t) >= ballTo-ballFrom
}

// ballAt is the middle of the ball, and how far down the dip it lies.
func (sc *scene) ballAt() (orient.Vec, float64) {
	b := ballFrom + BallRoll(sc.p.Plane.Dip, sc.p.Reveal.BallTime)
	return sc.on(sc.ballA(), b, ballRadius), b
}

// ballA is where along the strike it rolls: away from the arrow and clear of the
// instrument.
func (sc *scene) ballA() float64 {
	if sc.p.Bare {
		return 2.5
	}
	if sc.arrowA < 0 {
		return 10.6
	}
	return -10.6
}

func (sc *scene) ballUnderWater() bool {
	if !sc.p.Reveal.Ball || !sc.water.on {
		return false
	}
	p, _ := sc.ballAt()
	return p.Z < sc.water.level
}

// ballInFront says whether the ball is nearer to the eye than the instrument.
func (sc *scene) ballInFront() bool {
	if !sc.p.Reveal.Ball || sc.p.Bare {
		return true
	}
	p, _ := sc.ballAt()
	return dot(sub(p, sc.tool.middle()), sc.lens.ahead) < 0
}

// ballPicture is the ball, baked.
type ballPicture struct {
	theme   *theme.Theme
	px      float64
	texture *draw.Texture
}

// drawBall paints the way the ball has come, its shadow and the ball.
func (st *Stage) drawBall(sc *scene) {
	if !sc.p.Reveal.Ball {
		return
	}
	at, b := sc.ballAt()
	st.drawBallTrack(sc, b)
	st.drawBallShadow(sc, at)
	x, y := sc.lens.project(at)
	rx, ry := sc.lens.project(add(at, mul(ballRadius, sc.lens.right)))
	r := length2(rx-x, ry-y)
	px := math.Ceil(r/8) * 8
	if st.ball.texture == nil || st.ball.theme != sc.th || st.ball.px != px {
		st.version++
		st.ball = ballPicture{sc.th, px, bakeBall(sc.th, px)}
		st.ball.texture.Version = st.version
	}
	k := r / px
	side := k * float64(st.ball.texture.W)
	sc.list.Sprite(st.ball.texture, x-side/2, y-side/2, k, 1)
}

// drawBallTrack is the straight line from where it was let go.
func (st *Stage) drawBallTrack(sc *scene, b float64) {
	if b-ballFrom < 0.2 {
		return
	}
	l := sc.open(st.lines)
	a := sc.ballA()
	l.cased(sc.on(a, ballFrom, 0), sc.on(a, b, 0), sc.px(2.5), sc.px(1.25), colour(sc.th.WaterInk, 1, 1), colour(sc.th.WaterCase, 1, 1))
	l.pen.Done()
}

func (st *Stage) drawBallShadow(sc *scene, at orient.Vec) {
	k := dot(sc.light, sc.N)
	if sc.th.Flat || k < 0.05 {
		return
	}
	b := sc.open(nil)
	sc.clipToTop(&b, 0.1)
	s := blot{sheet: sheet{o: sc.top, x: sc.S, y: sc.D}, close: 0.1}
	// The outline of a sphere seen from the light is a circle square to it.
	u := orient.Unit(cross(sc.light, sc.N))
	v := cross(sc.light, u)
	for i := range 16 {
		sin, cos := math.Sincos(float64(i) * math.Pi / 8)
		s.cast(add(at, add(mul(ballRadius*cos, u), mul(ballRadius*sin, v))), sc.light, sc.N, 0.2)
	}
	s.wrap()
	s.fill(&b, colour(sc.th.RockShadow, 1, 0.5*ease(0.05, 0.3, k)), false)
	b.pen.Done()
}

// bakeBall is a ball of cork, lit from the upper left; flat themes have a plain
// disc with a thick outline.
func bakeBall(th *theme.Theme, r float64) *draw.Texture {
	c := math.Ceil(r) + 2
	l := &draw.List{W: 2 * c, H: 2 * c}
	disc := draw.Circle(c, c, r)
	if th.Flat {
		l.Fill(disc, th.Edge)
		l.Stroke(draw.Circle(c, c, r-0.06*r), draw.Stroke{Width: 0.12 * r, Color: th.Ink})
		l.Stroke(draw.Circle(c, c, 0.45*r), draw.Stroke{Width: 0.1 * r, Color: th.Ink})
	} else {
		lit := draw.Point{X: c - 0.38*r, Y: c - 0.42*r}
		l.FillWith(draw.Fill{Path: disc, Color: draw.Color{R: 0xF2, G: 0xE9, B: 0xD4, A: 255}, Gradient: draw.Gradient{
			Kind: draw.Radial, A: lit, B: draw.Point{X: lit.X + 1.55*r, Y: lit.Y}, To: draw.Color{R: 0x6E, G: 0x55, B: 0x36, A: 255}}})
		l.Stroke(draw.Circle(c, c, r-0.02*r), draw.Stroke{Width: 0.04 * r, Color: draw.Color{R: 0x4A, G: 0x38, B: 0x24, A: 255}})
	}
	return &draw.Texture{W: int(2 * c), H: int(2 * c), List: l}
}
