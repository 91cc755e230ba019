package scenes

import (
	"fmt"
	"strings"
	"testing"

	"cuesta/quiz/item"
	"cuesta/scenes/describe"
	"cuesta/scenes/input"
)

// writtenAt is the first question from i whose answer is written.
func writtenAt(m *memory, i int) int {
	for ; ; i++ {
		if _, bench := m.items[i].(item.AtBench); !bench && m.items[i].Ask().Kind == item.AskNumber {
			return i
		}
	}
}

// What is typed and not kept stands there again when one comes back, costs no
// attempt, and is told when one leaves.
func TestWhatIsNotKeptStandsThereAgain(t *testing.T) {
	for _, size := range append(phones, windows...) {
		m, p, d := formAt(t, size, Text100)
		i := writtenAt(m, 1)
		p.goTo(i)
		d.wait()
		for _, r := range "228" {
			d.frame(input.Frame{Presses: []input.Press{{Rune: r}}})
		}
		d.key(input.PageDown)
		if want := "Question " + fmt.Sprint(i+1) + ": 228 is not kept yet."; !strings.Contains(toldOf(p), want) || p.page != 0 {
			t.Errorf("%v: leaving, told %q on part %d, want %q", size, toldOf(p), p.page+1, want)
		}
		if p.note.String() != "" {
			t.Errorf("%v: the next question begins with %q", size, p.note.String())
		}
		d.key(input.PageUp)
		if p.note.String() != "228" || m.Given(i) != "" || m.Left(i) != 2 {
			t.Errorf("%v: back, written %q, kept %q, %d attempts left", size, p.note.String(), m.Given(i), m.Left(i))
		}
		d.act(idPrimary)
		d.key(input.PageDown)
		if told := toldOf(p); m.Given(i) != "228" || strings.Contains(told, "not kept") {
			t.Errorf("%v: kept %q, and told %q", size, m.Given(i), told)
		}
	}
}

// The overview marks what is not kept, also of the question one comes from, and
// handing in counts it as open, even over an answer that was kept before.
func TestTheOverviewMarksWhatIsNotKept(t *testing.T) {
	m, p, d := formAt(t, windows[0], Text100)
	openBut(m)
	i := writtenAt(m, 1)
	j := writtenAt(m, i+1)
	for _, k := range []int{i, j} {
		p.goTo(k)
		d.wait()
		d.write("228")
	}
	d.act(idOverview)
	for _, k := range []int{i, j} {
		if n := p.Description().Find(idQuestion + describe.ID(k)); n == nil || !strings.HasSuffix(n.Name, ": A, 228 not kept yet") {
			t.Errorf("question %d is %+v", k+1, n)
		}
	}
	d.act(idFinish)
	if want := "Questions " + fmt.Sprint(i+1) + " and " + fmt.Sprint(j+1) + " are open."; m.handed || !strings.Contains(toldOf(p), want) {
		t.Errorf("handed in %v, told %q, want %q", m.handed, toldOf(p), want)
	}
	d.act(idFinish)
	if d.act(idClosePanel); !m.handed || p.note.String() != "A" {
		t.Errorf("handed in %v, the field shows %q, want what was handed in", m.handed, p.note.String())
	}
}

// Taking an answer back leaves alone what is being written.
func TestUndoLeavesWhatIsNotKept(t *testing.T) {
	m, p, d := formAt(t, windows[0], Text100)
	i := writtenAt(m, 1)
	p.goTo(i)
	d.wait()
	d.write("12")
	d.key(input.Enter)
	d.write("13")
	if d.act(idUndo); m.Given(i) != "" || p.note.String() != "13" {
		t.Errorf("kept %q, written %q", m.Given(i), p.note.String())
	}
}
