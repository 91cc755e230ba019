package scenes

import (
	"math"
	"strings"
	"testing"

	"cuesta/scenes/describe"
	"cuesta/scenes/input"
	"cuesta/scenes/keymap"
	"cuesta/sim"
)

// askFor opens the list of keys, chooses an action and presses a key.
func (k *hands) askFor(a keymap.Action, p input.Press) {
	k.t.Helper()
	k.key(input.F4, 0)
	for range 20 {
		if k.b.Description().Find(idKeyRow+describe.ID(a)) != nil {
			break
		}
		k.act(idPanelMore)
	}
	k.act(idKeyRow + describe.ID(a))
	k.frame(input.Frame{Ticks: 2, Presses: []input.Press{p}})
}

func (k *hands) act(id describe.ID) {
	k.t.Helper()
	if n := k.b.Description().Find(id); n == nil || n.Disabled {
		k.t.Fatalf("no control %d on the screen", id)
	}
	k.frame(input.Frame{Ticks: 2, Acts: []input.Act{{Kind: input.Activate, ID: id}}})
}

func TestAKeyIsGivenAnotherMeaning(t *testing.T) {
	k := newHands(t, BenchOptions{Seed: 5})
	k.askFor(keymap.TurnOver, input.Press{Rune: 'F'})
	if got := k.b.keys.said; !strings.Contains(got, "In exchange") {
		t.Errorf("said %q, want to be told of the exchange", got)
	}
	k.key(input.Escape, 0)
	if k.typing("f"); k.b.obs.Seat != sim.OnSide {
		t.Error("F does not turn the plate")
	}
	if n := k.b.Description().Find(idTurn); n == nil || n.Keys != "F" {
		t.Errorf("the control tells the key %+v, want F", n)
	}
	k.key(input.F4, 0)
	k.act(idPanelMore)
	for k.b.Description().Find(idUsualKeys) == nil {
		k.act(idPanelMore)
	}
	if k.act(idUsualKeys); !k.b.set.Keys.Usual() {
		t.Error("the usual keys have not come back")
	}
}

// TestNoKeyLocksAnyoneOut tries every key that leads on or out.
func TestNoKeyLocksAnyoneOut(t *testing.T) {
	for _, key := range []input.Key{input.Tab, input.Enter, input.Escape} {
		k := newHands(t, BenchOptions{Seed: 5})
		k.askFor(keymap.Flip, input.Press{Key: key})
		if !k.b.set.Keys.Usual() || k.b.keys.asking {
			t.Errorf("key %d was taken, or the panel still waits", key)
		}
		if k.key(input.Escape, 0); k.b.panel != noPanel {
			t.Errorf("Escape does not lead out after key %d", key)
		}
	}
}

func TestAKeyMayStandForAnArrow(t *testing.T) {
	k := newHands(t, BenchOptions{Seed: 5})
	for a, r := range map[keymap.Action]rune{keymap.SwingLess: 'h', keymap.SwingMore: 'j'} {
		k.askFor(a, input.Press{Rune: r})
		k.key(input.Escape, 0)
	}
	before := k.b.World().Pose().Swing
	if k.typing("j"); k.b.World().Pose().Swing <= before {
		t.Error("J does not swing clockwise")
	}
	after := k.b.World().Pose().Swing
	if k.key(input.Right, 0); k.b.World().Pose().Swing != after {
		t.Error("the arrow still swings the plate")
	}
	if n := k.b.Description().Find(idSwingMore); n.Keys != "J" {
		t.Errorf("the control tells the key %q, want J", n.Keys)
	}
}

// Short cuts of a single sign can be turned off, and then work only in the
// field that has the focus (WCAG 2.2, 2.1.4).
func TestSignsThatAreTypedCanBeTurnedOff(t *testing.T) {
	k := newHands(t, BenchOptions{Seed: 5})
	s := k.b.Settings()
	s.Quiet = true
	k.b.Choose(s)
	k.wait(2)
	hash := k.b.World().Hash()
	pose, text := k.b.World().Pose(), k.b.text
	for _, r := range "tflscnd[],.0123456789/" {
		k.frame(input.Frame{Presses: []input.Press{{Rune: r}}})
	}
	if k.b.World().Pose() != pose || k.b.text != text || k.b.World().Hash() != hash {
		t.Error("a sign has done something away from the field")
	}
	for _, n := range k.b.Description().Order() {
		for _, w := range strings.Fields(n.Keys) {
			if len([]rune(w)) == 1 && !strings.Contains("←→↑↓", w) {
				t.Errorf("%q tells the key %q, which does nothing", n.Name, n.Keys)
			}
		}
	}
	k.act(idNotebook)
	if k.typing("035/30"); k.b.text != "035/30" {
		t.Errorf("in the field: wrote %q", k.b.text)
	}
	k.key(input.Escape, 0)
	if k.key(input.Left, 0); k.b.World().Pose() == pose {
		t.Error("the arrow no longer swings the plate")
	}
}

// Every step has a way by one key that is not held.
func TestNoActionNeedsTwoKeys(t *testing.T) {
	k := newHands(t, BenchOptions{Seed: 5})
	sizes := map[float64]bool{}
	for range 3 {
		before := k.b.World().Pose().Swing
		k.key(input.Right, 0)
		sizes[math.Round((k.b.World().Pose().Swing-before).Degrees()*10)] = true
		k.typing("s")
	}
	if len(sizes) != 3 {
		t.Errorf("with S and an arrow: %v, want three sizes of step", sizes)
	}
}

func TestTheScaleIsSaidInWords(t *testing.T) {
	k := newHands(t, BenchOptions{Seed: 5})
	for _, want := range []string{"The north end stands at ", "The index stands at "} {
		if k.typing("d"); !strings.Contains(k.b.notice, want) || !strings.Contains(strings.ToLower(k.b.notice), "bubble") {
			t.Errorf("said %q, want %q and the bubble", k.b.notice, want)
		}
		if n := k.b.Description().Find(idNotice); n == nil || n.Role != describe.Status {
			t.Errorf("got %+v, want it told as a status", n)
		}
		var herald describe.Herald
		herald.Hear(k.b.Description())
		k.typing("d")
		if got := strings.Join(herald.Hear(k.b.Description()), " "); !strings.Contains(got, want) {
			t.Errorf("asked again: said %q, want %q", got, want)
		}
		k.typing("t")
	}
}
