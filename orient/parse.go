package orient

import "errors"

// Parse reads a plane in any notation. Letters, arrows and words settle the
// notation where they stand; a bare 125/30 is taken as assume says: a
// right-hand strike, a dip direction, or the trend of a pole.
//
// It accepts upper and lower case, degree signs, minutes and seconds,
// decimals, spaces, slashes, commas, @, arrows and every common dash. The
// letters must name a side of the strike line: see ErrLetters. An error is a
// *ParseError.
func Parse(text string, assume Notation) (Entry, error) {
	e, err := parse(text, assume)
	if err != nil {
		return Entry{}, err
	}
	return e, nil
}

// ParsePartial reads a plane that is still being written. Where Parse would
// only miss the dip or its side, it returns what there is, with DipMissing
// (and SideMissing) set. A number that may still grow is ErrIncomplete.
func ParsePartial(text string, assume Notation) (Entry, error) {
	e, err := parse(text, assume)
	unfinished := errors.Is(err, ErrIncomplete) || errors.Is(err, ErrSide)
	if err == nil || unfinished && e.HasStrike && e.DipMissing {
		return e, nil
	}
	return Entry{}, err
}

// parse also returns what it understood before an error.
func parse(text string, assume Notation) (Entry, error) {
	toks, words, err := lex(text)
	if err != nil {
		return Entry{}, err
	}
	s := syntax{text: text, toks: toks, d: draft{flags: words}}
	broken := s.read()
	if broken != nil && (!errors.Is(broken, ErrIncomplete) || s.d.bearing.kind == noBearing || s.d.bearing.tok.open) {
		return Entry{}, broken
	}
	e, err := settle(text, s.d, assume)
	if err != nil {
		return e, err
	}
	return e, broken
}
