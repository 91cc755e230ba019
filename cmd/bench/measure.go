package main

import (
	crand "crypto/rand"
	"encoding/binary"
	"fmt"
	"io"
	"math"
	"time"

	"cuesta/orient"
	"cuesta/scenes"
	"cuesta/scenes/draw"
	"cuesta/scenes/input"
	"cuesta/scenes/window"
)

// chance is a seed that differs from start to start, short enough to be typed.
func chance() uint64 {
	var b [8]byte
	if _, err := crand.Read(b[:]); err != nil {
		return uint64(time.Now().UnixNano()) % 1e6
	}
	return binary.LittleEndian.Uint64(b[:]) % 1e6
}

// measure prints what frames cost, one "name value" a line.
func measure(o options, out io.Writer) error {
	s, err := measured(o)
	if err != nil {
		return err
	}
	c, err := window.Measure(s, window.Options{W: o.W, H: o.H}, o.Frames)
	if err != nil {
		return err
	}
	ms := func(d time.Duration) float64 { return float64(d) / float64(time.Millisecond) }
	_, err = fmt.Fprintf(out, "empty_ms %.2f\nempty_mean_ms %.2f\nscene_ms %.2f\nscene_mean_ms %.2f\n"+
		"frame_ratio %.3f\nframe_allocs %.1f\nlibrary_allocs %.1f\n",
		ms(c.Empty.Median), ms(c.Empty.Mean), ms(c.Scene.Median), ms(c.Scene.Mean), c.Ratio(), c.Allocs, c.Library)
	return err
}

func measured(o options) (window.Scene, error) {
	if o.Empty {
		return blank{}, nil
	}
	p := orient.PlaneOf(35*orient.Degree, 30*orient.Degree)
	if o.plane == nil {
		o.plane = &p
	}
	b, err := scenes.NewBench(scenes.BenchOptions{Plane: o.plane, Seed: 1})
	if err != nil {
		return nil, err
	}
	return &restless{scene: b}, nil
}

// blank is a scene with nothing in it.
type blank struct{}

func (blank) Update(input.Frame) {}
func (blank) Picture(l *draw.List) {
	l.Region(draw.Rect{W: l.W, H: l.H})
}
func (blank) Close() error { return nil }

// restless is a bench in the hands of someone who never rests: the eye goes
// round the rock in every frame, and the plate is swung time and again, so
// that needle and bubble never settle. Nothing of the real input reaches it.
type restless struct {
	scene    scenes.Scene
	n        int
	presses  []input.Press
	pointers []input.Pointer
}

// Update makes up a frame of input.
func (r *restless) Update(f input.Frame) {
	r.presses, r.pointers = r.presses[:0], r.pointers[:0]
	r.drag(f)
	r.swing()
	r.n++
	r.scene.Update(input.Frame{W: f.W, H: f.H, Scale: f.Scale, Ticks: 2, Presses: r.presses, Pointers: r.pointers})
}

// Picture draws the bench.
func (r *restless) Picture(l *draw.List) { r.scene.Picture(l) }

// Close ends it.
func (r *restless) Close() error { return r.scene.Close() }

// drag moves the eye by a pointer that goes to and fro over the rock's ground.
func (r *restless) drag(f input.Frame) {
	at := input.Pointer{Kind: input.PointerMove, X: .1*f.W + 60*math.Sin(float64(r.n)/40), Y: .3 * f.H}
	if r.n == 0 {
		at.Kind = input.PointerDown
	}
	r.pointers = append(r.pointers, at)
}

func (r *restless) swing() {
	if r.n%45 != 0 {
		return
	}
	key := input.Left
	if r.n%90 == 0 {
		key = input.Right
	}
	r.presses = append(r.presses, input.Press{Key: key})
}
