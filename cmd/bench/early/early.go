// Package early ends the program with a clear message where no window can be
// opened. On Linux the window library gives up while it is being initialised,
// before main, and tells only a programmer why. This package imports little
// and stands first in the order in which packages are initialised.
package early

import (
	"os"
	"runtime"
	"strings"

	"cuesta/cmd/bench/asked"
	"cuesta/cmd/bench/xdisplay"
)

func init() {
	if runtime.GOOS != "linux" {
		return
	}
	why := xdisplay.Missing(os.Getenv("DISPLAY"), xdisplay.Answers)
	if why == "" {
		return
	}
	answer(os.Args[1:])
	os.Stderr.WriteString("bench: there is no display (" + why + "), so no window can be opened.\n" +
		"The same bench line by line: go run ./cmd/cuesta spoken\n")
	os.Exit(asked.Failed)
}

// answer ends the program where the words on the command line want no window:
// they ask for the help, or are wrong. How a plane is written cannot be told
// this early.
func answer(args []string) {
	if len(args) > 0 && strings.HasPrefix(args[0], "-test.") { // a test of this program
		return
	}
	_, err := asked.Read(args, func(string) error { return nil })
	if status, ok := asked.Tell(err, os.Stdout, os.Stderr); ok {
		os.Exit(status)
	}
}
