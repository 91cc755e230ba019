package draw

import "testing"

// Invented names in scripts of the world, each as its people write it.
func TestPrinted(t *testing.T) {
	for text, want := range map[string]string{
		"":                    "",
		"Íñigo Łużycki, 035°": "Íñigo Łużycki, 035°",
		"王小明 (b07)":           "… (b07)",
		"שירה כהן":            "…",
		"שירה כהן, Ann 王":     "…, Ann …",
		"a\nسارة Reed":        "a\n… Reed",
		"Bo\u200F Reed":       "Bo\u200F Reed",
	} {
		got := Printed(text)
		if got != want {
			t.Errorf("%q: got %q, want %q", text, got, want)
		}
		if signs := Unprinted(got); len(signs) > 0 {
			t.Errorf("%q: got %q with signs left that have no letters: %q", text, got, signs)
		}
	}
}
