package describe

import (
	"strings"
	"unicode"
)

// Words is the role as it is said behind a name, or "" where the name says
// enough.
func (r Role) Words() string {
	switch r {
	case Button:
		return "button"
	case Field:
		return "field"
	case Toggle:
		return "switch"
	case Choice:
		return "choice"
	case Group, Heading, Label, Image, Status, Line:
	}
	return ""
}

// Say is a node in words: what it is called, what it is, how it stands, what it
// holds and the key that works it.
func (n *Node) Say() string {
	head := strings.TrimRight(n.Name, ". ")
	for _, part := range []string{n.Role.Words(), n.state(), n.withheld()} {
		if part != "" {
			head = join(head, ", ", part)
		}
	}
	out := head
	switch {
	case n.Role == Field && n.Value == "":
		out = join(head, ", ", "empty")
	case whole(n.Value):
		out = join(sentence(head), " ", n.Value)
	case n.Value != "":
		out = join(head, ": ", n.Value)
	}
	out = sentence(out)
	if n.Keys != "" {
		out = join(out, " ", sentence("Keys: "+KeyWords(n.Keys)))
	}
	return out
}

// state is how a switch or a choice stands.
func (n *Node) state() string {
	switch {
	case n.Role == Toggle && n.On:
		return "on"
	case n.Role == Toggle:
		return "off"
	case n.Role == Choice && n.On:
		return "chosen"
	case n.Role == Choice:
		return "not chosen"
	}
	return ""
}

func (n *Node) withheld() string {
	if n.Disabled {
		return "not to be had now"
	}
	return ""
}

func join(a, between, b string) string {
	if a == "" {
		return b
	}
	return a + between + b
}

// sentence ends words by a full stop where they have no end of their own.
func sentence(s string) string {
	s = strings.TrimSpace(s)
	if s == "" || strings.ContainsRune(".!?", rune(s[len(s)-1])) {
		return s
	}
	return s + "."
}

// capital begins words with a capital letter.
func capital(s string) string {
	for i, r := range s {
		return string(unicode.ToUpper(r)) + s[i+len(string(r)):]
	}
	return s
}

// whole says that words are whole sentences and no piece of one.
func whole(s string) bool {
	if s == "" || !strings.ContainsRune(".!?", rune(s[len(s)-1])) {
		return false
	}
	for _, r := range s {
		return unicode.IsUpper(r)
	}
	return false
}

// sentences cuts words at the ends of sentences.
func sentences(s string) []string {
	var out []string
	start := 0
	for i := 0; i+1 < len(s); i++ {
		if strings.ContainsRune(".!?", rune(s[i])) && unicode.IsSpace(rune(s[i+1])) {
			out = append(out, strings.TrimSpace(s[start:i+1]))
			start = i + 1
		}
	}
	if rest := strings.TrimSpace(s[start:]); rest != "" {
		out = append(out, rest)
	}
	return out
}

// signs are the signs of keys that are not said as they are written.
var signs = map[string]string{
	"←": "left arrow", "→": "right arrow", "↑": "up arrow", "↓": "down arrow",
	"[": "left bracket", "]": "right bracket", ",": "comma", ".": "full stop",
	"/": "slash", "+": "plus", "−": "minus", "-": "minus", "Ctrl": "Control", "Esc": "Escape",
}

// KeyWords says keys aloud that are written in signs: "← →" is "left arrow and
// right arrow". Words stay as they are.
func KeyWords(keys string) string {
	keys = strings.ReplaceAll(keys, "← → ↑ ↓", "arrow keys")
	var out []string
	sign := false // the last word was a sign
	for _, w := range strings.Fields(keys) {
		bare, tail := w, ""
		if len(w) > 1 {
			bare = strings.TrimRight(w, ",.")
			tail = w[len(bare):]
		}
		word, is := signs[bare]
		if !is {
			word = bare
		}
		is = is && !unicode.IsLetter([]rune(bare)[0])
		if sign && is {
			out = append(out, "and")
		}
		out = append(out, word+tail)
		sign = is && tail == ""
	}
	return strings.Join(out, " ")
}
