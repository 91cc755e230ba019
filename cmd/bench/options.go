package main

import (
	"errors"
	"flag"
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"

	"cuesta/orient"
)

// room is how the station screen of a lab is run.
type room struct {
	roster   string // the class, a file; "" lets anyone write
	out      string // folder for the readings
	station  string // the one beside the screen; "" lets students choose
	withhold bool
}

// Limits of a window, in nominal pixels.
const (
	leastSide = 200
	mostSide  = 16384
)

// read reads the command line. --frames and --empty are for measuring, --folder
// for programs that start this one elsewhere; they are not listed.
func read(args []string) (options, error) {
	o := options{w: 1280, h: 720, seed: chance()}
	f := flag.NewFlagSet("bench", flag.ContinueOnError)
	f.SetOutput(io.Discard)
	f.Func("plane", "", o.readPlane)
	f.Func("seed", "", o.readSeed)
	f.Func("size", "", o.readSize)
	f.BoolVar(&o.full, "full-screen", false, "")
	f.BoolVar(&o.guest, "guest", false, "")
	f.BoolVar(&o.announce, "announce", false, "")
	f.BoolVar(&o.speak, "speak", false, "")
	f.StringVar(&o.room.roster, "roster", "", "")
	f.StringVar(&o.room.out, "out", "", "")
	f.StringVar(&o.room.station, "station", "", "")
	f.BoolVar(&o.room.withhold, "withhold", false, "")
	f.StringVar(&o.folder, "folder", "", "")
	f.IntVar(&o.frames, "frames", 0, "")
	f.BoolVar(&o.empty, "empty", false, "")
	if err := f.Parse(args); err != nil {
		return o, err
	}
	if o.frames < 0 {
		return o, fmt.Errorf("--frames read %d; it counts from 1", o.frames)
	}
	if err := o.readScene(f.Args()); err != nil {
		return o, err
	}
	if o.room != (room{}) && o.scene != labScene {
		return o, errors.New("--roster, --out, --station and --withhold belong to the scene lab")
	}
	return o, nil
}

// scene is what the window opens on.
type scene uint8

const (
	benchScene scene = iota
	hallScene
	lectureScene // file is the name of a lesson, or its file
	labScene     // file holds the stations
	formScene    // file is a form
)

var sceneNames = [...]string{benchScene: "bench", hallScene: "hall", lectureScene: "lecture", labScene: "lab", formScene: "form"}

// readScene reads the scene and its file. A file that ends like a form needs no
// scene before it.
func (o *options) readScene(words []string) error {
	if len(words) == 0 {
		return nil
	}
	if len(words) == 1 && strings.HasSuffix(words[0], ".json") {
		o.scene, o.file = formScene, words[0]
		return nil
	}
	at := slices.Index(sceneNames[:], words[0])
	if at < 0 {
		return fmt.Errorf("read %q, which is neither a scene nor a form; the scenes are %s, and a form is a file such as a17.form.json",
			words[0], strings.Join(sceneNames[:], ", "))
	}
	o.scene = scene(at)
	if wanted := o.scene.file(); wanted == "" && len(words) > 1 {
		return fmt.Errorf("read %q, but the scene %s takes no file", words[1], words[0])
	} else if wanted != "" && len(words) != 2 {
		return fmt.Errorf("the scene %s takes %s; read %d words behind it", words[0], wanted, len(words)-1)
	}
	if len(words) == 2 {
		o.file = words[1]
	}
	return nil
}

// file is what a scene wants to be named, or "".
func (s scene) file() string {
	switch s {
	case lectureScene:
		return "the name of a lesson or its file"
	case labScene:
		return "a file of stations"
	case formScene:
		return "a form"
	case benchScene, hallScene:
	}
	return ""
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
