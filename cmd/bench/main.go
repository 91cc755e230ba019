// Command bench is the bench in a window, and the browser program when built
// for it.
package main

import (
	"errors"
	"flag"
	"fmt"
	"io"
	"os"
	"strings"

	_ "cuesta/cmd/bench/early"
	"cuesta/orient"
	"cuesta/scenes"
	"cuesta/scenes/input"
	"cuesta/scenes/window"
)

// Exit status.
const (
	done    = 0
	failed  = 1 // it could not be done
	misread = 2 // the words on the command line are wrong
)

func main() { os.Exit(run(os.Args[1:], os.Stdout, os.Stderr)) }

func run(args []string, out, problems io.Writer) int {
	o, err := read(args)
	if errors.Is(err, flag.ErrHelp) {
		fmt.Fprint(out, usage)
		return done
	}
	if err != nil {
		fmt.Fprintf(problems, "bench: %v; bench --help lists what may be asked for\n", err)
		return misread
	}
	if o.frames > 0 {
		err = measure(o, out)
	} else if o.form != "" {
		err = openForm(o)
	} else {
		err = open(o)
	}
	if err != nil {
		fmt.Fprintf(problems, "bench: %s\n", strings.Join(strings.Fields(err.Error()), " "))
		return failed
	}
	return done
}

// open shows the bench until its window is closed.
func open(o options) error {
	s := scenes.BenchOptions{Plane: o.plane, Seed: o.seed}
	if !o.guest {
		s.Store = store()
	}
	b, err := scenes.NewBench(s)
	if err != nil {
		return err
	}
	return window.Run(scene{b}, window.Options{Title: "cuesta: the bench", W: o.w, H: o.h, FullScreen: o.full})
}

// scene is a bench whose commands need not be handed on: it has carried them
// out itself.
type scene struct{ *scenes.Bench }

func (s scene) Update(f input.Frame) { s.Bench.Update(f) }

var _ window.Scene = scene{}

// options are what the command line asks for.
type options struct {
	form   string // the file of a form to answer, or "" for the bench
	plane  *orient.Plane
	seed   uint64
	w, h   int
	full   bool
	guest  bool
	frames int
	empty  bool
}

const usage = `The bench in a window.

  bench [--size WxH] [--full-screen] FORM
  bench [--plane PLANE] [--seed N] [--size WxH] [--full-screen] [--guest]

  --plane PLANE   begin with this plane, in any notation, such as 035/30
  --seed N        draw the first plane from this whole number
  --size WxH      size of the window, 1280x720 if left out
  --full-screen   fill the screen
  --guest         keep nothing: no progress, no settings
  FORM            a form to answer, ID.form.json; each answer is kept at once,
                  and the form goes on where it was left

A simulator reading is never data for design.
`
