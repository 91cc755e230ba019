package scenes

import (
	"errors"
	"math/rand/v2"
	"strings"
	"testing"

	"cuesta/orient"
	"cuesta/quiz"
	"cuesta/quiz/item"
	"cuesta/scenes/describe"
	"cuesta/scenes/input"
	"cuesta/sim"
	"cuesta/sim/record"
)

// memory is a sitting that keeps everything in memory.
type memory struct {
	items   []item.Item
	given   [][]string
	rec     []string
	hints   []int
	flags   []bool
	handed  bool
	refuse  error
	at      int
	history []int
}

func newMemory(t testing.TB, seed uint64) *memory {
	m := &memory{}
	spec := item.Spec{Tolerance: quiz.DefaultTolerance, Mix: quiz.DefaultMix}
	for _, k := range item.Kinds() {
		it, err := k.Deal(spec, rand.New(rand.NewPCG(seed, 1)))
		if err != nil {
			t.Fatal(err)
		}
		m.items = append(m.items, it)
	}
	n := len(m.items)
	m.given, m.rec, m.hints, m.flags = make([][]string, n), make([]string, n), make([]int, n), make([]bool, n)
	return m
}

func (m *memory) Title() string             { return "Tarn Fell field school: first quiz" }
func (m *memory) Count() int                { return len(m.items) }
func (m *memory) Item(i int) item.Item      { return m.items[i] }
func (m *memory) Left(i int) int            { return 2 - len(m.given[i]) }
func (m *memory) Points(int) float64        { return 2 }
func (m *memory) Flagged(i int) bool        { return m.flags[i] }
func (m *memory) Notation() orient.Notation { return orient.AzimuthDip }
func (m *memory) Done() bool                { return m.handed }
func (m *memory) Remaining() (string, bool) { return "", false }
func (m *memory) Flag(i int) error          { m.flags[i] = !m.flags[i]; return nil }
func (m *memory) Hint(i int) error          { m.hints[i]++; return nil }
func (m *memory) Begun() bool               { return m.at > 0 }
func (m *memory) At() int                   { return m.at }
func (m *memory) Go(i int) error            { m.at = i; return nil }
func (m *memory) Finish() (Handed, error) {
	m.handed = true
	return Handed{"q1.submission.json", "in memory"}, nil
}

func (m *memory) Given(i int) string {
	if n := len(m.given[i]); n > 0 {
		return m.given[i][n-1]
	}
	return ""
}

func (m *memory) Hints(i int) ([]string, bool, float64) {
	h := m.items[i].Hints()
	n := min(m.hints[i], len(h))
	return h[:n], n < len(h), .2
}

func (m *memory) Answer(i int, text, recording string) error {
	if m.refuse != nil {
		return m.refuse
	}
	m.given[i], m.rec[i] = append(m.given[i], text), recording
	m.history = append(m.history, i)
	return nil
}

func (m *memory) Undo() error {
	n := len(m.history)
	if n == 0 {
		return errors.New("there is nothing to take back")
	}
	i := m.history[n-1]
	m.history, m.given[i] = m.history[:n-1], m.given[i][:len(m.given[i])-1]
	return nil
}

// sheet drives a form by keys.
type sheetHands struct {
	p    *Paper
	w, h float64
}

func (k sheetHands) press(ps ...input.Press) {
	k.p.Update(input.Frame{W: k.w, H: k.h, Scale: 1, Ticks: 2, Presses: ps})
}

func (k sheetHands) typing(s string) {
	for _, r := range s {
		if r == ' ' {
			k.press(input.Press{Key: input.Space})
			continue
		}
		k.press(input.Press{Rune: r})
	}
}

func TestWholeFormByKeyboardAlone(t *testing.T) {
	m := newMemory(t, 4)
	k := sheetHands{NewPaper(m, Settings{}), 1280, 720}
	k.press()
	for i, it := range m.items {
		if k.p.at != i {
			t.Fatalf("at question %d, want %d", k.p.at, i)
		}
		if _, ok := it.(item.AtBench); ok {
			k.press(input.Press{Key: input.Enter})
			if k.p.bench == nil {
				t.Fatalf("%s: Enter did not go to the bench", it.Kind().Name())
			}
			k.typing(it.Key())
			k.press(input.Press{Key: input.Enter})
		} else {
			k.typing(right(it))
			k.press(input.Press{Key: input.Enter})
		}
		if got := m.Given(i); got != right(it) {
			t.Fatalf("%s: kept %q, want %q (%s)", it.Kind().Name(), got, right(it), k.p.said)
		}
		k.press(input.Press{Key: input.PageDown})
	}
	k.press(input.Press{Key: input.Enter}) // the overview ends on Hand in
	if !m.handed || !strings.Contains(k.p.done, "memory") {
		t.Errorf("not handed in: focus %d, said %q", k.p.focus, k.p.said)
	}
	for i, it := range m.items {
		if it.Mark(m.Given(i), item.Evidence{}).Share != 1 {
			t.Errorf("%s: the key %q does not earn the whole mark", it.Kind().Name(), m.Given(i))
		}
	}
}

// right is the key as it is given here: a choice by its letter.
func right(it item.Item) string {
	if a := it.Ask(); a.Kind == item.AskChoice {
		return string(rune('A' + a.Right))
	}
	return it.Key()
}

func TestTheBenchOfAFormRecordsAndDoesNotJudge(t *testing.T) {
	m := newMemory(t, 9)
	p := NewPaper(m, Settings{})
	k := sheetHands{p, 1280, 720}
	k.press()
	k.press(input.Press{Key: input.Enter})
	if p.bench == nil {
		t.Fatal("not at the bench")
	}
	if n := p.Description().Find(idSecondary); n == nil || n.Name != "Back to form" {
		t.Errorf("got %+v, want a way back and no way to the answer", n)
	}
	k.press(input.Press{Key: input.Escape}, input.Press{Key: input.Right})
	k.typing("123/45")
	k.press(input.Press{Key: input.Enter})
	if p.bench != nil || m.Given(0) != "123/45" {
		t.Fatalf("kept %q; bench still open: %v", m.Given(0), p.bench != nil)
	}
	r, err := record.Read(strings.NewReader(m.rec[0]))
	if err != nil {
		t.Fatal(err)
	}
	if res, err := record.Replay(r); err != nil || !res.Same {
		t.Errorf("replay: %+v, %v", res, err)
	}
	if last := r.Entries[len(r.Entries)-1].Command; last.Kind != sim.Note || last.Text != "123/45" {
		t.Errorf("the recording ends with %+v, want the note", last)
	}
}

func TestRefusedAnswerStaysForMending(t *testing.T) {
	m := newMemory(t, 2)
	m.refuse = errors.New("the disk is full")
	p := NewPaper(m, Settings{})
	k := sheetHands{p, 1280, 720}
	k.press(input.Press{Key: input.PageDown})
	k.typing("12")
	k.press(input.Press{Key: input.Enter})
	if p.note.String() != "12" || p.said != "the disk is full" || m.Given(p.at) != "" {
		t.Errorf("got field %q, said %q, kept %q", p.note.String(), p.said, m.Given(p.at))
	}
}

func TestAFigureIsAnsweredByPointerAlone(t *testing.T) {
	m := newMemory(t, 6)
	p := NewPaper(m, Settings{})
	k := sheetHands{p, 1280, 720}
	k.press()
	for i, it := range m.items {
		if it.Ask().Kind != item.AskNumber {
			continue
		}
		p.goTo(i)
		p.pad = false
		k.press()
		k.click(t, idKeypad)
		for _, r := range it.Key() {
			for n := range 30 {
				if padSign(n) == string(r) {
					k.click(t, idPadKey+describe.ID(n))
				}
			}
		}
		k.click(t, idPrimary)
		if got := it.Mark(m.Given(i), item.Evidence{}); !got.Right {
			t.Errorf("%s: wrote %q for %q", it.Kind().Name(), m.Given(i), it.Key())
		}
	}
}

func (k sheetHands) click(t *testing.T, id describe.ID) {
	t.Helper()
	n := k.p.Description().Find(id)
	if n == nil {
		t.Fatalf("no control %d on the screen", id)
	}
	at := input.Pointer{Kind: input.PointerDown, X: n.Bounds.X + n.Bounds.W/2, Y: n.Bounds.Y + n.Bounds.H/2}
	k.p.Update(input.Frame{W: k.w, H: k.h, Scale: 1, Ticks: 2, Pointers: []input.Pointer{at}})
}
