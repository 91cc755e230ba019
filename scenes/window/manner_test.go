package window

import (
	"testing"

	"cuesta/scenes/input"
)

func TestTheMannerIsThatOfTheLastHand(t *testing.T) {
	finger, mouse := input.Pointer{Kind: input.PointerDown, Touch: true}, input.Pointer{Kind: input.PointerMove}
	steps := []struct {
		what     string
		presses  []input.Press
		pointers []input.Pointer
		want     bool
	}{
		{"nothing", nil, nil, false},
		{"a finger", nil, []input.Pointer{finger}, true},
		{"nothing more", nil, nil, true},
		{"figures and Enter, which come from the keyboard on the screen too", []input.Press{{Rune: '3'}, {Key: input.Enter}}, nil, true},
		{"an arrow", []input.Press{{Key: input.Left}}, nil, false},
		{"a finger again", nil, []input.Pointer{finger}, true},
		{"a mouse", nil, []input.Pointer{mouse}, false},
	}
	var m manner
	for _, s := range steps {
		if got := m.learn(s.presses, s.pointers); got != s.want {
			t.Errorf("after %s: taps %v, want %v", s.what, got, s.want)
		}
	}
}
