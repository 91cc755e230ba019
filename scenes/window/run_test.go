package window

import (
	"testing"

	"cuesta/scenes/input"
)

func TestOneStrokeFillsTheScreen(t *testing.T) {
	tests := []struct {
		name    string
		presses []input.Press
		want    bool
	}{
		{"nothing", nil, false},
		{"F11", []input.Press{{Rune: 't'}, {Key: input.F11}}, true},
		{"F11 held", []input.Press{{Key: input.F11, Repeat: true}}, false},
		{"F10", []input.Press{{Key: input.F10}}, false},
	}
	for _, tt := range tests {
		if got := fills(tt.presses); got != tt.want {
			t.Errorf("%s: %v, want %v", tt.name, got, tt.want)
		}
	}
}
