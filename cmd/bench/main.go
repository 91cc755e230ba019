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

func main() { os.Exit(start(os.Args[1:])) }

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
	return window.Run(s, window.Options{Title: "cuesta", W: o.w, H: o.h, FullScreen: o.full})
}

// shown is a scene whose commands need not be handed on: it has carried them
// out itself.
type shown struct{ *heard }

func (s shown) Update(f input.Frame) { s.heard.Update(f) }

var _ window.Scene = shown{}

// options are what the command line asks for.
type options struct {
	scene  scene
	file   string // of the scene
	folder string // where forms are looked for; "" is the current one
	plane  *orient.Plane
	seed   uint64
	w, h   int
	full   bool
	guest  bool
	room   room
	frames int
	empty  bool

	announce bool // what changes on the screen goes to standard output
	speak    bool
}

const usage = `The bench in a window, with lectures, forms and labs beside it.

  bench [bench] [--plane PLANE] [--seed N]
  bench hall            everything there is, to choose from
  bench lecture LESSON  the name of a lesson, such as two-readings, or its file
  bench form FORM       a form to answer, ID.form.json; each answer is kept at
                        once, and the form goes on where it was left
  bench lab STATIONS    the screen on the table of a lab with real slabs

Flags stand before the scene:
  --plane PLANE   begin with this plane, in any notation, such as 035/30
  --seed N        draw the first plane from this whole number
  --size WxH      size of the window, 1280x720 if left out
  --full-screen   fill the screen
  --guest         keep nothing: no progress, no settings
  --announce      write each change of the screen as a line on standard output
  --speak         have it spoken, as the setting Speech does
  --roster FILE   of a lab: the class; others are refused then
  --out DIR       of a lab: where the readings go, readings if left out
  --station NAME  of a lab: the one station that stands beside this screen
  --withhold      of a lab: say nothing about right or wrong

A simulator reading is never data for design.
`
