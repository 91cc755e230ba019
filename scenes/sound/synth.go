package sound

import "math"

// Rate is the number of samples a second, for each ear.
const Rate = 48000

// The bounds that all samples keep, at any volume and over any change of state.
const (
	Peak    = 0.5  // −6 dB of full scale
	MaxStep = 0.05 // between a sample and the next of the same ear: no click
)

// The parts of the peak. The two notes never sound together, and the chord
// comes as they go.
const (
	noteLoud  = .20
	firstLoud = .06
	chordLoud = .16
)

// Synth turns states into samples. The zero value is silent and has no state
// yet. The samples follow from the states and the number of samples asked for,
// and from nothing else.
type Synth struct {
	volume        glide
	notes, chord  glide // how much of each
	left, right   glide // share of the note of the bubble in each ear
	pitch         glide
	pairs, loud   glide
	hollow, third glide // of the note at the wall, of the chord of the tube
	pair          cycle
	note, first   cycle
	chords        [3]cycle
	needle        ticker
	events        events
}

// Render fills dst with pairs of samples, left and right, in [−Peak, Peak], for
// the state s. An odd last place is left alone.
func (y *Synth) Render(dst []float32, s State) {
	y.aim(s)
	for i := 0; i+1 < len(dst); i += 2 {
		l, r := y.next()
		dst[i], dst[i+1] = float32(l), float32(r)
	}
}

// aim sets what the sounds are to become.
func (y *Synth) aim(s State) {
	y.volume.want = max(0, within(s.Volume))
	y.notes.want, y.chord.want = 0, 0
	switch {
	case s.Level == NoLevel:
	case s.Centred:
		y.chord.want = 1
	default:
		y.notes.want = 1
	}
	if s.Level != NoLevel {
		y.point(s)
	}
	y.needle.aim(s)
	y.events.hear(s)
}

// point sets the note of the bubble: at once where it was not heard before.
func (y *Synth) point(s State) {
	y.right.want, y.left.want = math.Sincos((s.Pan() + 1) * math.Pi / 4)
	y.pitch.want = s.Pitch()
	y.pairs.want, y.loud.want = s.Pairs(), s.Loudness()
	y.hollow.want, y.third.want = 0, 0
	if s.AtWall {
		y.hollow.want = .2
	}
	if s.Level == TubeLevel {
		y.third.want = 1
	}
	if y.notes.at == 0 {
		for _, g := range []*glide{&y.left, &y.right, &y.pitch, &y.pairs, &y.loud, &y.hollow} {
			g.at = g.want
		}
		y.pair = 0
	}
	if y.chord.at == 0 {
		y.third.at = y.third.want
	}
}

// silent says that nothing sounds and nothing will before the next state.
func (y *Synth) silent() bool { return y.volume.silent() }

// settle lets what sounded before the volume went off not come back.
func (y *Synth) settle() {
	y.notes.at, y.chord.at = 0, 0
	y.needle.settle()
	y.events.settle()
}

func (y *Synth) next() (left, right float64) {
	if y.silent() {
		y.settle()
		return 0, 0
	}
	v := y.volume.next()
	l, r := y.bubble()
	m := y.middle() + y.needle.next() + y.events.next()
	return v * (l + m), v * (r + m)
}

// bubble is the second note of the pair, from where the bubble is.
func (y *Synth) bubble() (left, right float64) {
	if y.notes.silent() {
		return 0, 0
	}
	n, l, r := y.notes.next(), y.left.next(), y.right.next()
	at := y.pair.next(y.pairs.next())
	x := noteLoud * n * y.loud.next() * gate(at, .32, .97, .08)
	phase, hollow := y.note.next(y.pitch.next()), y.hollow.next()
	if x == 0 {
		return 0, 0
	}
	x *= wave(phase, .25, hollow)
	return x * l, x * r
}

// middle is what comes from the middle: the first note of the pair, which is
// that of a level instrument, and the chord.
func (y *Synth) middle() float64 {
	x := 0.0
	if y.notes.at > 0 {
		x += firstLoud * y.notes.at * gate(float64(y.pair), 0, .26, .08) * wave(y.first.next(Levelled), 0, 0)
	}
	if !y.chord.silent() {
		c, third := y.chord.next(), y.third.next()
		x += chordLoud * c / 3 * (wave(y.chords[0].next(Levelled), 0, 0) + wave(y.chords[1].next(Levelled*3/2), 0, 0) +
			third*wave(y.chords[2].next(Levelled*5/4), 0, 0))
	}
	return x
}
