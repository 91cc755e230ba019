package written

import (
	"regexp"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"
)

// spot is where the decoder stopped, and what it says of it. What a person is
// told follows from the text there, in our words.
type spot struct {
	text   string
	start  int    // of the line
	at     int    // where the decoder stopped
	line   string // the whole line
	behind string // the line from there on
	lib    string // what the decoder says
}

// spotAt is the spot at a line and column of bytes, from 1.
func spotAt(text []byte, line, column int, lib string) spot {
	s := spot{text: string(text), lib: lib}
	for ; line > 1; line-- {
		i := strings.IndexByte(s.text[s.start:], '\n')
		if i < 0 {
			break
		}
		s.start += i + 1
	}
	s.line, _, _ = strings.Cut(s.text[s.start:], "\n")
	s.line = strings.TrimSuffix(s.line, "\r")
	s.at = min(s.start+max(column-1, 0), len(s.text))
	if i := s.at - s.start; i < len(s.line) {
		s.behind = s.line[i:]
	}
	return s
}

// says says whether the decoder's words hold one of some.
func (s spot) says(words ...string) bool {
	for _, w := range words {
		if strings.Contains(s.lib, w) {
			return true
		}
	}
	return false
}

// problem is what is told of an offset in the text.
func (s spot) problem(offset int, said string) Problem {
	p := placed([]byte(s.text), offset)
	return Problem{p.line, p.column, said}
}

// slips are the usual ones, the surest first.
var slips = []func(spot) (Problem, bool){
	spot.again, spot.curly, spot.oldEnds, spot.openText, spot.comma, spot.stray, spot.openList, spot.openTable,
	spot.noEquals, spot.noValue, spot.sign, spot.word, spot.number, spot.more, spot.key, spot.escape,
}

// told is what is wrong at the spot, where it stands, and what would do.
func (s spot) told() Problem {
	for _, slip := range slips {
		if p, ok := slip(s); ok {
			return p
		}
	}
	read := strings.TrimSpace(s.line)
	if read == "" {
		read = strings.TrimSpace(s.behind)
	}
	return s.problem(s.at, "read "+Quoted(read)+"; a line is a key = value, a [table], or a remark behind #")
}

// again is a key or a table that stands there twice.
func (s spot) again() (Problem, bool) {
	if !s.says("already") {
		return Problem{}, false
	}
	what := strings.TrimSpace(s.line)
	if !strings.HasPrefix(what, "[") {
		key, _, _ := strings.Cut(what, "=")
		return s.problem(s.at, "read "+strings.TrimSpace(key)+" for the second time; leave one of the two lines out"), true
	}
	return s.problem(s.at, "read "+what+" for the second time; put its lines below the first one"), true
}

const curlies = "“”„‟‘’‚‛«»″′"

// curly is a quote of a word processor where a straight one is due.
func (s spot) curly() (Problem, bool) {
	i := strings.IndexAny(s.behind, curlies)
	if s.says("new lines", "unterminated") {
		i = strings.IndexAny(s.line, curlies) - (s.at - s.start)
	}
	if r, _ := utf8.DecodeRuneInString(s.behind); !strings.ContainsRune(curlies, r) && !s.says("new lines", "unterminated") {
		return Problem{}, false
	}
	if s.at+i < s.start {
		return Problem{}, false
	}
	r, _ := utf8.DecodeRuneInString(s.text[s.at+i:])
	return s.problem(s.at+i, "read "+string(r)+`; write straight quotes, such as "Ostby Fell"`), true
}

// oldEnds are lines that end as no program has ended them for long.
func (s spot) oldEnds() (Problem, bool) {
	if i := strings.IndexByte(s.line, '\r'); i >= 0 {
		return s.problem(s.start+i, "the line ends with a carriage return alone; save the file with the usual ends of lines"), true
	}
	return Problem{}, false
}

// openText is a text without its closing quote.
func (s spot) openText() (Problem, bool) {
	for _, three := range []string{`"""`, `'''`} {
		if s.says("not terminated by " + three) {
			return s.problem(max(strings.LastIndex(s.text, three), 0), "the text in three quotes that begins here has no end; close it with "+three), true
		}
	}
	if !s.says("new lines", "unterminated") {
		return Problem{}, false
	}
	quote, open := byte(0), 0
	for i := range len(s.line) {
		c := s.line[i]
		switch {
		case quote == 0 && (c == '"' || c == '\''):
			quote, open = c, i
		case quote == 0 && c == '#':
			return Problem{}, false
		case quote == c && (i == 0 || c == '\'' || s.line[i-1] != '\\'):
			quote = 0
		}
	}
	if quote == 0 {
		return Problem{}, false
	}
	return s.problem(s.start+open, "read "+Quoted(s.line[open+1:])+" without a closing quote; end it with "+string(quote)+" on the same line"), true
}

var (
	decimalComma = regexp.MustCompile(`([+-]?[0-9]+),([0-9]+)`)
	inList       = regexp.MustCompile(`^[^"']*\[`)
	oneNumber    = regexp.MustCompile(`^([+-]?[0-9]+(?:\.[0-9]+)?) ?[^0-9\s=,./"'\[\]{}]+$`)
	figures      = regexp.MustCompile(`^[+-]?[0-9]+`)
)

// comma is a decimal comma, at the spot or just before it.
func (s spot) comma() (Problem, bool) {
	at := s.at - s.start
	for _, m := range decimalComma.FindAllStringSubmatchIndex(s.line, -1) {
		before := s.line[:m[0]]
		if near := m[0] <= at && at <= m[1]+1; near && !inList.MatchString(before) && !strings.ContainsAny(before, `"'#`) {
			return s.problem(s.start+m[0], "read "+s.line[m[0]:m[1]]+"; write the decimal point, "+s.line[m[2]:m[3]]+"."+s.line[m[4]:m[5]]), true
		}
	}
	return Problem{}, false
}

// stray is a sign that looks like another or cannot be seen.
func (s spot) stray() (Problem, bool) {
	r, _ := utf8.DecodeRuneInString(s.behind)
	switch {
	case strings.ContainsRune("−–—", r):
		return s.problem(s.at, "read "+string(r)+"; write the minus sign of the keyboard, -"), true
	case r > 127 && unicode.IsSpace(r) || r == '\u200B' || r == '\uFEFF':
		return s.problem(s.at, "read a space that is not the usual one; delete it and type it anew"), true
	case s.behind != "" && unicode.IsControl(r) && r != '\t':
		return s.problem(s.at, "read a sign that cannot be seen ("+strings.Trim(strconv.QuoteRune(r), "'")+"); delete it"), true
	}
	return Problem{}, false
}

// openList is a list or a table in one line that is not closed.
func (s spot) openList() (Problem, bool) {
	open, shut, what := byte('['), byte(']'), "list"
	switch {
	case s.says("array is incomplete", "',' or ']'", "expected value but got"):
	case s.says("inline table is incomplete", "',' or '}'"):
		open, shut, what = '{', '}', "table in braces"
	case s.says("at start of value") && s.unclosed('[', ']') >= 0:
	default:
		return Problem{}, false
	}
	i := s.unclosed(open, shut)
	if i < 0 {
		return Problem{}, false
	}
	if s.behind != "" && !strings.Contains(s.text[i:s.at], "\n") {
		return s.problem(s.at, "read "+Quoted(s.behind)+" in a "+what+"; put a comma between its values, and "+string(shut)+" behind the last"), true
	}
	return s.problem(i, "the "+what+" that begins here has no end; write "+string(shut)+" behind its last value"), true
}

// unclosed is the offset of the last bracket before the spot that begins a value
// and is not closed, or −1.
func (s spot) unclosed(open, shut byte) int {
	depth := 0
	for i := min(s.at, len(s.text)) - 1; i >= 0; i-- {
		switch s.text[i] {
		case shut:
			depth++
		case open:
			if depth--; depth < 0 && strings.ContainsRune("=,[", lastSign(s.text[:i])) {
				return i
			}
		}
	}
	return -1
}

// lastSign is the last sign that is no space; 0 without one.
func lastSign(s string) rune {
	r, n := utf8.DecodeLastRuneInString(strings.TrimSpace(s))
	if n == 0 {
		return 0
	}
	return r
}

// openTable is the header of a table without its end.
func (s spot) openTable() (Problem, bool) {
	head := strings.TrimSpace(s.line)
	if !s.says("to close") || !strings.HasPrefix(head, "[") {
		return Problem{}, false
	}
	name, _, _ := strings.Cut(strings.Trim(head, "[] \t"), "#")
	name = strings.Trim(name, "[] \t")
	would := "[" + name + "]"
	if strings.HasPrefix(head, "[[") {
		would = "[[" + name + "]]"
	}
	return s.problem(s.start+strings.IndexByte(s.line, '['), "read "+Quoted(head)+"; write "+would), true
}

// noEquals is a key without the sign behind it.
func (s spot) noEquals() (Problem, bool) {
	if !s.says("'=' after key") {
		return Problem{}, false
	}
	key := strings.TrimSpace(s.line[:min(s.at-s.start, len(s.line))])
	r, _ := utf8.DecodeRuneInString(s.behind)
	switch {
	case r > 127 && unicode.IsLetter(r):
		return s.problem(s.at, "read "+string(r)+" in a key; keys are of the letters a to z, figures, _ and -"), true
	case r == ':':
		return s.problem(s.at, "read : behind "+key+"; write ="), true
	}
	return s.problem(s.at, "there is no = behind "+key+"; write "+key+" = and its value"), true
}

// noValue is a line that ends before its value.
func (s spot) noValue() (Problem, bool) {
	value, remark := strings.TrimSpace(s.behind), strings.HasPrefix(strings.TrimSpace(s.behind), "#")
	if !s.says("at start of value", "expected value") || value != "" && !remark {
		return Problem{}, false
	}
	return s.problem(s.start+max(strings.IndexByte(s.line, '='), 0), `there is no value behind the =; write one: a number, true or false, or a text in quotes`), true
}

// sign is a point or a sign without its figures.
func (s spot) sign() (Problem, bool) {
	read := token(s.line[s.valueStart():])
	switch {
	case strings.HasPrefix(read, ".") && s.says("at start of value"):
		return s.problem(s.start+s.valueStart(), "read "+read+"; write a figure before the point, 0"+read), true
	case s.says("decimal point"):
		return s.problem(s.start+s.valueStart(), "read "+read+"; write a figure behind the point, or leave it out"), true
	}
	return Problem{}, false
}

// word is text without quotes.
func (s spot) word() (Problem, bool) {
	value := strings.TrimSpace(strings.TrimRight(remarkless(s.line[s.valueStart():]), ","))
	first, _ := utf8.DecodeRuneInString(value)
	if !s.says("at start of value", "expected keyword", "must be quoted", "expected newline") || !unicode.IsLetter(first) || strings.Contains(value, "=") {
		return Problem{}, false
	}
	at := s.start + s.valueStart()
	switch low := strings.ToLower(value); low {
	case "true", "false":
		return s.problem(at, "read "+value+"; write "+low+", in small letters"), true
	case "yes", "on":
		return s.problem(at, "read "+value+"; write true"), true
	case "no", "off":
		return s.problem(at, "read "+value+"; write false"), true
	case "nan", "inf", "infinity", "none", "null", "nil":
		return s.problem(at, "read "+value+"; write a number, or leave the line out"), true
	}
	return s.problem(at, "read "+Quoted(value)+"; write text in straight quotes, "+strconv.Quote(value)), true
}

// number is a number with something that none has.
func (s spot) number() (Problem, bool) {
	value := strings.TrimSpace(strings.TrimRight(remarkless(s.line[s.valueStart():]), ","))
	digits := figures.FindString(value)
	at := s.start + s.valueStart()
	switch {
	case digits == "" || strings.ContainsAny(value, `"'=[]`):
		return Problem{}, false
	case oneNumber.MatchString(value):
		return s.problem(at, "read "+Quoted(value)+"; write the number alone, "+oneNumber.FindStringSubmatch(value)[1]), true
	case s.says("leading zeroes") && digits == value:
		return s.problem(at, "read "+value+"; write the number without zeros before it, or in quotes where a text is due"), true
	case strings.Count(value, ".") == 2:
		return s.problem(at, "read "+Quoted(value)+"; write a day as 2026-09-14"), true
	case s.says("too large"):
		return s.problem(at, "read "+Quoted(value)+"; write a smaller number"), true
	case digits == value || strings.ContainsRune(value, ' ') && !strings.ContainsAny(value, "/NSEW"):
		return Problem{}, false
	}
	return s.problem(at, "read "+Quoted(value)+"; write a number, or text in straight quotes, "+strconv.Quote(value)), true
}

// more is something behind a value.
func (s spot) more() (Problem, bool) {
	if !s.says("expected newline", "extra characters") {
		return Problem{}, false
	}
	behind := strings.TrimSpace(s.behind)
	switch r, _ := utf8.DecodeRuneInString(s.behind); {
	case strings.HasPrefix(behind, "//") || strings.HasPrefix(behind, "--"):
		return s.problem(s.at, "read "+Quoted(behind)+"; write a remark behind #"), true
	case unicode.IsLetter(r) && strings.HasSuffix(s.text[:s.at], `"`):
		return s.problem(s.at-1, `read a quote within a text; write \" for one, or put the text in single quotes`), true
	case strings.Trim(behind, ";, ") == "":
		return s.problem(s.at, "read "+behind+" at the end of the line; leave it out"), true
	}
	return s.problem(s.at, "read "+Quoted(behind)+" behind the value; put it on a line of its own, or behind # if it is a remark"), true
}

// key is a line that begins with what no key begins with.
func (s spot) key() (Problem, bool) {
	if !s.says("start of key", "expected key") {
		return Problem{}, false
	}
	if strings.HasPrefix(s.behind, "//") || strings.HasPrefix(s.behind, ";") || strings.HasPrefix(s.behind, "--") {
		return s.problem(s.at, "read "+Quoted(s.behind)+"; write a remark behind #"), true
	}
	if strings.HasPrefix(strings.TrimSpace(s.line), "[") {
		return s.problem(s.at, "read "+Quoted(strings.TrimSpace(s.line))+"; write the name of a table, such as [place]"), true
	}
	return Problem{}, false
}

// escape is a backslash in a text.
func (s spot) escape() (Problem, bool) {
	if !s.says("escape", "need a character after") {
		return Problem{}, false
	}
	return s.problem(s.at, `read a backslash in a text; write \\ for one, or put the text in single quotes`), true
}

// valueStart is where the value of the line begins, within the line.
func (s spot) valueStart() int {
	i := strings.IndexByte(s.line, '=') + 1
	return i + len(s.line[i:]) - len(strings.TrimLeft(s.line[i:], " \t"))
}

func remarkless(s string) string {
	s, _, _ = strings.Cut(s, "#")
	return s
}

// token is a value without what stands behind it.
func token(s string) string {
	if i := strings.IndexAny(s, " \t,#]}"); i >= 0 {
		return s[:i]
	}
	return s
}
