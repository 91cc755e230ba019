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
		{overturned(plane(35, 30)), "with a hook on it. At the tick stands the number 30."},
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
