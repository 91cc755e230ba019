package window

import (
	"errors"
	"fmt"
	"os"
	"os/signal"
	"slices"
	"sync"
	"sync/atomic"
	"syscall"

	"github.com/hajimehoshi/ebiten/v2"

	"cuesta/scenes/describe"
	"cuesta/scenes/draw"
	"cuesta/scenes/input"
)

// Scene is what a window shows. Update takes what happened since the last
// frame, Picture draws what there is to see; neither is called while the other
// runs. Close saves what is to be kept and is called once, at the end, even
// where the display has gone away.
type Scene interface {
	Update(input.Frame)
	Picture(*draw.List)
	Close() error
}

// Described is a scene that says in words what is on its screen. On a page it
// is mirrored by controls of the page's own.
type Described interface {
	Description() *describe.Tree
}

// Options say how a window opens. The zero value is a window of 1280×720.
type Options struct {
	Title      string
	W, H       int // nominal pixels
	FullScreen bool
}

// ErrDisplay is returned when the display fails or goes away.
var ErrDisplay = errors.New("the display failed")

// Run opens a window and shows a scene until the window is closed, the process
// is told to end, or the display fails. It must be called from main and only
// once.
func Run(s Scene, o Options) error {
	set(o)
	g := &game{scene: &guarded{scene: s}, painter: NewPainter()}
	stop := g.listen()
	defer stop()
	onDisplayLost(g.scene)
	err := ebiten.RunGame(g)
	g.ears.close()
	if err != nil {
		err = fmt.Errorf("%w: %w", ErrDisplay, err)
	}
	return errors.Join(err, g.scene.close())
}

func set(o Options) {
	if o.W <= 0 || o.H <= 0 {
		o.W, o.H = 1280, 720
	}
	if o.Title == "" {
		o.Title = "cuesta"
	}
	ebiten.SetWindowTitle(o.Title)
	ebiten.SetWindowSize(fit(o.W, o.H))
	ebiten.SetWindowResizingMode(ebiten.WindowResizingModeEnabled)
	ebiten.SetWindowSizeLimits(320, 240, -1, -1)
	ebiten.SetFullscreen(o.FullScreen)
	ebiten.SetScreenClearedEveryFrame(false)
	ebiten.SetTPS(ebiten.SyncWithFPS)
	ebiten.SetRunnableOnUnfocused(true)
}

// guarded lets one caller at a time reach the scene, and closes it once.
type guarded struct {
	mu     sync.Mutex
	scene  Scene
	closed bool
}

func (g *guarded) update(f input.Frame) {
	g.mu.Lock()
	defer g.mu.Unlock()
	if !g.closed {
		g.scene.Update(f)
	}
}

func (g *guarded) picture(l *draw.List) {
	g.mu.Lock()
	defer g.mu.Unlock()
	g.scene.Picture(l)
}

func (g *guarded) close() error {
	g.mu.Lock()
	defer g.mu.Unlock()
	if g.closed {
		return nil
	}
	g.closed = true
	return g.scene.Close()
}

// game is a scene as the window library wants it.
type game struct {
	scene   *guarded
	painter *Painter
	hand    hand
	front   front
	ears    ears
	list    draw.List
	ended   atomic.Bool
	w, h    float64
	scale   float64
}

// listen makes the window close when the process is asked to end.
func (g *game) listen() (stop func()) {
	asked := make(chan os.Signal, 1)
	signal.Notify(asked, os.Interrupt, syscall.SIGTERM)
	done := make(chan struct{})
	go func() {
		select {
		case <-asked:
			g.ended.Store(true)
		case <-done:
		}
	}()
	return func() { signal.Stop(asked); close(done) }
}

// Update is called once a frame, before Draw.
func (g *game) Update() error {
	if g.ended.Load() {
		return ebiten.Termination
	}
	f := g.hand.frame(g.w, g.h, g.scale)
	if fills(f.Presses) {
		ebiten.SetFullscreen(!ebiten.IsFullscreen())
	}
	g.scene.update(f)
	g.front.show(g.scene, f)
	g.ears.listen(g.scene)
	return nil
}

// fit is the size of a window that does not reach beyond the screen.
func fit(w, h int) (int, int) {
	if m := ebiten.Monitor(); m != nil {
		if mw, mh := m.Size(); mw > 0 && mh > 0 {
			return min(w, mw), min(h, mh)
		}
	}
	return w, h
}

// fills says that the key was pressed with which a window fills the screen, or
// leaves it. A browser has that key to itself.
func fills(ps []input.Press) bool {
	return slices.ContainsFunc(ps, func(p input.Press) bool { return p.Key == input.F11 && !p.Repeat })
}

// Draw paints the scene.
func (g *game) Draw(screen *ebiten.Image) {
	g.list.Reset(g.w, g.h)
	g.list.Live = true
	g.scene.picture(&g.list)
	g.painter.Paint(screen, &g.list)
	g.front.drawn()
}

// LayoutF makes one pixel of the picture one pixel of the device.
func (g *game) LayoutF(w, h float64) (float64, float64) {
	factor := ebiten.Monitor().DeviceScaleFactor()
	g.scale = deviceScale(factor)
	g.w, g.h = float64(int(w*factor+0.5)), float64(int(h*factor+0.5))
	g.w, g.h = max(1, g.w), max(1, g.h)
	return g.w, g.h
}

// Layout is not called; the library wants it to be there.
func (g *game) Layout(w, h int) (int, int) { return w, h }
