package window

import (
	"fmt"
	"os"
	"testing"

	"github.com/hajimehoshi/ebiten/v2"
)

// tests runs the tests inside of a window, where images can be drawn and read
// back: xvfb-run -a go test ./scenes/window.
type tests struct {
	m    *testing.M
	code int
}

func (t *tests) Update() error {
	t.code = t.m.Run()
	return ebiten.Termination
}

func (t *tests) Draw(*ebiten.Image) {}

func (t *tests) Layout(w, h int) (int, int) { return 320, 240 }

func TestMain(m *testing.M) {
	t := &tests{m: m}
	if err := ebiten.RunGame(t); err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
	os.Exit(t.code)
}
