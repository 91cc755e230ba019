//go:build !js

package window

import (
	"fmt"
	"strings"
	"testing"
	"time"

	"github.com/hajimehoshi/ebiten/v2"

	"cuesta/scenes/draw"
	"cuesta/scenes/input"
)

// A held key repeats after 400 ms and then 30 times a second.
func TestHeldKeysRepeat(t *testing.T) {
	var k keys
	down := true
	isDown := func(ebiten.Key) bool { return down }
	count := func(ticks int, pressed ...ebiten.Key) (first, again int) {
		for _, p := range k.strokes(nil, pressed, isDown, ticks, 0) {
			if p.Key != input.Left {
				t.Errorf("key %v, want Left", p.Key)
			}
			if p.Repeat {
				again++
			} else {
				first++
			}
		}
		return first, again
	}
	if first, again := count(1, ebiten.KeyArrowLeft); first != 1 || again != 0 {
		t.Fatalf("%d strokes and %d repeats on the way down, want 1 and 0", first, again)
	}
	total := 0
	for tick := 1; tick <= 400*120/1000-1; tick++ {
		_, again := count(1)
		total += again
	}
	if total != 0 {
		t.Errorf("%d repeats before 400 ms, want 0", total)
	}
	for range 120 {
		_, again := count(1)
		total += again
	}
	if total != 30 {
		t.Errorf("%d repeats in the second after 400 ms, want 30", total)
	}
	if _, again := count(120); again != mostRepeats {
		t.Errorf("%d repeats in one slow frame, want %d", again, mostRepeats)
	}
	down = false
	if first, again := count(10); first+again != 0 {
		t.Errorf("%d strokes after the key is up, want 0", first+again)
	}
}

// Where frames take half a second, a tap is seen down in two of them, and is
// still one stroke.
func TestATapOnASlowMachineDoesNotRepeat(t *testing.T) {
	var k keys
	isDown := func(ebiten.Key) bool { return true }
	got := k.strokes(nil, []ebiten.Key{ebiten.KeyTab}, isDown, ticksPerSecond/2, 0)
	got = k.strokes(got, nil, isDown, ticksPerSecond/2, 0)
	got = k.strokes(got, nil, isDown, ticksPerSecond/2, 0)
	if len(got) != 1 {
		t.Errorf("got %v, want one stroke", got)
	}
}

// While one key is held, another that goes down takes over the repeating.
func TestTheLastKeyDownRepeats(t *testing.T) {
	var k keys
	isDown := func(ebiten.Key) bool { return true }
	k.strokes(nil, []ebiten.Key{ebiten.KeyArrowLeft}, isDown, 1, 0)
	k.strokes(nil, []ebiten.Key{ebiten.KeyArrowUp}, isDown, 1, 0)
	for range repeatAfter/mostOfWait - 1 {
		k.strokes(nil, nil, isDown, mostOfWait, input.Shift)
	}
	got := k.strokes(nil, nil, isDown, mostOfWait, input.Shift)
	if len(got) != 1 || got[0] != (input.Press{Key: input.Up, Mods: input.Shift, Repeat: true}) {
		t.Errorf("got %v, want one repeat of Up with Shift", got)
	}
}

// spell writes presses for comparison: a sign, ~ after it for a repeat.
func spell(ps []input.Press) string {
	var b strings.Builder
	for _, p := range ps {
		b.WriteRune(p.Rune)
		if p.Repeat {
			b.WriteByte('~')
		}
		if p.Mods != 0 {
			fmt.Fprintf(&b, "<%d>", p.Mods)
		}
	}
	return b.String()
}

func TestTypedSigns(t *testing.T) {
	tests := []struct {
		name    string
		runes   string
		pressed []bool // in this frame, one entry for each frame
		mods    input.Mods
		want    string
	}{
		{"a sign", "0", []bool{true}, 0, "0"},
		{"two in one frame", "03", []bool{true}, 0, "03"},
		{"the space bar is a key", " 3 ", []bool{true}, 0, "3"},
		{"a sign that comes one frame after its key", "é", []bool{true, false}, 0, "éé"},
		{"held", "t", []bool{true, false, false}, 0, "ttt~"},
		{"Shift is kept", "T", []bool{true}, input.Shift, "T<1>"},
		{"with Control nothing is typed", "z", []bool{true}, input.Ctrl, ""},
		{"the third level is meant as it is", "@", []bool{true}, input.Alt, "@"},
		{"control signs", "\x1b\x7f", []bool{true}, 0, ""},
	}
	for _, tt := range tests {
		var k keys
		var got []input.Press
		for _, pressed := range tt.pressed {
			got = k.typed(got, []rune(tt.runes), pressed, tt.mods)
		}
		if s := spell(got); s != tt.want {
			t.Errorf("%s: %q, want %q", tt.name, s, tt.want)
		}
	}
}

func TestChords(t *testing.T) {
	pressed := []ebiten.Key{ebiten.KeyZ, ebiten.KeyArrowLeft, ebiten.KeyControlLeft}
	if got := spell(chords(nil, pressed, nil, input.Ctrl)); got != "z<2>" {
		t.Errorf("Control and Z: %q, want z with Control", got)
	}
	if got := spell(chords(nil, pressed, []rune("ż"), input.Alt)); got != "" {
		t.Errorf("Alt and a sign of the third level: %q, want nothing besides", got)
	}
}

func TestEveryNamedKeyIsReached(t *testing.T) {
	got := map[input.Key]bool{}
	for _, k := range named {
		got[k] = true
	}
	for k := input.Left; k <= input.F12; k++ {
		if !got[k] {
			t.Errorf("no key on the keyboard gives %d", k)
		}
	}
}

// Ticks add up to 120 a second however frames fall, and a pause is cut short.
func TestClock(t *testing.T) {
	var c clock
	now := time.Unix(1000, 0)
	if n := c.ticks(now); n != 0 {
		t.Errorf("%d ticks in the first frame, want 0", n)
	}
	total := 0
	for range 600 { // 10 s of frames that fit no tick
		now = now.Add(time.Second / 60)
		total += c.ticks(now)
	}
	if total < 1199 || total > 1200 {
		t.Errorf("%d ticks in 10 s, want 1200", total)
	}
	now = now.Add(time.Hour)
	if n := c.ticks(now); n > ticksPerSecond+1 {
		t.Errorf("%d ticks after an hour's pause, want a second's at most", n)
	}
	if n := c.ticks(now.Add(-time.Hour)); n != 0 {
		t.Errorf("%d ticks for a clock set back, want 0", n)
	}
}

// fake is a scene that counts.
type fake struct{ updates, closed int }

func (f *fake) Update(input.Frame) { f.updates++ }
func (f *fake) Close() error       { f.closed++; return nil }

func TestASceneIsClosedOnce(t *testing.T) {
	f := &fake{}
	g := &guarded{scene: struct {
		*fake
		nothing
	}{f, nothing{}}}
	g.update(input.Frame{})
	for range 2 {
		if err := g.close(); err != nil {
			t.Error(err)
		}
	}
	g.update(input.Frame{})
	if f.closed != 1 || f.updates != 1 {
		t.Errorf("closed %d times with %d updates, want 1 and 1", f.closed, f.updates)
	}
}

// nothing has no picture.
type nothing struct{}

func (nothing) Picture(*draw.List) {}
