package browse

import (
	"strings"
	"testing"
)

// Twenty taps that begin and end in one task of the page, between two frames
// however fast they follow each other: twenty arrive, in order. Polled once a
// frame, none would.
func TestNoTapIsLost(t *testing.T) {
	t.Parallel()
	tab := visit(t, desk, "bench&plane=035/30&seed=3")
	t.Run("keys", func(t *testing.T) {
		const typed = "12345678901234567890"
		n := must[Node](t)(tab.named("Instrument"))
		err := tab.on(n, `function () {
			this.focus();
			for (const key of "`+typed+`") {
				const what = {key: key, code: "Digit" + key, bubbles: true, cancelable: true};
				this.dispatchEvent(new KeyboardEvent("keydown", what));
				this.dispatchEvent(new KeyboardEvent("keyup", what));
			}
		}`)
		if err != nil {
			t.Fatal(err)
		}
		if got := notebook(t, tab, len(typed)); got != typed {
			t.Errorf("the notebook holds %q, want %q", got, typed)
		}
	})
	if err := (byTree{tab}).write(""); err != nil {
		t.Fatal(err)
	}
	settled(t, tab)
	t.Run("pointer", func(t *testing.T) {
		if err := (byTree{tab}).press("Write with buttons", 1); err != nil {
			t.Fatal(err)
		}
		settled(t, tab)
		n := must[Node](t)(tree(t, tab).Find("button", "7"))
		err := tab.on(n, `function () {
			const r = this.getBoundingClientRect();
			for (let i = 0; i < 20; i++) {
				const at = {clientX: r.x + r.width / 2, clientY: r.y + r.height / 2, pointerId: 1, isPrimary: true,
					button: 0, bubbles: true, cancelable: true};
				this.dispatchEvent(new PointerEvent("pointerdown", at));
				this.dispatchEvent(new PointerEvent("pointerup", at));
				this.dispatchEvent(new MouseEvent("click", at));
			}
		}`)
		if err != nil {
			t.Fatal(err)
		}
		if got, want := notebook(t, tab, 20), strings.Repeat("7", 20); got != want {
			t.Errorf("the notebook holds %q, want %q", got, want)
		}
	})
}

// notebook is what the field holds once it is as long as wanted, or at rest.
func notebook(t *testing.T, tab *Tab, long int) string {
	t.Helper()
	now := settled(t, tab)
	n := must[Node](t)(now.Find("textbox", "Notebook"))
	if len(n.Value) != long {
		n = must[Node](t)(settled(t, tab).Find("textbox", "Notebook"))
	}
	return n.Value
}
