// Package early ends the program with a clear message where no window can be
// opened. On Linux the window library gives up while it is being initialised,
// before main, and tells only a programmer why. This package imports little
// and stands first in the order in which packages are initialised.
package early

import (
	"os"
	"runtime"

	"cuesta/cmd/bench/xdisplay"
)

func init() {
	if runtime.GOOS != "linux" {
		return
	}
	if why := xdisplay.Missing(os.Getenv("DISPLAY"), xdisplay.Answers); why != "" {
		os.Stderr.WriteString("bench: there is no display (" + why + "), so no window can be opened.\n" +
			"The same bench line by line: go run ./cmd/cuesta spoken\n")
		os.Exit(1)
	}
}
