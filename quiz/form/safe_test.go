package form

import (
	"strings"
	"testing"
)

func TestFileNames(t *testing.T) {
	for id, want := range map[string]string{"tf1": "tf1", "A.b-c_9": "A.b-c_9", "2026-001": "2026-001"} {
		if got := FileName(id); got != want {
			t.Errorf("%q: got %q, want %q", id, got, want)
		}
	}
	seen := map[string]string{}
	for _, id := range []string{
		"../../etc/passwd", "..", ".", "/", `C:\x`, "a/b", "a_b", "a b", "con", "CON.txt", "nul", "com1", "lpt9", "key", "Key",
		".hidden", "-rf", "name.", "Åse", "日本", "a\x00b", strings.Repeat("x", 200), strings.Repeat("x", 201), "=cmd()", "a:b", "*?",
	} {
		name := FileName(id)
		plain := strings.Trim(name, "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789._-") == ""
		if name == "" || !plain || len(name) > 80 || reserved(name) || strings.Trim(name, ".-") != name {
			t.Errorf("%q: got %q, which is no safe name", id, name)
		}
		if other, ok := seen[strings.ToLower(name)]; ok {
			t.Errorf("%q and %q are both %q", id, other, name)
		}
		seen[strings.ToLower(name)] = id
	}
}

// Common practice: a cell that begins like a formula gets an apostrophe.
func TestHarmless(t *testing.T) {
	for cell, want := range map[string]string{
		"": "", "Ada": "Ada", "=1+1": "'=1+1", "+1": "'+1", "-1": "'-1", "@x": "'@x", "\tx": "'\tx", "\rx": "'\rx", "a=1": "a=1", "Å": "Å",
	} {
		if got := Harmless(cell); got != want {
			t.Errorf("%q: got %q, want %q", cell, got, want)
		}
	}
}
