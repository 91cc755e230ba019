package item

import (
	"fmt"
	"math/rand/v2"

	"cuesta/orient"
)

// drawSymbol has a map symbol drawn. The answer is a plane in the notation of
// the course: in the window it follows from the symbol that is turned, on
// paper it is read off what was drawn.
type drawSymbol struct{}

// drawItem is one plane to draw.
type drawItem struct {
	planar
	from orient.Notation // the plane is told in
}

// Name, Title and OnPaper describe the kind.
func (drawSymbol) Name() string  { return "draw-symbol" }
func (drawSymbol) Title() string { return "Draw a map symbol" }
func (drawSymbol) OnPaper() bool { return true }

// Deal draws a plane as readSymbol does, and tells it in another notation than
// that of the course, so that it has to be thought through by keyboard too.
func (drawSymbol) Deal(s Spec, r *rand.Rand) (Item, error) {
	if err := s.Check(); err != nil {
		return nil, err
	}
	p, err := s.symbol(r)
	if err != nil {
		return nil, err
	}
	from := (s.Notation + 1 + orient.Notation(r.IntN(2))) % orient.PoleNotation
	if s.Notation == orient.PoleNotation {
		from = orient.Notation(r.IntN(3))
	}
	return drawItem{planar: symbolPlane(p, s), from: from}, nil
}

// Ask is what is asked for.
func (it drawItem) Ask() Ask {
	return Ask{Kind: AskSymbol, Label: "map symbol, as " + notationNames[it.notation], Notation: it.notation, WayUp: true}
}

// Kind is the kind.
func (drawItem) Kind() Kind { return drawSymbol{} }

// Prompt is the question.
func (it drawItem) Prompt() string {
	if it.truth.Dip == 0 {
		return "Draw the map symbol of a bed that lies level."
	}
	return fmt.Sprintf("A bed is written %s (%s). Draw its map symbol, with its number where it has one. North is up.",
		orient.Format(it.truth, it.from), notationNames[it.from])
}

// Figure is an empty map.
func (drawItem) Figure() Figure { return MapFigure{Blank: true} }

// Alt says so.
func (drawItem) Alt() string { return "An empty map, north up, to draw on." }

// Hints help in steps.
func (drawItem) Hints() []string {
	return []string{
		"Find the strike line and the side to which the bed dips first.",
		"Draw a long line along the strike and a short tick at its middle, down the dip; write the dip at the tick.",
		"A vertical bed has a stroke across both sides, a level one is a circle with a cross, an overturned one has a hook on its tick.",
	}
}

// Near says that both planes lie alike.
func (it drawItem) Near(other Item) bool {
	o, ok := other.(drawItem)
	return ok && it.near(o.planar)
}

// Difficulty is that of the symbol.
func (it drawItem) Difficulty() float64 { return symbolDifficulty(it.truth) }
