package main

import (
	"fmt"
	"runtime/debug"
	"strings"

	"cuesta/cmd/bench/asked"
	"cuesta/scenes"
	"cuesta/scenes/input"
	"cuesta/scenes/lesson"
	"cuesta/scenes/theme"
	"cuesta/scenes/window"
)

const darkTheme = theme.Dark

func contrastTheme(dark bool) theme.Name {
	if dark {
		return theme.ContrastBlack
	}
	return theme.Contrast
}

// start runs the part of the program that the address of the page asks for, and
// tells the page where it cannot.
func start(args []string) int {
	o, words, err := readPage(args)
	if err != nil {
		tell("misread", plain(err))
		return misread
	}
	if words {
		typeface()
		err = openWords(o)
	} else {
		err = openPage(o, addressOf(args))
	}
	if err != nil {
		tell("failed", plain(err))
		return failed
	}
	return done
}

func plain(err error) string {
	s := strings.Join(strings.Fields(err.Error()), " ")
	if s != "" && !strings.HasSuffix(s, ".") {
		s += "."
	}
	return s
}

// readPage reads what the page made of its address: words like --seed=7, in
// place of a command line, so that nothing in an address is taken for a file.
func readPage(args []string) (o options, words bool, err error) {
	o = options{Options: asked.Options{Seed: chance(), W: 1280, H: 720}}
	for _, a := range args {
		name, value, _ := strings.Cut(strings.TrimPrefix(a, "--"), "=")
		switch name {
		case "words":
			words = true
		case "hall":
			o.Scene = asked.Hall
		case "form":
			o.Scene = asked.Form
		case "lecture":
			o.Scene, o.File = asked.Lecture, value
			if _, ok := lesson.Named(value); !ok {
				err = fmt.Errorf("there is no lecture %q; they stand in the menu, #hall", value)
			}
		case "plane":
			err = o.readPlane(value)
		case "seed":
			err = o.ReadSeed(value)
		}
		if err != nil {
			return o, words, err
		}
	}
	return o, words, nil
}

// addressOf is what behind the # of the page leads to what was asked for:
// without any words that is the bench.
func addressOf(args []string) string {
	var words []string
	for _, a := range args {
		if word := strings.TrimPrefix(a, "--"); word != a {
			words = append(words, word)
		}
	}
	if len(words) == 0 {
		return "bench"
	}
	return strings.Join(words, "&")
}

// startGarbage lets the heap grow to five times what is in use before memory is
// looked through, as nearly all of what is made at the start stays in use;
// usualGarbage is what a program has of itself, in per cent.
const startGarbage, usualGarbage = 400, 100

// openPage shows a scene, and the hall around it, on the page.
func openPage(o options, address string) error {
	debug.SetGCPercent(startGarbage)
	p := place{options: o, store: store()}
	if p.store == nil {
		tell("notice", "This browser keeps nothing for this page: what you do here lasts until the page is closed.")
	}
	p.firstWishes()
	ask := scenes.NoWant
	if o.Scene == asked.Form && !p.leftOpen() {
		p.Scene, ask = asked.Hall, scenes.WantForm
	}
	first, err := p.first()
	if err != nil && o.Scene == asked.Form { // the other doors are open all the same
		tell("notice", plain(err))
		first, err = nil, nil
	}
	if err != nil {
		return err
	}
	h := scenes.NewHall(scenes.HallOptions{Doors: p.doors(), First: first, Place: address, Settings: p.settings(), Keep: p.keep})
	if p.store == nil {
		h.Choose(wish(h.Settings()))
	}
	s := &onPage{heard: &heard{Scene: scenes.NewSwitched(h), crier: &crier{}}, hall: h, place: p, at: address}
	s.listen()
	askFor(ask)
	return window.Run(s, window.Options{Title: "cuesta"})
}

// firstWishes keeps what the browser says of the person's wishes, before
// anything has been kept here.
func (p place) firstWishes() {
	if p.store == nil {
		return
	}
	if data, err := p.store.Load(); err != nil || data != nil {
		return
	}
	if was := p.settings(); wish(was) != was {
		p.keep(wish(was))
	}
}

// onPage is the hall on a page: what it wants is asked for by the page.
type onPage struct {
	*heard
	hall  *scenes.Hall
	place place
	came  []brought // opened by files that came in
	at    string    // where the address leads
	text  scenes.TextSize
	begun int // frames so far
}

// Update takes a frame of input.
func (s *onPage) Update(f input.Frame) {
	if s.begun++; s.begun == 3 {
		settle()
	}
	for _, c := range s.came {
		s.hall.Enter(c.scene, c.place)
	}
	s.came = nil
	s.heard.Update(f)
	askFor(s.hall.Wanted())
	s.note()
	if now := s.hall.Settings().Text; now != s.text {
		s.text = now
		tell("text", now != scenes.Text100)
	}
}

// note makes the address that of the place on the screen, so that loading the
// page again leads there.
func (s *onPage) note() {
	now := s.hall.Place()
	if now == "" {
		now = "hall"
	}
	if now != s.at {
		s.at = now
		tell("at", now)
	}
}

// settle does what would only have delayed the first frames.
func settle() {
	typeface()
	debug.SetGCPercent(usualGarbage)
}

var (
	_ window.Scene     = (*onPage)(nil)
	_ window.Described = (*onPage)(nil)
	_ window.Sounding  = (*onPage)(nil)
)
