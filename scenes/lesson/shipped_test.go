package lesson_test

import (
	"fmt"
	"io/fs"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"cuesta/assets"
	"cuesta/orient"
	"cuesta/scenes/draw"
	"cuesta/scenes/lesson"
	"cuesta/sim"
)

func TestEveryShippedLessonReads(t *testing.T) {
	files, err := fs.Glob(assets.Lessons, "lessons/*.toml")
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range files {
		name := strings.TrimSuffix(strings.TrimPrefix(f, "lessons/"), ".toml")
		data, err := assets.Lessons.ReadFile(f)
		if err != nil {
			t.Fatal(err)
		}
		if _, err := lesson.Parse(name, data); err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		if _, ok := lesson.Named(name); !ok {
			t.Errorf("%s is not among the shipped", name)
		}
	}
	if !t.Failed() && len(lesson.Shipped()) != len(files) {
		t.Errorf("%d lessons are shipped, want %d", len(lesson.Shipped()), len(files))
	}
}

// each plays every shipped lesson forward and calls f at the end of every step.
func each(t *testing.T, f func(l lesson.Lesson, p *lesson.Player)) {
	t.Helper()
	for _, l := range lesson.Shipped() {
		p, err := lesson.NewPlayer(l)
		if err != nil {
			t.Fatalf("%s: %v", l.Name, err)
		}
		for more := true; more; {
			p.Finish()
			f(l, p)
			if more, err = p.Next(); err != nil {
				t.Fatalf("%s: %v", l.Name, err)
			}
		}
		if p.At() != len(l.Steps)-1 {
			t.Errorf("%s ends at step %d of %d", l.Name, p.At()+1, len(l.Steps))
		}
	}
}

func state(p *lesson.Player) string {
	return fmt.Sprint(p.At(), p.Session().World().Hash(), p.Line(), p.View(), p.Told())
}

// Back leads to what was there, bit for bit, and forward again as well.
func TestShippedForwardAndBack(t *testing.T) {
	for _, l := range lesson.Shipped() {
		p, err := lesson.NewPlayer(l)
		if err != nil {
			t.Fatal(err)
		}
		var left []string // how each step stood when it was left
		for i := 1; i < len(l.Steps); i++ {
			if _, err := p.Next(); err != nil {
				t.Fatal(err)
			}
			if _, err := p.Back(); err != nil {
				t.Fatal(err)
			}
			left = append(left, state(p))
			if _, err := p.Next(); err != nil {
				t.Fatal(err)
			}
		}
		for i := len(left) - 1; i >= 0; i-- {
			if _, err := p.Back(); err != nil {
				t.Fatal(err)
			}
			if got := state(p); got != left[i] {
				t.Errorf("%s: back at step %d\n%s\nwant\n%s", l.Name, i+1, got, left[i])
			}
		}
	}
}

// The simulated student makes just the mistake that the class is asked for, and
// the judge names it, alone, but for the tilt without which no needle rubs: that
// is told second, as going with it.
func TestShippedMistakesAreNamed(t *testing.T) {
	each(t, func(l lesson.Lesson, p *lesson.Player) {
		name := p.Step().Mistake
		if name == "" {
			return
		}
		p.Reveal()
		w, ok := p.Written()
		var got []string
		for _, k := range w.Named {
			got = append(got, k.String())
		}
		want := []string{name}
		switch name {
		case lesson.Careful:
			want = nil
		case "needle-rubbing":
			want = []string{name, "level-not-centred"}
		}
		if len(w.Reasons) > 1 && strings.HasPrefix(w.Reasons[1], "Probably") {
			t.Errorf("%s, step %d: two reasons are each the probable one: %q", l.Name, p.At()+1, w.Reasons)
		}
		if !ok || !slices.Equal(got, want) || w.Right != (want == nil) {
			t.Errorf("%s, step %d: wrote %s, right %v, named %v, want %v", l.Name, p.At()+1, w.Text, w.Right, got, want)
		}
	})
}

// The curve of the lesson on trust is drawn where there is a tilt to draw it for,
// and where the lesson says that the tilt grows or shrinks, it does.
func TestTiltOfTheCurve(t *testing.T) {
	var tilts []orient.Angle
	each(t, func(l lesson.Lesson, p *lesson.Player) {
		if o := p.Session().World().Observe(); p.Shows(lesson.Curve) && o.Seat == sim.OnEdge {
			tilts = append(tilts, orient.Asin(o.Frame.Forward.Z).Abs())
		}
	})
	if len(tilts) < 3 || tilts[1] >= tilts[0] || tilts[2] <= tilts[1] || slices.Min(tilts) < orient.Degree/4 {
		t.Errorf("the tilts are %v", tilts)
	}
}

// The lessons are as long as a lesson, each step has something to tell, and a
// line on the screen is short: one sentence, two at most.
func TestShippedAreShort(t *testing.T) {
	for _, l := range lesson.Shipped() {
		if n := len(l.Steps); n < 10 || n > 18 || l.Minutes < 6 || l.Minutes > 12 {
			t.Errorf("%s: %d steps in %d minutes", l.Name, n, l.Minutes)
		}
		for i, s := range l.Steps {
			for _, line := range []string{s.Say, s.Ask, s.Answer} {
				rows := len(draw.Wrap(draw.Regular, lesson.LineSize, lesson.LineWidth, line))
				if len(line) > 95 || rows > 2 || sentences(line) > 2 {
					t.Errorf("%s, step %d: %d characters, %d rows: %q", l.Name, i+1, len(line), rows, line)
				}
			}
			if n := sentences(s.Notes); n < 2 || n > 6 {
				t.Errorf("%s, step %d: notes of %d sentences", l.Name, i+1, n)
			}
			if s.Ask != "" && !strings.HasSuffix(s.Ask, "?") && !strings.HasSuffix(s.Ask, ".") {
				t.Errorf("%s, step %d: %q is no question", l.Name, i+1, s.Ask)
			}
		}
	}
}

var sentenceEnd = regexp.MustCompile(`[.?!](?:\s|$)`)

func sentences(s string) int { return len(sentenceEnd.FindAllString(s, -1)) }

// whole is everything that a lesson says.
func whole(l lesson.Lesson) string {
	all := []string{l.Title, l.Summary, l.Notes}
	for _, s := range l.Steps {
		all = append(all, s.Say, s.Ask, s.Answer, s.Notes)
	}
	return strings.Join(strings.Fields(strings.Join(all, " ")), " ")
}

// Every lesson ends where people go out, and says the usual cautions (common
// practice): unstable faces, helmet, never alone, local rules; two that lead on to
// work defer to licensed practice too.
func TestShippedCautions(t *testing.T) {
	for _, l := range lesson.Shipped() {
		text := whole(l)
		for _, want := range []string{"out from under unstable", "helmet", "never", "alone", "local"} {
			if !strings.Contains(text, want) {
				t.Errorf("%s: the cautions lack %q", l.Name, want)
			}
		}
		if l.Name != "right-hand" && !strings.Contains(text, "licensed practitioner") {
			t.Errorf("%s does not defer to licensed practice", l.Name)
		}
	}
}

// American spellings, and the words they stand for here.
var american = map[string]string{
	"color": "colour", "center": "centre", "centered": "centred", "leveled": "levelled", "leveling": "levelling", "gray": "grey",
	"meter": "metre", "meters": "metres", "traveled": "travelled", "labeled": "labelled", "analyze": "analyse", "favor": "favour",
	"toward": "towards", "math": "maths", "counterclockwise": "anticlockwise", "plow": "plough", "mold": "mould",
}

func TestShippedSpelling(t *testing.T) {
	for _, l := range lesson.Shipped() {
		for _, w := range strings.FieldsFunc(strings.ToLower(whole(l)), func(r rune) bool { return r < 'a' || r > 'z' }) {
			if better, ok := american[w]; ok {
				t.Errorf("%s: %q, want %q", l.Name, w, better)
			}
		}
	}
}

// conventional are numbers of the convention itself: right angles, half and whole
// turns, percent at 45°.
var conventional = []int{0, 45, 90, 100, 180, 360}

var numbers = regexp.MustCompile(`\d+`)

// What comes out of the simulation is shown, and written nowhere: no text of a
// lesson has a number that is a strike, a dip, a reading or an answer of it.
func TestShippedTypeNoReading(t *testing.T) {
	facts := map[string]map[int]bool{}
	each(t, func(l lesson.Lesson, p *lesson.Player) {
		if facts[l.Name] == nil {
			facts[l.Name] = map[int]bool{}
		}
		f, o, plane := facts[l.Name], p.Session().World().Observe(), p.Session().Truth()
		f[o.Dial.Degree()] = true
		if o.Seat == sim.OnSide {
			f[o.Arc.Degree()] = true
		}
		for _, a := range []orient.Angle{plane.Strike.Angle(), plane.Strike.Opposite().Angle(), plane.DipDirection().Angle(), plane.Dip} {
			f[int(a.Degrees()+.5)] = true
		}
		if w, ok := p.Written(); ok {
			for _, n := range numbers.FindAllString(w.Text, -1) {
				f[atoi(t, n)] = true
			}
		}
	})
	for _, l := range lesson.Shipped() {
		for _, n := range numbers.FindAllString(whole(l), -1) {
			if x := atoi(t, n); facts[l.Name][x] && !slices.Contains(conventional, x) {
				t.Errorf("%s: a text says %s, which the simulation gives", l.Name, n)
			}
		}
	}
}

func atoi(t *testing.T, s string) int {
	t.Helper()
	n, err := strconv.Atoi(s)
	if err != nil {
		t.Fatal(err)
	}
	return n
}

// Figures are kept back while the class is asked for them: where a step asks for
// a reading, it shows none.
func TestShippedKeepReadingsBack(t *testing.T) {
	each(t, func(l lesson.Lesson, p *lesson.Player) {
		if strings.HasPrefix(p.Line(), "Read the") && (p.Shows(lesson.Reading) || p.Shows(lesson.Numbers)) {
			t.Errorf("%s, step %d asks for a number that stands there: %q", l.Name, p.At()+1, p.Line())
		}
	})
}

// A list of lessons tells what the lessons tell.
func TestHeadsAreThoseOfTheLessons(t *testing.T) {
	heads := lesson.Heads()
	for i, l := range lesson.Shipped() {
		want := lesson.Head{Name: l.Name, Title: l.Title, Summary: l.Summary, Minutes: l.Minutes}
		if i >= len(heads) || heads[i] != want {
			t.Errorf("head %d: got %+v, want %+v", i, heads, want)
		}
	}
}
