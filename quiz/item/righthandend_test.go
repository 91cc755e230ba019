package item

import (
	"strings"
	"testing"

	"cuesta/quiz/mistake"
)

// The bed 008/12E has the ends 008 and 188 (A. L. Coe (ed.) 2010, Geological
// Field Techniques, fig. 2.6); looking along the strike direction of the
// right-hand convention the surface dips to the right (INSPIRE and GeoSciML
// convention codes), so 008 is written.
func TestRightHandEnd(t *testing.T) {
	it := endItem{plane: plane(8, 12), quantity: endOf(plane(8, 12), Spec{})}
	holdTo(t, it, right("008"), right("8°"), right("N8E"), named("188", mistake.OtherEnd),
		named("098", mistake.DirectionForStrike), named("278", mistake.DirectionForStrike), named("352", mistake.EastWest))
}

func TestLinesOfEveryKindAreDealt(t *testing.T) {
	seen(t, rightHandEnd{}, Spec{}, 1000, map[string]func(Item) bool{
		"drawn":               func(it Item) bool { return it.Figure() != nil },
		"in words":            func(it Item) bool { return it.Figure() == nil },
		"right-hand end told": func(it Item) bool { e := it.(endItem); return e.named == e.plane.Strike },
		"other end told":      func(it Item) bool { e := it.(endItem); return e.named != e.plane.Strike },
		"Q at the right-hand end": func(it Item) bool {
			f, ok := it.Figure().(MapFigure)
			return ok && f.LineOnly && f.Ends == [2]string{"Q", "P"}
		},
	})
}

// The letters must name one side of the line alone.
func TestTheSideIsPlain(t *testing.T) {
	seen(t, rightHandEnd{}, Spec{}, 500, map[string]func(Item) bool{"side": func(it Item) bool {
		dd := it.(endItem).plane.DipDirection()
		if off := dd.From(eighth(dd)).Abs(); off > deg(18)+1e-9 {
			t.Errorf("got %v off the point of the compass, want at most 18°", off.Degrees())
		}
		return true
	}})
}

// Looking from P to Q the tick stands where the alternative text says: it lies
// on the right of a line that runs to the right-hand end.
func TestTheTickIsToldOnItsSide(t *testing.T) {
	seen(t, rightHandEnd{}, Spec{}, 300, map[string]func(Item) bool{"drawn": func(it Item) bool {
		f, ok := it.Figure().(MapFigure)
		if !ok {
			return false
		}
		toQ := f.Plane.Strike
		if f.Ends[1] == "Q" {
			toQ = toQ.Opposite()
		}
		want := "stands on the left"
		if f.Plane.DipDirection().From(toQ) > 0 {
			want = "stands on the right"
		}
		if got := it.Alt(); !strings.Contains(got, want) {
			t.Errorf("%+v: got %q, want %q", f, got, want)
		}
		return true
	}})
}
