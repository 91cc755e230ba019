package item

import (
	"fmt"
	"math/rand/v2"
	"strings"
	"unicode"
)

// choice is one of several answers in words. It answers Ask, Key and Mark for
// the items that embed it.
type choice struct {
	label   string
	options []option
	right   int
}

// option is one answer, and what is said to someone who takes it.
type option struct {
	words string
	reason
}

// choiceOf offers the options in the order given; the first of the words of
// right is the right one.
func choiceOf(label, right string, options ...option) choice {
	c := choice{label: label, options: distinct(options), right: -1}
	for i, o := range c.options {
		if o.words == right {
			c.right = i
		}
	}
	if c.right < 0 {
		panic("item: the right choice is not among the choices")
	}
	return c
}

// shuffled offers the right option and the others in random order. Options
// with words that are there already are left out.
func shuffled(r *rand.Rand, label string, right option, others ...option) choice {
	all := distinct(append([]option{right}, others...))
	r.Shuffle(len(all), func(i, j int) { all[i], all[j] = all[j], all[i] })
	return choiceOf(label, right.words, all...)
}

// distinct keeps the first of the options with the same words.
func distinct(options []option) []option {
	var out []option
	for _, o := range options {
		if !offered(out, o.words) {
			out = append(out, o)
		}
	}
	return out
}

func offered(options []option, words string) bool {
	for _, o := range options {
		if strings.EqualFold(o.words, words) {
			return true
		}
	}
	return false
}

// Ask is what is asked for.
func (c choice) Ask() Ask {
	a := Ask{Kind: AskChoice, Label: c.label, Right: c.right}
	for _, o := range c.options {
		a.Choices = append(a.Choices, o.words)
	}
	return a
}

// Key is the right answer in words.
func (c choice) Key() string { return c.options[c.right].words }

// Mark marks a choice, given by its letter or its words.
func (c choice) Mark(answer string, _ Evidence) Mark {
	i, err := c.read(answer)
	if err != nil {
		return refused(err)
	}
	o := c.options[i]
	m := Mark{Understood: letter(i) + ") " + o.words, Right: i == c.right}
	if m.Right {
		m.Share, m.Said = 1, strings.TrimSpace("Right. "+o.reason.words)
		return m
	}
	m.Mistakes = findings([]reason{o.reason})
	m.Said = strings.TrimSpace("This is not the right choice. " + o.reason.words)
	return m
}

// letter is the letter of a choice.
func letter(i int) string { return string(rune('a' + i)) }

// read finds the choice that is meant: by its words, by its letter, or by a
// word or number that stands in one choice only.
func (c choice) read(answer string) (int, error) {
	if len(answer) > longest {
		return 0, errLong
	}
	text := tidy(answer)
	if text == "" {
		return 0, errEmpty
	}
	for i, o := range c.options {
		if tidy(o.words) == text {
			return i, nil
		}
	}
	if len(text) == 1 && text[0] >= 'a' && int(text[0]-'a') < len(c.options) {
		return int(text[0] - 'a'), nil
	}
	if i, ok := c.holding(text); ok {
		return i, nil
	}
	return 0, fmt.Errorf("%q names none of the choices; write a letter from a to %s", clip(answer), letter(len(c.options)-1))
}

// holding finds the only choice in which the text stands as whole words.
func (c choice) holding(text string) (int, bool) {
	found, at := 0, 0
	for i, o := range c.options {
		if strings.Contains(" "+tidy(o.words)+" ", " "+text+" ") {
			found, at = found+1, i
		}
	}
	return at, found == 1
}

// tidy leaves letters and digits in small letters, with single spaces between
// the words.
func tidy(s string) string {
	words := strings.FieldsFunc(strings.ToLower(s), func(r rune) bool {
		return !unicode.IsLetter(r) && !unicode.IsDigit(r)
	})
	return strings.Join(words, " ")
}
