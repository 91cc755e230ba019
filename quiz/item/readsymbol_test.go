package item

import (
	"strings"
	"testing"

	"cuesta/orient"
	"cuesta/quiz/mistake"
)

func symbolOf(p orient.Plane, s Spec) symbolItem { return symbolItem{symbolPlane(p, s)} }

func overturned(p orient.Plane) orient.Plane {
	p.Overturned = true
	return p
}

// The symbols are those of FGDC-STD-013-2006, section 6 (numbers from memory):
// horizontal, inclined, vertical and overturned bedding.
func TestReadSymbol(t *testing.T) {
	holdTo(t, symbolOf(plane(35, 30), Spec{}), right("035/30"), right("040/30"), right("N35E 30SE"), right("215/30 SE"),
		wrong("041/30"), wrong("035/33"), named("215/30", mistake.OtherEnd), named("125/30", mistake.DirectionForStrike), named("325/30", mistake.EastWest))
	holdTo(t, symbolOf(plane(35, 90), Spec{}), right("035/90"), right("215/90"), right("N35E vertical"), wrong("035/30"), wrong("horizontal"))
	holdTo(t, symbolOf(plane(168, 90), Spec{}), right("348/90"), wrong("348/89"), wrong("348/85"))
	holdTo(t, symbolOf(orient.Plane{}, Spec{}), right("horizontal"), right("123/00"), wrong("000/90"), wrong("035/30"))
	holdTo(t, symbolOf(overturned(plane(35, 30)), Spec{}), right("035/30 overturned"), wrong("035/30"))
}

func TestSymbolsAreToldByTheirStrokes(t *testing.T) {
	for _, c := range []struct {
		plane orient.Plane
		want  string
	}{
		{plane(35, 30), "rises to the right at 55 degrees from the lower edge, and at its middle a short tick below it. At the tick stands the number 30."},
		{plane(215, 30), "rises to the right at 55 degrees from the lower edge, and at its middle a short tick above it"},
		{plane(145, 7), "rises to the left at 55 degrees from the lower edge, and at its middle a short tick below it"},
		{plane(0, 30), "runs straight up the page, and at its middle a short tick on its right"},
		{plane(180, 30), "runs straight up the page, and at its middle a short tick on its left"},
		{plane(90, 30), "runs straight across the page, and at its middle a short tick below it"},
		{plane(90, 90), "with a short stroke across its middle"},
		{plane(90, 0), "a circle with a cross in it"},
		{overturned(plane(35, 30)), "a hook that leaves the line above it and comes back through its middle as a short tick below it. At the tick stands the number 30."},
	} {
		if got := symbolOf(c.plane, Spec{}).Alt(); !strings.Contains(got, c.want) {
			t.Errorf("%v: got %q, want %q", c.plane, got, c.want)
		}
	}
}

func TestSymbolsOfEveryKindAreDealt(t *testing.T) {
	truth := func(it Item) orient.Plane { return it.(symbolItem).truth }
	seen(t, readSymbol{}, Spec{}, 1000, map[string]func(Item) bool{
		"level":      func(it Item) bool { return truth(it).Dip == 0 },
		"vertical":   func(it Item) bool { return truth(it).Dip == orient.Right },
		"overturned": func(it Item) bool { return truth(it).Overturned },
		"NW strikes": func(it Item) bool { return truth(it).Strike.Angle() > 3*orient.Right },
		"SE strikes": func(it Item) bool { s := truth(it).Strike.Angle(); return s > orient.Right && s < orient.Half },
	})
}

// Whatever a symbol is marked for the question asks for, in the same words in
// every form, so that the question does not tell which symbol is meant.
func TestTheWayUpOfASymbolIsAskedForInEveryForm(t *testing.T) {
	const asked = ", and write overturned behind it where the bed is"
	for _, n := range []orient.Notation{orient.AzimuthDip, orient.Quadrant, orient.DirectionDip, orient.PoleNotation} {
		s := Spec{Notation: n}
		prompt := symbolOf(plane(35, 30), s).Prompt()
		if !strings.Contains(prompt, asked) {
			t.Errorf("got %q, want it to ask%s", prompt, asked)
		}
		for _, p := range []orient.Plane{{}, plane(35, 90), overturned(plane(35, 30))} {
			if got := symbolOf(p, s).Prompt(); got != prompt {
				t.Errorf("%v: got %q, want %q", p, got, prompt)
			}
		}
	}
}

// A vertical bed has no side: with a wrong dip either end of its line keeps the
// half that is the strike's, and the words say so.
func TestOfAVerticalSymbolEitherEndIsRight(t *testing.T) {
	it := symbolOf(plane(168, 90), Spec{})
	for _, text := range []string{"348/89", "168/89", "348/85", "168/85"} {
		m := it.Mark(text, Evidence{})
		if want := "The direction is right, the dip is not."; m.Share != .5 || m.Said != want {
			t.Errorf("%s: got %g of the points, %q, want 0.5, %q", text, m.Share, m.Said, want)
		}
	}
}

// Which side is wrong is said whatever else is.
func TestTheWrongSideIsSaidBesideOtherFaults(t *testing.T) {
	it := symbolOf(plane(310, 15), Spec{})
	for text, want := range map[string]string{
		"130/40": "The strike line is right, but the bed dips to the other side, and the dip is not right.",
		"140/15": "The dip is right, but the direction is not, and the bed dips to the other side.",
		"140/40": "Neither the direction nor the dip is right, and the bed dips to the other side.",
	} {
		if got := it.Mark(text, Evidence{}).Said; !strings.HasPrefix(got, want) {
			t.Errorf("%s: got %q, want %q", text, got, want)
		}
	}
}
