package browse

import (
	"fmt"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/cdproto/input"
	"github.com/chromedp/chromedp"
)

// byTouch taps with a finger, in the middle of where a control is, whatever lies
// there.
type byTouch struct{ *Tab }

func (h byTouch) press(name string, times int) error {
	if err := reach(h, h.Tab, name); err != nil {
		return err
	}
	n, err := h.named(name)
	if err != nil {
		return err
	}
	for range times {
		if err := h.tap(n); err != nil {
			return err
		}
	}
	return nil
}

// tap touches the screen in the middle of a control and lifts the finger.
func (h byTouch) tap(n Node) error {
	x, y, w, hgt, err := h.Box(n)
	if err != nil {
		return err
	}
	if w < 1 || hgt < 1 {
		return fmt.Errorf("%s has no place on the screen", n)
	}
	at := []*input.TouchPoint{{X: x + w/2, Y: y + hgt/2}}
	for _, p := range []input.DispatchTouchEventParams{
		{Type: input.DispatchTouchEventTypeTouchStart, TouchPoints: at},
		{Type: input.DispatchTouchEventTypeTouchEnd, TouchPoints: []*input.TouchPoint{}},
	} {
		if _, err := chromedp.Call(h.ctx, input.DispatchTouchEvent, p); err != nil {
			return err
		}
	}
	return nil
}

// write taps the signs of a text on the page's own buttons.
func (h byTouch) write(text string) error {
	if err := h.press("Write with buttons", 1); err != nil {
		return err
	}
	for _, sign := range strings.Split(text, "") {
		if sign == "/" {
			sign = "Slash"
		}
		n, err := h.named(sign)
		if err != nil {
			return err
		}
		if err := h.tap(n); err != nil {
			return err
		}
	}
	return nil
}

// A measurement is done on a phone by taps alone, and the next one in text of
// twice the size (WCAG 2.2, 1.4.4), where most of the controls lie further in.
func TestAMeasurementByTaps(t *testing.T) {
	t.Parallel()
	tab := visit(t, phone, "bench&plane=035/30&seed=3", quick)
	m := &measurer{t: t, Tab: tab, hand: byTouch{tab}, step: "Steps of 1°"}
	if got := m.measure(); !strings.Contains(got, "Right") {
		t.Errorf("the verdict is not that it is right:\n%s", got)
	}
	m.double()
	m.do("Next plane", 1)
	if got := m.measure(); !strings.Contains(got, "Right") {
		t.Errorf("at 200 %% the verdict is not that it is right:\n%s", got)
	}
}

// slowUp keeps the page busy between the way up of a finger and its click, as a
// slow phone does, and notes what is done to controls.
const slowUp = `"use strict";
(() => {
  window.addEventListener("pointerup", () => { for (const from = performance.now(); performance.now() - from < 1000;) {} });
  const act = window.cuesta.act;
  window.acts = [];
  window.cuesta.act = (kind, ...more) => { window.acts.push(kind); act(kind, ...more); };
  window.addEventListener("click", () => { window.clicked = true; });
})()`

// However late a click comes, it belongs to the tap that the program knows of
// already, and nothing is done twice.
func TestASlowTapCountsOnce(t *testing.T) {
	t.Parallel()
	tab := visit(t, phone, "bench&plane=035/30&seed=3", quick)
	if err := tab.Do(slowUp); err != nil {
		t.Fatal(err)
	}
	if err := (byTouch{tab}).press("Swing clockwise", 1); err != nil {
		t.Fatal(err)
	}
	err := Await("the click", 20*time.Second, func() (bool, error) { return Value[bool](tab, "window.clicked === true") })
	if err != nil {
		t.Fatal(err)
	}
	if acts := must[[]string](t)(Value[[]string](tab, "window.acts")); slices.Contains(acts, "activate") {
		t.Errorf("the click counts besides the tap: %q", acts)
	}
}
