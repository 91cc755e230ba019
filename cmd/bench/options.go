package main

import (
	"flag"
	"fmt"
	"io"
	"strconv"
	"strings"

	"cuesta/orient"
)

// Limits of a window, in nominal pixels.
const (
	leastSide = 200
	mostSide  = 16384
)

// read reads the command line. --frames and --empty are for measuring and not
// listed.
func read(args []string) (options, error) {
	o := options{w: 1280, h: 720, seed: chance()}
	f := flag.NewFlagSet("bench", flag.ContinueOnError)
	f.SetOutput(io.Discard)
	f.Func("plane", "", o.readPlane)
	f.Func("seed", "", o.readSeed)
	f.Func("size", "", o.readSize)
	f.BoolVar(&o.full, "full-screen", false, "")
	f.BoolVar(&o.guest, "guest", false, "")
	f.IntVar(&o.frames, "frames", 0, "")
	f.BoolVar(&o.empty, "empty", false, "")
	if err := f.Parse(args); err != nil {
		return o, err
	}
	if f.NArg() > 1 {
		return o, fmt.Errorf("read %q behind the form; one form is opened at a time", f.Arg(1))
	}
	if o.form = f.Arg(0); o.form != "" && !strings.HasSuffix(o.form, ".json") {
		return o, fmt.Errorf("read %q, which is neither a flag nor a form; a form is a file such as a17.form.json", o.form)
	}
	if o.frames < 0 {
		return o, fmt.Errorf("--frames read %d; it counts from 1", o.frames)
	}
	return o, nil
}

func (o *options) readPlane(s string) error {
	e, err := orient.Parse(s, orient.AzimuthDip)
	if err != nil {
		return err
	}
	o.plane = &e.Plane
	return nil
}

func (o *options) readSeed(s string) error {
	n, err := strconv.ParseUint(s, 10, 64)
	if err != nil {
		return fmt.Errorf("read %q; write a whole number from 0, such as 7", s)
	}
	o.seed = n
	return nil
}

func (o *options) readSize(s string) error {
	w, h, ok := strings.Cut(s, "x")
	var errW, errH error
	o.w, errW = strconv.Atoi(w)
	o.h, errH = strconv.Atoi(h)
	if !ok || errW != nil || errH != nil || min(o.w, o.h) < leastSide || max(o.w, o.h) > mostSide {
		return fmt.Errorf("read %q; write width x height, such as 1280x720, from %d to %d each", s, leastSide, mostSide)
	}
	return nil
}
