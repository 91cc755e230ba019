package main

import (
	"bytes"
	"cmp"
	"fmt"
	"image"
	"image/png"
	"path"
	"strings"
	"syscall/js"

	"cuesta/cmd/bench/asked"
	"cuesta/orient"
	"cuesta/quiz/form"
	"cuesta/quiz/sitting"
	"cuesta/scenes"
	"cuesta/scenes/draw/raster"
	"cuesta/scenes/lesson"
	"cuesta/scenes/session"
	"cuesta/scenes/spoken"
	"cuesta/scenes/spoken/taking"
	"cuesta/scenes/spoken/telling"
	"cuesta/sim"
)

// openWords runs the page in words, without drawing, for as long as the page
// stays.
func openWords(o options) error {
	s, err := session.New(session.Options{Tool: sim.Complete, Plane: o.plane, Seed: o.Seed, Notation: orient.AzimuthDip})
	if err != nil {
		return err
	}
	t := &talk{place: place{options: o, store: store()}, bench: spoken.NewBench(s, nil)}
	script().Set("line", js.FuncOf(func(_ js.Value, args []js.Value) any { return t.reply(args[0].String()) }))
	script().Set("brought", js.FuncOf(func(_ js.Value, args []js.Value) any {
		said, err := t.bring(args[0].String(), args[1].String())
		if err != nil {
			return plain(err)
		}
		tell("reply", said)
		return ""
	}))
	tell("words", "The bench in words", t.begin())
	select {}
}

// talk is the page in words: lines go to the bench, or to the form or the lesson
// that has been opened.
type talk struct {
	place place
	bench *spoken.Bench
	now   told          // nil is the bench
	left  func() string // what is said when now has ended
	out   bytes.Buffer  // of now
}

// told is what is answered or given line by line.
type told interface {
	Welcome()
	Line(string)
	Ended() bool
	Err() error
	Session() *session.Session
}

// ways are the lines of the page beside those of what is open.
const ways = "On this page also: lesson lists the lessons, lesson two-readings gives one; form opens a form from your teacher; bench leads to the bench."

// begin is what the address asks for, in words.
func (t *talk) begin() string {
	switch t.place.Scene {
	case asked.Lecture:
		return t.lesson(t.place.File)
	case asked.Form:
		return t.form()
	case asked.Bench, asked.Hall, asked.Lab:
	}
	return t.atBench()
}

// atBench goes to the bench, which stands as it was left.
func (t *talk) atBench() string {
	t.now = nil
	tell("at", "words")
	tell("often", "look", "bubble", "read", "picture", "lesson", "form", "help")
	return t.bench.Welcome() + "\n" + ways
}

// reply answers a line.
func (t *talk) reply(text string) string {
	word, rest, _ := strings.Cut(strings.ToLower(strings.TrimSpace(text)), " ")
	rest = strings.TrimSpace(rest)
	switch {
	case word == "lesson":
		return t.lesson(rest)
	case word == "form" && rest == "":
		return t.form()
	case word == "form" && !t.inForm(): // there it may be an answer
		return "form stands alone: it goes on with the form that is kept, or the page asks for its file."
	case word == "bench" && rest == "":
		return t.leave() + t.atBench()
	case word == spoken.Picture.String() && t.session() != nil:
		return picture(t.session(), strings.TrimSpace(cmp.Or(rest, "bench.png")))
	}
	said := t.line(text)
	if word == spoken.Help.String() && rest == "" {
		said += "\n" + ways
	}
	return said
}

// inForm says that a form is being answered.
func (t *talk) inForm() bool {
	_, ok := t.now.(*taking.Taking)
	return ok
}

// leave is what is said of a form that is left in the middle.
func (t *talk) leave() string {
	if !t.inForm() {
		return ""
	}
	return formKept + "\n"
}

const formKept = "Your form is kept; form opens it again."

// session is the practice that is at hand, or nil where there is none.
func (t *talk) session() *session.Session {
	if t.now != nil {
		return t.now.Session()
	}
	return t.bench.Session()
}

// line hands a line to what is open.
func (t *talk) line(text string) string {
	if t.now == nil {
		r, told := t.bench.Line(text)
		switch {
		case !told:
			return ""
		case r.End:
			return "The bench stays open as long as this page does."
		}
		return r.Said
	}
	t.now.Line(text)
	return t.said()
}

// said is what the form or the lesson has said since, and what follows where it
// has ended.
func (t *talk) said() string {
	said := strings.TrimSpace(t.out.String())
	t.out.Reset()
	if err := t.now.Err(); err != nil {
		said += "\n" + plain(err) + "\n" + t.atBench()
	} else if t.now.Ended() {
		said += "\n" + t.left() + "\n" + t.atBench()
	}
	return strings.TrimSpace(said)
}

// enter goes to a form or a lesson.
func (t *talk) enter(n told, at string, left func() string, often ...any) string {
	t.out.Reset()
	t.now, t.left = n, left
	tell("at", strings.TrimSuffix("words&"+at, "&"))
	tell("often", often...)
	n.Welcome()
	return t.said()
}

// lesson lists the lessons, or gives the one that is named.
func (t *talk) lesson(name string) string {
	if name == "" {
		list := []string{"The lessons, each with its name first; write lesson and the name. A lesson of your own is a file that can be dropped on this page."}
		for _, l := range lesson.Heads() {
			list = append(list, fmt.Sprintf("%s: %s, %d minutes", l.Name, l.Title, l.Minutes))
		}
		return strings.Join(list, "\n")
	}
	l, ok := lesson.Named(name)
	if !ok {
		return fmt.Sprintf("Read %q, which is no lesson; the line lesson lists them.", name)
	}
	said, err := t.give(l, "lecture="+l.Name)
	if err != nil {
		return plain(err)
	}
	return said
}

func (t *talk) give(l lesson.Lesson, at string) (string, error) {
	p, err := lesson.NewPlayer(l)
	if err != nil {
		return "", err
	}
	left, after := t.leave(), ""
	if left != "" {
		after = formKept
	}
	s := telling.New(p, telling.Options{Out: &t.out, Remarks: &t.out})
	return left + t.enter(s, at, func() string { return after }, "next", "back", "reveal", "look", "help", "quit"), nil
}

// form goes on with the form that was left open, or asks for one.
func (t *talk) form() string {
	f, ok := t.place.lastForm()
	if !ok {
		askFor(scenes.WantForm)
		return "A form is a file; the page asks for it now. It can be dropped on this page as well."
	}
	said, err := t.take(f)
	if err != nil {
		return plain(err)
	}
	return said
}

// take answers a form line by line, in the journal that the drawn page keeps too.
func (t *talk) take(f form.Form) (string, error) {
	j, err := t.place.journal(f)
	if err != nil {
		return "", err
	}
	if j.Finished() {
		return t.handed(f, j), nil
	}
	p := taking.New(j, taking.Options{Out: &t.out, Now: now, Quit: "leaves the form; the line form goes on with it"})
	left := func() string {
		if j.Finished() {
			return t.handed(f, j)
		}
		return "Not handed in yet: " + p.Progress() + ". The line form goes on from here."
	}
	return t.enter(p, "form", left, "next", "back", "overview", "help", "quit"), nil
}

// handed saves the submission, and says where it is.
func (t *talk) handed(f form.Form, j *sitting.Journal) string {
	at, err := handIn(f, j.Submission())
	if err != nil {
		return "The submission could not be saved; every answer is kept here: " + plain(err)
	}
	return "Handed in: " + at.File + " " + at.Where + ". Send this file to your teacher."
}

// bring opens the form or the lesson in a file.
func (t *talk) bring(name, text string) (string, error) {
	if strings.HasSuffix(name, ".toml") {
		l, err := lessonOf(name, []byte(text))
		if err != nil {
			return "", err
		}
		return t.give(l, "")
	}
	f, err := formOf(name, text)
	if err != nil {
		return "", err
	}
	if t.place.store != nil {
		_ = openForm.Save([]byte(text)) // without it, the next visit asks for the file again
	}
	return t.take(f)
}

// The size of a picture of the bench.
const (
	pictureWidth  = 1280
	pictureHeight = 720
)

// picture paints the bench as it stands and saves it.
func picture(s *session.Session, name string) string {
	name = path.Base(strings.TrimSpace(name))
	if !strings.HasSuffix(strings.ToLower(name), ".png") {
		name += ".png"
	}
	l, err := scenes.Still(s, pictureWidth, pictureHeight, scenes.Settings{})
	if err != nil {
		return "The picture could not be drawn: " + plain(err)
	}
	img := image.NewRGBA(image.Rect(0, 0, pictureWidth, pictureHeight))
	raster.New().Paint(img, l)
	var file bytes.Buffer
	if err := png.Encode(&file, img); err != nil {
		return "The picture could not be drawn: " + plain(err)
	}
	save(name, "image/png", file.Bytes())
	return "The picture is in " + name + ", among your downloads."
}
