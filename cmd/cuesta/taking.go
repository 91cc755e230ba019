package main

import (
	"bufio"
	"errors"
	"fmt"
	"io"
	"strconv"
	"strings"
	"time"

	"cuesta/quiz/form"
	"cuesta/quiz/item"
	"cuesta/quiz/sitting"
)

// taking is a form being answered line by line. A reply that begins with Kept
// stands for an entry that is safe on the disk.
type taking struct {
	j       *sitting.Journal
	out     io.Writer
	now     func() string
	benches map[int]*itemBench
	sure    bool // finish was said once with items open
	ended   bool
	failed  error // of the output or the journal; it ends the taking
}

func newTaking(j *sitting.Journal, t *taker) *taking {
	return &taking{j: j, out: t.out, now: t.now, benches: map[int]*itemBench{}}
}

// say writes a reply.
func (p *taking) say(format string, a ...any) {
	if _, err := fmt.Fprintf(p.out, format+"\n", a...); err != nil && p.failed == nil {
		p.failed = err
	}
}

// run answers the lines until quit, finish or the end of the input.
func (p *taking) run(in io.Reader) error {
	if p.j.Finished() {
		return nil
	}
	p.welcome()
	if err := eachLine(in, func() bool { return p.ended || p.failed != nil }, p.line); err != nil {
		return err
	}
	p.ended = true
	return p.failed
}

// eachLine hands on the lines of the input until it is over, or the input is.
func eachLine(in io.Reader, over func() bool, line func(string)) error {
	lines := bufio.NewReaderSize(in, 1<<12)
	for !over() {
		text, err := boundedLine(lines)
		if err != nil && !errors.Is(err, io.EOF) {
			return err
		}
		line(text)
		if err != nil {
			return nil
		}
	}
	return nil
}

// boundedLine reads one line; of one that is too long it keeps what is needed
// to refuse it.
func boundedLine(r *bufio.Reader) (string, error) {
	const longest = 4096
	var text strings.Builder
	for {
		part, err := r.ReadSlice('\n')
		if room := longest - text.Len(); room > 0 {
			text.Write(part[:min(room, len(part))])
		}
		if !errors.Is(err, bufio.ErrBufferFull) {
			return strings.TrimRight(text.String(), "\r\n"), err
		}
	}
}

func (p *taking) welcome() {
	f := p.j.Form()
	p.say("%s, for %s (%s). Form %s: %d items, %s points.", f.Blueprint.Title, f.Student.Name, f.Student.ID, f.Code, p.j.Len(), number(f.Blueprint.Points()))
	if p.j.Torn() {
		p.say("The last line of the journal was torn by a crash and has been left out; everything that was confirmed is there.")
	}
	if p.j.Resumed() {
		p.say("Going on where you stopped: %s.", p.progress())
	}
	if left, ok := p.j.Left(p.now()); ok {
		p.say("Time left: %s.", duration(left))
	}
	p.say("Write an answer to the item below, or help for the other lines.")
	p.show()
}

// progress says how far it has come.
func (p *taking) progress() string {
	return fmt.Sprintf("%d of %d items answered", p.j.Len()-len(p.j.Open()), p.j.Len())
}

func duration(d time.Duration) string {
	switch {
	case d < 0:
		return "none, the time is over; finish hands in what was kept"
	case d < 2*time.Minute:
		return fmt.Sprintf("%d seconds", int(d.Seconds()))
	case d < 3*time.Hour:
		return fmt.Sprintf("%d minutes", int(d.Minutes()))
	}
	return fmt.Sprintf("%d hours", int(d.Hours()))
}

func number(x float64) string { return strconv.FormatFloat(x, 'f', -1, 64) }

// show says the item the student is at.
func (p *taking) show() {
	i := p.j.Position()
	it, part := p.j.Item(i), p.j.Part(i)
	p.say("\nItem %d of %d: %s (%s).%s", i+1, p.j.Len(), it.Kind().Title(), terms(part, len(it.Hints())), p.standing(i))
	p.say("%s", it.Prompt())
	if alt := it.Alt(); alt != "" {
		p.say("Figure: %s", alt)
	}
	p.showTable(it)
	p.showAsk(it.Ask())
	for n, h := range p.j.Hints(i) {
		p.say("Hint %d: %s", n+1, h)
	}
	if b := p.benchOf(i); b != nil {
		p.say("%s", b.welcome())
	}
}

// terms are what an item is worth and what it allows.
func terms(p form.Part, hints int) string {
	s := number(p.Points) + " points"
	if p.Points == 1 {
		s = "1 point"
	}
	if p.Attempts > 1 {
		s += fmt.Sprintf(", %d answers allowed", p.Attempts)
	}
	if hints > 0 && p.HintCost > 0 {
		s += fmt.Sprintf(", a hint costs %s %%", number(p.HintCost*100))
	}
	return s
}

// standing is what stands as the answer, if anything.
func (p *taking) standing(i int) string {
	s := ""
	if text, ok := p.j.Written(i); ok {
		s = fmt.Sprintf(" Answered: %q.", text)
	}
	if p.j.Answer(i).Flagged {
		s += " Flagged."
	}
	return s
}

// showTable writes a figure that is a table of readings; it can be read as it
// is.
func (p *taking) showTable(it item.Item) {
	table, ok := it.Figure().(item.TableFigure)
	if !ok {
		return
	}
	p.say("  %s", strings.Join(table.Head, " | "))
	for _, row := range table.Rows {
		p.say("  %s", strings.Join(row, " | "))
	}
}

func (p *taking) showAsk(a item.Ask) {
	switch a.Kind {
	case item.AskChoice:
		for n, c := range a.Choices {
			p.say("  %c) %s", 'a'+n, c)
		}
	case item.AskNumber:
		p.say("Asked for: %s%s.", a.Label, unit(a))
	case item.AskPlane, item.AskSymbol, item.AskLine:
		p.say("Asked for: %s.", a.Label)
	}
}

// unit is the unit of a number, unless its label says it already.
func unit(a item.Ask) string {
	if a.Unit == "" || strings.Contains(a.Label, " in ") {
		return ""
	}
	return " in " + a.Unit
}
