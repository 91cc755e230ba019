package keymap

import "cuesta/scenes/input"

// Action is something a key does.
type Action uint8

// The actions.
const (
	SwingLess  Action = iota // swings the plate anticlockwise
	SwingMore                // swings it clockwise
	Lift                     // lifts the free side of the plate, or the arm
	Lower                    // lowers it
	LeanLess                 // leans the face of the plate on its side
	LeanMore                 // leans it the other way
	RingLess                 // turns the declination ring towards west
	RingMore                 // turns it towards east
	TurnOver                 // turns the plate from its edge on its side and back
	Flip                     // turns it end for end
	Tap                      // taps the case
	Calibrate                // calibrates the sensor
	Method                   // goes on to the next method of measuring
	LockFree                 // locks and frees the needle
	StepSize                 // goes on to the next size of step
	Closer                   // brings the eye closer and back
	Notebook                 // goes to the notebook
	ReadOut                  // says in words what level and scale show
	Help                     // opens the help
	Settings                 // opens the settings
	Keys                     // opens the list of keys
	Menu                     // goes to the first screen
	NextItem                 // goes to the next question of a form
	LastItem                 // goes to the question before
	NextStep                 // goes on in a lecture
	LastStep                 // goes back in a lecture
	Blank                    // blanks the lecture's screen
	Magnify                  // magnifies a place of it
	Pointer                  // shows the pointer
	Reveal                   // shows the answer
	Live                     // begins live play, and ends it
	Switch                   // presses what the mark is on
	SwitchMove               // moves the mark
	Actions                  // how many there are
)

// Place is where an action is to be had.
type Place uint8

// The places.
const (
	Everywhere Place = iota
	AtBench
	InForm
	InLecture // where the bench may be live as well
)

// action is what is fixed about an action.
type action struct {
	name  string // as it is kept
	words string // as it is listed
	place Place
	usual Stroke
}

var actions = [Actions]action{
	SwingLess:  {"swing-less", "Swing the plate anticlockwise", AtBench, named(input.Left)},
	SwingMore:  {"swing-more", "Swing the plate clockwise", AtBench, named(input.Right)},
	Lift:       {"lift", "Lift the free side, or the arm", AtBench, named(input.Up)},
	Lower:      {"lower", "Lower the free side, or the arm", AtBench, named(input.Down)},
	LeanLess:   {"lean-less", "Lean the face left side down", AtBench, typed('[')},
	LeanMore:   {"lean-more", "Lean the face right side down", AtBench, typed(']')},
	RingLess:   {"ring-less", "Turn the ring towards west", AtBench, typed(',')},
	RingMore:   {"ring-more", "Turn the ring towards east", AtBench, typed('.')},
	TurnOver:   {"turn-over", "Turn the plate on its side and back", AtBench, typed('t')},
	Flip:       {"flip", "Turn the plate end for end", AtBench, typed('f')},
	Tap:        {"tap", "Tap the case", AtBench, named(input.Space)},
	Calibrate:  {"calibrate", "Calibrate the sensor", AtBench, typed('k')},
	Method:     {"method", "Next method: edge and side, lid, sensor", AtBench, typed('i')},
	LockFree:   {"lock-free", "Lock and free the needle", AtBench, typed('l')},
	StepSize:   {"step-size", "Next size of step", AtBench, typed('s')},
	Closer:     {"closer", "Come closer, go back", AtBench, typed('c')},
	Notebook:   {"notebook", "Go to the notebook", AtBench, typed('n')},
	ReadOut:    {"read-out", "Say what level and scale show", AtBench, typed('d')},
	Help:       {"help", "Help", Everywhere, named(input.F1)},
	Settings:   {"settings", "Settings", Everywhere, named(input.F2)},
	Keys:       {"keys", "This list of keys", Everywhere, named(input.F4)},
	Menu:       {"menu", "Back to the menu", Everywhere, named(input.F10)},
	NextItem:   {"next-question", "Next question of a form", InForm, named(input.PageDown)},
	LastItem:   {"last-question", "Question before", InForm, named(input.PageUp)},
	NextStep:   {"next-step", "Next step of a lecture", InLecture, named(input.PageDown)},
	LastStep:   {"last-step", "Step before", InLecture, named(input.PageUp)},
	Blank:      {"blank", "Blank the lecture's screen", InLecture, typed('b')},
	Magnify:    {"magnify", "Magnify a place", InLecture, typed('m')},
	Pointer:    {"pointer", "Show the pointer", InLecture, typed('p')},
	Reveal:     {"reveal", "Reveal the answer", InLecture, typed('r')},
	Live:       {"live-play", "Play with the instrument, and back", InLecture, named(input.F5)},
	Switch:     {"switch", "Switch: press what is marked", Everywhere, named(input.F8)},
	SwitchMove: {"switch-move", "Second switch: move the mark", Everywhere, named(input.F9)},
}

// Words is what the action does.
func (a Action) Words() string { return actions[a].words }

// Place is where the action is to be had.
func (a Action) Place() Place { return actions[a].place }

// Usual is the key that does it before any is changed.
func (a Action) Usual() Stroke { return actions[a].usual }

// String is the name under which the action is kept.
func (a Action) String() string { return actions[a].name }

// meets says that two actions may both be to be had, so that one key must not
// do both.
func (a Action) meets(b Action) bool {
	p, q := a.Place(), b.Place()
	switch {
	case p == q, p == Everywhere, q == Everywhere:
		return true
	case p == InForm, q == InForm:
		return p == AtBench || q == AtBench // a question may be answered at the bench
	default:
		return true
	}
}
