package item

import "testing"

func TestChoicesAreReadByLetterAndByWords(t *testing.T) {
	c := choiceOf("side", "left", option{words: "front left"}, option{words: "left"}, option{words: "reading 3"}, option{words: "none: it is level"}, option{words: "LEFT"})
	if got, want := len(c.options), 4; got != want {
		t.Fatalf("got %d choices, want %d: the fifth is the second again", got, want)
	}
	for _, k := range []struct {
		text string
		want int // −1 when refused
	}{
		{"a", 0}, {"B", 1}, {"c)", 2}, {"(d)", 3}, {"e", -1},
		{"left", 1}, {"Front  Left.", 0}, {"front", 0}, {"3", 2}, {"none", 3}, {"level", 3},
		{"it", 3}, {"", -1}, {"right", -1}, {"lef", -1}, {"ab", -1},
	} {
		got, err := c.read(k.text)
		if err != nil {
			got = -1
		}
		if got != k.want {
			t.Errorf("%q: got %d, %v, want %d", k.text, got, err, k.want)
		}
	}
}

func TestAmbiguousWordsAreRefused(t *testing.T) {
	c := choiceOf("which", "the needle: locked", option{words: "the needle: locked"}, option{words: "the needle: not set"})
	if m := c.Mark("needle", Evidence{}); !m.Refused {
		t.Errorf("got %+v, want a refusal", m)
	}
}
