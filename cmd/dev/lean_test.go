package main

import (
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
)

// printShaders prints all shaders of the library's package it is put into.
const printShaders = `package builtinshader

import (
	"fmt"
	"testing"
)

func TestPrint(t *testing.T) {
	fmt.Println(FilterNearest, FilterLinear, FilterCount, AddressUnsafe, AddressClampToZero, AddressRepeat, AddressCount)
	for _, s := range AppendShaderSources(nil) {
		fmt.Printf("%q\n", s)
	}
}
`

// The copy of the window library that the page is built from has the same
// shaders as the library itself: both are asked.
func TestLeanLibraryHasTheSameShaders(t *testing.T) {
	if err := toModuleRoot(); err != nil {
		t.Fatal(err)
	}
	dir := t.TempDir()
	flag, err := leanLibrary(dir)
	if err != nil {
		t.Fatal(err)
	}
	if !strings.HasPrefix(flag, "-modfile=") {
		t.Errorf("flag %q", flag)
	}
	out, err := goCommand("list", "-m", "-f={{.Dir}}", windowLibrary).Output()
	if err != nil {
		t.Fatal(err)
	}
	whole := filepath.Join(t.TempDir(), "whole")
	if err := copyLibrary(strings.TrimSpace(string(out)), whole); err != nil {
		t.Fatal(err)
	}
	got, want := shadersOf(t, filepath.Join(dir, "library")), shadersOf(t, whole)
	if got != want {
		t.Errorf("the shaders differ:\ngot  %s\nwant %s", got, want)
	}
	if n := strings.Count(want, "\n"); n < filters*addresses*2+2 {
		t.Errorf("%d lines of shaders:\n%s", n, want)
	}
}

func shadersOf(t *testing.T, library string) string {
	t.Helper()
	folder := filepath.Join(library, "internal", "builtinshader")
	if err := os.WriteFile(filepath.Join(folder, "print_test.go"), []byte(printShaders), 0o644); err != nil {
		t.Fatal(err)
	}
	c := exec.Command("go", "test", "-v", "-count=1", "-run=^TestPrint$", ".")
	c.Dir = folder
	out, err := c.CombinedOutput()
	if err != nil {
		t.Fatalf("%s\n%v", out, err)
	}
	said, _, _ := strings.Cut(string(out), "--- PASS")
	return said
}

func TestLeanLibrarySaysWhereTheLibraryHasChanged(t *testing.T) {
	for _, src := range []string{
		"package builtinshader\n",
		"package builtinshader\n\nvar tmpl = template.Must(template.New(\"tmpl\").Parse(`{{.Other}}`))\n\nfunc ShaderSource() []byte { return nil }\n",
	} {
		if out, err := withoutTemplate([]byte(src)); err == nil {
			t.Errorf("%q: got %q, want an error", src, out)
		}
	}
}
