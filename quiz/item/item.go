package item

import (
	"math/rand/v2"

	"cuesta/orient"
	"cuesta/quiz"
	"cuesta/quiz/mistake"
	"cuesta/sim"
)

// Kind is a kind of question.
type Kind interface {
	// Name is the kind in blueprints and files, in small letters with hyphens:
	// "read-dial".
	Name() string
	// Title is the kind in words: "Read the dial".
	Title() string
	// OnPaper says whether the kind makes sense on paper.
	OnPaper() bool
	// Deal draws an item. It fails only where the specification cannot be met.
	Deal(Spec, *rand.Rand) (Item, error)
}

// Spec is what a blueprint asks of the items of a kind. The zero value of a
// field stands for the default of the kind.
type Spec struct {
	Notation    orient.Notation
	Tolerance   quiz.Tolerance
	Mix         quiz.Mix     // of planes
	DipMin      orient.Angle // of planes, both 0: as Mix says
	DipMax      orient.Angle
	Declination orient.Angle // at the place, east positive
	Field       sim.Field    // at the place, for items at the bench
	RingPreset  bool         // the declination is already set on the dial
	Station     Station      // for stations of a lab
}

// Item is one question with its numbers.
type Item interface {
	Kind() Kind
	// Prompt is the question in words, whole without the figure except where
	// the figure is what is read.
	Prompt() string
	// Ask is what is asked for.
	Ask() Ask
	// Figure is what is shown, or nil.
	Figure() Figure
	// Alt is the figure in words that do not give the answer away, or "".
	Alt() string
	// Hints are help in steps, the mildest first; none gives the answer.
	Hints() []string
	// Key is the right answer as it would be written.
	Key() string
	// Mark marks an answer as it was typed.
	Mark(answer string, e Evidence) Mark
	// Near says that an answer right for the other item, of the same kind,
	// would be right, or nearly so, for this one too. Where a kind has few
	// answers, such as a choice, it says that both ask much the same: the
	// right answer and the numbers of the question agree.
	Near(other Item) bool
	// Difficulty is in [0, 1]: the stated measure by which parallel forms are
	// made equal (for a plane, how gentle it is; for a reading, how many
	// mistakes lie near).
	Difficulty() float64
}

// AtBench is an item that is measured at the bench.
type AtBench interface {
	Item
	Setup() sim.Setup
}

// Evidence is what the bench kept of the readings, for an item at the bench.
type Evidence = mistake.Readings

// AskKind is the form of an answer.
type AskKind uint8

// The forms.
const (
	AskNumber AskKind = iota
	AskPlane          // a plane in any notation
	AskChoice         // one of Ask.Choices, by its letter or its words
	AskLine           // a trend and plunge
	AskSymbol         // a map symbol to be drawn: answered as a plane
)

// Ask is what is asked for.
type Ask struct {
	Kind      AskKind
	Label     string          // "azimuth", "dip"
	Unit      string          // "°", "%", or ""
	Choices   []string        // for AskChoice, in the order shown
	Notation  orient.Notation // for AskPlane and AskSymbol: how a form that could be two is read
	WayUp     bool            // for AskPlane and AskSymbol: whether the bed is overturned is asked too
	Wraps     bool            // for AskNumber: 0 and 360 are the same
	Tolerance float64         // for AskNumber: absolute, in the unit
	Value     float64         // for AskNumber: the right number, for packages that mark by themselves
	Right     int             // for AskChoice: index of the right choice, likewise
}

// Mark is how an answer was marked.
type Mark struct {
	Share      float64 // of the points of the item, in [0, 1]
	Right      bool
	Understood string // how the answer was understood, or why it was not
	Refused    bool   // the answer could not be read; it earns nothing and may be given again
	Said       string // one or two calm sentences
	Mistakes   []mistake.Finding
	Verdict    *quiz.Verdict // for planes
}

// Kinds are all kinds, in the order of the handbook.
func Kinds() []Kind { return append([]Kind(nil), kinds...) }

// KindNamed finds a kind by its name: one of Kinds, or lab-station, whose items
// stand in a room and are not drawn.
func KindNamed(name string) (Kind, bool) {
	for _, k := range append(Kinds(), labStation{}) {
		if k.Name() == name {
			return k, true
		}
	}
	return nil, false
}
