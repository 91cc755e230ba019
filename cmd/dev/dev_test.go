package main

import (
	"bytes"
	"errors"
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"

	"cuesta/sim"
)

func TestLacking(t *testing.T) {
	const listing = "gcc installed\nxvfb not-installed\nxauth config-files\n"
	got := lacking([]string{"gcc", "xvfb", "xauth", "libgl-dev"}, listing)
	if want := []string{"xvfb", "xauth", "libgl-dev"}; !reflect.DeepEqual(got, want) {
		t.Errorf("lacking %v, want %v", got, want)
	}
}

// The fields ID and ID_LIKE are those of os-release(5).
func TestDebianLike(t *testing.T) {
	tests := []struct {
		text string
		want bool
	}{
		{"NAME=\"Debian GNU/Linux\"\nID=debian\n", true},
		{"ID=ubuntu\nID_LIKE=debian\n", true},
		{"ID=linuxmint\nID_LIKE=\"ubuntu debian\"\n", true},
		{"ID=fedora\nNAME=\"not debian\"\n", false},
		{"", false},
	}
	for _, tt := range tests {
		p := filepath.Join(t.TempDir(), "os-release")
		if err := os.WriteFile(p, []byte(tt.text), 0o644); err != nil {
			t.Fatal(err)
		}
		if got := debianLike(p); got != tt.want {
			t.Errorf("debianLike(%q) = %v, want %v", tt.text, got, tt.want)
		}
	}
	if debianLike(filepath.Join(t.TempDir(), "absent")) {
		t.Error("a system without os-release was taken for Debian")
	}
}

func TestUnknownWordsAreUsageErrors(t *testing.T) {
	for _, args := range [][]string{nil, {"dance"}, {"test", "now"}, {"bench", "x"}, {"web"}, {"web", "a", "b"}, {"web", "--what", "a"}} {
		if err := dispatch(args); !errors.Is(err, errUsage) {
			t.Errorf("dev %q: %v, want a usage error", args, err)
		}
	}
}

func TestMedianBenchmark(t *testing.T) {
	const text = `goos: linux
BenchmarkStep-2   	 5000000	       210.0 ns/op	       0 B/op	       0 allocs/op
BenchmarkStep-2   	 5000000	       190.5 ns/op	       0 B/op	       0 allocs/op
BenchmarkStep-2   	 5000000	       999.0 ns/op	       8 B/op	       1 allocs/op
PASS
`
	ns, allocs, err := medianBenchmark(text)
	if err != nil || ns != 210 || allocs != 0 {
		t.Errorf("got %g ns, %g allocs, %v; want 210, 0", ns, allocs, err)
	}
	if _, _, err := medianBenchmark("PASS\n"); err == nil {
		t.Error("no benchmark, and no error")
	}
}

func TestFigures(t *testing.T) {
	got, err := figures("frame_ratio 1.25\nsome words here\nframe_allocs 3\n", "frame_ratio", "frame_allocs")
	if err != nil || got["frame_ratio"] != 1.25 || got["frame_allocs"] != 3 {
		t.Errorf("got %v, %v", got, err)
	}
	if _, err := figures("frame_ratio 1\n", "frame_allocs"); err == nil {
		t.Error("a figure is missing, and no error")
	}
}

func TestTicksPerSecondIsThatOfTheWorld(t *testing.T) {
	if ticksPerSecond != sim.TicksPerSecond {
		t.Errorf("got %d, want %d", ticksPerSecond, sim.TicksPerSecond)
	}
}

// Programs under Node get 8 KiB for words and environment together.
func TestKeepNeeded(t *testing.T) {
	got := keepNeeded([]string{"PATH=/bin", "GOFLAGS=-x", "SECRET=1", "https_proxy=p", "GOHUGE=" + strings.Repeat("x", 2000)})
	if want := []string{"PATH=/bin", "GOFLAGS=-x", "https_proxy=p"}; !reflect.DeepEqual(got, want) {
		t.Errorf("kept %v, want %v", got, want)
	}
}

func TestUnformatted(t *testing.T) {
	dir := t.TempDir()
	good, bad := filepath.Join(dir, "good.go"), filepath.Join(dir, "bad.go")
	write := func(p, text string) {
		if err := os.WriteFile(p, []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	write(good, "package p\n")
	if said, err := unformatted(dir); err != nil {
		t.Errorf("formatted files: %s %v", said, err)
	}
	write(bad, "package  p\n")
	if said, err := unformatted(dir); err == nil || said != bad {
		t.Errorf("said %q, %v; want %s", said, err, bad)
	}
}

func TestWebDoesNotOverwrite(t *testing.T) {
	dir := t.TempDir()
	if err := free(dir); err != nil {
		t.Fatal(err)
	}
	page := filepath.Join(dir, "index.html")
	if err := os.WriteFile(page, []byte("mine"), 0o644); err != nil {
		t.Fatal(err)
	}
	if err := web([]string{dir}); err == nil {
		t.Error("a folder with a page of its own was taken")
	}
	if b, err := os.ReadFile(page); err != nil || string(b) != "mine" {
		t.Errorf("the page now holds %q, %v", b, err)
	}
}

func TestSuiteCountsAndTellsOnlyOfFailures(t *testing.T) {
	var out bytes.Buffer
	s := &suite{out: &out}
	s.check("good", func() (string, error) { return "chatter", nil })
	s.check("bad", func() (string, error) { return "the reason", errors.New("broken") })
	if want := (tally{passed: 1, failed: 1}); s.tally != want {
		t.Errorf("tally %+v, want %+v", s.tally, want)
	}
	text := out.String()
	if strings.Contains(text, "chatter") || !strings.Contains(text, "the reason\nbroken") {
		t.Errorf("printed %q", text)
	}
}

// Parts that run beside each other are counted all, and what they print is not
// mixed.
func TestPartsBesideEachOther(t *testing.T) {
	var out bytes.Buffer
	s := &suite{out: &out}
	first, second := make(chan bool), make(chan bool)
	s.beside(
		func() {
			close(first)
			<-second // which comes only while this one runs
			s.check("one", func() (string, error) { return "the reason", errors.New("broken") })
		},
		func() {
			<-first
			close(second)
			for range 50 {
				s.check("other", func() (string, error) { return "", nil })
			}
		})
	if want := (tally{passed: 50, failed: 1}); s.tally != want {
		t.Errorf("tally %+v, want %+v", s.tally, want)
	}
	if !strings.Contains(out.String(), " s\nthe reason\nbroken\n") || strings.Count(out.String(), "other") != 50 {
		t.Errorf("printed %q", out.String())
	}
}
