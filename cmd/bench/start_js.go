package main

import (
	"flag"
	"fmt"
	"io"
	"strings"

	"cuesta/scenes"
	"cuesta/scenes/input"
	"cuesta/scenes/theme"
	"cuesta/scenes/window"
	"cuesta/sim"
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
		err = openWords(o)
	} else {
		err = openPage(o)
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

// readPage reads what the page made of its address: flags in place of words, so
// that nothing in an address can be taken for a file.
func readPage(args []string) (o options, words bool, err error) {
	o = options{seed: chance(), w: 1280, h: 720}
	f := flag.NewFlagSet("page", flag.ContinueOnError)
	f.SetOutput(io.Discard)
	f.Func("plane", "", o.readPlane)
	f.Func("seed", "", o.readSeed)
	f.BoolVar(&words, "words", false, "")
	f.BoolFunc("hall", "", func(string) error { o.scene = hallScene; return nil })
	f.Func("lecture", "", func(name string) error { o.scene, o.file = lectureScene, name; return nil })
	f.BoolFunc("form", "", func(string) error { o.scene = formScene; return nil })
	if err = f.Parse(args); err == nil && f.NArg() > 0 {
		err = fmt.Errorf("read %q in the address", f.Arg(0))
	}
	return o, words, err
}

// openPage shows a scene, and the hall around it, on the page.
func openPage(o options) error {
	p := place{options: o, store: store()}
	if p.store == nil {
		tell("notice", "This browser keeps nothing for this page: what you do here lasts until the page is closed.")
	}
	ask := scenes.NoWant
	if o.scene == formScene {
		p.scene, ask = hallScene, scenes.WantForm
	}
	p.firstWishes()
	first, err := p.first()
	if err != nil {
		return err
	}
	h := scenes.NewHall(scenes.HallOptions{Doors: p.doors(), First: first, Settings: p.settings(), Keep: p.keep})
	if p.store == nil {
		h.Choose(wish(h.Settings()))
	}
	s := &onPage{heard: &heard{Scene: scenes.NewSwitched(h)}, hall: h, place: p}
	s.listen()
	s.want(ask)
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
	came  []scenes.Scene // opened by files that came in
}

// Update takes a frame of input.
func (s *onPage) Update(f input.Frame) {
	for _, c := range s.came {
		s.hall.Enter(c)
	}
	s.came = nil
	s.heard.Update(f)
	s.want(s.hall.Wanted())
}

var (
	_ window.Scene = (*onPage)(nil)
	_              = sim.Command{}
)
