package scenes

import (
	"cmp"
	"strings"

	"cuesta/orient"
	"cuesta/quiz/item"
	"cuesta/scenes/describe"
	"cuesta/scenes/draw"
	"cuesta/scenes/input"
	"cuesta/scenes/session"
	"cuesta/sim"
)

// Sitting is a form being answered, as this scene drives it. What a call
// changes is kept before the call returns without an error.
type Sitting interface {
	Title() string
	Count() int
	Item(i int) item.Item
	Given(i int) string // the answer that counts, or ""
	Left(i int) int     // attempts left
	Points(i int) float64
	Flagged(i int) bool
	Hints(i int) (taken []string, more bool, cost float64)
	Answer(i int, text, recording string) error
	Hint(i int) error
	Flag(i int) error
	Undo() error
	Begun() bool             // there is a question to go back to
	At() int                 // that question
	Go(i int) error          // notes that question i is on the screen
	Finish() (Handed, error) // once more: saves what was handed in again
	Done() bool
	Notation() orient.Notation
	Remaining() (words string, over bool) // of the time, or "" without a limit
}

// Paper is the scene of a form: one question at a time, the others in reach.
type Paper struct {
	sit   Sitting
	set   Settings
	at    int
	note  field
	said  string
	focus describe.ID
	// followed is the focus that the page was last turned to.
	followed describe.ID
	turnTo   describe.ID // what has come up and is to be seen
	told     string      // what said held when the page was last turned
	blink    int
	manner   manner
	review   bool // the overview of all questions
	more     bool // the controls that find no room on a small screen
	page     int  // of the question, or of what is open
	pad      bool // the keypad is open
	large    bool // the figure is enlarged
	fresh    bool // the choice was kept just now: another may take its place
	asked    bool // whether to hand in with questions open
	drafts   map[int]string
	left     string // what was told on leaving a question, over the next one
	done     string
	bench    *Bench // of the question at the bench, while it is open
	leave    func() // for the hall, where there is one
	frame    input.Frame
	screen   paperScreen
	issued   []sim.Command
}

// NewPaper opens a form.
func NewPaper(s Sitting, set Settings) *Paper {
	p := &Paper{sit: s, set: set}
	if s.Done() {
		p.done = "This form has been handed in."
	}
	if s.Begun() {
		p.goTo(s.At())
	} else {
		p.goTo(append(p.opens(), 0)[0])
	}
	return p
}

func (p *Paper) goTo(i int) {
	was := p.at
	p.fresh = false
	p.putAside()
	p.at = max(0, min(p.sit.Count()-1, i))
	p.review, p.more, p.page, p.said, p.large = false, false, 0, "", false
	if p.at != was {
		p.said = p.unkept(was)
	}
	p.left = p.said
	p.note.clear()
	p.note.set(cmp.Or(p.drafts[p.at], p.sit.Given(p.at)))
	p.try(p.sit.Go(p.at))
	p.focus = p.usualFocus()
	p.followed = p.focus // a question is shown from its beginning
}

// usualFocus is where the answer to the question goes.
func (p *Paper) usualFocus() describe.ID {
	switch {
	case p.atBench():
		return idPrimary
	case p.chooses():
		return idChoice
	default:
		return idNotebook
	}
}

// chooses says that the answer is one of several.
func (p *Paper) chooses() bool { return p.item().Ask().Kind == item.AskChoice }

func (p *Paper) item() item.Item { return p.sit.Item(p.at) }

func (p *Paper) atBench() bool {
	_, ok := p.item().(item.AtBench)
	return ok
}

// Update takes one frame of input and returns the commands carried out at the
// bench, where one is open.
func (p *Paper) Update(in input.Frame) []sim.Command {
	p.frame, p.manner = in, mannerOf(in.Touch)
	if p.bench != nil {
		p.issued = append(p.issued[:0], p.bench.Update(in)...)
		if p.bench == nil { // the question stands there again, with its answer
			p.screen.build(p)
		}
		return p.issued
	}
	p.issued = p.issued[:0]
	p.screen.build(p)
	in.InOrder(p.pressed, p.acted)
	for _, q := range in.Pointers {
		if q.Kind == input.PointerDown {
			p.doing(func() { p.pointer(q) })
		}
		p.screen.build(p)
	}
	p.blink = (p.blink + max(in.Ticks, 0)) % (2 * caretTicks)
	p.screen.build(p)
	return p.issued
}

func (p *Paper) pressed(k input.Press) {
	p.doing(func() { p.press(k) })
	p.screen.build(p)
}

// acted does what was done to a control by its name.
func (p *Paper) acted(a input.Act) {
	n := p.screen.tree.Find(a.ID)
	if n == nil || !n.Focusable || n.Disabled {
		return
	}
	if a.Kind == input.Focus && a.ID == p.focus {
		return // nothing has been done
	}
	p.doing(func() { p.carryOut(a) })
	p.screen.build(p)
}

func (p *Paper) carryOut(a input.Act) {
	p.focus, p.blink = a.ID, 0
	switch a.Kind {
	case input.Activate:
		p.act(a.ID)
	case input.Write:
		if a.ID == idNotebook && p.open() && p.note.replace(a.Text) {
			p.said = ""
		}
	case input.Focus:
	}
}

// Picture draws the question, or the bench where it is answered.
func (p *Paper) Picture(l *draw.List) {
	if p.bench != nil {
		p.bench.Picture(l)
		return
	}
	p.screen.picture(p, l)
}

// Description is the screen in words.
func (p *Paper) Description() *describe.Tree {
	if p.bench != nil {
		return p.bench.Description()
	}
	return &p.screen.tree
}

// Settings are the choices in force.
func (p *Paper) Settings() Settings { return p.set }

// Choose puts settings in force. The notation and the planes are the form's.
func (p *Paper) Choose(s Settings) {
	if !s.IsValid() {
		return
	}
	p.set = s
	if p.bench != nil {
		p.bench.wear(s)
	}
	p.screen.made = false
}

// Leaves offers the way back to the hall.
func (p *Paper) Leaves(leave func()) { p.leave = leave; p.screen.made = false }

// Observation is that of the bench, while it is open.
func (p *Paper) Observation() (sim.Observation, bool) {
	if p.bench == nil {
		return sim.Observation{}, false
	}
	return p.bench.Observation()
}

// Close ends the scene; everything has been kept already.
func (p *Paper) Close() error { return nil }

// openBench lays the question's slab on the bench.
func (p *Paper) openBench() {
	it, ok := p.item().(item.AtBench)
	if !ok || p.sit.Left(p.at) == 0 || p.done != "" {
		return
	}
	setup := it.Setup()
	s, err := session.New(session.Options{
		Plane: &setup.Plane, Seed: setup.Seed, Field: setup.Field, RingPreset: setup.Ring != 0, Notation: p.sit.Notation()})
	if err != nil {
		p.said = err.Error()
		return
	}
	b, err := NewBench(BenchOptions{Session: s})
	if err != nil {
		p.said = err.Error()
		return
	}
	b.wear(p.set)
	b.exam = &exam{name: p.name(p.at), record: p.fromBench, back: p.leaveBench}
	p.bench = b
	b.Update(input.Frame{W: p.frame.W, H: p.frame.H, Scale: p.frame.Scale, Touch: p.frame.Touch})
}

// exam is a bench that answers a question: it records, and does not judge.
type exam struct {
	name   string
	record func(text, recording string) error
	back   func()
}

func (p *Paper) fromBench(text, recording string) error {
	if err := p.sit.Answer(p.at, text, recording); err != nil {
		return err
	}
	p.leaveBench()
	p.note.set(text)
	p.said = "Kept: " + text + "."
	p.focus = idForward
	return nil
}

func (p *Paper) leaveBench() {
	p.bench, p.said = nil, "Back at the form: nothing was recorded at the bench."
	p.screen.made = false
}

// record keeps what stands in the field as the answer.
func (p *Paper) record() {
	if p.done != "" {
		return
	}
	text := strings.TrimSpace(p.note.String())
	if text == "" {
		p.said = "Type the answer first."
		return
	}
	if err := p.keep(text); err != nil {
		p.said = notKept(err)
		return
	}
	p.said = "Kept: " + text + "."
	if p.fresh = p.chooses(); p.fresh {
		p.said = p.chosen(text)
	}
	p.focus = idForward
}

// chosen says that a choice is kept, and how long it can be changed.
func (p *Paper) chosen(letter string) string {
	return "Kept: " + letter + ". " + p.manner.by("Another letter and Enter change it", "You can tap another") + " until you go on."
}

// keep keeps an answer. One choice in place of another costs no attempt as long
// as the question stands on the screen.
func (p *Paper) keep(text string) error {
	if p.fresh {
		if text == p.sit.Given(p.at) {
			return nil
		}
		if err := p.sit.Undo(); err != nil {
			return err
		}
	}
	p.fresh = false
	return p.sit.Answer(p.at, text, "")
}

// act carries out what a control does.
func (p *Paper) act(id describe.ID) {
	switch id {
	case idPrimary:
		p.primary()
	case idSecondary:
		p.hint()
	case idForward:
		p.forward()
	case idBackward:
		p.goTo(p.at - 1)
	case idFlag:
		p.fresh = false // undo takes back the last that was done
		p.try(p.sit.Flag(p.at))
	case idOverview:
		p.said, p.review, p.more, p.page = "", !p.review, false, 0
	case idMore:
		p.more, p.page = true, 0
	case idPanelMore:
		p.page++
	case idClosePanel:
		p.shut()
	case idUndo:
		p.more = false
		p.undo()
	case idFinish:
		p.handIn()
	case idNotebook:
		p.focus = id
	case idKeypad:
		if p.pad = !p.pad; p.pad {
			p.turnTo = idFigure // which is what one writes about
		}
	case idWayUp:
		if p.open() && p.note.toggle(overturned) {
			p.said = ""
		}
	case idEnlarge:
		p.large = !p.large
	case idSaveAgain:
		p.finish()
	case idHall:
		if p.leave != nil {
			p.leave()
		}
	default:
		if id >= idPadKey {
			p.padKey(int(id - idPadKey))
			return
		}
		if id >= idChoice && id < idChoice+mostChoices {
			p.pick(int(id - idChoice))
		} else if id >= idQuestion {
			p.goTo(int(id - idQuestion))
		}
	}
}

// hint takes the next hint and turns to it.
func (p *Paper) hint() {
	if p.more {
		p.shut()
	}
	p.try(p.sit.Hint(p.at))
	taken, _, _ := p.sit.Hints(p.at)
	if n := len(taken); n > 0 {
		p.turnTo = idHintTaken + describe.ID(n-1)
	}
}

// shut goes back to the question.
func (p *Paper) shut() {
	back := p.usualFocus()
	if p.large {
		back = idEnlarge
	} else {
		p.page = 0
	}
	p.review, p.more, p.large = false, false, false
	p.focus = back
}

func (p *Paper) forward() {
	if p.at < p.sit.Count()-1 {
		p.goTo(p.at + 1)
		return
	}
	p.review, p.page, p.fresh, p.said = true, 0, false, p.unkept(p.at)
	p.focus = idFinish
	if open := p.opens(); len(open) > 0 {
		p.focus = idQuestion + describe.ID(open[0])
	}
	p.turnTo = p.focus
}

func (p *Paper) primary() {
	if p.atBench() {
		p.openBench()
		return
	}
	p.record()
}

func (p *Paper) undo() {
	writing := p.draft(p.at) != ""
	if err := p.sit.Undo(); err != nil {
		p.said = err.Error()
		return
	}
	p.fresh = false
	if !writing {
		p.note.set(p.sit.Given(p.at))
	}
	p.said = "Taken back."
}

// mostChoices bounds the choices of a question.
const mostChoices = 40

// pick writes the letter of a choice and keeps it.
func (p *Paper) pick(i int) {
	p.note.set(string(rune('A' + i)))
	p.record()
}

func (p *Paper) try(err error) {
	if err != nil {
		p.said = err.Error()
	}
}

// turnSymbol turns the map symbol that is being drawn.
func (p *Paper) turnSymbol(turn, steeper orient.Angle) {
	e, err := orient.Parse(p.note.String(), orient.AzimuthDip)
	if err != nil {
		e.Plane = orient.PlaneOf(0, 30*orient.Degree)
	}
	q := e.Plane
	q.Strike = q.Strike.Add(turn)
	q.Dip = max(orient.Degree, min(orient.Right, q.Dip+steeper))
	p.note.set(orient.Format(q.Rounded(orient.Degree), orient.AzimuthDip))
}
