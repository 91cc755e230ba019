package orient

import (
	"strconv"
	"strings"
)

type tokenKind uint8

const (
	endToken tokenKind = iota
	numberToken
	wordToken  // a point of the compass or a line between two, in capitals
	markToken  // slash, comma, @ and the like
	dashToken  // a dash: a separator, or the sign of a number
	arrowToken // from the dip to its direction
	strikeToken
	dipToken
	directionToken
)

type token struct {
	kind  tokenKind
	pos   int // from 1
	text  string
	deg   float64 // of a number
	open  bool    // it may still be growing under the writer's hand
	spelt bool    // the word was written out: north
}

// flags are the words that stand beside a reading, wherever they come.
type flags struct {
	vertical, horizontal, overturned, pole bool
}

// lexer cuts a text into tokens. Every rune of src is the plain form of the
// rune that stands at the same place in the text.
type lexer struct {
	text  string
	src   []rune
	i     int
	toks  []token
	flags flags
}

func lex(text string) ([]token, flags, error) {
	l := lexer{text: text, src: plain(text)}
	for {
		l.blanks()
		if l.i >= len(l.src) {
			break
		}
		if err := l.next(); err != nil {
			return nil, l.flags, err
		}
	}
	l.add(token{kind: endToken, pos: len(l.src) + 1})
	return l.toks, l.flags, nil
}

func (l *lexer) next() error {
	switch c := l.src[l.i]; {
	case isDigit(c) || c == '.':
		return l.number()
	case isLetter(c):
		return l.word()
	case c == '-' || c == '=' || c == '>':
		return l.dashes()
	case strings.ContainsRune("/,;:@|", c):
		l.add(token{kind: markToken, pos: l.i + 1, text: string(c)})
		l.i++
		return nil
	default:
		return l.fail(l.i, "the sign "+strconv.Quote(l.raw(l.i, l.i+1))+" means nothing here", anyNotation, ErrWords)
	}
}

func (l *lexer) add(t token) { l.toks = append(l.toks, t) }

func (l *lexer) peek() rune { return l.at(l.i) }

func (l *lexer) at(i int) rune {
	if i < len(l.src) {
		return l.src[i]
	}
	return 0
}

// blanks also passes brackets and full stops, which say nothing here.
func (l *lexer) blanks() {
	for l.i < len(l.src) {
		c := l.src[l.i]
		if c != ' ' && (c != '.' || l.decimalPoint()) {
			return
		}
		l.i++
	}
}

// decimalPoint tells .5 from the full stop of an abbreviation, N.35 E.
func (l *lexer) decimalPoint() bool {
	return isDigit(l.at(l.i+1)) && (l.i == 0 || !isLetter(l.src[l.i-1]))
}

// dashes reads a run of - and = with an optional > behind: a dash or an arrow.
func (l *lexer) dashes() error {
	start := l.i
	for l.peek() == '-' || l.peek() == '=' {
		l.i++
	}
	switch {
	case l.peek() == '>':
		l.i++
		l.add(token{kind: arrowToken, pos: start + 1, text: "→"})
	case l.i == start+1 && l.src[start] == '-':
		l.add(token{kind: dashToken, pos: start + 1, text: "-"})
	case l.i == start+1:
		l.add(token{kind: markToken, pos: start + 1, text: "="})
	default:
		return l.fail(start, "the sign "+strconv.Quote(l.raw(start, l.i))+" means nothing here", anyNotation, ErrWords)
	}
	return nil
}

// raw is the text as written between two places.
func (l *lexer) raw(from, to int) string {
	r := []rune(l.text)
	return clip(string(r[from:min(to, len(r))]))
}

func (l *lexer) fail(at int, read, would string, kind error) error {
	return &ParseError{Text: l.text, Pos: at + 1, Read: read, Would: would, Err: kind}
}

const anyNotation = "write the plane as 035/30, 035/30 SE, N35E 30SE, 30→125 or horizontal"

func isDigit(c rune) bool { return '0' <= c && c <= '9' }

func isLetter(c rune) bool { return 'A' <= c && c <= 'Z' }
