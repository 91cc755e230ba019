// Package asked reads the command line of the window program. It imports the
// standard library only, so that it can be read before the window library is
// initialised, which gives up where there is no display.
package asked

import (
	"errors"
	"flag"
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"
)

// Exit status.
const (
	Done    = 0
	Failed  = 1 // it could not be done
	Misread = 2 // the words on the command line are wrong
)

// Options are what the command line asks for.
type Options struct {
	Scene  Scene
	File   string // of the scene
	Folder string // where forms are looked for; "" is the current one
	Seed   uint64 // Seeded says whether it was given
	Seeded bool
	W, H   int
	Full   bool
	Guest  bool
	Room   Room
	Method string // of measuring, one of Methods; "" for the one that is kept
	Frames int
	Empty  bool

	Announce bool // what changes on the screen goes to standard output
	Speak    bool
}

// Room is how the station screen of a lab is run.
type Room struct {
	Roster   string // the class, a file; "" lets anyone write
	Out      string // folder for the readings
	Station  string // the one beside the screen; "" lets students choose
	Withhold bool
}

// Limits of a window, in nominal pixels.
const (
	leastSide = 200
	mostSide  = 16384
)

// Read reads the command line; plane reads a plane. --frames and --empty are for
// measuring, --folder for programs that start this one elsewhere; they are not
// listed.
func Read(args []string, plane func(string) error) (Options, error) {
	o := Options{W: 1280, H: 720}
	f := flag.NewFlagSet("bench", flag.ContinueOnError)
	f.SetOutput(io.Discard)
	f.Func("plane", "", plane)
	f.Func("method", "", o.readMethod)
	f.Func("seed", "", o.ReadSeed)
	f.Func("size", "", o.readSize)
	f.BoolVar(&o.Full, "full-screen", false, "")
	f.BoolVar(&o.Guest, "guest", false, "")
	f.BoolVar(&o.Announce, "announce", false, "")
	f.BoolVar(&o.Speak, "speak", false, "")
	f.StringVar(&o.Room.Roster, "roster", "", "")
	f.StringVar(&o.Room.Out, "out", "", "")
	f.StringVar(&o.Room.Station, "station", "", "")
	f.BoolVar(&o.Room.Withhold, "withhold", false, "")
	f.StringVar(&o.Folder, "folder", "", "")
	f.IntVar(&o.Frames, "frames", 0, "")
	f.BoolVar(&o.Empty, "empty", false, "")
	words, err := apart(f, args)
	if err != nil {
		return o, err
	}
	if o.Frames < 0 {
		return o, fmt.Errorf("--frames read %d; it counts from 1", o.Frames)
	}
	if err := o.readScene(words); err != nil {
		return o, err
	}
	if o.Room != (Room{}) && o.Scene != Lab {
		return o, errors.New("--roster, --out, --station and --withhold belong to the scene lab")
	}
	return o, nil
}

// apart parses the flags, wherever they stand, and returns the other words.
func apart(f *flag.FlagSet, args []string) (words []string, err error) {
	for {
		if err := f.Parse(args); err != nil {
			return nil, err
		}
		if f.NArg() == 0 {
			return words, nil
		}
		words, args = append(words, f.Arg(0)), f.Args()[1:]
	}
}

// Methods are the ways of measuring.
var Methods = [...]string{"edge", "lid", "sensor"}

func (o *Options) readMethod(s string) error {
	if !slices.Contains(Methods[:], s) {
		return fmt.Errorf("read %q; the methods are %s", s, strings.Join(Methods[:], ", "))
	}
	o.Method = s
	return nil
}

// Scene is what the window opens on.
type Scene uint8

// The scenes.
const (
	Bench Scene = iota
	Hall
	Lecture // file is the name of a lesson, or its file
	Lab     // file holds the stations
	Form    // file is a form
)

var sceneNames = [...]string{Bench: "bench", Hall: "hall", Lecture: "lecture", Lab: "lab", Form: "form"}

// readScene reads the scene and its file. A file that ends like a form needs no
// scene before it.
func (o *Options) readScene(words []string) error {
	if len(words) == 0 {
		return nil
	}
	if len(words) == 1 && strings.HasSuffix(words[0], ".json") {
		o.Scene, o.File = Form, words[0]
		return nil
	}
	at := slices.Index(sceneNames[:], words[0])
	if at < 0 {
		return fmt.Errorf("read %q, which is neither a scene nor a form; the scenes are %s, and a form is a file such as a17.form.json",
			words[0], strings.Join(sceneNames[:], ", "))
	}
	o.Scene = Scene(at)
	if wanted := o.Scene.file(); wanted == "" && len(words) > 1 {
		return fmt.Errorf("read %q, but the scene %s takes no file", words[1], words[0])
	} else if wanted != "" && len(words) != 2 {
		return fmt.Errorf("the scene %s takes %s; read %d words behind it", words[0], wanted, len(words)-1)
	}
	if len(words) == 2 {
		o.File = words[1]
	}
	return nil
}

// file is what a scene wants to be named, or "".
func (s Scene) file() string {
	switch s {
	case Lecture:
		return "the name of a lesson or its file"
	case Lab:
		return "a file of stations"
	case Form:
		return "a form"
	case Bench, Hall:
	}
	return ""
}

// ReadSeed reads a whole number from 0.
func (o *Options) ReadSeed(s string) error {
	n, err := strconv.ParseUint(s, 10, 64)
	if err != nil {
		return fmt.Errorf("read %q; write a whole number from 0, such as 7", s)
	}
	o.Seed, o.Seeded = n, true
	return nil
}

func (o *Options) readSize(s string) error {
	w, h, ok := strings.Cut(s, "x")
	var errW, errH error
	o.W, errW = strconv.Atoi(w)
	o.H, errH = strconv.Atoi(h)
	if !ok || errW != nil || errH != nil || min(o.W, o.H) < leastSide || max(o.W, o.H) > mostSide {
		return fmt.Errorf("read %q; write width x height, such as 1280x720, from %d to %d each", s, leastSide, mostSide)
	}
	return nil
}

// Tell answers a command line that asks for no window, and says whether it was
// one: one that asks for the help, or with wrong words.
func Tell(err error, out, problems io.Writer) (status int, ok bool) {
	switch {
	case errors.Is(err, flag.ErrHelp):
		fmt.Fprint(out, Usage)
		return Done, true
	case err != nil:
		fmt.Fprintf(problems, "bench: %v; bench --help lists what may be asked for\n", err)
		return Misread, true
	}
	return Done, false
}
