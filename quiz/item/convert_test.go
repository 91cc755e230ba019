package item

import (
	"strings"
	"testing"

	"cuesta/orient"
	"cuesta/quiz"
	"cuesta/quiz/mistake"
)

// The planes are N65W 25S with the dip direction 205 (D. M. Ragan, Structural
// Geology, ch. 1), N30E 60NW with the dip direction 300 (orthographic
// projection in structural geology, course notes), and the poles 282/12 of
// 012,78E and 060/45 of 330,45SW (structural geology practical 5, answers, Q1;
// 330,45SW has the right-hand strike 150).
func TestConvertNotation(t *testing.T) {
	for _, c := range []struct {
		plane    orient.Plane
		from, to orient.Notation
		answers  []answer
	}{
		{plane(115, 25), orient.Quadrant, orient.DirectionDip, []answer{right("205/25"), right("25→205"), right("205/25 SW"),
			named("025/25", mistake.OtherEnd), named("115/25", mistake.DirectionForStrike), named("155/25", mistake.EastWest)}},
		{plane(115, 25), orient.DirectionDip, orient.Quadrant, []answer{right("N65W 25SW"), right("N65W 25S"), right("S65E 25S"),
			named("N65W 25N", mistake.WrongLetters), named("N65E 25SE", mistake.EastWest), named("N25E 25SE", mistake.DirectionForStrike)}},
		{plane(210, 60), orient.Quadrant, orient.AzimuthDip, []answer{right("210/60"), right("030/60 NW"), right("210/60NW"),
			named("030/60", mistake.OtherEnd), named("300/60", mistake.DirectionForStrike), named("150/60", mistake.EastWest), wrong("210/62")}},
		{plane(12, 78), orient.AzimuthDip, orient.PoleNotation, []answer{right("282/12"), right("pole 282/12"),
			named("282/78", mistake.Complement), named("102/12", mistake.OtherEnd), wrong("102/78")}},
		{plane(150, 45), orient.PoleNotation, orient.AzimuthDip, []answer{right("150/45"), named("330/45", mistake.OtherEnd)}},
	} {
		holdTo(t, newConvert(c.plane, c.from, c.to, Spec{}), c.answers...)
	}
}

func TestAnotherNotationIsNotAConversion(t *testing.T) {
	it := newConvert(plane(35, 30), orient.AzimuthDip, orient.Quadrant, Spec{})
	if m := it.Mark("035/30", Evidence{}); !m.Refused || !strings.Contains(m.Said, "asked for") {
		t.Errorf("got %+v, want a refusal that says what is asked for", m)
	}
}

func TestConversionsEarnByParts(t *testing.T) {
	it := newConvert(plane(35, 30), orient.Quadrant, orient.AzimuthDip, Spec{Tolerance: quiz.SteppedTolerance})
	for typed, want := range map[string]float64{"035/30": 1, "035/60": 0.5, "215/30": 0.75, "125/60": 0} {
		if got := it.Mark(typed, Evidence{}).Share; got != want {
			t.Errorf("%s: got %v, want %v", typed, got, want)
		}
	}
}

func TestAllPairsOfNotationsAreDealt(t *testing.T) {
	properties := map[string]func(Item) bool{}
	for from := range orient.Notation(4) {
		for to := range orient.Notation(4) {
			if from != to {
				properties[notationNames[from]+" to "+notationNames[to]] = func(it Item) bool {
					c := it.(convertItem)
					return c.from == from && c.notation == to
				}
			}
		}
	}
	seen(t, convertNotation{}, Spec{}, 2000, properties)
}
