package item

import (
	"errors"
	"fmt"
	"math/rand/v2"

	"cuesta/orient"
	"cuesta/quiz/mistake"
)

// possibleNotation asks whether what is written can be a plane.
type possibleNotation struct{}

// possibleItem is one written plane.
type possibleItem struct {
	choice
	bare
	text string
	of   orient.Notation // what it is said to be
	flaw flaw
}

// flaw is why a notation is impossible.
type flaw uint8

const (
	flawless flaw = iota
	flawLetters
	flawDip
	flawAzimuth
	flawQuadrant
	flaws
)

// flawWords are the choices, in the order of the flaws.
var flawWords = [flaws]string{
	flawless:     "yes, a plane can be written like this",
	flawLetters:  "no, the letters do not name a side of the strike line",
	flawDip:      "no, the last number is more than 90",
	flawAzimuth:  "no, the azimuth is more than 360",
	flawQuadrant: "no, a quadrant bearing only goes to 90",
}

// Name, Title and OnPaper describe the kind.
func (possibleNotation) Name() string  { return "possible-notation" }
func (possibleNotation) Title() string { return "Is this notation possible" }
func (possibleNotation) OnPaper() bool { return true }

// Deal draws a flaw, letters that do not fit twice as often as another, and a
// text that has it and no other.
func (possibleNotation) Deal(s Spec, r *rand.Rand) (Item, error) {
	if err := s.Check(); err != nil {
		return nil, err
	}
	f := []flaw{flawless, flawless, flawless, flawLetters, flawLetters, flawDip, flawAzimuth, flawQuadrant}[r.IntN(8)]
	for {
		p, err := s.planeBetween(r, 5, 80)
		if err != nil {
			return nil, err
		}
		text, n := flawed(p, f, r)
		if got, ok := flawOf(text, n); ok && got == f {
			return newPossible(text, n, f), nil
		}
	}
}

func newPossible(text string, n orient.Notation, f flaw) possibleItem {
	it := possibleItem{text: text, of: n, flaw: f}
	var all []option
	for i, words := range flawWords {
		all = append(all, option{words, flawReason(flaw(i), f)})
	}
	it.choice = choiceOf("possible or not", flawWords[f], all...)
	return it
}

// flawReason is what is said to someone who takes the choice c of a text with
// the flaw f; it does not say which flaw it is.
func flawReason(c, f flaw) reason {
	const look = "Look at each part in turn: azimuths go to 360, quadrant bearings and dips to 90, and letters name the side the bed dips to."
	switch {
	case c == f:
		return reason{}
	case f == flawLetters && c == flawless:
		return of(mistake.LettersContradict, look)
	}
	return slipped(look)
}

// flawOf says which flaw a text has; false when it has one of another sort.
func flawOf(text string, n orient.Notation) (flaw, bool) {
	_, err := orient.Parse(text, n)
	switch {
	case err == nil:
		return flawless, true
	case errors.Is(err, orient.ErrLetters):
		return flawLetters, true
	case errors.Is(err, orient.ErrDip):
		return flawDip, true
	case errors.Is(err, orient.ErrAzimuth):
		return flawAzimuth, true
	case errors.Is(err, orient.ErrQuadrant):
		return flawQuadrant, true
	}
	return flawless, false
}

// flawed writes the plane with the flaw, and says in which notation.
func flawed(p orient.Plane, f flaw, r *rand.Rand) (string, orient.Notation) {
	dip, side := p.Dip.Degrees(), p.DipDirection()
	end := p.Strike
	if r.IntN(2) == 0 {
		end = end.Opposite()
	}
	switch f {
	case flawless:
		if n := orient.Notation(r.IntN(3)); n != orient.AzimuthDip {
			return orient.Format(p, n), n
		}
		return fmt.Sprintf("%s/%02.0f %s", end, dip, side.Letters()), orient.AzimuthDip
	case flawLetters:
		along := end.Letters()
		if r.IntN(2) == 0 {
			return fmt.Sprintf("%s/%02.0f %s", end, dip, along), orient.AzimuthDip
		}
		return fmt.Sprintf("%s %02.0f%s", end.Quadrant(), dip, along), orient.Quadrant
	case flawDip:
		steep := 91 + r.IntN(89)
		if r.IntN(2) == 0 {
			return fmt.Sprintf("%s %d%s", end.Quadrant(), steep, side.Letters()), orient.Quadrant
		}
		return fmt.Sprintf("%s/%d", side, steep), orient.DirectionDip
	case flawAzimuth:
		return fmt.Sprintf("%d/%02.0f", 361+r.IntN(99), dip), orient.AzimuthDip
	case flawQuadrant, flaws:
	}
	return fmt.Sprintf("%s%d%s %02.0f%s", []string{"N", "S"}[r.IntN(2)], 91+r.IntN(89), []string{"E", "W"}[r.IntN(2)], dip, side.Letters()), orient.Quadrant
}

// Kind is the kind.
func (possibleItem) Kind() Kind { return possibleNotation{} }

// saidToBe is the notation a text is said to be in; letters of a strike from
// either end are told apart from the right-hand convention.
var saidToBe = [...]string{
	orient.AzimuthDip:   "an azimuth of the strike, the dip and, where they stand, the letters of the side it dips to",
	orient.Quadrant:     "a quadrant bearing of the strike, the dip and the letters of the side it dips to",
	orient.DirectionDip: "a dip direction and a dip",
	orient.PoleNotation: "the trend and plunge of a pole",
}

// Prompt is the question.
func (it possibleItem) Prompt() string {
	return fmt.Sprintf("A notebook says %s, meant as %s. Is this possible?", it.text, saidToBe[it.of])
}

// Hints help in steps.
func (possibleItem) Hints() []string {
	return []string{
		"Take each part by itself: is the direction within its range, and the dip within its own?",
		"Sketch the strike line on a small map. The letters must lie to one side of it, not along it.",
	}
}

// Near says that both ask about the same text.
func (it possibleItem) Near(other Item) bool {
	o, ok := other.(possibleItem)
	return ok && it.text == o.text
}

// Difficulty is highest where the letters do not fit, which no single number
// shows.
func (it possibleItem) Difficulty() float64 {
	switch it.flaw {
	case flawless:
		return 0.5
	case flawLetters:
		return 0.8
	case flawDip, flawAzimuth, flawQuadrant, flaws:
	}
	return 0.3
}
