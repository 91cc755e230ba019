package display

import (
	"errors"
	"testing"
)

// The form of a display name and the ports from 6000 are those of X(7).
func TestAddressOf(t *testing.T) {
	tests := []struct{ name, network, address string }{
		{":0", "unix", "/tmp/.X11-unix/X0"},
		{":99.0", "unix", "/tmp/.X11-unix/X99"},
		{"unix:1", "unix", "/tmp/.X11-unix/X1"},
		{"localhost:10.0", "tcp", "localhost:6010"},
		{"[::1]:2", "tcp", "[::1]:6002"},
	}
	for _, tt := range tests {
		network, address, err := addressOf(tt.name)
		if err != nil || network != tt.network || address != tt.address {
			t.Errorf("addressOf(%q) = %q, %q, %v; want %q, %q", tt.name, network, address, err, tt.network, tt.address)
		}
	}
}

func TestAddressOfNonsense(t *testing.T) {
	for _, name := range []string{"0", ":", ":x", ":-1", ":70000", "host:"} {
		if _, _, err := addressOf(name); !errors.Is(err, ErrNone) {
			t.Errorf("addressOf(%q): %v, want ErrNone", name, err)
		}
	}
}

func TestCheckSaysWhatIsMissing(t *testing.T) {
	for _, name := range []string{"", ":59000", "nonsense"} {
		t.Setenv("DISPLAY", name)
		if err := Check(); !errors.Is(err, ErrNone) {
			t.Errorf("DISPLAY=%q: %v, want ErrNone", name, err)
		}
	}
}
