package draw

import (
	"math"
	"strings"
	"testing"
	"testing/quick"

	"github.com/golang/freetype/truetype"
	"golang.org/x/image/math/fixed"

	"cuesta/assets"
)

// The advances of single signs are those a second, independent reader of font
// files finds (github.com/golang/freetype/truetype).
func TestAdvancesAgreeWithAnotherReader(t *testing.T) {
	for f, ttf := range map[Font][]byte{Regular: assets.Regular, Bold: assets.Bold} {
		other, err := truetype.Parse(ttf)
		if err != nil {
			t.Fatal(err)
		}
		em := other.FUnitsPerEm()
		for r := rune(' '); r <= '~'; r++ {
			a := other.HMetric(fixed.Int26_6(em), other.Index(r)).AdvanceWidth
			got, want := Measure(f, 100, string(r), 0), 100*float64(a)/float64(em)
			if math.Abs(got-want) > 1e-9 {
				t.Errorf("font %d: %q is %g wide, want %g", f, r, got, want)
			}
		}
	}
}

func TestMeasure(t *testing.T) {
	tests := []struct {
		name      string
		got, want float64
	}{
		{"nothing", Measure(Regular, 20, "", 0), 0},
		{"twice the size", Measure(Regular, 40, "strike", 0), 2 * Measure(Regular, 20, "strike", 0)},
		{"track after every sign", Measure(Regular, 20, "035/30", .02), Measure(Regular, 20, "035/30", 0) + 6*.02*20},
	}
	for _, tt := range tests {
		if math.Abs(tt.got-tt.want) > 1e-9 {
			t.Errorf("%s: %g, want %g", tt.name, tt.got, tt.want)
		}
	}
	if pair, apart := Measure(Regular, 100, "AV", 0), Measure(Regular, 100, "A", 0)+Measure(Regular, 100, "V", 0); pair >= apart {
		t.Errorf("AV is %g wide and its letters %g: want it kerned", pair, apart)
	}
}

func TestHeights(t *testing.T) {
	for _, f := range []Font{Regular, Bold} {
		capital, ascent, descent := CapHeight(f, 100), Ascent(f, 100), Descent(f, 100)
		if !(capital > 60 && capital <= ascent && ascent < 85 && descent > 15 && descent < 35) {
			t.Errorf("font %d: capitals %g, ascent %g, descent %g of 100: not those of a text face", f, capital, ascent, descent)
		}
	}
}

func TestWrap(t *testing.T) {
	w := func(s string) float64 { return Measure(Regular, 10, s, 0) }
	tests := []struct {
		name  string
		width float64
		text  string
		want  string // lines parted by |
	}{
		{"fits", w("level the plate"), "level the plate", "level the plate"},
		{"breaks at a space", w("level the"), "level the plate", "level the|plate"},
		{"a word a line", w("plate"), "level the plate", "level|the|plate"},
		{"spaces do not count", w("level the plate"), "  level   the plate ", "level the plate"},
		{"a line feed breaks", 1e9, "level\nthe plate", "level|the plate"},
		{"an empty line stays", 1e9, "level\n\nplate", "level||plate"},
		{"nothing is one line", 100, "", ""},
		{"a long word is broken", w("stri"), "strike", "stri|ke"},
		{"no room at all", 0, "dip", "d|i|p"},
	}
	for _, tt := range tests {
		if got := strings.Join(Wrap(Regular, 10, tt.width, tt.text), "|"); got != tt.want {
			t.Errorf("%s: %q, want %q", tt.name, got, tt.want)
		}
	}
}

// However a text is wrapped, no line is too wide unless it is a single sign,
// and nothing is lost.
func TestWrapLosesNothing(t *testing.T) {
	check := func(words []uint16, width uint8) bool {
		text := ""
		for _, n := range words[:min(len(words), 30)] {
			text += strings.Repeat("dip°", int(n%5)) + string(rune('a'+n%26)) + " "
		}
		lines := Wrap(Bold, 10, float64(width), text)
		for _, s := range lines {
			if len([]rune(s)) > 1 && Measure(Bold, 10, s, 0) > float64(width)+10*roundOff {
				return false
			}
		}
		plain := func(s string) string { return strings.ReplaceAll(s, " ", "") }
		return plain(strings.Join(lines, "")) == plain(text)
	}
	// A line that is as wide as its room to the last bit but one: once found by chance.
	if !check([]uint16{0x17a6, 0xba77, 0xe8c0, 0x446f, 0xf7f2, 0x655e, 0x562e, 0x5178, 0x37c5, 0x4d7, 0xdcd, 0xd92e, 0xd9bc, 0x4de0, 0xcd4b, 0x23e5, 0x156a, 0x210c, 0x1288, 0xbb8, 0xfcd4, 0xef02, 0x6447}, 0xed) {
		t.Error("a line exactly as wide as its room does not fit it")
	}
	if err := quick.Check(check, &quick.Config{MaxCount: 200}); err != nil {
		t.Error(err)
	}
}

// box returns the corners of the box round an outline.
func box(p Path) (lo, hi Point) {
	lo, hi = Point{math.Inf(1), math.Inf(1)}, Point{math.Inf(-1), math.Inf(-1)}
	for _, q := range p.Points {
		lo, hi = Point{min(lo.X, q.X), min(lo.Y, q.Y)}, Point{max(hi.X, q.X), max(hi.Y, q.Y)}
	}
	return lo, hi
}

func TestOutlinesStandWhereTheyShould(t *testing.T) {
	at := Point{100, 50}
	width := Measure(Regular, 20, "HH", 0)
	tests := []struct {
		name        string
		align       Align
		rotate      float64
		left, right float64 // of the advance box
	}{
		{"left", AlignLeft, 0, 100, 100 + width},
		{"centre", AlignCentre, 0, 100 - width/2, 100 + width/2},
		{"right", AlignRight, 0, 100 - width, 100},
		{"upside down", AlignLeft, math.Pi, 100 - width, 100},
	}
	for _, tt := range tests {
		var p Path
		Text{S: "HH", At: at, Size: 20, Align: tt.align, Rotate: tt.rotate}.AppendOutline(&p)
		lo, hi := box(p)
		bearing := lo.X - tt.left // the same on both sides of HH, for H is symmetrical
		if bearing < 0 || bearing > 3 || math.Abs((tt.right-hi.X)-bearing) > .2 {
			t.Errorf("%s: outline from %g to %g, want it within %g to %g", tt.name, lo.X, hi.X, tt.left, tt.right)
		}
		up := at.Y - lo.Y
		if tt.rotate != 0 {
			up = hi.Y - at.Y
		}
		if math.Abs(up-CapHeight(Regular, 20)) > 1e-9 {
			t.Errorf("%s: %g high, want %g", tt.name, up, CapHeight(Regular, 20))
		}
	}
}

func TestOutlinesAllocateNothingOnceGrown(t *testing.T) {
	var p Path
	text := Text{S: "strike 035°", Size: 20, Align: AlignCentre}
	text.AppendOutline(&p)
	if n := testing.AllocsPerRun(20, func() {
		p.Kinds, p.Points = p.Kinds[:0], p.Points[:0]
		text.AppendOutline(&p)
	}); n > 0 {
		t.Errorf("%g allocations, want 0", n)
	}
}
