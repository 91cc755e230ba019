//go:build linux && cgo

package window

/*
#cgo LDFLAGS: -lX11
#include <X11/Xlib.h>

extern int displayLost(Display *);
static int lost(Display *d) { return displayLost(d); }
static void watch(void) { XSetIOErrorHandler(lost); }
*/
import "C"

import (
	"fmt"
	"os"
)

// theScene is what must be saved before the process ends.
var theScene *guarded

// onDisplayLost sees to it that a scene is closed when the X server goes away.
// Xlib then ends the process by itself, and tells no one but this handler.
func onDisplayLost(s *guarded) {
	theScene = s
	C.watch()
}

//export displayLost
func displayLost(*C.Display) C.int {
	fmt.Fprintln(os.Stderr, "The display has gone away.")
	if err := theScene.close(); err != nil {
		fmt.Fprintln(os.Stderr, err)
	}
	os.Exit(1)
	return 0
}
