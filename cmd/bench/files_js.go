package main

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"strings"
	"syscall/js"
	"time"

	"cuesta/quiz/form"
	"cuesta/quiz/sitting"
	"cuesta/scenes"
)

// files are the doors to the page in words, to the form that was left open, and
// to one that the page asks for.
func (p place) files() []scenes.Door {
	out := []scenes.Door{
		{Group: scenes.Practice, Title: "The bench in words", Words: "Line by line, for a screen reader or without a picture.", Wants: scenes.WantWords},
		{Group: scenes.Practice, Title: "Open a form", Words: "A quiz that your teacher gave you, as a file.", Wants: scenes.WantForm},
	}
	if f, ok := p.lastForm(); ok {
		out = append(out, scenes.Door{Group: scenes.Practice, Title: "Form " + f.Student.ID, Words: f.Blueprint.Title + ", where you left it.", Place: "form",
			Open: func() (scenes.Scene, error) { return p.answer(f) }})
	}
	if k, ok := lastSubmission(); ok && p.store != nil {
		out = append(out, scenes.Door{Group: scenes.Practice, Title: "Save what you handed in again", Words: k.Name + ", kept in this browser until the next.",
			Open: func() (scenes.Scene, error) { return nil, k.saveAgain() }})
	}
	return out
}

// ownLessons is the door to a lesson that the page asks for.
func (p place) ownLessons() []scenes.Door {
	return []scenes.Door{{Group: scenes.Lectures, Title: "A lesson of your own", Words: "From a file on this device.", Wants: scenes.WantLesson}}
}

// form goes on with the form that was left open: a page has no folder to find
// one in.
func (p place) form(string) (scenes.Scene, error) {
	f, ok := p.lastForm()
	if !ok {
		return nil, errors.New("no form has been left open here")
	}
	return p.answer(f)
}

// openForm holds the form that was opened last and not yet handed in.
const openForm = page("cuesta.form")

func (p place) leftOpen() bool {
	_, ok := p.lastForm()
	return ok
}

func (p place) lastForm() (form.Form, bool) {
	if p.store == nil {
		return form.Form{}, false
	}
	data, err := openForm.Load()
	if err != nil || len(data) == 0 {
		return form.Form{}, false
	}
	f, err := form.DecodeForm(bytes.NewReader(data))
	return f, err == nil
}

// lab cannot be opened on a page.
func (p place) lab(string) (scenes.Scene, error) {
	return nil, errors.New("a lab keeps its readings in a folder, and a page has none")
}

func now() string { return time.Now().Format(time.RFC3339) }

// askFor lets the page ask for a file, or go to its words.
func askFor(w scenes.Want) {
	switch w {
	case scenes.NoWant:
	case scenes.WantForm:
		tell("want", "Open a form", "A form is a file such as a17.form.json, which your teacher gave you. What you answer is kept in this browser at once; handing in saves a file for your teacher.")
	case scenes.WantWords:
		tell("toWords")
	case scenes.WantLesson:
		tell("want", "Open a lesson", "A lesson is a file such as two-readings.toml.")
	}
}

// listen lets the page bring files. It is answered with what is wrong with a
// file, or "".
func (s *onPage) listen() {
	script().Set("brought", js.FuncOf(func(_ js.Value, args []js.Value) any {
		opened, err := s.bring(args[0].String(), args[1].String())
		if err != nil {
			return plain(err)
		}
		s.came = append(s.came, brought{opened, placeOf(args[0].String())})
		return ""
	}))
}

// bring opens the scene of a file.
func (s *onPage) bring(name, text string) (scenes.Scene, error) {
	if strings.HasSuffix(name, ".toml") {
		return s.place.read(name, []byte(text))
	}
	f, err := formOf(name, text)
	if err != nil {
		return nil, err
	}
	opened, err := s.place.answer(f)
	if err == nil && s.place.store != nil {
		_ = openForm.Save([]byte(text)) // loading the page again goes on with it, or asks for it
	}
	return opened, err
}

// brought is a scene whose file came in, and its place.
type brought struct {
	scene scenes.Scene
	place string
}

// placeOf is the place of a file: a form can be gone back to, a lesson of one's
// own cannot.
func placeOf(name string) string {
	if strings.HasSuffix(name, ".toml") {
		return "hall"
	}
	return "form"
}

// formOf is the form in a file.
func formOf(name, text string) (form.Form, error) {
	if strings.HasSuffix(name, form.SubmissionEnding) {
		return form.Form{}, fmt.Errorf("%s has been handed in; it is for your teacher", name)
	}
	f, err := form.DecodeForm(strings.NewReader(text))
	if err != nil {
		return f, fmt.Errorf("%s: %w", name, err)
	}
	return f, nil
}

// journal is that of a form in this browser, or, where nothing is kept, in
// memory.
func (p place) journal(f form.Form) (*sitting.Journal, error) {
	var slot sitting.Slot = page("cuesta.form." + f.Code)
	if p.store == nil {
		slot = &inMemory{}
		tell("unkept", true)
	}
	return sitting.OpenIn(slot, f, now())
}

// answer opens a form, or goes on where it was left.
func (p place) answer(f form.Form) (scenes.Scene, error) {
	j, err := p.journal(f)
	if err != nil {
		return nil, err
	}
	d := scenes.NewDesk(j, now, func(sub form.Submission) (scenes.Handed, error) { return handIn(f, sub) })
	return scenes.NewPaper(d, p.settings()), nil
}

// kept is the submission that was saved last, in case the file is lost.
type kept struct {
	Name, Text string
}

const submission = page("cuesta.submission")

func lastSubmission() (k kept, ok bool) {
	data, err := submission.Load()
	if err != nil || len(data) == 0 {
		return k, false
	}
	err = json.Unmarshal(data, &k)
	return k, err == nil && k.Name != ""
}

// saveAgain saves the copy as a file. It opens no scene, and says so.
func (k kept) saveAgain() error {
	save(k.Name, "application/json", []byte(k.Text))
	return errors.New(k.Name + " has been saved again; it is among your downloads.")
}

// handIn saves the submission as a file, and keeps a copy until the next one.
func handIn(f form.Form, sub form.Submission) (scenes.Handed, error) {
	var b bytes.Buffer
	if err := sub.Encode(&b); err != nil {
		return scenes.Handed{}, err
	}
	name := form.FileName(f.Student.ID) + form.SubmissionEnding
	if data, err := json.Marshal(kept{name, b.String()}); err == nil {
		if err := submission.Save(data); err != nil {
			tell("notice", "The browser kept no copy of the submission: look whether the file has been saved.")
		}
	}
	save(name, "application/json", b.Bytes())
	_ = openForm.Save(nil) // with nothing to go on with, the next visit asks for a file
	tell("unkept", false)
	return scenes.Handed{File: name, Where: "among your downloads"}, nil
}

// inMemory is a slot that lasts as long as the page.
type inMemory struct{ data []byte }

// Load returns the data.
func (m *inMemory) Load() ([]byte, error) { return m.data, nil }

// Save replaces the data.
func (m *inMemory) Save(p []byte) error {
	m.data = append([]byte(nil), p...)
	return nil
}
