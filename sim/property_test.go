package sim

import (
	"errors"
	"math"
	"testing"

	"pgregory.net/rapid"

	"cuesta/orient"
)

// anyCommand draws a command that a student could give, sensible or not.
func anyCommand(t *rapid.T) Command {
	c := Command{Kind: rapid.SampledFrom([]Kind{Idle, Place, Swing, Roll, Arm, Flip, Ring, Tap, Lock, Free, Read, Calibrate}).Draw(t, "kind")}
	if c.Kind.Turns() {
		c.Angle = drawAngle(t, -360, 360, "angle")
	}
	c.Seat = Seat(rapid.IntRange(0, seats-1).Draw(t, "seat"))
	return c
}

// anywhere is a bench on any plane, flat and upright ones included.
func anywhere(t *rapid.T) *World {
	dip := rapid.OneOf(rapid.Float64Range(0, 90), rapid.SampledFrom([]float64{0, 90})).Draw(t, "dip")
	w, err := New(Setup{
		Seed:  rapid.Uint64().Draw(t, "seed"),
		Plane: orient.PlaneOf(drawAngle(t, 0, 359, "strike"), orient.Angle(dip)*deg),
		Tool:  Complete,
	})
	if err != nil {
		t.Fatal(err)
	}
	return w
}

func dot(u, v orient.Vec) float64 { return u.X*v.X + u.Y*v.Y + u.Z*v.Z }

// Whatever is done: the body stays a rigid right-handed frame, it never cuts
// into the rock, and every figure shown is a number in its range.
func TestNothingBreaksTheBench(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w := anywhere(t)
		for range rapid.IntRange(1, 25).Draw(t, "commands") {
			err := w.Do(anyCommand(t))
			if err != nil && err != ErrNotOnSide && err != ErrFlat && err != ErrNotFlat {
				t.Fatal(err)
			}
			w.Advance(rapid.IntRange(0, 200).Draw(t, "ticks"))
			checkSound(t, w)
		}
	})
}

func checkSound(t *rapid.T, w *World) {
	o := w.Observe()
	f := o.Frame
	for _, d := range []float64{
		dot(f.Forward, f.Forward) - 1, dot(f.Right, f.Right) - 1, dot(f.Out, f.Out) - 1,
		dot(f.Forward, f.Right), dot(f.Right, f.Out), dot(f.Out, f.Forward),
		f.Right.X*f.Forward.Y - f.Right.Y*f.Forward.X - f.Out.Z, // r × f = b, upwards part
	} {
		if !(math.Abs(d) < 1e-9) {
			t.Fatalf("not a frame along the rock: off by %v: %+v", d, f)
		}
	}
	lift, reach := dot(f.Forward, w.rock.normal), dot(f.Right, w.rock.normal)*w.stance.hand().Radians()
	if lift < -1e-9 || o.Seat != OnLid && lift > 1e-9 {
		t.Fatalf("the forward end lies %v off the rock: %+v", lift, w.stance)
	}
	if reach < -1e-9 {
		t.Fatalf("the plate cuts into the rock: %v, %+v", reach, w.stance)
	}
	if !(math.Hypot(o.Round.Right, o.Round.Forward) <= 1.42+1e-9) || !(math.Abs(o.Tube.Off) <= 10.05/5.6+1e-9) {
		t.Fatalf("a bubble has left its vial: %+v, %+v", o.Round, o.Tube)
	}
	if !(o.Dial.North >= 0 && o.Dial.North.Angle() < orient.Full) || !(o.Dial.Needle.Abs() <= orient.Half) {
		t.Fatalf("dial: %+v", o.Dial)
	}
	if s := o.Sensor; !(s.Direction >= 0 && s.Direction.Angle() < orient.Full && s.Dip >= 0 && s.Dip <= orient.Half) {
		t.Fatalf("sensor: %+v", s)
	}
	if !(o.Arc.Arm >= 0 && o.Arc.Arm <= orient.Right) || !(o.Arc.Percent >= 0) {
		t.Fatalf("arc: %+v", o.Arc)
	}
	p := w.Pose()
	for s, r := range p.Roll {
		if !(r >= 0 && r <= orient.Half) {
			t.Fatalf("seat %d: the plate is %v° above the rock", s, r.Degrees())
		}
	}
}

func TestAdvanceIsManySteps(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w := anywhere(t)
		v, err := New(w.Setup())
		if err != nil {
			t.Fatal(err)
		}
		for range rapid.IntRange(1, 5).Draw(t, "commands") {
			c := anyCommand(t)
			if e, f := w.Do(c), v.Do(c); e != f {
				t.Fatalf("%v and %v", e, f)
			}
			n := rapid.IntRange(-5, 4000).Draw(t, "ticks")
			w.Advance(n)
			for range n {
				v.Step()
			}
			if w.Tick() != v.Tick() || w.Hash() != v.Hash() {
				t.Fatalf("after %d ticks: tick %d and %d, hash %x and %x", n, w.Tick(), v.Tick(), w.Hash(), v.Hash())
			}
		}
	})
}

func TestFreshBenchIsOffBothWays(t *testing.T) {
	for _, dip := range []float64{0, 5, 30, 85, 90} {
		var far, turned int
		for seed := range uint64(400) {
			w, err := New(Setup{Seed: seed, Plane: orient.PlaneOf(35*deg, orient.Angle(dip)*deg)})
			if err != nil {
				t.Fatal(err)
			}
			o, φ := w.Observe(), w.Pose().Swing.Abs()
			if φ > orient.Right {
				φ = orient.Half - φ
				turned++
			}
			if φ < 8*deg-1e-9 || φ > 50*deg+1e-9 {
				t.Fatalf("dip %v°, seed %d: the edge lies %v° off the strike line", dip, seed, φ.Degrees())
			}
			if off := (w.stance.edge - w.rock.level(w.stance)).Abs(); off < 5*deg-1e-9 || off > 25*deg+1e-9 {
				t.Fatalf("dip %v°, seed %d: the plate is %v° off level", dip, seed, off.Degrees())
			}
			if o.Seat != OnEdge || o.Tick != 0 || o.Round.Centred || o.Touching {
				t.Fatalf("dip %v°, seed %d: %+v", dip, seed, o)
			}
			if o.Round.AtWall {
				far++
			}
		}
		if turned < 120 || turned > 280 || far < 390 {
			t.Errorf("dip %v°: %d of 400 start at the other end, %d with the bubble at the wall", dip, turned, far)
		}
	}
}

// Turned end for end a level plate stays level, and twice is as before.
func TestFlip(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w := anywhere(t)
		if rapid.Bool().Draw(t, "on its side") {
			must(t, w, Command{Kind: Place, Seat: OnSide})
		}
		must(t, w, swing(drawAngle(t, -360, 360, "swing")), roll(drawAngle(t, -90, 90, "roll")))
		before := w.Observe().Frame
		must(t, w, Command{Kind: Flip})
		once := w.Observe().Frame
		must(t, w, Command{Kind: Flip})
		twice := w.Observe().Frame
		for _, d := range []float64{
			dot(before.Forward, once.Forward) + 1, dot(before.Out, once.Out) - 1,
			dot(before.Forward, twice.Forward) - 1, dot(before.Right, twice.Right) - 1,
		} {
			if math.Abs(d) > 1e-9 {
				t.Fatalf("off by %v: %+v, %+v, %+v", d, before, once, twice)
			}
		}
	})
}

func TestSeatsKeepTheSwingAndTheirOwnRoll(t *testing.T) {
	w := bench(t, 35, 30)
	levelAt(t, w, 0)
	do(t, w, roll(3*deg), swing(12*deg))
	edge := w.Pose()
	do(t, w, Command{Kind: Place, Seat: OnSide})
	side := w.Pose()
	if side.Swing != edge.Swing || w.Observe().Lean != 0 {
		t.Errorf("on its side: swing %v°, lean %v°", side.Swing.Degrees(), w.Observe().Lean.Degrees())
	}
	do(t, w, roll(-10*deg), swing(78*deg))
	if got := w.Observe().Lean; (got - -10*deg).Abs() > 1e-9 {
		t.Errorf("the hand does not keep its lean: %v°", got.Degrees())
	}
	do(t, w, Command{Kind: Place, Seat: OnEdge}, swing(-78*deg))
	if got := w.Pose(); (got.Roll[OnEdge]-edge.Roll[OnEdge]).Abs() > 1e-12 || (got.Swing-edge.Swing).Abs() > 1e-12 {
		t.Errorf("back on its edge: got %+v, want %+v", got, edge)
	}
	do(t, w, Command{Kind: Place, Seat: OnSide})
	if got := w.Observe().Lean; (got - -10*deg).Abs() > 1e-9 {
		t.Errorf("on its side again: lean %v°", got.Degrees())
	}
}

// The body always reaches out over the falling side, and on its side stands on
// the edge from which the arm reads a positive angle.
func TestSeatedEdge(t *testing.T) {
	for _, c := range []struct {
		swing      float64
		edge, side Side
	}{
		{1, Left, Left}, {89, Left, Left}, {91, RightSide, Left}, {179, RightSide, Left},
		{-1, Left, RightSide}, {-89, Left, RightSide}, {-91, RightSide, RightSide}, {-179, RightSide, RightSide},
	} {
		w := bench(t, 35, 30)
		levelAt(t, w, orient.Angle(c.swing)*deg)
		if got := w.Observe().Seated; got != c.edge {
			t.Errorf("%v° on edge: got %v, want %v", c.swing, got, c.edge)
		}
		if c.edge == Left && w.Pose().Roll[OnEdge] < 0 {
			t.Errorf("%v°: level plate in the rock", c.swing)
		}
		do(t, w, Command{Kind: Place, Seat: OnSide})
		if got := w.Observe().Seated; got != c.side {
			t.Errorf("%v° on side: got %v, want %v", c.swing, got, c.side)
		}
	}
}

func TestRollStopsAtTheRock(t *testing.T) {
	for _, c := range []struct {
		seat Seat
		turn orient.Angle
		want orient.Angle
	}{
		{OnEdge, 200 * deg, 0}, {OnEdge, -200 * deg, orient.Half},
		{OnSide, 200 * deg, 0}, {OnSide, -200 * deg, orient.Half},
	} {
		w := bench(t, 35, 30)
		levelAt(t, w, 20*deg)
		do(t, w, Command{Kind: Place, Seat: c.seat})
		if w.Observe().Touching {
			t.Errorf("%v: touches the rock at the start", c.seat)
		}
		do(t, w, roll(c.turn))
		if got := w.Pose().Roll[c.seat]; (got-c.want).Abs() > 1e-12 || !w.Observe().Touching {
			t.Errorf("%v rolled by %v°: %v° above the rock, touching %v", c.seat, c.turn.Degrees(), got.Degrees(), w.Observe().Touching)
		}
		do(t, w, roll(-c.turn/100))
		if w.Observe().Touching {
			t.Errorf("%v: does not come off the rock", c.seat)
		}
	}
}

func TestReadingIsKeptForEachSeat(t *testing.T) {
	w := bench(t, 35, 30)
	for _, s := range []Seat{OnEdge, OnSide, OnLid, OnBack, 200} {
		if _, ok := w.Reading(s); ok {
			t.Errorf("%v: a reading before any was taken", s)
		}
	}
	do(t, w, Command{Kind: Read})
	w.Advance(50)
	want := w.Observe()
	do(t, w, Command{Kind: Read})
	if r, ok := w.Reading(OnEdge); !ok || r.Shown != want || r.Tick != 50 || r.Swing != w.Pose().Swing {
		t.Errorf("got %+v, %v", r, ok)
	}
	if _, ok := w.Reading(OnSide); ok {
		t.Error("a reading on the side was kept")
	}
}

func TestNotesAreKeptAndBounded(t *testing.T) {
	w := bench(t, 35, 30)
	for range mostNotes {
		do(t, w, Command{Kind: Note, Text: "035/30"})
	}
	if err := w.Do(Command{Kind: Note, Text: "036/30"}); err != ErrNotes {
		t.Errorf("got %v, want %v", err, ErrNotes)
	}
	n := w.Notes()
	n[0] = "changed"
	if got := w.Notes(); len(got) != mostNotes || got[0] != "035/30" {
		t.Errorf("%d notes, the first %q", len(got), got[0])
	}
}

// Everything that can differ shows in the hash.
func TestHashSeesTheWholeState(t *testing.T) {
	seen := map[uint64]string{}
	add := func(name string, w *World) {
		if other, ok := seen[w.Hash()]; ok {
			t.Errorf("%s looks like %s", name, other)
		}
		seen[w.Hash()] = name
	}
	for name, s := range map[string]Setup{
		"zero":       {},
		"seed":       {Seed: 1},
		"strike":     {Plane: orient.PlaneOf(deg, 0)},
		"dip":        {Plane: orient.PlaneOf(0, deg)},
		"overturned": {Plane: orient.Plane{Overturned: true}},
		"field":      {Field: Field{Horizontal: 30e-6}},
		"steep":      {Field: Field{Horizontal: 20e-6, Inclination: deg}},
		"ring":       {Ring: deg},
		"balance":    {Balance: BalancedSouth},
		"tool":       {Tool: Lidded},
	} {
		w, err := New(s)
		if err != nil {
			t.Fatal(err)
		}
		add(name, w)
	}
	for _, c := range []Command{
		swing(deg), roll(deg), {Kind: Place, Seat: OnSide}, {Kind: Place, Seat: OnLid}, {Kind: Place, Seat: OnBack}, {Kind: Ring, Angle: deg}, {Kind: Flip},
		{Kind: Tap}, {Kind: Lock}, {Kind: Read}, {Kind: Note, Text: "a"}, {Kind: Note, Text: "b"},
	} {
		w, err := New(Setup{Plane: orient.PlaneOf(35*deg, 30*deg), Tool: Complete})
		if err != nil {
			t.Fatal(err)
		}
		do(t, w, c)
		add(c.Kind.String()+c.Text, w)
	}
	for name, change := range map[string]func(w *World){
		"a step":       (*World).Step,
		"round right":  func(w *World) { w.round.spot.Right.At++ },
		"round rate":   func(w *World) { w.round.spot.Right.Rate++ },
		"round ahead":  func(w *World) { w.round.spot.Forward.At++ },
		"ahead rate":   func(w *World) { w.round.spot.Forward.Rate++ },
		"tube":         func(w *World) { w.tube.bubble.At++ },
		"tube rate":    func(w *World) { w.tube.bubble.Rate++ },
		"needle":       func(w *World) { w.needle.bearing.At++ },
		"needle rate":  func(w *World) { w.needle.bearing.Rate++ },
		"needle held":  func(w *World) { w.needle.held++ },
		"needle state": func(w *World) { w.needle.state = NeedleFree },
		"known bias":   func(w *World) { w.sensor.known.Y++ },
		"calibrated":   func(w *World) { w.sensor.calibrated = true },
		"hinge":        func(w *World) { w.stance.hinge++ },
		"lean":         func(w *World) { w.stance.lean++ },
		"arm":          func(w *World) { w.stance.arm++ },
	} {
		w := bench(t, 35, 30)
		change(w)
		add(name, w)
	}
}

func TestSetupsThatCannotBe(t *testing.T) {
	nan := orient.Angle(math.NaN())
	for name, s := range map[string]Setup{
		"dip over 90":       {Plane: orient.PlaneOf(0, 91*deg)},
		"dip below 0":       {Plane: orient.PlaneOf(0, -deg)},
		"dip NaN":           {Plane: orient.Plane{Dip: nan}},
		"strike of 360":     {Plane: orient.Plane{Strike: orient.Azimuth(orient.Full)}},
		"strike NaN":        {Plane: orient.Plane{Strike: orient.Azimuth(nan)}},
		"no pull":           {Field: Field{Declination: deg}},
		"pull in nanotesla": {Field: Field{Horizontal: 20000}},
		"pull NaN":          {Field: Field{Horizontal: math.NaN()}},
		"pull infinite":     {Field: Field{Horizontal: math.Inf(1)}},
		"field upright":     {Field: Field{Horizontal: 1e-6, Inclination: orient.Right}},
		"declination NaN":   {Field: Field{Horizontal: 1e-6, Declination: nan}},
		"ring NaN":          {Ring: nan},
		"ring of a turn":    {Ring: orient.Full},
		"balance":           {Balance: 9},
		"tool":              {Tool: 9},
	} {
		if w, err := New(s); err == nil || w != nil || !isSetup(err) {
			t.Errorf("%s: got %v", name, err)
		}
	}
}

func isSetup(err error) bool { return errors.Is(err, ErrSetup) }
