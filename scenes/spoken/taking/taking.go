package taking

import (
	"fmt"
	"io"
	"strconv"
	"strings"
	"time"

	"cuesta/quiz/form"
	"cuesta/quiz/item"
	"cuesta/quiz/sitting"
	"cuesta/scenes/session"
	"cuesta/scenes/spoken"
)

// Taking is a form being answered line by line. A reply that begins with Kept
// stands for an entry that is kept for good. Make one with New.
type Taking struct {
	o       Options
	j       *sitting.Journal
	benches map[int]*itemBench
	sure    bool // finish was said once with items open
	ended   bool
	failed  error // of the output or the journal; it ends the taking
}

// Options is what a taking needs of the program around it.
type Options struct {
	Out     io.Writer      // takes the replies
	Now     func() string  // the time, RFC 3339
	Painter spoken.Painter // draws the bench; nil draws nothing
	Quit    string         // what the line quit does, for the help
}

// New answers a form by the lines that follow.
func New(j *sitting.Journal, o Options) *Taking {
	return &Taking{o: o, j: j, benches: map[int]*itemBench{}}
}

// Ended says whether the form has been left: handed in, or for now.
func (p *Taking) Ended() bool { return p.ended }

// Err is what keeps the form from being answered further, or nil.
func (p *Taking) Err() error { return p.failed }

// Session is the bench of the item that is shown, or nil where it has none.
func (p *Taking) Session() *session.Session {
	if b := p.benchOf(p.j.Position()); b != nil {
		return b.session
	}
	return nil
}

// say writes a reply.
func (p *Taking) say(format string, a ...any) {
	if _, err := fmt.Fprintf(p.o.Out, format+"\n", a...); err != nil && p.failed == nil {
		p.failed = err
	}
}

// Welcome says which form it is, and shows the item the student is at.
func (p *Taking) Welcome() {
	f := p.j.Form()
	p.say("%s, for %s (%s). Form %s: %s, %s.", f.Blueprint.Title, f.Student.Name, f.Student.ID, f.Code, items(p.j.Len()), form.Points(f.Blueprint.Points()))
	if p.j.Torn() {
		p.say("The last line of the journal was torn by a crash and has been left out; everything that was confirmed is there.")
	}
	if p.j.Resumed() {
		p.say("Going on where you stopped: %s.", p.Progress())
	}
	if left, ok := p.j.Left(p.o.Now()); ok {
		p.say("Time left: %s.", duration(left))
	}
	p.say("Write an answer to the item below, or help for the other lines.")
	p.show()
}

// Progress says how far it has come.
func (p *Taking) Progress() string {
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

func items(n int) string {
	if n == 1 {
		return "1 item"
	}
	return fmt.Sprintf("%d items", n)
}

func number(x float64) string { return strconv.FormatFloat(x, 'f', -1, 64) }

// show says the item the student is at.
func (p *Taking) show() {
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
	s := form.Points(p.Points)
	if p.Attempts > 1 {
		s += fmt.Sprintf(", %d answers allowed", p.Attempts)
	}
	if hints > 0 && p.HintCost > 0 {
		s += fmt.Sprintf(", a hint costs %s %%", number(p.HintCost*100))
	}
	return s
}

// standing is what stands as the answer, if anything.
func (p *Taking) standing(i int) string {
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
func (p *Taking) showTable(it item.Item) {
	table, ok := it.Figure().(item.TableFigure)
	if !ok {
		return
	}
	p.say("  %s", strings.Join(table.Head, " | "))
	for _, row := range table.Rows {
		p.say("  %s", strings.Join(row, " | "))
	}
}

func (p *Taking) showAsk(a item.Ask) {
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
