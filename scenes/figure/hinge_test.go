package figure

import (
	"strconv"
	"testing"

	"cuesta/orient"
	"cuesta/scenes/draw"
	"cuesta/scenes/theme"
)

// The scale of the hinge is a protractor: 0 lies forward along the lid, and
// the figures rise with the opening, away from the rock.
func TestHingeFiguresRiseWithTheOpening(t *testing.T) {
	texts := HingeFigures(theme.Of(theme.Light))
	if len(texts) != 19 {
		t.Fatalf("%d figures, want 19", len(texts))
	}
	for i, x := range texts {
		d, err := strconv.Atoi(x.S)
		if err != nil || d != 10*i {
			t.Errorf("figure %d is %q, want %d", i, x.S, 10*i)
		}
		m := middle(x)
		if got := orient.Atan2(-m.Y, m.X).Degrees(); got < float64(d)-1 || got > float64(d)+1 {
			t.Errorf("figure %s stands at %.1f°", x.S, got)
		}
	}
	if got := len(HingeTicks()); got != 181 {
		t.Errorf("%d graduations, want 181", got)
	}
}

// The display shows a direction in three figures and a dip in two, as they are
// written (common practice), and none of them on another.
func TestShownFigures(t *testing.T) {
	for _, c := range []struct {
		direction, dip int
		want           string
	}{{7, 4, "00704"}, {125, 30, "12530"}, {359, 90, "35990"}, {0, 0, "00000"}} {
		got := ""
		var rows [2]string
		place := map[draw.Point]bool{}
		Shown(c.direction, c.dip, func(d uint8, at draw.Point) {
			i := 0
			if at.Y == dipAt {
				i = 1
			}
			rows[i] = strconv.Itoa(int(d)) + rows[i] // from the right
			place[at] = true
		})
		got = rows[0] + rows[1]
		if got != c.want || len(place) != 5 {
			t.Errorf("%d, %d: shown %q at %d places, want %q at 5", c.direction, c.dip, got, len(place), c.want)
		}
	}
}
