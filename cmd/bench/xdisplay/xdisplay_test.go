package xdisplay

import "testing"

func TestMissing(t *testing.T) {
	only99 := func(number string) bool { return number == "99" }
	tests := []struct{ display, want string }{
		{"", "DISPLAY is not set"},
		{":99", ""},
		{":99.0", ""},
		{"unix:99", ""},
		{"elsewhere:10.0", ""},
		{":98", "DISPLAY is :98, and nothing answers there"},
		{":", "DISPLAY is :, and nothing answers there"},
		{"nonsense", "DISPLAY is nonsense; something like :0 would do"},
	}
	for _, tt := range tests {
		if got := Missing(tt.display, only99); got != tt.want {
			t.Errorf("Missing(%q) = %q, want %q", tt.display, got, tt.want)
		}
	}
}
