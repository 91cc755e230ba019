package browse

import (
	"context"
	"errors"
	"fmt"
	"slices"
	"strings"
	"sync"
	"time"

	"github.com/chromedp/cdproto/network"
	"github.com/chromedp/cdproto/page"
	"github.com/chromedp/cdproto/runtime"
	"github.com/chromedp/chromedp"
)

// Tab is a page of a visitor who has never been here: nothing is stored, and
// no file is in the cache.
type Tab struct {
	ctx    context.Context
	cancel context.CancelFunc

	mu       sync.Mutex
	requests []string
	problems []string
}

// Screen is what a page is shown on.
type Screen struct {
	W, H  int     // CSS pixels
	Scale float64 // device pixels in a CSS pixel; 0 is 1
	Touch bool    // a phone
}

// Open opens an empty tab.
func (b *Browser) Open(s Screen) (*Tab, error) {
	t := &Tab{}
	t.ctx, t.cancel = chromedp.NewContext(b.ctx, chromedp.WithNewBrowserContext(), chromedp.WithListener(t.hear))
	return t, errors.Join(chromedp.Do(t.ctx), t.show(s))
}

// Again opens an empty tab of the same visitor.
func (t *Tab) Again(s Screen) (*Tab, error) {
	n := &Tab{}
	n.ctx, n.cancel = chromedp.NewContext(t.ctx, chromedp.WithListener(n.hear))
	return n, errors.Join(chromedp.Do(n.ctx), n.show(s))
}

// show makes the tab as large as a screen.
func (t *Tab) show(s Screen) error {
	options := []chromedp.EmulateViewportOption{chromedp.EmulateScale(max(1, s.Scale))}
	if s.Touch {
		options = append(options, chromedp.EmulateTouch, chromedp.EmulateMobile, chromedp.EmulatePortrait)
	}
	return chromedp.Do(t.ctx, chromedp.EmulateViewport(int64(s.W), int64(s.H), options...))
}

// Resize changes the screen under the page.
func (t *Tab) Resize(s Screen) error { return t.show(s) }

// Close closes the tab and forgets its visitor.
func (t *Tab) Close() { t.cancel() }

// hear notes what the page asks for and complains of.
func (t *Tab) hear(event any) {
	t.mu.Lock()
	defer t.mu.Unlock()
	switch e := event.(type) {
	case *network.EventRequestWillBeSent:
		t.requests = append(t.requests, e.Request.URL)
	case *runtime.EventExceptionThrown:
		t.problems = append(t.problems, exception(e.ExceptionDetails))
	}
}

func exception(d *runtime.ExceptionDetails) string {
	if d.Exception != nil && d.Exception.Description != "" {
		return d.Exception.Description
	}
	return d.Text
}

// Outside are the requests that went to another machine than this one.
func (t *Tab) Outside() []string {
	t.mu.Lock()
	defer t.mu.Unlock()
	var out []string
	for _, u := range t.requests {
		if !slices.ContainsFunc(inside, func(p string) bool { return strings.HasPrefix(u, p) }) {
			out = append(out, u)
		}
	}
	return out
}

// inside are the beginnings of addresses that lead nowhere else.
var inside = []string{"http://127.0.0.1:", "data:", "blob:", "about:"}

// Problems are the exceptions nobody caught.
func (t *Tab) Problems() []string {
	t.mu.Lock()
	defer t.mu.Unlock()
	return slices.Clone(t.problems)
}

// Before runs a script on each page that is opened from now on, before any of
// its own.
func (t *Tab) Before(script string) error {
	_, err := chromedp.Call(t.ctx, page.AddScriptToEvaluateOnNewDocument,
		page.AddScriptToEvaluateOnNewDocumentParams{Source: script})
	return err
}

// Go opens an address and returns when it has been loaded, which is before the
// program runs.
func (t *Tab) Go(url string) error {
	ctx, cancel := context.WithTimeout(t.ctx, 60*time.Second)
	defer cancel()
	return chromedp.Do(ctx, chromedp.Navigate(url))
}

// Reload loads the page again.
func (t *Tab) Reload() error {
	ctx, cancel := context.WithTimeout(t.ctx, 60*time.Second)
	defer cancel()
	return chromedp.Do(ctx, chromedp.Reload())
}

// Do runs a script and waits for what it promises.
func (t *Tab) Do(script string) error {
	_, err := Value[*runtime.RemoteObject](t, script)
	return err
}

// Value is what a script comes to.
func Value[T any](t *Tab, script string) (T, error) {
	ctx, cancel := context.WithTimeout(t.ctx, 30*time.Second)
	defer cancel()
	return chromedp.Run(ctx, chromedp.Evaluate[T](script, chromedp.EvalAwaitPromise))
}

// ErrLate is returned when what is waited for does not come.
var ErrLate = errors.New("waited in vain")

// Await asks time and again until the answer is yes.
func Await(what string, longest time.Duration, yes func() (bool, error)) error {
	for end := time.Now().Add(longest); ; time.Sleep(30 * time.Millisecond) {
		ok, err := yes()
		if ok {
			return nil
		}
		if time.Now().After(end) {
			return errors.Join(fmt.Errorf("%w for %s", ErrLate, what), err)
		}
	}
}

// State is how far the page has come: loading, drawn, ready, words or failed.
func (t *Tab) State() (string, error) {
	return Value[string](t, `String(document.documentElement.dataset.cuesta)`)
}

// Ready waits until the page has come as far as named.
func (t *Tab) Ready(state string) error {
	var last string
	err := Await("the page to be "+state, 100*time.Second, func() (bool, error) {
		s, err := t.State()
		last = s
		return s == state, err
	})
	if err != nil {
		return fmt.Errorf("%w; it is %s", err, last)
	}
	return nil
}

// Picture is what is to be seen, as PNG.
func (t *Tab) Picture() ([]byte, error) {
	return chromedp.Run(t.ctx, chromedp.CaptureScreenshot())
}
