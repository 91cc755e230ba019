package taking

import (
	"errors"
	"fmt"
	"strconv"
	"strings"

	"cuesta/orient"
	"cuesta/quiz/item"
	"cuesta/quiz/sitting"
	"cuesta/scenes/describe"
	"cuesta/scenes/spoken"
)

const takeHelp = `The lines:
  TEXT          the answer to the item shown, as you would write it down
  answer TEXT   the same, for an answer that looks like another line
  next, back    the next item, the one before
  go 3          item 3; go alone shows the item again
  flag          marks the item to come back to, or takes the mark off
  undo          takes the last answer or flag back
  hint          the next hint to the item; what it costs stands at the item
  overview      all items and how they stand
  finish        hands in
  quit          %s
Nothing is said about right or wrong before the form is handed in.`

// Line carries out one line.
func (p *Taking) Line(text string) {
	text = strings.TrimSpace(strings.TrimPrefix(text, "\uFEFF"))
	if text == "" || text[0] == '#' {
		return
	}
	word, rest, _ := strings.Cut(text, " ")
	rest = strings.TrimSpace(rest)
	word = strings.ToLower(word)
	if word != "finish" {
		p.sure = false
	}
	switch {
	case word == "answer":
		p.answer(rest)
	case word == "go":
		p.goTo(rest)
	case word == "help":
		p.help(rest)
	case rest == "" && p.alone(word):
	case p.atBench(text):
	default:
		p.answer(text)
	}
}

// alone carries out a line of one word, and says whether it was one.
func (p *Taking) alone(word string) bool {
	at := p.j.Position()
	switch word {
	case "next":
		p.step(at+1, "This is the last item; "+p.next())
	case "back":
		p.step(at-1, "This is the first item.")
	case "flag":
		p.flag()
	case "undo":
		p.undo()
	case "hint":
		p.hint()
	case "overview":
		p.overview()
	case "finish":
		p.finish()
	case "quit":
		p.ended = true
	default:
		return false
	}
	return true
}

// do takes an entry, and says in words why not where it is not taken.
func (p *Taking) do(e sitting.Entry) bool {
	e.At = p.o.Now()
	err := p.j.Do(e)
	switch {
	case err == nil:
		return true
	case errors.Is(err, sitting.ErrTime):
		p.say("The time is over, so this is not kept. finish hands in what was kept.")
	case errors.Is(err, sitting.ErrAttempts):
		p.say("Not kept: this item takes %s. undo takes the last one back.", spent(p.j.Part(e.Item).Attempts))
	case errors.Is(err, sitting.ErrUnread) && p.meant(e.Text) != "":
		p.say("Not kept: %q is no answer here. Perhaps %s was meant; help lists the lines. It counts for no attempt.", e.Text, p.meant(e.Text))
	case errors.Is(err, sitting.ErrUnread):
		p.say("Not kept: %s. Write it as here, %s, or help for the lines; it counts for no attempt.", strings.TrimSuffix(strings.TrimPrefix(err.Error(), sitting.ErrUnread.Error()+": "), "."), ExampleOf(p.j.Item(e.Item).Ask()))
	case errors.Is(err, sitting.ErrNothing):
		p.say("There is nothing to take back.")
	case errors.Is(err, sitting.ErrHints):
		p.say("There are no more hints to this item.")
	default:
		p.say("Not kept: %v.", err)
		p.failed = fmt.Errorf("an entry could not be kept: %w", err)
	}
	return false
}

// meant is the line that an answer which cannot be read was probably meant to
// be, or "".
func (p *Taking) meant(text string) string {
	lines := []string{"answer", "next", "back", "go", "flag", "undo", "hint", "overview", "finish", "help", "quit"}
	if p.benchOf(p.j.Position()) != nil {
		lines = append(lines, benchWords()...)
	}
	word, _, _ := strings.Cut(text, " ")
	if n := spoken.Nearest(word, lines...); n != strings.ToLower(word) {
		return n
	}
	return ""
}

func (p *Taking) answer(text string) {
	i := p.j.Position()
	if text == "" {
		p.say("Write the answer behind answer, such as answer %s.", ExampleOf(p.j.Item(i).Ask()))
		return
	}
	if was, ok := p.j.Written(i); ok && was == text && p.benchOf(i) == nil {
		p.say("Item %d is answered %q already: that costs no attempt.", i+1, text)
		return
	}
	e := sitting.Entry{Do: sitting.Answer, Item: i, Text: text, At: p.o.Now()}
	if p.j.Check(e) == nil && !p.noteAtBench(i, text) {
		return
	}
	if !p.do(e) {
		return
	}
	understood, _ := p.j.Understood(i, text)
	p.say("Kept. Item %d is answered %q: understood as %s. %s", i+1, text, strings.TrimSuffix(understood, "."), describe.Capital(p.next()))
}

// spent says how many answers an item takes.
func spent(attempts int) string {
	if attempts == 1 {
		return "one answer, and it has been given"
	}
	return fmt.Sprintf("%d answers, and they have been given", attempts)
}

// ExampleOf is how an answer to a question may look, in the notation asked for.
func ExampleOf(a item.Ask) string {
	switch a.Kind {
	case item.AskChoice:
		return "a"
	case item.AskNumber:
		return "35"
	case item.AskPlane, item.AskSymbol, item.AskLine:
	}
	return orient.Format(orient.PlaneOf(35*orient.Degree, 30*orient.Degree), a.Notation)
}

// next is the clear next step.
func (p *Taking) next() string {
	open := p.j.Open()
	at := p.j.Position()
	switch {
	case len(open) == 0:
		return "every item is answered: overview shows them, finish hands in."
	case at+1 < p.j.Len():
		return fmt.Sprintf("next goes to item %d.", at+2)
	}
	return fmt.Sprintf("go %d goes to an item without an answer.", open[0]+1)
}

// step goes to an item, or says that there is none.
func (p *Taking) step(i int, otherwise string) {
	if i < 0 || i >= p.j.Len() {
		p.say("%s", otherwise)
		return
	}
	if p.do(sitting.Entry{Do: sitting.Go, Item: i}) {
		p.show()
	}
}

func (p *Taking) goTo(rest string) {
	if rest == "" {
		p.show()
		return
	}
	n, err := strconv.Atoi(rest)
	if err != nil || n < 1 || n > p.j.Len() {
		p.say("Read %q behind go; write a number from 1 to %d.", rest, p.j.Len())
		return
	}
	p.step(n-1, "")
}

func (p *Taking) flag() {
	i := p.j.Position()
	if !p.do(sitting.Entry{Do: sitting.Flag, Item: i}) {
		return
	}
	if p.j.Answer(i).Flagged {
		p.say("Kept. Item %d is flagged; overview shows it. %s", i+1, describe.Capital(p.next()))
		return
	}
	p.say("Kept. Item %d is not flagged any more. %s", i+1, describe.Capital(p.next()))
}

func (p *Taking) undo() {
	last, _ := p.j.Last()
	if !p.do(sitting.Entry{Do: sitting.Undo}) {
		return
	}
	what := "The answer"
	if last.Do == sitting.Flag {
		what = "The flag"
	}
	p.say("Kept. %s at item %d is taken back.%s", what, last.Item+1, p.standing(last.Item))
	p.show()
}

func (p *Taking) hint() {
	i := p.j.Position()
	if !p.do(sitting.Entry{Do: sitting.Hint, Item: i}) {
		return
	}
	hints := p.j.Hints(i)
	p.say("Kept. Hint %d to item %d: %s %s", len(hints), i+1, hints[len(hints)-1], p.hintsLeft(i))
}

func (p *Taking) hintsLeft(i int) string {
	switch n := p.j.HintsLeft(i); n {
	case 0:
		return "That was the last one."
	case 1:
		return "There is one more."
	default:
		return fmt.Sprintf("There are %d more.", n)
	}
}

func (p *Taking) overview() {
	for i := range p.j.Len() {
		state := "open"
		if text, ok := p.j.Written(i); ok {
			state = fmt.Sprintf("answered %q", text)
		}
		if p.j.Answer(i).Flagged {
			state += ", flagged"
		}
		mark := "  "
		if i == p.j.Position() {
			mark = "> "
		}
		p.say("%s%2d  %s: %s", mark, i+1, p.j.Item(i).Kind().Title(), state)
	}
	if left, ok := p.j.Left(p.o.Now()); ok {
		p.say("Time left: %s.", duration(left))
	}
	p.say("%s", describe.Capital(p.Progress()+"; "+p.next()))
}

// finish hands in; with items open it asks to be said twice.
func (p *Taking) finish() {
	if open := p.j.Open(); len(open) > 0 && !p.sure {
		names := make([]string, len(open))
		for n, i := range open {
			names[n] = strconv.Itoa(i + 1)
		}
		p.say("Still without an answer: %s. Write finish again to hand in all the same, or go %s.", strings.Join(names, ", "), names[0])
		p.sure = true
		return
	}
	if p.do(sitting.Entry{Do: sitting.Finish}) {
		p.ended = true
	}
}

func (p *Taking) help(word string) {
	if word != "" && p.atBench("help "+word) {
		return
	}
	p.say(takeHelp, p.o.Quit)
	if p.benchOf(p.j.Position()) != nil {
		p.say("At the bench of this item: %s. help swing tells of one of them.", strings.Join(benchWords(), ", "))
	}
}
