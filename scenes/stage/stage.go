package stage

import (
	"cuesta/orient"
	"cuesta/scenes/draw"
	"cuesta/scenes/stage/rock"
	"cuesta/scenes/theme"
	"cuesta/sim"
)

// Params is everything one picture of the bench is made from.
type Params struct {
	Rect        draw.Rect // the part of the list that is covered, in px
	Unit        float64   // px in one unit of length, 1 at 1280×720
	TextScale   float64   // size of the letters over Unit; 0 stands for 1
	Theme       *theme.Theme
	Plane       orient.Plane // of the rock
	Pose        sim.Pose
	Observation sim.Observation // needle, bubbles, arm
	Camera      Camera
	Reveal      Overlays
	MuteNeedle  bool         // draws the needle in ink, when it is not being read
	RockSeed    uint64       // the same seed gives the same stone
	Keep        [4]draw.Rect // what else stands in Rect, such as a title: no label covers it
	Coarse      bool         // paints the stone with fewer pixels, for slow machines
	Bare        bool         // leaves the instrument out
	Zoom        Zoom         // a place that is magnified
	Off         Off          // the instrument on its way to where it stands
}

// Off says that the instrument is still on its way from another place: Share, in
// [0, 1], is what of the way is left. The frame is that of Pose, as it is now.
type Off struct {
	Share  float64
	Seat   sim.Seat
	Seated sim.Side
}

// Zoom magnifies the picture K times about a place in it, which stays where it
// is; 0 and 1 are no zoom. All but the grain of the stone is drawn anew, sharp.
type Zoom struct{ K, X, Y float64 }

// Overlays are what explains the answer, each switched by itself.
type Overlays struct {
	Strike   bool    // the level line on the rock
	Arrow    bool    // straight down the dip, with the angle below the level
	Water    bool    // a level sheet that meets the rock along the strike
	Progress float64 // how far the water has risen, 0 to 1
	Hand     bool    // a right hand on the rock: fingers down the dip, thumb along the strike
	Numbers  bool    // strike and dip in figures
	Ends     bool    // the azimuths of both ends of the strike line
	Ball     bool    // a ball that rolls down the dip
	BallTime float64 // for how many seconds it has rolled

	Yours      bool // YoursPlane is drawn in thin lines beside the true one
	YoursPlane orient.Plane
}

// Any says whether anything is switched on.
func (o Overlays) Any() bool {
	return o.Strike || o.Arrow || o.Water || o.Hand || o.Numbers || o.Ends || o.Ball || o.Yours
}

// Stage draws the bench. It keeps what does not change from picture to
// picture; use one Stage for one window. It is not safe for use by several
// goroutines at once.
type Stage struct {
	lines   *draw.Texture
	version uint64
	back    backdrop
	stone   stone
	kits    [2]kit // for the whole bench, and for the close view
	kit     *kit   // the one in use
	hand    hand
	labels  labels
	letters [4]letter
	ball    ballPicture
	sc      scene
}

// New returns a stage with nothing painted yet.
func New() *Stage { return &Stage{lines: profiles()} }

// Draw adds the picture to the list, as a region that covers Rect. It
// allocates nothing while theme, sizes, stone and numbers stay the same.
func (st *Stage) Draw(l *draw.List, p Params) {
	sc := &st.sc
	sc.set(l, p)
	st.prepareStone(sc)
	st.prepareKit(sc)
	l.Region(p.Rect)
	st.drawBackdrop(sc)
	st.drawRing(sc)
	st.drawGroundShadow(sc)
	st.drawStand(sc)
	st.drawSlab(sc)
	if !p.Bare {
		st.drawToolShadow(sc)
	}
	if sc.seesSide(rock.Down) {
		st.drawShoe(sc)
	}
	st.drawExplained(sc)
}

// InstrumentBounds is the box around the instrument in the last picture.
func (st *Stage) InstrumentBounds() draw.Rect {
	x0, y0, x1, y1 := st.sc.tool.box(&st.sc.lens)
	return draw.Rect{X: x0, Y: y0, W: x1 - x0, H: y1 - y0}
}

func (sc *scene) textScale() float64 {
	if sc.p.TextScale == 0 {
		return 1
	}
	return sc.p.TextScale
}
