package telling

import (
	"encoding/json"
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"

	"cuesta/scenes/lesson"
	"cuesta/scenes/session"
	"cuesta/scenes/spoken"
)

const lessonHelp = `The lines:
  Enter, next   the next step
  back          the step before
  go 3          step 3; go alone tells the step again
  reveal        the answer to the question
  look          all that is to be seen, in words
  notes         what the presenter may tell at this step
  return        ends live play: everything is as the step left it
  quit          ends the lesson; so does the end of the input
Every line of the spoken bench works the instrument, live: seat, swing, roll, arm,
flip, ring, wait, tap, lock, free, bubble, read, note, picture; help swing tells of one.`

// Telling is a lesson being given line by line. Make one with New.
type Telling struct {
	o      Options
	p      *lesson.Player
	bench  *spoken.Bench // of the live play, or nil
	heard  []string      // what has been told of the screen as it is
	ended  bool
	failed error
}

// Options is what a telling needs of the program around it.
type Options struct {
	Out     io.Writer      // takes the replies
	Remarks io.Writer      // takes the welcome where replies are objects
	Object  bool           // replies are objects, one a line
	Painter spoken.Painter // draws the bench; nil draws nothing
}

// New gives the lesson of a player by the lines that follow.
func New(p *lesson.Player, o Options) *Telling { return &Telling{o: o, p: p} }

// Ended says whether the lesson has been left.
func (s *Telling) Ended() bool { return s.ended }

// Err is what keeps the lesson from going on, or nil.
func (s *Telling) Err() error { return s.failed }

// Session is the bench of the lesson as it stands.
func (s *Telling) Session() *session.Session { return s.p.Session() }

// Welcome goes to the reader of the lesson; with objects it is a remark, so that
// there is one object a line.
func (s *Telling) Welcome() {
	l := s.p.Lesson()
	to := s.o.Out
	if s.o.Object {
		to = s.o.Remarks
	}
	length := fmt.Sprintf("%d steps", s.p.Len())
	if l.Minutes > 0 {
		length += fmt.Sprintf(", about %d minutes", l.Minutes)
	}
	fmt.Fprintf(to, "%s. %s\n", l.Title, oneLine(l.Summary+" "+length)+". Enter goes on; help lists the lines.")
	s.step("")
}

// Line carries out one line.
func (s *Telling) Line(text string) {
	text = strings.TrimSpace(strings.TrimPrefix(text, "\uFEFF"))
	word, rest, _ := strings.Cut(strings.ToLower(text), " ")
	rest = strings.TrimSpace(rest)
	switch {
	case strings.HasPrefix(text, "#"):
	case word == "go":
		s.goTo(rest)
	case word == "help" && rest == "":
		s.say(lessonHelp)
	case rest == "" && s.alone(word):
	default:
		s.play(text)
	}
}

// alone carries out a line of one word, and says whether it was one.
func (s *Telling) alone(word string) bool {
	switch word {
	case "", "next":
		s.turn(s.p.Next, "That was the last step. back goes back, quit ends the lesson.")
	case "back":
		s.turn(s.p.Back, "This is the first step.")
	case "reveal":
		s.reveal()
	case "look":
		s.say(strings.Join(s.p.Told(), "\n"))
	case "notes":
		s.say(s.notes())
	case "return":
		s.back()
	case "quit":
		s.say("The lesson is closed.")
		s.ended = true
	default:
		return false
	}
	return true
}

// turn goes to another step, or says why there is none.
func (s *Telling) turn(to func() (bool, error), otherwise string) {
	switch there, err := to(); {
	case err != nil:
		s.failed = err
	case there:
		s.step("")
	default:
		s.bench = nil
		s.say(otherwise)
	}
}

func (s *Telling) goTo(rest string) {
	if rest == "" {
		s.heard = nil
		s.step("")
		return
	}
	n, err := strconv.Atoi(rest)
	if err != nil || n < 1 || n > s.p.Len() {
		s.refuse(fmt.Sprintf("Read %q behind go; write a number from 1 to %d.", rest, s.p.Len()))
		return
	}
	to := s.p.Next
	if n <= s.p.At() {
		to = s.p.Back
	}
	for s.p.At() != n-1 && s.failed == nil {
		if _, err := to(); err != nil {
			s.failed = err
		}
	}
	if s.failed == nil {
		s.step("")
	}
}

// step tells the step: its line, and what has appeared or changed.
func (s *Telling) step(before string) {
	s.p.Finish()
	s.bench = nil
	var out []string
	if before != "" {
		out = append(out, before)
	}
	out = append(out, fmt.Sprintf("%d of %d. %s", s.p.At()+1, s.p.Len(), s.p.Line()))
	out = append(out, s.fresh()...)
	if s.p.Open() {
		out = append(out, "reveal tells the answer.")
	} else if a := s.p.Answer(); a != "" {
		out = append(out, "The answer: "+a)
	}
	s.say(strings.Join(out, "\n"))
}

// fresh is what is told of the screen and has not been told of it yet.
func (s *Telling) fresh() []string {
	var out []string
	all := s.p.Told()
	for _, t := range all {
		if !slices.Contains(s.heard, t) {
			out = append(out, t)
		}
	}
	s.heard = all
	return out
}

func (s *Telling) reveal() {
	switch {
	case s.p.IsLive():
		s.refuse("This is live play: return goes back to the step and its question.")
	case s.p.Reveal():
		s.say(strings.Join(append([]string{s.p.Answer()}, s.fresh()...), "\n"))
	case s.p.Answer() != "":
		s.say(s.p.Answer())
	default:
		s.refuse("There is no question at this step.")
	}
}

func (s *Telling) notes() string {
	notes := oneLine(s.p.Step().Notes)
	if first := oneLine(s.p.Lesson().Notes); s.p.At() == 0 && first != "" {
		notes = strings.TrimSpace(first + "\n" + notes)
	}
	if notes == "" {
		return "There are no notes to this step."
	}
	return notes
}

// back ends live play.
func (s *Telling) back() {
	if !s.p.IsLive() {
		s.refuse("There is no live play to return from; back goes to the step before.")
		return
	}
	if err := s.p.Return(); err != nil {
		s.failed = err
		return
	}
	s.step("Everything is as the step left it.")
}

// liveWord says whether a word of the bench may be used in a lesson: not those
// that leave the slab, or say what only the lesson reveals.
func liveWord(w spoken.Word) bool {
	switch w {
	case spoken.New, spoken.Reveal, spoken.Quit, spoken.Look, spoken.Calibrate, spoken.Nothing:
		return false
	}
	return true
}

// unread says of a line that was not understood what was probably meant.
func unread(text string, err error) string {
	said := strings.Replace(err.Error(), "is no line of the bench", "is no line of a lesson or the bench", 1)
	word, _, _ := strings.Cut(text, " ")
	if n := spoken.Nearest(word, "next", "back", "go", "notes", "return"); n != "" {
		said = strings.Replace(said, ". Help lists", ". Perhaps "+n+" was meant; help lists", 1)
	}
	return said
}

// play carries out a line of the bench. The first that does more than ask begins
// the live play.
func (s *Telling) play(text string) {
	l, err := spoken.Parse(text)
	switch {
	case err != nil:
		s.refuse(unread(text, err))
		return
	case !liveWord(l.Word):
		s.refuse(fmt.Sprintf("Read %q, which a lesson does not take; help lists the lines.", text))
		return
	}
	began := false
	if asks := l.Word == spoken.Bubble || l.Word == spoken.Help || l.Word == spoken.Picture; !asks && !s.p.IsLive() {
		s.p.Live()
		s.bench, began = nil, true
	}
	if s.bench == nil {
		s.bench = spoken.NewBench(s.p.Session(), s.o.Painter)
	}
	r, _ := s.bench.Line(text)
	if l.Word == spoken.Note {
		r.Said = strings.TrimSuffix(r.Said, " Type new for the next plane.")
	}
	if began && r.OK {
		r.Said += " This is live play; return puts everything back."
	}
	s.reply(r)
}

func (s *Telling) reply(r spoken.Reply) {
	if s.o.Object {
		s.check(r.WriteJSON(s.o.Out))
		return
	}
	s.say(r.Said)
}

// told is what programs read after a line of the lesson; the lines of the bench
// answer as in cuesta spoken.
type told struct {
	OK       bool     `json:"ok"`
	Said     string   `json:"said"`
	Step     int      `json:"step"` // from 1
	Steps    int      `json:"steps"`
	Line     string   `json:"line"`
	Question bool     `json:"question"` // it stands unanswered
	Answer   string   `json:"answer,omitempty"`
	Shown    []string `json:"shown"` // what is to be seen, by the names in lesson files
	Live     bool     `json:"live"`
}

func (s *Telling) say(text string) { s.tell(true, text) }

func (s *Telling) refuse(text string) { s.tell(false, text) }

func (s *Telling) tell(ok bool, text string) {
	if !s.o.Object {
		_, err := fmt.Fprintln(s.o.Out, text)
		s.check(err)
		return
	}
	o := told{OK: ok, Said: text, Step: s.p.At() + 1, Steps: s.p.Len(), Line: s.p.Line(), Question: s.p.Open(), Answer: s.p.Answer(),
		Shown: []string{}, Live: s.p.IsLive()}
	for t := range lesson.Things {
		if s.p.Shows(t) {
			o.Shown = append(o.Shown, t.String())
		}
	}
	e := json.NewEncoder(s.o.Out)
	e.SetEscapeHTML(false)
	s.check(e.Encode(o))
}

func (s *Telling) check(err error) {
	if s.failed == nil {
		s.failed = err
	}
}

func oneLine(s string) string { return strings.Join(strings.Fields(s), " ") }
