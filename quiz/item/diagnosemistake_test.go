package item

import (
	"testing"

	"cuesta/orient"
	"cuesta/quiz/mistake"
)

// Magnetic 35 with declination 17 E is true 52 (US interagency wildfire
// mathematics course, ch. 5); magnetic 315 with 15 W is true 300, and a
// published answer of 330 is wrong (field navigation web page).
func TestDiagnosedMistakesAreToldApart(t *testing.T) {
	for _, c := range []struct {
		truth       orient.Plane
		declination int
		answer      orient.Plane
		kind        mistake.Kind
		want        bool
	}{
		{plane(52, 40), 17, plane(35, 40), mistake.DeclinationNotSet, true},
		{plane(300, 40), -15, plane(330, 40), mistake.DeclinationWrongSign, true},
		{plane(35, 30), 10, plane(215, 30), mistake.OtherEnd, false}, // or the south end
		{plane(35, 30), 10, plane(125, 30), mistake.DirectionForStrike, true},
		{plane(35, 30), 10, plane(35, 58), mistake.PercentScale, false}, // or the complement, 60
		{plane(35, 20), 10, plane(35, 36), mistake.PercentScale, true},
	} {
		d := diagnosed{truth: c.truth, declination: c.declination}
		if got := d.told(made{c.kind, c.answer}); got != c.want {
			t.Errorf("%s for %s: told %t, want %t", orient.Format(c.answer, 0), orient.Format(c.truth, 0), got, c.want)
		}
	}
}

func TestDiagnoseMistake(t *testing.T) {
	d := diagnosed{truth: plane(52, 40), declination: 17}
	ms := d.mistaken()
	it := d.item(made{mistake.DeclinationNotSet, plane(35, 40)}, ms, source(1))
	holdTo(t, it, right("the declination was left out"))
	if got, want := len(it.Ask().Choices), 4; got != want {
		t.Errorf("got %d choices, want %d", got, want)
	}
}

// No choice but the right one leads to the answer that was written.
func TestOtherChoicesLeadElsewhere(t *testing.T) {
	properties := map[string]func(Item) bool{}
	for _, k := range []mistake.Kind{
		mistake.DirectionForStrike, mistake.EastWest, mistake.DeclinationNotSet, mistake.DeclinationWrongSign, mistake.PercentScale, mistake.Complement,
	} {
		properties[k.String()] = func(it Item) bool {
			d := it.(diagnosisItem)
			c := diagnosed{s: Spec{Notation: d.notation}, truth: d.truth, declination: d.declination}
			for _, m := range c.mistaken() {
				offered := offered(d.options, what(m.kind, d.notation))
				if same := m.plane.AngleTo(d.answer) < deg(2); offered && same != (m.kind == d.kind) {
					t.Errorf("%s\n%s is offered and leads to %s", it.Prompt(), m.kind, orient.Format(m.plane, d.notation))
				}
			}
			return d.kind == k
		}
	}
	seen(t, diagnoseMistake{}, Spec{}, 1500, properties)
}
