package lesson

import (
	"slices"
	"strings"
	"testing"
)

func toldOf(t *testing.T, plane, show, more string) string {
	t.Helper()
	p := played(t, "title = \"a\"\nplane = \""+plane+"\"\n[[step]]\nsay = \"x\"\nshow = ["+show+"]\n"+more)
	p.Finish()
	return strings.Join(p.Told(), "\n")
}

func TestTold(t *testing.T) {
	for _, c := range []struct {
		plane, show, more string
		want              []string
	}{
		{"040/35", `"hand"`, "", []string{"The slab falls to the south-east.", "fingers straight down the slope, to the south-east", "points to the north-east"}},
		{"220/35", `"hand", "strike"`, "", []string{"The slab falls to the north-west.", "points to the south-west", "it runs from south-west to north-east"}},
		{"040/35", `"strike"`, "", []string{"it runs from south-west to north-east"}},
		{"000/10", `"arrow"`, "", []string{"The slab falls gently to the east.", "straight down the slope, to the east."}},
		{"090/70", `"ball"`, "", []string{"The slab falls steeply to the south.", "to the south, and stops"}},
		{"335/40", `"numbers"`, "", []string{"335/40: strike 335, dip 40°, dip direction 065"}},
		{"335/40", `"ends"`, "", []string{"lie at 335 and 155"}},
		{"040/00", `"ball", "strike", "numbers"`, "", []string{"The slab lies level.", "does not roll", "dip 0°, no strike"}},
		{"040/90", `"numbers"`, "", []string{"The slab stands upright, from south-west to north-east.", "strike 040 or 220, dip 90°"}},
		{"110/08", `"curve"`, "pose = { swing = 7.21 }", []string{"for this tilt of the edge, 1.0°", "On this bed: 7°."}},
		{"040/35", `"instrument", "scale", "reading"`, "pose = { swing = 0 }\nneedle = 4", []string{"The north end stands at 40.", "The dial is shown magnified"}},
		{"040/35", `"reading"`, "pose = { seat = \"side\", swing = 90, arm = 35 }\nneedle = 2", []string{"The index stands at 35 on the degree scale"}},
	} {
		got := toldOf(t, c.plane, c.show, c.more)
		for _, w := range c.want {
			if !strings.Contains(got, w) {
				t.Errorf("%s %s: told\n%s\nwant %q in it", c.plane, c.show, got, w)
			}
		}
	}
}

// What the screen does not show is not told: no digits while no figures are
// shown. The bench's own look tells tilts, as the eye sees them.
func TestToldKeepsFiguresBack(t *testing.T) {
	for plane, show := range map[string]string{
		"037/41": `"water", "strike", "arrow", "hand", "ball", "levels", "scale"`, "037/00": `"water", "strike", "arrow", "hand", "ball"`, "037/90": `"strike"`,
	} {
		if got := toldOf(t, plane, show, ""); strings.ContainsAny(got, "0123456789") {
			t.Errorf("%s: a figure in\n%s", plane, got)
		}
	}
}

// While the question stands, what was written is told, and no verdict.
func TestToldKeepsTheVerdictBack(t *testing.T) {
	p := played(t, "title = \"a\"\nplane = \"040/35\"\n[[step]]\nmistake = \"other-end\"\nask = \"What?\"\nanswer = \"That.\"\nshow = [\"student\"]\n")
	p.Finish()
	before := p.Told()
	last := strings.Join(before, " ")
	for _, w := range []string{"reads the dial.", "falls away to the left", "reads the arc.", "straight down the slope", "The student wrote 2"} {
		if !strings.Contains(last, w) {
			t.Errorf("told %q before the answer, want %q in it", last, w)
		}
	}
	if strings.Contains(last, "other end") || strings.Contains(last, "right.") {
		t.Errorf("told %q, with the verdict, before the answer", last)
	}
	p.Reveal()
	after := p.Told()
	if !strings.Contains(after[len(after)-1], "other end of the strike line") {
		t.Errorf("told %q after the answer", after)
	}
	if slices.Equal(before, after) {
		t.Error("the answer changed nothing")
	}
}
