package browse

import (
	"net/http"
	"testing"
	"time"
)

// Once loaded the page works without a connection, under whatever path.
func TestOffline(t *testing.T) {
	t.Parallel()
	site := served(t)
	tab := visitAt(t, site, small, "bench")
	err := Await("the copy", 60*time.Second, func() (bool, error) {
		return Value[bool](tab, `navigator.serviceWorker.ready.then(r => Boolean(r.active))`)
	})
	if err != nil {
		t.Fatal(err)
	}
	site.Offline(true)
	before := len(site.Asked())
	if err := tab.Reload(); err != nil {
		t.Fatal(err)
	}
	if err := tab.Ready("ready"); err != nil {
		t.Fatal(err)
	}
	if _, err := tab.named("Instrument"); err != nil {
		t.Error(err)
	}
	t.Logf("asked for meanwhile: %q", site.Asked()[before:])
}

// A program that does not arrive is told of, and asked for again.
func TestAMissingProgram(t *testing.T) {
	t.Parallel()
	site := served(t)
	site.Break("cuesta.wasm.gz", http.StatusNotFound)
	tab := stranger(t, browser, small)
	if err := tab.Go(site.URL("bench")); err != nil {
		t.Fatal(err)
	}
	if err := tab.Ready("failed"); err != nil {
		t.Fatal(err)
	}
	now := tree(t, tab)
	if !now.Says("404") {
		t.Errorf("the answer of the server is not told:\n%s", now)
	}
	site.Break("cuesta.wasm.gz", 0)
	if err := tab.Press(must[Node](t)(now.Find("button", "Try again"))); err != nil {
		t.Fatal(err)
	}
	if err := tab.Ready("ready"); err != nil {
		t.Fatal(err)
	}
}

// A browser that keeps nothing is told of, and all else works.
func TestWithoutStorage(t *testing.T) {
	t.Parallel()
	tab := visit(t, small, "bench", `Object.defineProperty(window, "localStorage", {get() { throw new DOMException("refused", "SecurityError"); }});`)
	now := settled(t, tab)
	if _, err := now.Find("application", "Instrument"); err != nil {
		t.Error(err)
	}
	if !now.Says("keeps nothing") {
		t.Errorf("it is not said that nothing is kept:\n%s", now)
	}
}
