// Command bench is the bench in a window, and the browser program when built
// for it.
package main

import (
	"fmt"
	"io"
	"os"
	"strings"

	"cuesta/cmd/bench/asked"
	_ "cuesta/cmd/bench/early"
	"cuesta/scenes"
	"cuesta/scenes/input"
	"cuesta/scenes/window"
)

// Exit status.
const (
	done    = asked.Done
	failed  = asked.Failed
	misread = asked.Misread
)

func main() { os.Exit(start(os.Args[1:])) }

func run(args []string, out, problems io.Writer) int {
	o, err := read(args)
	if status, ok := asked.Tell(err, out, problems); ok {
		return status
	}
	if o.Frames > 0 {
		err = measure(o, out)
	} else {
		err = open(o, out)
	}
	if err != nil {
		fmt.Fprintf(problems, "bench: %s\n", strings.Join(strings.Fields(err.Error()), " "))
		return failed
	}
	return done
}

// open shows a scene, and the hall around it, until the window is closed.
func open(o options, out io.Writer) error {
	h, err := hall(o)
	if err != nil {
		return err
	}
	s := shown{&heard{Scene: scenes.NewSwitched(h), crier: newCrier(o, out)}}
	return window.Run(s, window.Options{Title: "cuesta", W: o.W, H: o.H, FullScreen: o.Full})
}

// shown is a scene whose commands need not be handed on: it has carried them
// out itself.
type shown struct{ *heard }

func (s shown) Update(f input.Frame) { s.heard.Update(f) }

var _ window.Scene = shown{}
