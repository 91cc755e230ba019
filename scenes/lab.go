package scenes

import (
	"errors"
	"fmt"
	"slices"
	"strings"
	"unicode"

	"cuesta/quiz/form"
	"cuesta/quiz/lab"
	"cuesta/scenes/describe"
	"cuesta/scenes/draw"
	"cuesta/scenes/input"
	"cuesta/scenes/keymap"
	"cuesta/sim"
)

// LabOptions is what a station screen starts from.
type LabOptions struct {
	Room     *lab.Room
	Station  string // the one that stands beside the screen; "" lets students choose
	Settings Settings
	Keep     func(Settings) // keeps settings that are changed; nil keeps nothing
}

// Lab is the screen on a table with real slabs: a student says who reads and
// where, and writes what the instrument says.
type Lab struct {
	room   *lab.Room
	set    Settings
	store  func(Settings)
	fixed  bool
	where  bool // the stations are to choose from
	note   field
	said   string
	focus  describe.ID
	blink  int
	pad    bool // the keypad is open
	page   int  // of the names or stations
	turn   int  // counts what was kept or read, so that the screen follows
	leave  func()
	frame  input.Frame
	screen labScreen
}

// The controls of a station screen, beside those of a form.
const idStudent describe.ID = 4000 // as many as the roster has students

// NewLab opens the screen of a room. The error says that there is no such
// station.
func NewLab(o LabOptions) (*Lab, error) {
	l := &Lab{room: o.Room, set: o.Settings, store: o.Keep, fixed: o.Station != ""}
	if l.fixed {
		if err := o.Room.GoTo(o.Station); err != nil {
			return nil, err
		}
	}
	l.settle()
	return l, nil
}

// labStep is what is asked for now.
type labStep uint8

const (
	askWho labStep = iota
	askWhere
	askReading
)

func (l *Lab) step() labStep {
	_, known := l.room.Student()
	_, placed := l.room.Station()
	switch {
	case !known:
		return askWho
	case !placed || l.where:
		return askWhere
	}
	return askReading
}

// settle goes to where the next thing is written or chosen.
func (l *Lab) settle() {
	l.note.clear()
	l.page, l.blink, l.pad = 0, 0, false
	l.turn++
	if l.focus = idNotebook; l.step() == askWhere {
		l.focus = idQuestion
	}
}

// Settings are those in force.
func (l *Lab) Settings() Settings { return l.set }

// Choose puts settings in force.
func (l *Lab) Choose(s Settings) {
	if !s.IsValid() || s == l.set {
		return
	}
	l.set = s
	if l.store != nil {
		l.store(s)
	}
}

// Leaves makes the screen offer the way back to the hall.
func (l *Lab) Leaves(leave func()) { l.leave = leave }

// Update takes one frame of input. There is no bench, so nothing is carried out
// at one.
func (l *Lab) Update(in input.Frame) []sim.Command {
	l.frame = in
	l.screen.build(l)
	in.InOrder(l.pressed, l.acted)
	for _, p := range in.Pointers {
		if p.Kind != input.PointerDown {
			continue
		}
		if n := hitIn(&l.screen.tree, p.X, p.Y, p.Touch, l.screen.lay.Unit); n != nil {
			l.acted(input.Act{Kind: input.Activate, ID: n.ID})
		}
	}
	l.blink = (l.blink + max(in.Ticks, 0)) % (2 * caretTicks)
	l.screen.build(l)
	return nil
}

// Picture draws the screen.
func (l *Lab) Picture(to *draw.List) { l.screen.picture(l, to) }

// Description is the screen in words.
func (l *Lab) Description() *describe.Tree { return &l.screen.tree }

// Close closes the room; every reading has been kept already.
func (l *Lab) Close() error { return l.room.Close() }

func (l *Lab) pressed(k input.Press) {
	l.press(k)
	l.screen.build(l)
}

func (l *Lab) press(k input.Press) {
	switch {
	case k.Rune != 0 && k.Mods&(input.Ctrl|input.Alt) != 0:
		if unicode.ToLower(k.Rune) == 'z' && !l.note.undo() {
			l.undo()
		}
	case k.Rune != 0:
		l.typed(k.Rune)
	case keymap.Of(k) == l.set.Keys.Of(keymap.NextItem):
		l.next()
	case k.Key == input.Tab:
		l.focus = nextFocus(&l.screen.tree, l.focus, k.Mods&input.Shift != 0)
	case k.Key == input.Escape:
		l.back()
	case l.focus == idNotebook && l.pressField(k.Key):
		l.blink = 0
	case k.Key == input.Enter, k.Key == input.Space:
		if !k.Repeat {
			l.act(l.focus)
		}
	case k.Key == input.Left, k.Key == input.Right, k.Key == input.Up, k.Key == input.Down:
		l.arrow(k.Key)
	}
}

// arrow moves the focus by rows and columns. Below the last row the next page
// begins.
func (l *Lab) arrow(k input.Key) {
	t, turns := &l.screen.tree, false
	if l.focus, turns = inPanel(t, draw.Rect{W: t.Root.Bounds.W, H: t.Root.Bounds.H}, l.focus, k, 0); turns {
		l.act(idPanelMore)
	}
}

// typed writes a sign into the field, from wherever the focus is, unless signs
// are to write only.
func (l *Lab) typed(r rune) {
	if l.set.Quiet && l.focus != idNotebook || !l.note.insert(r) {
		return
	}
	l.focus, l.said, l.blink, l.page = idNotebook, "", 0, 0
}

// pressField edits the field, and says whether the key does.
func (l *Lab) pressField(k input.Key) bool {
	switch k {
	case input.Space:
		l.typed(' ')
	case input.Enter:
		l.primary()
	case input.Backspace:
		l.note.remove(false)
	case input.Delete:
		l.note.remove(true)
	case input.Left:
		l.note.shift(-1)
	case input.Right:
		l.note.shift(1)
	case input.Home:
		l.note.shift(-fieldLimit)
	case input.End:
		l.note.shift(fieldLimit)
	default:
		return false
	}
	return true
}

// acted does what was done to a control by its name.
func (l *Lab) acted(a input.Act) {
	n := l.screen.tree.Find(a.ID)
	if n == nil || !n.Focusable || n.Disabled {
		return
	}
	l.focus, l.blink = a.ID, 0
	switch a.Kind {
	case input.Activate:
		l.act(a.ID)
	case input.Write:
		if a.ID == idNotebook && l.note.replace(a.Text) {
			l.said, l.page = "", 0
		}
	case input.Focus:
	}
	l.screen.build(l)
}

// act carries out what a control does.
func (l *Lab) act(id describe.ID) {
	switch id {
	case idPrimary:
		l.primary()
	case idForward:
		l.next()
	case idOverview:
		l.where, l.said = true, ""
		l.settle()
	case idUndo:
		l.undo()
	case idKeypad:
		l.pad = !l.pad
	case idPanelMore:
		l.page++
	case idNotebook:
	case idHall:
		if l.leave != nil {
			l.leave()
		}
	default:
		l.choose(id)
	}
}

// choose takes a student, a station or a key of the keypad.
func (l *Lab) choose(id describe.ID) {
	roster := l.room.Roster()
	switch {
	case id >= idStudent && int(id-idStudent) < len(roster):
		l.call(roster[id-idStudent].ID)
	case id >= idPadKey && id < idStudent:
		if l.note.press(l.sign(int(id - idPadKey))) {
			l.said = ""
		}
	case id >= idQuestion && int(id-idQuestion) < l.room.Len():
		l.said = ""
		l.goTo(l.room.Names()[id-idQuestion])
	}
}

// sign is what key n of the keypad writes: of readings, or of ids.
func (l *Lab) sign(n int) string {
	if l.step() == askReading {
		return padSign(n)
	}
	if n < len(idSigns) {
		return idSigns[n]
	}
	return ""
}

// idSigns are the keys with which an id is written by pointer.
var idSigns = append(strings.Split("1 2 3 4 5 6 7 8 9 0 a b c d e f g h i j k l m n o p q r s t u v w x y z", " "), "-", ".", "←")

func (l *Lab) primary() {
	text := strings.TrimSpace(l.note.String())
	switch {
	case text == "" && l.step() == askWho:
		l.said = "Write your id first."
	case text == "" && l.step() == askWhere:
		l.said = "Write a station first, or choose one."
	case text == "":
		l.said = "Write the reading first."
	case l.step() == askWho:
		l.call(text)
	case l.step() == askWhere:
		l.goTo(l.meant(text))
	default:
		l.keep(text)
	}
}

// call lets a student write.
func (l *Lab) call(name string) {
	if err := l.room.Call(name); err != nil {
		l.said = sentenceOf(err)
		return
	}
	l.where, l.said = !l.fixed, ""
	l.settle()
}

// meant is the station that the first signs of its name stand for, or what was
// written.
func (l *Lab) meant(text string) string {
	if found := l.foundStations(); len(found) == 1 {
		return l.room.Names()[found[0]]
	}
	return text
}

func (l *Lab) goTo(station string) {
	if err := l.room.GoTo(station); err != nil {
		l.said = sentenceOf(err)
		return
	}
	l.where = false
	l.settle()
}

// keep takes a reading.
func (l *Lab) keep(text string) {
	r, err := l.room.Note(text)
	switch {
	case errors.Is(err, lab.ErrRefused):
		l.said = "Not kept: " + strings.TrimPrefix(err.Error(), lab.ErrRefused.Error()+": ")
	case err != nil && r.Number == 0:
		l.said = "Not kept: " + sentenceOf(err)
	default:
		told := l.room.Told(r)
		l.said = "Kept, " + strings.Join(told, "\n")
		if r.Mark == nil {
			l.said += "\nRight or wrong is told after the marking."
		}
		if err != nil {
			l.said += "\n" + sentenceOf(err)
		}
		l.settle()
	}
}

// undo takes the student's last reading back.
func (l *Lab) undo() {
	i, text, err := l.room.Undo()
	if err != nil {
		l.said = sentenceOf(err)
		return
	}
	l.said = fmt.Sprintf("The reading %q at station %s is taken back.", text, l.room.Names()[i])
	l.where = false
	l.settle()
}

// next makes room for the next student.
func (l *Lab) next() {
	l.said, l.where = "", false
	if err := l.room.Dismiss(); err != nil {
		l.said = sentenceOf(err)
	}
	l.settle()
}

// back leaves what is open.
func (l *Lab) back() {
	_, placed := l.room.Station()
	switch {
	case l.pad:
		l.pad = false
	case l.step() != askReading && l.note.String() != "":
		l.note.clear()
		l.said = ""
	case l.where && placed:
		l.where = false
		l.settle()
	}
}

// found are the places in the roster of the students whose id or name the field
// may mean; all of them while it is empty.
func (l *Lab) found() []int {
	text := strings.ToLower(strings.TrimSpace(l.note.String()))
	var out []int
	for i, s := range l.room.Roster() {
		if strings.HasPrefix(strings.ToLower(s.ID), text) || slices.ContainsFunc(strings.Fields(strings.ToLower(s.Name)), func(w string) bool { return strings.HasPrefix(w, text) }) {
			out = append(out, i)
		}
	}
	return out
}

// foundStations are those whose names begin as the field does.
func (l *Lab) foundStations() []int {
	text := strings.ToLower(strings.TrimSpace(l.note.String()))
	var out []int
	for i, name := range l.room.Names() {
		if strings.HasPrefix(strings.ToLower(name), text) {
			out = append(out, i)
		}
	}
	return out
}

// student is who writes, or nobody.
func (l *Lab) student() form.Student {
	s, _ := l.room.Student()
	return s
}

// sentenceOf is an error as a sentence.
func sentenceOf(err error) string {
	return describe.Capital(strings.TrimSuffix(err.Error(), ".")) + "."
}

var (
	_ Scene   = (*Lab)(nil)
	_ Chooser = (*Lab)(nil)
	_ Guest   = (*Lab)(nil)
)
