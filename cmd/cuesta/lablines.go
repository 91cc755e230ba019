package main

import (
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"strconv"
	"strings"

	"cuesta/orient"
	"cuesta/quiz"
	"cuesta/quiz/form"
	"cuesta/quiz/lab"
	"cuesta/scenes/describe"
	"cuesta/scenes/spoken/taking"
)

const labHelp = `The lines:
  a17 3 035/30     what student a17 reads at station 3, in any notation
  student a17      who reads now; the id alone does too
  station 3        where; it stays until another is named
  035/30           a reading of that student at that station
  undo             takes the last reading of the student back
  list             what the student has read; without a student, who has read how much
  next             the student has finished, the next one comes
  help             these lines
  quit             stops here; the same command goes on later
A reading that begins with Kept is safe on the disk.`

// labTaking is a class at one keyboard. A reply that begins with Kept stands for
// a reading that is safe on the disk.
type labTaking struct {
	room   *lab.Room
	out    io.Writer
	json   bool
	fixed  bool // one station, which stands beside the machine
	folder string
	ended  bool
	failed error // of the output or the disk; it ends the taking
}

// labLine is a line of lab --json.
type labLine struct {
	OK         bool          `json:"ok"`
	Said       string        `json:"said"`
	Student    string        `json:"student,omitempty"`
	Station    string        `json:"station,omitempty"`
	Reading    string        `json:"reading,omitempty"`
	Understood string        `json:"understood,omitempty"`
	Number     int           `json:"number,omitempty"`
	Left       *int          `json:"left,omitempty"`
	Away       float64       `json:"away,omitempty"` // from the nearest other reading there, degrees
	Mean       string        `json:"mean,omitempty"`
	Scatter    *float64      `json:"scatter,omitempty"` // degrees
	Counts     string        `json:"counts,omitempty"`
	Verdict    *quiz.Verdict `json:"verdict,omitempty"`
}

// run answers the lines until quit or the end of the input.
func (p *labTaking) run(in io.Reader) error {
	p.welcome()
	if err := eachLine(in, func() bool { return p.ended || p.failed != nil }, p.line); err != nil {
		return err
	}
	if p.failed == nil && !p.json {
		p.say("The readings are in %s. Mark them with cuesta grade --stations and the file with the true values.", p.folder)
	}
	return p.failed
}

func (p *labTaking) say(format string, a ...any) {
	p.reply(labLine{OK: true, Said: fmt.Sprintf(format, a...)})
}

func (p *labTaking) refuse(format string, a ...any) {
	p.reply(labLine{Said: "Not kept: " + fmt.Sprintf(format, a...)})
}

// reply writes one reply.
func (p *labTaking) reply(l labLine) {
	var err error
	if p.json {
		if i, ok := p.room.Station(); ok {
			l.Station = p.room.Names()[i]
		}
		s, _ := p.room.Student()
		l.Student = s.ID
		e := json.NewEncoder(p.out)
		e.SetEscapeHTML(false)
		err = e.Encode(l)
	} else {
		_, err = fmt.Fprintln(p.out, l.Said)
	}
	if err != nil && p.failed == nil {
		p.failed = err
	}
}

func (p *labTaking) welcome() {
	b := p.room.Lab()
	said := fmt.Sprintf("%s. Stations: %s. Each may be read %s; %s counts.", b.Title, strings.Join(p.room.Names(), ", "),
		times(b.Parts[0].Attempts), whichCounts(b))
	if p.room.Withholds() {
		said += " Nothing is said about right or wrong now."
	}
	p.say("%s", said)
	if b.Cautions {
		p.say("%s", strings.Join(lab.Cautions, " "))
	}
	p.say("Write who, where and what was read, such as %s, or help for the other lines.", p.example())
}

// example is a whole line: of the student who reads, or one of the roster.
func (p *labTaking) example() string {
	i, _ := p.room.Station()
	return fmt.Sprintf("%s %s %s", p.anID(), p.room.Names()[i], taking.ExampleOf(p.room.Item(i).Ask()))
}

func (p *labTaking) anID() string {
	if s, ok := p.room.Student(); ok {
		return s.ID
	}
	if roster := p.room.Roster(); len(roster) > 0 {
		return roster[0].ID
	}
	return "a17"
}

func times(n int) string {
	if n == 1 {
		return "once"
	}
	return fmt.Sprintf("%d times", n)
}

func whichCounts(b form.Blueprint) string {
	if b.Parts[0].Spec.Station.Mean {
		return "the mean"
	}
	return "the last reading"
}

// line carries out one line.
func (p *labTaking) line(text string) {
	text = strings.TrimSpace(strings.TrimPrefix(text, "\uFEFF"))
	if text == "" || text[0] == '#' {
		return
	}
	word, rest, _ := strings.Cut(text, " ")
	rest = strings.TrimSpace(rest)
	switch low := strings.ToLower(word); {
	case low == "student" && rest != "":
		p.student(rest)
	case low == "station" && rest != "":
		p.station(rest)
	case rest == "" && p.alone(low):
	default:
		p.reading(text)
	}
}

// alone carries out a line of one word, and says whether it was one.
func (p *labTaking) alone(word string) bool {
	switch word {
	case "undo":
		p.undo()
	case "list":
		p.list()
	case "next":
		p.broke(p.room.Dismiss())
		p.say("Next, please: write who reads, such as student %s.", p.anID())
	case "help":
		p.say("%s", labHelp)
	case "quit":
		p.ended = true
	case "student", "station":
		p.refuse("write a name behind %s, such as %[1]s %s.", word, map[string]string{"student": p.anID(), "station": p.room.Names()[0]}[word])
	default:
		return false
	}
	return true
}

// broke notes an error of the disk, which ends the taking.
func (p *labTaking) broke(err error) bool {
	if err != nil && p.failed == nil {
		p.failed = err
	}
	return err != nil
}

func (p *labTaking) student(name string) bool {
	err := p.room.Call(name)
	switch {
	case errors.Is(err, lab.ErrStudent) || errors.Is(err, lab.ErrOtherFile):
		p.refuse("%v.", err)
		return false
	case p.broke(err):
		return false
	}
	p.say("%s", p.greeting())
	return true
}

// greeting says who reads now and how far they are.
func (p *labTaking) greeting() string {
	s, _ := p.room.Student()
	read := 0
	for i := range p.room.Len() {
		if len(p.room.Readings(i)) > 0 {
			read++
		}
	}
	said := lab.Who(s) + ", "
	switch read {
	case 0:
		said += "no reading yet."
	default:
		said += fmt.Sprintf("%d of %d stations read.", read, p.room.Len())
	}
	if i, ok := p.room.Station(); ok {
		return said + " Station " + p.room.Names()[i] + "."
	}
	return said + " Write station and its name."
}

func (p *labTaking) station(name string) { p.goTo(name, false) }

// goTo goes to a station and says what is asked there; that the reading is
// missing, where one might have been meant.
func (p *labTaking) goTo(name string, missing bool) {
	if i, ok := p.room.Station(); ok && p.fixed && !strings.EqualFold(name, p.room.Names()[i]) {
		p.refuse("this machine stands at station %s; read other stations at theirs.", p.room.Names()[i])
		return
	}
	if err := p.room.GoTo(name); err != nil {
		p.refuse("%v.", err)
		return
	}
	i, _ := p.room.Station()
	said := p.room.Item(i).Prompt()
	if missing {
		said += fmt.Sprintf(" The reading is missing: write it, such as %s, or all in one line, such as %s.", taking.ExampleOf(p.room.Item(i).Ask()), p.example())
	}
	p.say("%s", said)
}

// reading takes a reading with whatever stands before it: who, who and where,
// or neither.
func (p *labTaking) reading(text string) {
	words := strings.Fields(text)
	_, known := p.room.Student()
	_, placed := p.room.Station()
	whole := p.reads(text)
	switch {
	case whole && known && placed:
		p.note(text)
	case len(words) > 2 && p.names(words[1]) && !(whole && known):
		p.at(words[0], words[1], behind(text, 2))
	case known && !whole && p.names(words[0]) && !p.listed(words[0]) && p.reads(behind(text, 1)):
		s, _ := p.room.Student()
		p.at(s.ID, words[0], behind(text, 1))
	case len(words) > 1 && placed && p.reads(behind(text, 1)) && !(whole && known):
		p.at(words[0], "", behind(text, 1))
	case len(words) > 2 && !whole && p.reads(behind(text, 2)):
		_, err := p.room.StudentNamed(words[0])
		if err == nil {
			err = p.room.GoTo(words[1])
		}
		p.refuse("%v.", err)
	case len(words) == 1 && !whole && p.someone(text):
		p.student(text)
	case len(words) == 2 && p.names(words[1]) && !(whole && known) && p.someone(words[0]):
		if p.student(words[0]) {
			p.goTo(words[1], true)
		}
	case len(words) == 1 && known && !whole && p.names(text):
		p.goTo(text, true)
	case !placed && len(words) == 2 && !whole && p.reads(words[1]):
		p.refuse("write where too, such as %s.", p.example())
	case whole && !known:
		p.refuse("write who reads first, such as student %s.", p.anID())
	case whole:
		p.refuse("write where first, such as station %s.", p.room.Names()[0])
	case known && placed:
		p.note(text) // it says why it cannot be read
	default:
		p.refuse("%s is no line here. Write who, where and what was read, such as %s; help lists the lines.", strconv.Quote(text), p.example())
	}
}

// reads says whether a text is a plane.
func (p *labTaking) reads(text string) bool {
	_, err := p.room.Entry(text)
	return err == nil
}

func (p *labTaking) names(word string) bool {
	_, ok := p.room.StationNamed(word)
	return ok
}

// someone says whether a word names a student for certain: without a roster
// any word might.
func (p *labTaking) someone(word string) bool {
	_, err := p.room.StudentNamed(word)
	return err == nil && (len(p.room.Roster()) > 0 || strings.ContainsFunc(word, func(r rune) bool { return r >= '0' && r <= '9' }) && strings.IndexFunc(word, letter) == 0)
}

// listed says whether a word names a student of the roster.
func (p *labTaking) listed(word string) bool {
	return len(p.room.Roster()) > 0 && p.someone(word)
}

func letter(r rune) bool { return 'a' <= r|0x20 && r|0x20 <= 'z' }

// behind is a text without its first n words.
func behind(text string, n int) string {
	for range n {
		_, text, _ = strings.Cut(strings.TrimSpace(text), " ")
	}
	return strings.TrimSpace(text)
}

// at calls a student to a station and takes a reading there.
func (p *labTaking) at(student, station, text string) {
	if err := p.room.Call(student); err != nil {
		if errors.Is(err, lab.ErrStudent) || errors.Is(err, lab.ErrOtherFile) {
			p.refuse("%v.", err)
			return
		}
		p.broke(err)
		return
	}
	if i, ok := p.room.Station(); station != "" && p.fixed && ok && !strings.EqualFold(station, p.room.Names()[i]) {
		p.refuse("this machine stands at station %s; read other stations at theirs.", p.room.Names()[i])
		return
	}
	if station != "" {
		if err := p.room.GoTo(station); err != nil {
			p.refuse("%v.", err)
			return
		}
	}
	p.note(text)
}

func (p *labTaking) note(text string) {
	r, err := p.room.Note(text)
	i, _ := p.room.Station()
	switch {
	case errors.Is(err, lab.ErrRefused):
		p.refuse("%s It counts for no reading.", finished(strings.TrimPrefix(err.Error(), lab.ErrRefused.Error()+": ")))
	case errors.Is(err, lab.ErrReadings):
		p.refuse("station %s has been read %s, as often as it may be. undo takes the last reading back.", p.room.Names()[i], times(p.room.Lab().Parts[i].Attempts))
	case err != nil && r.Number == 0:
		p.refuse("%v.", err)
		p.broke(fmt.Errorf("a reading could not be kept: %w", err))
	default:
		p.reply(p.kept(r))
		p.broke(err)
	}
}

// finished is a sentence with its full stop.
func finished(s string) string { return describe.Capital(strings.TrimSuffix(s, ".")) + "." }

// kept is the reply to a reading that is safe.
func (p *labTaking) kept(r lab.Reading) labLine {
	told := p.room.Told(r)
	told[0] = fmt.Sprintf("Kept. %s, station %s, %s", lab.Who(r.Student), p.room.Names()[r.Station], told[0])
	l := labLine{OK: true, Said: strings.Join(told, "\n"), Reading: r.Text, Understood: r.Understood, Number: r.Number, Left: &r.Left, Counts: r.Counts,
		Away: rounded(r.Away.Degrees(), 3)}
	if rep := r.Repeats; rep != nil {
		off := rounded(rep.Off.Degrees(), 3)
		l.Scatter = &off
		if rep.Agree() {
			l.Mean = orient.Format(rep.Mean.Rounded(orient.Degree/10), p.room.Lab().Notation)
		}
	}
	if r.Mark != nil {
		l.Verdict = r.Mark.Verdict
	}
	return l
}

func (p *labTaking) undo() {
	i, text, err := p.room.Undo()
	switch {
	case errors.Is(err, lab.ErrNobody):
		p.refuse("write whose reading is to be taken back first, such as student %s.", p.anID())
	case errors.Is(err, lab.ErrNothing):
		p.refuse("there is nothing to take back.")
	case p.broke(err):
	default:
		s, _ := p.room.Student()
		p.say("Kept. The reading %q of %s at station %s is taken back; %s may follow there.", text, lab.Who(s), p.room.Names()[i], counted(p.room.Left(i), "reading"))
	}
}

// list is what the student has read, or who has read how much.
func (p *labTaking) list() {
	if _, ok := p.room.Student(); !ok {
		p.class()
		return
	}
	lines := []string{p.greeting()}
	for i, name := range p.room.Names() {
		r, ok := p.room.Standing(i)
		if !ok {
			lines = append(lines, fmt.Sprintf("  %-*s  open", widest(p.room.Names()), name))
			continue
		}
		s := fmt.Sprintf("  %-*s  %s", widest(p.room.Names()), name, strings.Join(p.room.Readings(i), "; "))
		if r.Repeats != nil {
			s += fmt.Sprintf("; counts: %s", r.Counts)
		}
		if r.Mark != nil {
			s += "; " + outcome(r.Mark.Right)
		}
		lines = append(lines, s)
	}
	p.say("%s", strings.Join(lines, "\n"))
}

func outcome(right bool) string {
	if right {
		return "right"
	}
	return "not right"
}

func widest(words []string) int {
	n := 0
	for _, w := range words {
		n = max(n, len([]rune(w)))
	}
	return n
}

func (p *labTaking) class() {
	all, err := p.room.Class()
	if p.broke(err) {
		return
	}
	if len(all) == 0 {
		p.say("Nobody has read anything yet.")
		return
	}
	lines := []string{fmt.Sprintf("%s with a reading:", counted(len(all), "student"))}
	for _, one := range all {
		lines = append(lines, fmt.Sprintf("  %s: %d of %d stations", lab.Who(one.Student), one.Read, p.room.Len()))
	}
	p.say("%s", strings.Join(lines, "\n"))
}
