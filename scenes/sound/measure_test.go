package sound_test

import (
	"math"
	"math/cmplx"

	"gonum.org/v1/gonum/dsp/fourier"

	"cuesta/scenes/sound"
)

// window is the number of samples an ear listens to: two fifths of a second.
const window = sound.Rate * 2 / 5

// thin leaves out samples before measuring: one in eight still holds every
// overtone there is, up to 2640 Hz.
const thin = 8

// heard is what a measurement of samples finds, with no knowledge of the state.
type heard struct {
	left, right float64 // effective values
	pitch       float64 // the strongest note in hertz
	chord       float64 // the weaker of the notes at 440 and 660 Hz over the strongest note
}

// play renders two fifths of a second of one state, after a tenth to get there.
func play(y *sound.Synth, s sound.State) []float32 { return playFor(window, y, s) }

func playFor(samples int, y *sound.Synth, s sound.State) []float32 {
	y.Render(make([]float32, 2*sound.Rate/10), s)
	dst := make([]float32, 2*samples)
	y.Render(dst, s)
	return dst
}

func measure(samples []float32) heard {
	var h heard
	mono := make([]float64, len(samples)/2/thin)
	for i := range mono {
		l, r := float64(samples[2*thin*i]), float64(samples[2*thin*i+1])
		h.left, h.right = h.left+l*l, h.right+r*r
		hann := .5 - .5*math.Cos(2*math.Pi*float64(i)/float64(len(mono)))
		mono[i] = hann * (l + r)
	}
	h.left, h.right = math.Sqrt(h.left/float64(len(mono))), math.Sqrt(h.right/float64(len(mono)))
	spectrum := fourier.NewFFT(len(mono)).Coefficients(nil, mono)
	at := func(hertz float64) float64 { // with the beats of the note
		k := int(math.Round(hertz * float64(thin*len(mono)) / sound.Rate))
		sum := 0.0
		for i := k - 2; i <= k+2; i++ {
			a := cmplx.Abs(spectrum[i])
			sum += a * a
		}
		return math.Sqrt(sum)
	}
	best := 0.0
	for f := 200.0; f <= 900; f += 2.5 {
		if a := at(f); a > best {
			best, h.pitch = a, f
		}
	}
	h.chord = min(at(440), at(660)) / (best + 1e-12)
	return h
}

// pan is the balance of the ears, in [−1, 1].
func (h heard) pan() float64 {
	return (h.right*h.right - h.left*h.left) / (h.right*h.right + h.left*h.left + 1e-12)
}

func (h heard) loud() float64 { return math.Hypot(h.left, h.right) }

// peakAndStep are the largest sample and the largest step between neighbours of
// one ear; prev carries over from the last stretch.
func peakAndStep(samples []float32, prev *[2]float32) (peak, step float64) {
	for i, v := range samples {
		peak = max(peak, math.Abs(float64(v)))
		step = max(step, math.Abs(float64(v-prev[i%2])))
		prev[i%2] = v
	}
	return peak, step
}
