package item

import (
	"strings"
	"testing"

	"cuesta/orient"
	"cuesta/quiz/mistake"
)

func TestDrawSymbol(t *testing.T) {
	it := drawItem{planar: symbolPlane(plane(35, 30), Spec{}), from: orient.Quadrant}
	if got, want := it.Prompt(), "N35E 30SE"; !strings.Contains(got, want) {
		t.Errorf("got %q, want %q in it", got, want)
	}
	if got, want := it.Ask().Kind, AskSymbol; got != want {
		t.Errorf("got %v, want %v", got, want)
	}
	holdTo(t, it, right("035/30"), right("038/30"), right("N35E 30SE"), named("215/30", mistake.OtherEnd), named("125/30", mistake.DirectionForStrike), wrong("035/40"))
}

// The plane is never told in the notation of the answer.
func TestTheDrawingIsThoughtThrough(t *testing.T) {
	for n := range orient.Notation(4) {
		seen(t, drawSymbol{}, Spec{Notation: n}, 300, map[string]func(Item) bool{
			"another notation": func(it Item) bool {
				if d := it.(drawItem); d.from == n || d.from == orient.PoleNotation {
					t.Errorf("%v told in %v", n, d.from)
				}
				return true
			},
			"level":      func(it Item) bool { return it.(drawItem).truth.Dip == 0 },
			"overturned": func(it Item) bool { return strings.Contains(it.Prompt(), "overturned") },
		})
	}
}
