package browse

import (
	"archive/tar"
	"bytes"
	"compress/gzip"
	"crypto/sha512"
	"encoding/base64"
	"errors"
	"fmt"
	"io"
	"net/http"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// The accessibility checker axe-core (Mozilla Public License 2.0), as the npm
// registry has it; the sum is the registry's own "integrity" of the version.
const (
	checkerAt  = "https://registry.npmjs.org/axe-core/-/axe-core-4.10.3.tgz"
	checkerSum = "Xm7bpRXnDSX2YE2YFfBk2FnF0ep6tmG7xPh8iHee8MIcrgq762Nkce856dYtJYLkuIoYZvGfTs/PbZhideTcEg=="
)

// checker is the source of the checker, fetched once and kept in the user's
// cache.
func checker() (string, error) {
	cache, err := os.UserCacheDir()
	if err != nil {
		return "", err
	}
	path := filepath.Join(cache, "cuesta", filepath.Base(checkerAt))
	data, err := os.ReadFile(path)
	if err != nil || !whole(data) {
		if data, err = fetch(checkerAt); err != nil {
			return "", err
		}
		if !whole(data) {
			return "", errors.New("the checker is not the one that is meant")
		}
		os.MkdirAll(filepath.Dir(path), 0o755)
		os.WriteFile(path, data, 0o644) // without it, it is fetched again
	}
	return unpack(data, "package/axe.min.js")
}

func whole(data []byte) bool {
	sum := sha512.Sum512(data)
	return base64.StdEncoding.EncodeToString(sum[:]) == checkerSum
}

func fetch(url string) ([]byte, error) {
	r, err := http.Get(url)
	if err != nil {
		return nil, err
	}
	defer r.Body.Close()
	if r.StatusCode != http.StatusOK {
		return nil, fmt.Errorf("%s: %s", url, r.Status)
	}
	return io.ReadAll(io.LimitReader(r.Body, 16<<20))
}

func unpack(data []byte, name string) (string, error) {
	z, err := gzip.NewReader(bytes.NewReader(data))
	if err != nil {
		return "", err
	}
	for t := tar.NewReader(z); ; {
		h, err := t.Next()
		if err != nil {
			return "", fmt.Errorf("%s: %w", name, err)
		}
		if h.Name == name {
			text, err := io.ReadAll(t)
			return string(text), err
		}
	}
}

// checked runs the checker on what the page shows.
func checked(t *testing.T, tab *Tab, where string) {
	t.Helper()
	const run = `axe.run(document, {resultTypes: ["violations"]}).then(r => r.violations.map(v =>
		v.id + ": " + v.help + ": " + v.nodes.map(n => n.html).slice(0, 3).join(" ")))`
	found, err := Value[[]string](tab, run)
	if err != nil {
		t.Fatalf("%s: %v", where, err)
	}
	if len(found) > 0 {
		t.Errorf("%s: %s", where, strings.Join(found, "\n"))
	}
}

// An automated checker finds nothing on any screen, in any of the themes.
func TestTheCheckerFindsNothing(t *testing.T) {
	t.Parallel()
	axe, err := checker()
	if err != nil {
		t.Fatal(err)
	}
	bench := visit(t, desk, "bench")
	must[any](t)(nil, bench.Do(axe+";0"))
	checked(t, bench, "bench")
	h := byTree{bench}
	open := func(name string) {
		t.Helper()
		if err := h.press(name, 1); err != nil {
			t.Fatal(err)
		}
		settled(t, bench)
	}
	open("Settings")
	checked(t, bench, "settings")
	for _, n := range tree(t, bench) {
		if n.Role == "radio" && strings.HasPrefix(n.Name, "Colours: ") {
			open(n.Name)
			checked(t, bench, n.Name)
		}
	}
	if err := bench.Keys("\x1b"); err != nil {
		t.Fatal(err)
	}
	settled(t, bench)
	open("Help")
	checked(t, bench, "help")
	if err := bench.Keys("\x1b"); err != nil {
		t.Fatal(err)
	}
	settled(t, bench)
	if err := h.write("035/30"); err != nil {
		t.Fatal(err)
	}
	open("Record")
	checked(t, bench, "verdict")
	if err := bench.Resize(phone); err != nil {
		t.Fatal(err)
	}
	settled(t, bench)
	checked(t, bench, "verdict on a phone")
	if err := bench.Resize(desk); err != nil {
		t.Fatal(err)
	}
	settled(t, bench)
	open("Menu")
	checked(t, bench, "hall")
	if err := bench.Resize(phone); err != nil {
		t.Fatal(err)
	}
	settled(t, bench)
	checked(t, bench, "hall on a phone")
	if err := errors.Join(h.press("The bench in words", 1), bench.Ready("words")); err != nil {
		t.Errorf("the hall does not lead to the bench in words: %v", err)
	}
}

// The pages beside the drawn ones are checked as well.
func TestTheCheckerFindsNothingBesides(t *testing.T) {
	t.Parallel()
	axe, err := checker()
	if err != nil {
		t.Fatal(err)
	}
	words := stranger(t, browser, desk)
	if err := errors.Join(words.Go(site.URL("words")), words.Ready("words"), words.Do(axe+";0")); err != nil {
		t.Fatal(err)
	}
	onBoth(t, words, "words")

	broken := served(t)
	broken.Break("cuesta.wasm.gz", http.StatusNotFound)
	failed := stranger(t, browser, desk)
	if err := errors.Join(failed.Go(broken.URL("bench")), failed.Ready("failed"), failed.Do(axe+";0")); err != nil {
		t.Fatal(err)
	}
	onBoth(t, failed, "problem")

	loading := stranger(t, browser, desk, `window.fetch = () => new Promise(() => {});`)
	if err := errors.Join(loading.Go(site.URL("bench")), loading.Ready("loading"), loading.Do(axe+";0")); err != nil {
		t.Fatal(err)
	}
	onBoth(t, loading, "loading")
}

// A lecture is checked, and a form: where it is asked for, a question and the
// overview.
func TestTheCheckerFindsNothingInALectureAndAForm(t *testing.T) {
	t.Parallel()
	axe, err := checker()
	if err != nil {
		t.Fatal(err)
	}
	lecture := visit(t, desk, "lecture=two-readings")
	must[any](t)(nil, lecture.Do(axe+";0"))
	settled(t, lecture)
	onBoth(t, lecture, "lecture")

	paper := visit(t, desk, "form")
	must[any](t)(nil, paper.Do(axe+";0"))
	must[Node](t)(paper.named("Drop the file here"))
	onBoth(t, paper, "where a form is asked for")
	_, path := aForm(t)
	bring(t, paper, path)
	settled(t, paper)
	onBoth(t, paper, "a question")
	if err := (byTree{paper}).press("Overview", 1); err != nil {
		t.Fatal(err)
	}
	settled(t, paper)
	onBoth(t, paper, "the overview")
}

// onBoth checks what the page shows, and the same on a phone.
func onBoth(t *testing.T, tab *Tab, where string) {
	t.Helper()
	for _, s := range []Screen{desk, phone} {
		if err := tab.Resize(s); err != nil {
			t.Fatal(err)
		}
		if err := tab.Do(`window.cuestaRest && cuestaRest()`); err != nil {
			t.Fatal(err)
		}
		checked(t, tab, fmt.Sprintf("%s at %d×%d", where, s.W, s.H))
	}
	if err := tab.Resize(desk); err != nil {
		t.Fatal(err)
	}
}
