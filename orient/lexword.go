package orient

import "strconv"

// word reads letters: a point of the compass, a mark, a label, or a word that
// says nothing by itself.
func (l *lexer) word() error {
	start := l.i
	for isLetter(l.peek()) {
		l.i++
	}
	w := string(l.src[start:l.i]) + l.abbreviated(start)
	if l.flag(w) || l.label(w, start) || filler(w) {
		return nil
	}
	return l.point(w, start)
}

// abbreviated reads the second letter of S.E. behind its first.
func (l *lexer) abbreviated(start int) string {
	first, second := l.src[start], l.at(start+2)
	if l.i != start+1 || l.peek() != '.' || isLetter(l.at(start+3)) ||
		first != 'N' && first != 'S' || second != 'E' && second != 'W' {
		return ""
	}
	l.i = start + 3
	return string(second)
}

// flag notes a word that stands beside the reading.
func (l *lexer) flag(w string) bool {
	switch w {
	case "VERTICAL":
		l.flags.vertical = true
	case "HORIZONTAL", "FLAT", "LEVEL":
		l.flags.horizontal = true
	case "OVERTURNED", "INVERTED", "OT":
		l.flags.overturned = true
	case "POLE":
		l.flags.pole = true
	case "UPRIGHT": // what a bed is unless marked
	default:
		return false
	}
	return true
}

// label adds a word that says what the next number is.
func (l *lexer) label(w string, start int) bool {
	t := token{pos: start + 1, text: w}
	switch w {
	case "STRIKE", "STRIKES", "STRIKING":
		t.kind = strikeToken
	case "DIP", "DIPS", "DIPPING":
		t.kind = dipToken
	case "DIRECTION", "DIR":
		t.kind = directionToken
		if n := len(l.toks); n > 0 && l.toks[n-1].kind == dipToken {
			l.toks = l.toks[:n-1]
		}
	case "TO", "TOWARD", "TOWARDS":
		t.kind, t.text = arrowToken, "→"
	default:
		return false
	}
	l.add(t)
	return true
}

func filler(w string) bool {
	switch w {
	case "THE", "AND", "AT", "IS", "AZIMUTH", "BEARING", "SIDE", "DUE", "BED", "BEDDING", "PLANE", "RHR":
		return true
	}
	return false
}

// point adds a point of the compass or the two ends of a line. Spelt-out
// names may come in two pieces, as in south-east.
func (l *lexer) point(w string, start int) error {
	p := longNames.Replace(w)
	spelt := p != w
	if n := len(l.toks); spelt && n > 0 {
		before := n - 1
		if l.toks[before].kind == dashToken && before > 0 {
			before--
		}
		joined := l.toks[before].text + p
		if _, ok := pointDegrees(joined); ok && l.toks[before].spelt {
			l.toks = l.toks[:before+1]
			l.toks[before].text = joined
			return nil
		}
	}
	_, one := pointDegrees(p)
	_, two := line(p)
	if !one && !two {
		return l.fail(start, strconv.Quote(l.raw(start, l.i))+" means nothing here", anyNotation, ErrWords)
	}
	l.add(token{kind: wordToken, pos: start + 1, text: p, spelt: spelt, open: l.i == len(l.src)})
	return nil
}
