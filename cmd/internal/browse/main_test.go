package browse

import (
	"fmt"
	"os"
	"testing"
)

// The page is built once and served to all tests by one browser; every test is
// a visitor of its own, so that they run beside each other.
var (
	site    *Site
	browser *Browser
)

func TestMain(m *testing.M) { os.Exit(all(m)) }

func all(m *testing.M) int {
	dir, err := os.MkdirTemp("", "cuesta-page-")
	if err == nil {
		defer os.RemoveAll(dir)
		err = Build(dir)
	}
	if err == nil {
		site, err = Serve(dir)
	}
	if err == nil {
		defer site.Close()
		browser, err = Start(Software)
	}
	if err != nil {
		fmt.Fprintln(os.Stderr, err)
		return 1
	}
	defer browser.Close()
	return m.Run()
}

// Usual sizes of a screen.
var (
	desk  = Screen{W: 1280, H: 720}
	small = Screen{W: 640, H: 360}
	phone = Screen{W: 390, H: 844, Touch: true}
)

// visit opens the page and waits until it can be worked. Whatever the test
// does, nothing may be asked of another machine and no exception left over.
func visit(t *testing.T, s Screen, fragment string, before ...string) *Tab {
	t.Helper()
	return visitAt(t, site, s, fragment, before...)
}

// visitAt visits a page other than the one that all tests share.
func visitAt(t *testing.T, at *Site, s Screen, fragment string, before ...string) *Tab {
	t.Helper()
	tab := stranger(t, browser, s, append(before, restScript)...)
	if err := tab.Go(at.URL(fragment)); err != nil {
		t.Fatal(err)
	}
	if err := tab.Ready("ready"); err != nil {
		t.Fatal(err, tab.Problems())
	}
	return tab
}

// served is the page on a server of the test's own, which it may break.
func served(t *testing.T) *Site {
	t.Helper()
	own := must[*Site](t)(Serve(site.dir))
	t.Cleanup(func() { own.Close() })
	return own
}

// stranger is a visitor who has not opened the page yet.
func stranger(t *testing.T, b *Browser, s Screen, before ...string) *Tab {
	t.Helper()
	tab, err := b.Open(s)
	if err != nil {
		t.Fatal(err)
	}
	for _, script := range before {
		if err := tab.Before(script); err != nil {
			t.Fatal(err)
		}
	}
	t.Cleanup(func() {
		if got := tab.Outside(); len(got) > 0 {
			t.Errorf("asked of another machine: %q", got)
		}
		if got := tab.Problems(); len(got) > 0 {
			t.Errorf("exceptions: %q", got)
		}
		tab.Close()
	})
	return tab
}

func must[T any](t *testing.T) func(T, error) T {
	return func(v T, err error) T {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
		return v
	}
}

// tree is the accessibility tree now.
func tree(t *testing.T, tab *Tab) Tree {
	t.Helper()
	return must[Tree](t)(tab.Tree())
}

// quick makes the clock of the page go several times as fast, where it is not
// time that is tried: a needle takes its seconds to come to rest.
const quick = `(() => {
  const real = performance.now.bind(performance);
  performance.now = () => 6 * real();
})();`
