package describe

import "testing"

func TestCapital(t *testing.T) {
	for in, want := range map[string]string{"": "", "go on": "Go on", "élan": "Élan", "035/30": "035/30", "Kept": "Kept"} {
		if got := Capital(in); got != want {
			t.Errorf("%q: got %q, want %q", in, got, want)
		}
	}
}
