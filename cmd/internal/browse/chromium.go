package browse

import (
	"context"
	"errors"
	"fmt"
	"io"
	"os"

	"github.com/chromedp/chromedp"

	"cuesta/cmd/internal/chromium"
)

// Browser is a Chromium without a window, with a profile of its own that is
// thrown away with it.
type Browser struct {
	ctx     context.Context
	cancel  context.CancelFunc
	profile string
}

// Graphics says how a browser draws.
type Graphics uint8

// The ways of drawing.
const (
	Software   Graphics = iota // WebGL on the processor
	NoGraphics                 // no WebGL at all
)

// Start starts a browser. It draws with the processor, keeps quiet, and finds
// no other machine.
func Start(g Graphics) (*Browser, error) {
	path, err := chromium.Find()
	if err != nil {
		return nil, err
	}
	profile, err := os.MkdirTemp("", "cuesta-chromium-")
	if err != nil {
		return nil, err
	}
	ctx, cancelAll := chromedp.NewExecAllocator(context.Background(), flags(path, profile, g)...)
	ctx, cancel := chromedp.NewContext(ctx)
	b := &Browser{ctx: ctx, profile: profile, cancel: func() { cancel(); cancelAll() }}
	if err := chromedp.Do(ctx); err != nil {
		return nil, errors.Join(fmt.Errorf("the browser did not start: %w", err), b.Close())
	}
	return b, nil
}

// flags keep to what is needed: Chromium's own habits are what is tested. A
// name of a machine leads nowhere but to this one.
func flags(path, profile string, g Graphics) []chromedp.ExecAllocatorOption {
	out := []chromedp.ExecAllocatorOption{
		chromedp.ExecPath(path), chromedp.UserDataDir(profile), chromedp.CombinedOutput(io.Discard),
		chromedp.Headless, chromedp.NoSandbox, chromedp.NoFirstRun, chromedp.NoDefaultBrowserCheck,
		chromedp.Flag("disable-features", "PreloadTopChromeWebUI"), // the browser's own pages, which nobody sees
		chromedp.Flag("host-resolver-rules", "MAP * ~NOTFOUND, EXCLUDE 127.0.0.1"),
	}
	on := []string{
		"disable-quic", "disable-background-networking", "disable-component-update", "disable-sync",
		"disable-dev-shm-usage", "disable-default-apps", "disable-extensions",
	}
	switch g {
	case Software:
		on = append(on, "enable-unsafe-swiftshader")
		out = append(out, chromedp.Flag("use-gl", "angle"), chromedp.Flag("use-angle", "swiftshader"))
	case NoGraphics:
		on = append(on, "disable-gpu", "disable-software-rasterizer", "disable-3d-apis")
	}
	for _, f := range on {
		out = append(out, chromedp.Flag(f, true))
	}
	return out
}

// Close ends the browser and removes its profile.
func (b *Browser) Close() error {
	err := chromedp.Cancel(b.ctx)
	b.cancel()
	return errors.Join(err, os.RemoveAll(b.profile))
}
