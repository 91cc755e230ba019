package item

import (
	"testing"

	"cuesta/orient"
	"cuesta/quiz/mistake"
)

// A bed that strikes 040 dips SE or NW, never NE or SW (MIT 12.114 compass
// notes); the other rows follow from the ranges of azimuth, quadrant and dip.
func TestPossibleNotation(t *testing.T) {
	for _, c := range []struct {
		text string
		n    orient.Notation
		want flaw
	}{
		{"040/30 SE", orient.AzimuthDip, flawless},
		{"040/30 NW", orient.AzimuthDip, flawless},
		{"040/30 NE", orient.AzimuthDip, flawLetters},
		{"040/30 SW", orient.AzimuthDip, flawLetters},
		{"N40E 30NE", orient.Quadrant, flawLetters},
		{"N40E 130SE", orient.Quadrant, flawDip},
		{"140/95", orient.DirectionDip, flawDip},
		{"400/30", orient.AzimuthDip, flawAzimuth},
		{"N140E 30SE", orient.Quadrant, flawQuadrant},
	} {
		if got, ok := flawOf(c.text, c.n); !ok || got != c.want {
			t.Errorf("%s: got %v, %t, want %v", c.text, got, ok, c.want)
		}
	}
	holdTo(t, newPossible("040/30 NE", orient.AzimuthDip, flawLetters), right("b"), right("letters"),
		named("yes", mistake.LettersContradict), wrong("c"))
	holdTo(t, newPossible("040/30 NW", orient.AzimuthDip, flawless), right("yes"), right("A"), wrong("b"))
}

func TestTextsWithEveryFlawAreDealt(t *testing.T) {
	properties := map[string]func(Item) bool{}
	for f := range flaws {
		properties[flawWords[f]] = func(it Item) bool { return it.(possibleItem).flaw == f }
	}
	seen(t, possibleNotation{}, Spec{}, 1000, properties)
}
