package browse

import (
	"testing"

	"github.com/chromedp/chromedp/kb"
)

// One bench is shown on three small screens, one after the other.
func TestSmallScreens(t *testing.T) {
	t.Parallel()
	low := Screen{W: 360, H: 640, Touch: true}
	zoomed := Screen{W: 320, H: 256, Scale: 1}
	tab := visit(t, low, "bench")
	t.Run("the picture is as large as the page", func(t *testing.T) { samePlace(t, tab) })
	for _, to := range []struct {
		name  string
		s     Screen
		check func(*testing.T, *Tab, Screen)
	}{
		{"targets on a phone", phone, targets},
		{"every control is in view at fourfold zoom", zoomed, allInView},
	} {
		if err := tab.Resize(to.s); err != nil {
			t.Fatal(err)
		}
		settled(t, tab)
		t.Run(to.name, func(t *testing.T) { to.check(t, tab, to.s) })
	}
}

// On a screen lower than the bench the page is higher than its window, from the
// first frame on: what is drawn lies where its controls are.
func samePlace(t *testing.T, tab *Tab) {
	t.Helper()
	settled(t, tab)
	size := must[[4]float64](t)(Value[[4]float64](tab, `(() => {
		const c = document.querySelector("body > canvas");
		return [c.width, c.height, c.clientWidth, c.clientHeight];
	})()`))
	if size[0] != size[2] || size[1] != size[3] {
		t.Errorf("the picture has %v×%v pixels on %v×%v", size[0], size[1], size[2], size[3])
	}
}

// On a phone all targets are at least 24 CSS px wide and high (WCAG 2.2,
// 2.5.8), and those of the bench 44 one way at least, which a thumb wants
// (common practice).
func targets(t *testing.T, tab *Tab, _ Screen) {
	t.Helper()
	for _, n := range settled(t, tab) {
		switch n.Role {
		case "button", "radio", "textbox", "checkbox":
		default:
			continue
		}
		_, _, w, h, err := tab.Box(n)
		if err != nil {
			t.Fatal(err)
		}
		if min(w, h) < 24 || max(w, h) < 44 {
			t.Errorf("%s is %.0f×%.0f px", n, w, h)
		}
	}
}

// At 400 % zoom a window of 1280×1024 is 320×256 CSS px (WCAG 2.2, 1.4.10):
// every control can be had by Tab, and is in view when it has the keyboard.
func allInView(t *testing.T, tab *Tab, s Screen) {
	t.Helper()
	want := map[string]bool{}
	for _, n := range tree(t, tab) {
		if n.Focusable && !n.Disabled && n.Role != "RootWebArea" {
			want[n.Role+" "+n.Name] = true
		}
	}
	if len(want) < 5 {
		t.Fatalf("only %d controls", len(want))
	}
	for range 2*len(want) + 2 {
		now := settled(t, tab)
		f, ok := now.Focused()
		if ok {
			delete(want, f.Role+" "+f.Name)
			inView(t, tab, f, s)
		}
		if len(want) == 0 {
			return
		}
		if err := tab.Keys(kb.Tab); err != nil {
			t.Fatal(err)
		}
	}
	t.Errorf("Tab does not come to %v", want)
}

func inView(t *testing.T, tab *Tab, n Node, s Screen) {
	t.Helper()
	x, y, w, h, err := tab.Box(n)
	if err != nil {
		t.Fatal(err)
	}
	// What is larger than the screen cannot be in view as a whole.
	right, low := min(w, float64(s.W)), min(h, float64(s.H))
	if x+w < right-1 || y+h < low-1 || x > float64(s.W)-right+1 || y > float64(s.H)-low+1 {
		t.Errorf("%s has the keyboard at %.0f,%.0f %.0f×%.0f, out of view", n, x, y, w, h)
	}
}
