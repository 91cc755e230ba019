package main

import (
	"bytes"
	"compress/gzip"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
)

// written builds the page around a program that is none.
func written(t *testing.T, program string) (dir string) {
	t.Helper()
	dir = t.TempDir()
	packed, err := pack([]byte(program))
	if err != nil {
		t.Fatal(err)
	}
	script, err := joined([]byte("// support"))
	if err != nil {
		t.Fatal(err)
	}
	files := map[string][]byte{packedName: packed, scriptName: script}
	if err := writePage(dir, files, len(program)); err != nil {
		t.Fatal(err)
	}
	return dir
}

func text(t *testing.T, dir, name string) string {
	t.Helper()
	b, err := os.ReadFile(filepath.Join(dir, name))
	if err != nil {
		t.Fatal(err)
	}
	return string(b)
}

// Without a connection the page has what it keeps and nothing else.
func TestThePageKeepsAllThatItHolds(t *testing.T) {
	dir := written(t, "a program")
	keeper := text(t, dir, "sw.js")
	entries, err := os.ReadDir(dir)
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range entries {
		if e.Name() != "sw.js" && !strings.Contains(keeper, `"`+e.Name()+`"`) {
			t.Errorf("%s is not kept", e.Name())
		}
		if !slices.Contains(webFiles(), e.Name()) {
			t.Errorf("%s would not be published", e.Name())
		}
	}
	for _, m := range regexp.MustCompile(`(?:src|href)="([^"#]+)"`).FindAllStringSubmatch(text(t, dir, "index.html"), -1) {
		if _, err := os.Stat(filepath.Join(dir, m[1])); err != nil {
			t.Errorf("index.html names %q: %v", m[1], err)
		}
	}
}

// Every script that stands in the page's folder is in the one that is loaded.
func TestTheScriptIsWhole(t *testing.T) {
	got := text(t, written(t, "a program"), scriptName)
	found, err := fs.Glob(pageFiles, "page/*.js")
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range found {
		part, err := fs.ReadFile(pageFiles, f)
		if err != nil {
			t.Fatal(err)
		}
		if f != "page/sw.js" && !strings.Contains(got, string(part)) {
			t.Errorf("%s is not in %s", f, scriptName)
		}
	}
	if !strings.HasPrefix(got, "// support") {
		t.Error("the support is not the first part")
	}
}

// A new program or a new page is a new copy; the same one is not.
func TestTheCopyIsNamedByWhatIsInIt(t *testing.T) {
	name := func(program string) string {
		m := regexp.MustCompile(`const name = prefix \+ "([0-9a-f]{16})"`).FindStringSubmatch(text(t, written(t, program), "sw.js"))
		if m == nil {
			t.Fatal("sw.js names no copy")
		}
		return m[1]
	}
	if a, b := name("one"), name("one"); a != b {
		t.Errorf("the same page is kept as %s and %s", a, b)
	}
	if a, b := name("one"), name("two"); a == b {
		t.Errorf("two programs are both kept as %s", a)
	}
}

func TestThePageKnowsTheSizeOfItsProgram(t *testing.T) {
	program := strings.Repeat("a program ", 1000)
	dir := written(t, program)
	packed := text(t, dir, packedName)
	want := fmt.Sprintf(`data-packed="%d" data-whole="%d"`, len(packed), len(program))
	if !strings.Contains(text(t, dir, "index.html"), want) {
		t.Errorf("index.html lacks %s", want)
	}
	r, err := gzip.NewReader(bytes.NewReader([]byte(packed)))
	if err != nil {
		t.Fatal(err)
	}
	if got, err := io.ReadAll(r); err != nil || string(got) != program {
		t.Errorf("unpacked %d bytes, %v; want the program of %d", len(got), err, len(program))
	}
}

// The page asks nothing of anyone else, and works below any path.
func TestThePageAsksForNothingOutside(t *testing.T) {
	outside := regexp.MustCompile(`(?i)(https?:)?//[a-z0-9]+\.[a-z]|["'(]/[a-z]`)
	err := fs.WalkDir(pageFiles, "page", func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		b, err := fs.ReadFile(pageFiles, path)
		if err != nil {
			return err
		}
		// The name space of SVG is a name, and is not fetched.
		s := strings.ReplaceAll(string(b), `xmlns="http://www.w3.org/2000/svg"`, "")
		if m := outside.FindString(s); m != "" {
			t.Errorf("%s: %q", path, m)
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	index := text(t, written(t, "a program"), "index.html")
	for _, rule := range []string{"default-src 'none'", "connect-src 'self'", "script-src 'self' 'wasm-unsafe-eval' blob:;"} {
		if !strings.Contains(index, rule) {
			t.Errorf("the page's policy lacks %s (Content Security Policy Level 3, W3C)", rule)
		}
	}
}
