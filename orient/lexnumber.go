package orient

import "strconv"

// number reads degrees, with minutes and seconds where their signs stand.
func (l *lexer) number() error {
	start := l.i
	t := token{kind: numberToken, pos: start + 1}
	whole := l.digits()
	deg, fraction := l.decimals(start)
	if l.unit('\'', "MIN") {
		return l.fail(start, l.raw(start, l.i)+" is minutes without degrees",
			"write the degrees before them, such as 26°15'", ErrNumber)
	}
	sign := l.unit('°', "DEG")
	minutes, err := l.sixtieth('\'', "MIN", fraction)
	if err != nil {
		return err
	}
	seconds := sixtieth{}
	if minutes.read {
		if seconds, err = l.sixtieth('"', "SEC", minutes.fraction); err != nil {
			return err
		}
	}
	t.deg = deg + minutes.n/60 + seconds.n/3600
	t.text = trimRight(l.raw(start, l.i))
	t.open = l.i >= len(l.src) && whole < 3 && !fraction && !sign && !minutes.read
	l.add(t)
	return nil
}

func (l *lexer) digits() int {
	from := l.i
	for isDigit(l.peek()) {
		l.i++
	}
	return l.i - from
}

// decimals reads the point and what follows, and returns the number from start.
func (l *lexer) decimals(start int) (n float64, fraction bool) {
	if l.peek() == '.' && isDigit(l.at(l.i+1)) {
		l.i++
		l.digits()
		fraction = true
	}
	n, err := strconv.ParseFloat(string(l.src[start:l.i]), 64)
	if err != nil { // only a number too long for a float64: far beyond any azimuth
		n = 1e9
	}
	return n, fraction
}

// sixtieth is a count of minutes or seconds.
type sixtieth struct {
	n        float64
	fraction bool
	read     bool
}

// sixtieth reads minutes or seconds if their sign follows the digits; without
// the sign the digits are the next number and are left alone.
func (l *lexer) sixtieth(sign rune, word string, afterFraction bool) (sixtieth, error) {
	start := l.i
	l.blanks()
	from := l.i
	if l.digits() == 0 {
		l.i = start
		return sixtieth{}, nil
	}
	n, fraction := l.decimals(from)
	if !l.unit(sign, word) {
		l.i = start
		return sixtieth{}, nil
	}
	if n >= 60 || afterFraction {
		return sixtieth{}, l.fail(from, l.raw(from, l.i)+" cannot stand behind these degrees",
			"write whole degrees with minutes from 0 to 59, such as 26°15', or decimals, such as 26.25", ErrNumber)
	}
	return sixtieth{n: n, fraction: fraction, read: true}, nil
}

// unit passes the sign of a unit, or a word that starts with its short name.
// Two single primes are a double one.
func (l *lexer) unit(sign rune, word string) bool {
	start := l.i
	l.blanks()
	double := l.peek() == '\'' && l.at(l.i+1) == '\''
	switch {
	case sign == '"' && double:
		l.i += 2
		return true
	case l.peek() == sign && !(sign == '\'' && double):
		l.i++
		return true
	case l.unitWord(word):
		return true
	}
	l.i = start
	return false
}

func (l *lexer) unitWord(word string) bool {
	end := l.i
	for isLetter(l.at(end)) {
		end++
	}
	switch got := string(l.src[l.i:end]); word {
	case "DEG":
		if got != "DEG" && got != "DEGS" && got != "DEGREE" && got != "DEGREES" {
			return false
		}
	case "MIN":
		if got != "MIN" && got != "MINS" && got != "MINUTE" && got != "MINUTES" {
			return false
		}
	default:
		if got != "SEC" && got != "SECS" && got != "SECOND" && got != "SECONDS" {
			return false
		}
	}
	l.i = end
	return true
}

func trimRight(s string) string {
	for len(s) > 0 && s[len(s)-1] == ' ' {
		s = s[:len(s)-1]
	}
	return s
}
