package taking

import (
	"fmt"
	"slices"
	"strings"
	"unicode"

	"cuesta/quiz/item"
	"cuesta/scenes/describe"
	"cuesta/scenes/session"
	"cuesta/scenes/spoken"
	"cuesta/sim"
	"cuesta/sim/record"
)

// itemBench is the spoken bench of one item.
type itemBench struct {
	*spoken.Bench
	session *session.Session
}

// welcome says how the bench stands.
func (b *itemBench) welcome() string {
	r, _ := b.Line("look")
	return "The bench: " + r.Said + "\nWork it with its own lines (help lists them), then write the answer."
}

// benchWord says whether a word of the spoken bench may be used in a form: not
// those that show the plane, or leave it.
func benchWord(w spoken.Word) bool {
	switch w {
	case spoken.Nothing, spoken.Note, spoken.Reveal, spoken.New, spoken.Help, spoken.Quit:
		return false
	}
	return true
}

func benchWords() []string {
	var words []string
	for w := spoken.Seat; w <= spoken.Quit; w++ {
		if benchWord(w) {
			words = append(words, w.String())
		}
	}
	return words
}

// benchOf is the bench of item i as it was left, or nil where it has none.
func (p *Taking) benchOf(i int) *itemBench {
	if b, ok := p.benches[i]; ok {
		return b
	}
	it, ok := p.j.Item(i).(item.AtBench)
	if !ok {
		return nil
	}
	s, err := p.sessionOf(i, it)
	if err != nil {
		p.failed = fmt.Errorf("the bench of item %d cannot be set up: %w", i+1, err)
		return nil
	}
	b := &itemBench{spoken.NewBench(s, p.o.Painter), s}
	p.benches[i] = b
	return b
}

func (p *Taking) sessionOf(i int, it item.AtBench) (*session.Session, error) {
	o := session.Options{Notation: p.j.Part(i).Spec.Notation, Place: p.j.Form().Blueprint.Place}
	kept := p.j.Answer(i).Recording
	if kept == "" {
		return session.At(it.Setup(), o)
	}
	r, err := record.Read(strings.NewReader(kept))
	if err != nil {
		return nil, err
	}
	return session.Resume(r, o)
}

// atBench carries out a line of the bench, and says whether it was one.
func (p *Taking) atBench(text string) bool {
	i := p.j.Position()
	b := p.benchOf(i)
	if b == nil {
		return false
	}
	first := strings.ToLower(text)
	if n := strings.IndexFunc(first, func(r rune) bool { return !unicode.IsLetter(r) }); n >= 0 {
		first = first[:n]
	}
	switch first {
	case "note":
		p.answer(strings.TrimSpace(text[len("note"):]))
		return true
	case "reveal", "new":
		p.say("%s is for practice; in a form the plane stays hidden, and stays the same.", describe.Capital(first))
		return true
	}
	if !slices.Contains(benchWords(), first) && first != "help" {
		return false
	}
	r, told := b.Line(text)
	if told && p.keepBench(i) {
		p.say("%s", r.Said)
	}
	return true
}

// keepBench makes what was done at the bench safe.
func (p *Taking) keepBench(i int) bool {
	var text strings.Builder
	if err := p.benches[i].session.Recording().Write(&text); err != nil {
		p.failed = err
		return false
	}
	if text.String() == p.j.Answer(i).Recording {
		return true
	}
	return p.do(p.j.BenchEntry(i, text.String(), p.o.Now()))
}

// noteAtBench writes an answer into the recording of the bench too. Without a
// bench there is nothing to do.
func (p *Taking) noteAtBench(i int, text string) bool {
	b := p.benchOf(i)
	if b == nil {
		return true
	}
	if err := b.session.Do(sim.Command{Kind: sim.Note, Text: text}); err != nil {
		p.say("Not kept: %v.", err)
		return false
	}
	return p.keepBench(i)
}
