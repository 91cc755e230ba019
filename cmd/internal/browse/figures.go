package browse

import (
	"fmt"
	"slices"
	"time"

	"github.com/chromedp/chromedp/kb"
)

// clockScript notes when the page first draws, and counts the frames in which
// it has drawn, by the calls that reach WebGL. It is the same for every page.
const clockScript = `"use strict";
(() => {
  const clock = {first: 0, frames: 0, drawn: false};
  window.cuestaClock = clock;
  for (const type of [window.WebGLRenderingContext, window.WebGL2RenderingContext]) {
    if (!type) continue;
    for (const name of ["drawElements", "drawArrays"]) {
      const old = type.prototype[name];
      type.prototype[name] = function (...args) { clock.drawn = true; return old.apply(this, args); };
    }
  }
  const tick = () => {
    clock.frames++;
    if (clock.drawn && !clock.first) clock.first = performance.now();
    requestAnimationFrame(tick);
  };
  requestAnimationFrame(tick);
})();`

// timed opens a page whose frames are counted.
func (b *Browser) timed(url string, s Screen) (*Tab, error) {
	t, err := b.Open(s)
	if err != nil {
		return nil, err
	}
	err = t.Before(clockScript)
	if err == nil {
		err = t.Go(url)
	}
	if err != nil {
		t.Close()
		return nil, err
	}
	return t, nil
}

// firstFrame is the time from asking for the page to the frame after the first
// that was drawn, in seconds. Where the page marks its own first frame, the
// later of the two counts.
func firstFrame(b *Browser, url string, s Screen) (float64, error) {
	t, err := b.timed(url, s)
	if err != nil {
		return 0, err
	}
	defer t.Close()
	var ms float64
	err = Await("the first frame", 60*time.Second, func() (bool, error) {
		var err error
		ms, err = Value[float64](t, firstScript)
		return ms > 0, err
	})
	return ms / 1000, err
}

const firstScript = `(() => {
  const mark = performance.getEntriesByName("cuesta-first-frame")[0];
  const waits = document.documentElement.dataset.cuesta !== undefined && !mark;
  return waits ? 0 : cuestaClock.first && Math.max(cuestaClock.first, mark ? mark.startTime : 0);
})()`

// Starts compares the first frames of two pages, each loaded for the first
// time in turns, and returns the middle of each in seconds.
func Starts(b *Browser, ours, empty string, rounds int) (a, z float64, err error) {
	var as, zs []float64
	for range rounds {
		for url, to := range map[string]*[]float64{ours: &as, empty: &zs} {
			took, err := firstFrame(b, url, Screen{W: 1280, H: 720})
			if err != nil {
				return 0, 0, fmt.Errorf("%s: %w", url, err)
			}
			*to = append(*to, took)
		}
	}
	return middle(as), middle(zs), nil
}

func middle(v []float64) float64 {
	slices.Sort(v)
	return (v[(len(v)-1)/2] + v[len(v)/2]) / 2
}

// Rate is how many frames a second a page shows at 640×360. Between times work
// is done on it.
func Rate(b *Browser, url string, long time.Duration, work func(*Tab) error) (float64, error) {
	t, err := b.timed(url, Screen{W: 640, H: 360})
	if err != nil {
		return 0, err
	}
	defer t.Close()
	err = Await("the first frame", 60*time.Second, func() (bool, error) { return Value[bool](t, firstScript+" > 0") })
	if err != nil {
		return 0, err
	}
	time.Sleep(time.Second) // what is done once is over
	return count(t, long, work)
}

// count is the frames a second from now on.
func count(t *Tab, long time.Duration, work func(*Tab) error) (float64, error) {
	const now = `[cuestaClock.frames, performance.now()]`
	before, err := Value[[2]float64](t, now)
	if err != nil {
		return 0, err
	}
	for end := time.Now().Add(long); time.Now().Before(end); time.Sleep(400 * time.Millisecond) {
		if err := work(t); err != nil {
			return 0, err
		}
	}
	after, err := Value[[2]float64](t, now)
	return (after[0] - before[0]) / (after[1] - before[1]) * 1000, err
}

// Swing moves the plate now one way, now the other, so that needle and bubble
// never rest.
func Swing() func(*Tab) error {
	n := 0
	return func(t *Tab) error {
		n++
		if n%2 == 0 {
			return t.Keys(kb.ArrowLeft)
		}
		return t.Keys(kb.ArrowRight)
	}
}

// Rest does nothing.
func Rest(*Tab) error { return nil }
