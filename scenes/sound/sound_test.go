package sound_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"cuesta/orient"
	"cuesta/scenes/sound"
)

func bubble(right, forward float64) sound.State {
	return sound.State{Volume: 1, Level: sound.RoundLevel, Right: right, Forward: forward}
}

func TestWhatIsHeard(t *testing.T) {
	tests := []struct {
		s                       sound.State
		pan, pitch, pairs, loud float64
	}{
		{bubble(0, 0), 0, 440, 1.5, .6},
		{bubble(1, 0), 1, 440, 4.5, 1},
		{bubble(-1, 0), -1, 440, 4.5, 1},
		{bubble(0, 1), 0, 880, 4.5, 1},
		{bubble(0, -1), 0, 220, 4.5, 1},
		{bubble(7, -7), 1, 220, 4.5, 1},
		{bubble(math.NaN(), math.Inf(1)), 0, 880, 4.5, 1},
		{sound.State{Volume: 1, Level: sound.TubeLevel, Right: .5, Forward: .5}, math.Asinh(3) / math.Asinh(6), 440 * math.Exp2(math.Asinh(3)/math.Asinh(6)), 3, .8},
	}
	for _, tt := range tests {
		got := []float64{tt.s.Pan(), tt.s.Pitch(), tt.s.Pairs(), tt.s.Loudness()}
		want := []float64{tt.pan, tt.pitch, tt.pairs, tt.loud}
		for i := range got {
			if math.Abs(got[i]-want[i]) > 1e-9 {
				t.Errorf("%+v: pan, pitch, pairs, loudness %v, want %v", tt.s, got, want)
				break
			}
		}
	}
}

func TestTicksOfTheNeedle(t *testing.T) {
	tests := []struct {
		needle sound.Needle
		speed  orient.Angle
		want   float64
	}{
		{sound.NoNeedle, 90 * orient.Degree, 0},
		{sound.Resting, 0, 0},
		{sound.Rubbing, 0, .7},
		{sound.Swinging, 0, .8},
		{sound.Swinging, 24 * orient.Degree, 2.8},
		{sound.Swinging, 720 * orient.Degree, 9},
	}
	for _, tt := range tests {
		s := sound.State{Needle: tt.needle, Speed: tt.speed}
		if got := s.Ticks(); math.Abs(got-tt.want) > 1e-9 {
			t.Errorf("%+v: %g ticks a second, want %g", s, got, tt.want)
		}
	}
}

// Measured on the samples, the bubble is found again: the balance of the ears
// goes with right, the strongest note with forward, the loudness with the
// distance.
func TestTheSamplesFollowTheBubble(t *testing.T) {
	places := []float64{-1, -.7, -.4, -.2, -.1, 0, .1, .2, .4, .7, 1}
	last := heard{pitch: 0}
	lastPan := -2.0
	for _, x := range places {
		h := measure(playFor(4*window, &sound.Synth{}, bubble(x, .1)))
		if h.pan() <= lastPan {
			t.Errorf("right %g: balance %.3f, not above %.3f", x, h.pan(), lastPan)
		}
		lastPan = h.pan()
		h = measure(play(&sound.Synth{}, bubble(.1, x)))
		if h.pitch <= last.pitch {
			t.Errorf("forward %g: note %.0f Hz, not above %.0f Hz", x, h.pitch, last.pitch)
		}
		if want := bubble(.1, x).Pitch(); math.Abs(h.pitch-want) > 4 {
			t.Errorf("forward %g: note %.0f Hz, want %.1f Hz", x, h.pitch, want)
		}
		last = h
	}
	lastLoud := 0.0
	for _, x := range []float64{.1, .3, .5, .7, .9, 1} {
		loud, _ := peakAndStep(play(&sound.Synth{}, bubble(x, 0)), &[2]float32{})
		if loud <= lastLoud {
			t.Errorf("%g off: loudness %.4f, not above %.4f", x, loud, lastLoud)
		}
		lastLoud = loud
	}
}

// The chord of a centred bubble is a just fifth, 3:2, heard nowhere else.
func TestTheChordIsHeardOnlyWhenCentred(t *testing.T) {
	centred := bubble(.1, .1)
	centred.Centred = true
	if h := measure(play(&sound.Synth{}, centred)); h.chord < .8 || math.Abs(h.pan()) > 1e-6 {
		t.Errorf("centred: chord %.2f, balance %.3f; want about 1 and 0", h.chord, h.pan())
	}
	for _, s := range []sound.State{bubble(.3, 0), bubble(-.5, -.5), bubble(0, 1), bubble(.2, .1)} {
		if h := measure(play(&sound.Synth{}, s)); h.chord > .3 {
			t.Errorf("%+v: chord %.2f, want none", s, h.chord)
		}
	}
}

// A wild hand: no sample above the peak, and no click, whatever follows
// whatever.
func TestNoClipAndNoClick(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 1))
	var y sound.Synth
	var prev [2]float32
	var peak, step float64
	s := sound.State{Volume: 1}
	for range 1500 {
		s = sound.State{
			Volume: [...]float64{0, .25, .5, 1, 1, 1, 1}[r.IntN(7)], Level: sound.Level(r.IntN(3)),
			Right: 2*r.Float64() - 1, Forward: 2*r.Float64() - 1, Centred: r.IntN(3) == 0, AtWall: r.IntN(2) == 0,
			Needle: sound.Needle(r.IntN(4)), Speed: orient.Angle(r.Float64()) * 10,
			Taps: s.Taps + r.IntN(2), Turns: s.Turns + r.IntN(2), Contacts: s.Contacts + r.IntN(2),
		}
		dst := make([]float32, 2*(1+r.IntN(2400)))
		y.Render(dst, s)
		p, d := peakAndStep(dst, &prev)
		peak, step = max(peak, p), max(step, d)
	}
	if peak > sound.Peak {
		t.Errorf("largest sample %.3f, want at most %.3f", peak, sound.Peak)
	}
	if step > sound.MaxStep {
		t.Errorf("largest step %.4f, want at most %.4f", step, sound.MaxStep)
	}
	t.Logf("largest sample %.3f, largest step %.4f", peak, step)
}

// A plain tone at the bound of the step is no click; the bound must still be
// well below what a sudden end of the loudest note would make.
func TestTheStepBoundFindsAClick(t *testing.T) {
	var y sound.Synth
	dst := play(&y, bubble(1, 0))
	var prev [2]float32
	loudest := slices.Index(dst, slices.Max(dst))
	cut := slices.Clone(dst[:loudest+4])
	for i := loudest + 1; i < len(cut); i++ {
		cut[i] = 0
	}
	if _, step := peakAndStep(cut, &prev); step < 2*sound.MaxStep {
		t.Errorf("a cut note makes a step of %.3f; the bound %.3f would not find it", step, sound.MaxStep)
	}
}

func TestSilenceIsZero(t *testing.T) {
	var y sound.Synth
	quiet := func(name string, s sound.State) {
		t.Helper()
		dst := make([]float32, sound.Rate/2)
		y.Render(dst, s)
		for i, v := range dst {
			if v != 0 {
				t.Errorf("%s: sample %d is %g", name, i, v)
				return
			}
		}
	}
	quiet("at first", sound.State{})
	quiet("loud, but nothing to hear", sound.State{Volume: 1})
	s := bubble(.5, .5)
	s.Needle = sound.Swinging
	if h := measure(play(&y, s)); h.loud() == 0 {
		t.Error("a bubble is not heard")
	}
	s.Volume = 0
	y.Render(make([]float32, 2*sound.Rate), s) // the last note dies away
	quiet("switched off", s)
	s.Taps++
	quiet("tapped while off", s)
	s.Volume, s.Level, s.Needle = 1, sound.NoLevel, sound.NoNeedle
	quiet("on again: what happened while it was off is past", s)
}

func TestVolume(t *testing.T) {
	full := measure(play(&sound.Synth{}, bubble(.5, .2))).loud()
	for _, v := range []float64{.25, .5, 1} {
		s := bubble(.5, .2)
		s.Volume = v
		if got := measure(play(&sound.Synth{}, s)).loud() / full; math.Abs(got-v) > .01*v {
			t.Errorf("volume %g: %.4f of the full loudness", v, got)
		}
	}
}

// Cutting the samples into pieces of another length changes nothing.
func TestPiecesMakeTheSameWhole(t *testing.T) {
	s := bubble(-.4, .3)
	s.Needle, s.Speed = sound.Swinging, 1
	whole, pieces := make([]float32, 9600), make([]float32, 0, 9600)
	var a, b sound.Synth
	a.Render(whole, s)
	for _, n := range []int{2, 398, 4000, 5200} {
		p := make([]float32, n)
		b.Render(p, s)
		pieces = append(pieces, p...)
	}
	if !slices.Equal(whole, pieces) {
		t.Error("the samples differ")
	}
}

// crossings counts how often the loudness of short stretches rises above a
// level: the ticks of the needle.
func crossings(samples []float32, level float64) int {
	const stretch = 2 * sound.Rate / 200
	n, above := 0, false
	for i := 0; i+stretch <= len(samples); i += stretch {
		p, _ := peakAndStep(samples[i:i+stretch], &[2]float32{})
		if p > level && !above {
			n++
		}
		above = p > level
	}
	return n
}

func TestTheNeedleTicksSlowerAndRings(t *testing.T) {
	var y sound.Synth
	last := 99
	s := sound.State{Volume: 1, Needle: sound.Swinging}
	for _, speed := range []orient.Angle{90, 40, 15, 3} {
		s.Speed = speed * orient.Degree
		dst := make([]float32, 2*3*sound.Rate)
		y.Render(dst, s)
		n := crossings(dst, .02)
		if n >= last || n == 0 {
			t.Errorf("at %g° a second: %d ticks in 3 s, want fewer than %d and some", speed, n, last)
		}
		last = n
	}
	s.Needle, s.Speed = sound.Resting, 0
	dst := make([]float32, sound.Rate)
	y.Render(dst, s)
	if h := measure(dst); math.Abs(h.pitch-660) > 2 {
		t.Errorf("at rest the strongest note is %g Hz, want the bell at 660 Hz", h.pitch)
	}
	y.Render(make([]float32, 8*sound.Rate), s)
	y.Render(dst, s)
	if p, _ := peakAndStep(dst, &[2]float32{}); p != 0 {
		t.Errorf("a needle long at rest is heard: %g", p)
	}
}

func ExampleSynth() {
	var y sound.Synth
	samples := make([]float32, 2*sound.Rate/10) // a tenth of a second, two ears
	y.Render(samples, sound.State{Volume: 1, Level: sound.RoundLevel, Right: 1})
	var left, right float64
	for i := 0; i < len(samples); i += 2 {
		left, right = left+math.Abs(float64(samples[i])), right+math.Abs(float64(samples[i+1]))
	}
	fmt.Println("comes from the right:", right > left)
	// Output:
	// comes from the right: true
}
