package lesson

import (
	"errors"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"cuesta/orient"
	"cuesta/quiz/learner"
	"cuesta/quiz/mistake"
	"cuesta/quiz/written"
	"cuesta/scenes/draw"
	"cuesta/scenes/spoken"
	"cuesta/sim"
)

// ErrLesson is what every *written.Wrong of Parse wraps.
var ErrLesson = errors.New("this lesson cannot be used yet")

// Bounds of a lesson.
const (
	Largest     = 256 << 10 // bytes
	MostSteps   = 200
	longestNote = 4000 // characters
	mostLines   = 40   // in one do
	mostSeed    = 1<<53 - 1
)

// The bar of a projected lecture at 1920×1080: what say, ask and answer must
// fit in.
const (
	LineSize  = 38.0   // size of its type
	LineWidth = 1336.0 // of a row
	LineRows  = 2
)

var kind = written.Kind{Name: "a lesson", Err: ErrLesson, Largest: Largest, Table: "step"}

// lessonTOML is the shape of the file. Values are read as they come, so that one
// of the wrong type does not hide what else is wrong.
type lessonTOML struct {
	Title       any        `toml:"title"`
	Summary     any        `toml:"summary"`
	Minutes     any        `toml:"minutes"`
	Notes       any        `toml:"notes"`
	Seed        any        `toml:"seed"`
	Plane       any        `toml:"plane"`
	Declination any        `toml:"declination"`
	Steps       []stepTOML `toml:"step"`
}

type stepTOML struct {
	Plane   any       `toml:"plane"`
	Pose    *poseTOML `toml:"pose"`
	Mistake any       `toml:"mistake"`
	Do      any       `toml:"do"`
	Needle  any       `toml:"needle"`
	Wait    any       `toml:"wait"`
	Say     any       `toml:"say"`
	Show    any       `toml:"show"`
	Hide    any       `toml:"hide"`
	Ask     any       `toml:"ask"`
	Answer  any       `toml:"answer"`
	View    any       `toml:"view"`
	Notes   any       `toml:"notes"`
}

type poseTOML struct {
	Seat  any `toml:"seat"`
	Swing any `toml:"swing"`
	Roll  any `toml:"roll"`
	Arm   any `toml:"arm"`
}

// Parse reads a lesson file. It is strict; an error is a *written.Wrong that
// wraps ErrLesson and names every problem at once with line and column, except
// that a text which is no TOML at all ends at its first one. The format is that
// of the package's documentation. name is that of the file without its ending.
func Parse(name string, data []byte) (Lesson, error) {
	var in lessonTOML
	c, err := written.Decode(data, &in, kind)
	if err != nil {
		return Lesson{}, err
	}
	r := reader{c}
	l := r.lesson(in)
	l.Name = name
	if err := c.Result(); err != nil {
		return Lesson{}, err
	}
	return l, nil
}

// reader takes the values of a lesson out of the file.
type reader struct{ *written.Checker }

func (r reader) lesson(in lessonTOML) Lesson {
	l := Lesson{
		Title:       r.Line("title", in.Title, 60),
		Summary:     r.Line("summary", in.Summary, 200),
		Minutes:     int(r.Whole("minutes", in.Minutes, 0, 1, 120)),
		Notes:       r.Text("notes", in.Notes, longestNote),
		Seed:        uint64(r.Whole("seed", in.Seed, 1, 0, mostSeed)),
		Declination: r.degrees("declination", in.Declination, 180),
	}
	if l.Title == "" && in.Title == nil {
		r.Blame("title", "there is no title; write one, such as title = \"Water lines\"")
	}
	if p := r.plane("plane", in.Plane); p != nil {
		l.Plane = *p
	} else if in.Plane == nil {
		r.Blame("plane", "there is no plane; write one, such as plane = \"035/30\"")
	}
	l.Steps = r.steps(in.Steps, l.Declination)
	r.arms(l.Steps)
	return l
}

// arms blames lines that turn the arm while the instrument is on its edge.
func (r reader) arms(steps []Step) {
	side, view := false, ViewAsItIs
	for i, s := range steps {
		if s.View != ViewAsItIs {
			view = s.View
		}
		switch {
		case s.Pose != nil:
			side = s.Pose.Seat == "side"
		case s.Plane != nil:
			side = false
		}
		if s.Mistake != "" {
			side = !view.onEdge()
		}
		for j, text := range s.Do {
			switch l, _ := spoken.Parse(text); l.Word {
			case spoken.Seat:
				side = l.Seat == sim.OnSide
			case spoken.Arm:
				if !side {
					r.Blame(fmt.Sprintf("step.%d.do.%d", i, j), "do: read %s; the arm is turned with the instrument on its side: write seat side before it", written.Quoted(text))
				}
			}
		}
	}
}

func (r reader) degrees(path string, v any, most float64) orient.Angle {
	return orient.Angle(r.Number(path, v, 0, -most, most)) * orient.Degree
}

func (r reader) plane(path string, v any) *orient.Plane {
	text := r.Line(path, v, 40)
	if text == "" {
		if v == "" {
			r.Blame(path, "plane: read nothing; write strike and dip, such as \"035/30\"")
		}
		return nil
	}
	e, err := orient.Parse(text, orient.AzimuthDip)
	if err != nil {
		r.Blame(path, "plane: %v", err)
		return nil
	}
	return &e.Plane
}

func (r reader) steps(in []stepTOML, declination orient.Angle) []Step {
	switch {
	case len(in) == 0:
		r.Blame("step", "there is no step; write at least one, after a line [[step]]")
	case len(in) > MostSteps:
		r.Blame("step."+strconv.Itoa(MostSteps), "read %d steps; a lesson has at most %d", len(in), MostSteps)
		return nil
	}
	var out []Step
	for i, s := range in {
		out = append(out, r.step("step."+strconv.Itoa(i), s, declination))
	}
	return out
}

func (r reader) step(path string, in stepTOML, declination orient.Angle) Step {
	s := Step{
		Plane:   r.plane(path+".plane", in.Plane),
		Pose:    r.pose(path+".pose", in.Pose),
		Mistake: r.mistake(path+".mistake", in.Mistake, declination),
		Do:      r.lines(path+".do", in.Do),
		Needle:  r.Number(path+".needle", in.Needle, 0, 0, 60),
		Wait:    r.Number(path+".wait", in.Wait, 0, 0, 600),
		Say:     r.rows(path+".say", in.Say),
		Show:    r.things(path+".show", in.Show, false),
		Hide:    r.things(path+".hide", in.Hide, true),
		Ask:     r.rows(path+".ask", in.Ask),
		Answer:  r.rows(path+".answer", in.Answer),
		View:    View(1 + r.Word(path+".view", in.View, -1, viewNames[1:]...)),
		Notes:   r.Text(path+".notes", in.Notes, longestNote),
	}
	switch {
	case s.Ask != "" && in.Answer == nil:
		r.Blame(path+".ask", "ask: there is no answer to it; write answer = \"…\" in the same step")
	case in.Ask == nil && s.Answer != "":
		r.Blame(path+".answer", "answer: there is no question; write ask = \"…\" in the same step")
	case s.Ask != "" && s.Say != "":
		r.Blame(path+".say", "say: the question takes its place on the screen; leave one of the two out")
	}
	s = s.whole()
	if slices.Contains(s.Show, Reading) && !slices.Contains(s.Show, Scale) {
		r.Blame(path+".hide", "hide: the reading stands under the scale; take \"scale\" out of hide, or \"reading\" out of show")
	}
	return s
}

// rows reads a line for the bar.
func (r reader) rows(path string, v any) string {
	s := r.Line(path, v, 400)
	if n := len(draw.Wrap(draw.Regular, LineSize, LineWidth, s)); s != "" && n > LineRows {
		r.Blame(path, "%s: it takes %d rows on the screen; write at most two, about 130 characters", path[strings.LastIndexByte(path, '.')+1:], n)
	}
	return s
}

func (r reader) pose(path string, in *poseTOML) *Pose {
	if in == nil {
		return nil
	}
	p := Pose{
		Seat:  seatNames[r.Word(path+".seat", in.Seat, 0, seatNames[:]...)],
		Swing: r.degrees(path+".swing", in.Swing, 360),
		Roll:  r.degrees(path+".roll", in.Roll, 90),
		Arm:   orient.Angle(r.Number(path+".arm", in.Arm, 0, 0, 90)) * orient.Degree,
	}
	if in.Arm != nil && p.Seat != "side" {
		r.Blame(path+".arm", "arm: it is turned on the side only; write seat = \"side\" or leave it out")
	}
	return &p
}

// Careful is the name of the student who makes no mistake.
const Careful = "careful"

// mistakeNames are those that can be performed, in their order, and Careful.
func mistakeNames() []string {
	var names []string
	for _, k := range learner.Mistakes() {
		names = append(names, k.String())
	}
	return append(names, Careful)
}

func (r reader) mistake(path string, v any, declination orient.Angle) string {
	if v == nil {
		return ""
	}
	names := mistakeNames()
	i := r.Word(path, v, -1, names...)
	if i < 0 {
		return ""
	}
	switch mistake.Kind(i) {
	case mistake.DeclinationNotSet, mistake.DeclinationWrongSign, mistake.DeclinationMisset, mistake.DeclinationTwice:
		if declination.Abs() < 5*orient.Degree {
			r.Blame(path, "mistake: %s needs a declination of at least 5°; write one above the first step", names[i])
		}
	}
	return names[i]
}

// lines reads lines of the spoken bench that move the instrument.
func (r reader) lines(path string, v any) []string {
	list := r.List(v)
	if len(list) > mostLines {
		r.Blame(path, "do: read %d lines; a step has at most %d", len(list), mostLines)
		return nil
	}
	var out []string
	for i, v := range list {
		at := path + "." + strconv.Itoa(i)
		text := r.Line(at, v, 100)
		if err := moves(text); err != nil {
			r.Blame(at, "do: %v", err)
			continue
		}
		out = append(out, text)
	}
	return out
}

func moves(text string) error {
	l, err := spoken.Parse(text)
	if err != nil {
		return err
	}
	switch l.Word {
	case spoken.Swing, spoken.Roll, spoken.Arm, spoken.Flip, spoken.Ring, spoken.Wait, spoken.Tap, spoken.Lock, spoken.Free, spoken.Read:
		return nil
	case spoken.Seat:
		if l.Seat == sim.OnEdge || l.Seat == sim.OnSide {
			return nil
		}
		return fmt.Errorf("read %s; the instrument of a lesson takes seat edge and seat side", written.Quoted(text))
	case spoken.Nothing, spoken.Calibrate, spoken.Look, spoken.Bubble, spoken.Note, spoken.Picture, spoken.Reveal, spoken.New, spoken.Help, spoken.Quit:
	}
	return fmt.Errorf("read %s; a lesson takes the lines that move the instrument: seat, swing, roll, arm, flip, ring, wait, tap, lock, free, read", written.Quoted(text))
}

// things reads a list of things; all of them for "all", where that may stand.
func (r reader) things(path string, v any, all bool) []Thing {
	names := thingNames[:]
	if all {
		names = append(names[:len(names):len(names)], "all")
	}
	var out []Thing
	for i, v := range r.List(v) {
		t := r.Word(path+"."+strconv.Itoa(i), v, -1, names...)
		switch {
		case t == int(Things):
			for t := range Things {
				out = append(out, t)
			}
		case t >= 0:
			out = append(out, Thing(t))
		}
	}
	return out
}
