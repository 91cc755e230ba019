package scenes

import (
	"fmt"
	"strings"
	"testing"

	"cuesta/scenes/describe"
	"cuesta/scenes/draw"
	"cuesta/scenes/input"
	"cuesta/scenes/keymap"
	"cuesta/scenes/lesson"
)

const lookedAt = `title = "Two students"
plane = "071/36"
declination = 8
seed = 295
[[step]]
ask = "What will you watch?"
answer = "The edge."
show = ["numbers", "instrument", "levels", "scale"]
pose = { swing = 0 }
[[step]]
ask = "What was done wrong?"
answer = "The other end."
mistake = "other-end"
show = ["student"]
[[step]]
ask = "And here?"
answer = "The level."
mistake = "level-not-centred"
view = "strike"
[[step]]
say = "That is all."
`

// Home is for the next class: nothing that was revealed stays so.
func TestHomeBeginsTheLectureAnew(t *testing.T) {
	for _, live := range []bool{false, true} {
		r := lectureOf(t, lookedAt)
		for r.play.At() < 3 {
			r.key(input.PageDown)
		}
		r.key(input.PageUp)
		if r.play.Answer() == "" {
			t.Error("back hides an answer that was revealed")
		}
		if live {
			r.key(input.F5)
		}
		r.key(input.Home)
		if r.play.At() != 0 || r.play.IsLive() || !r.play.Open() || strings.Contains(r.said(), "The edge.") {
			t.Fatalf("live %v: Home does not begin anew: %s", live, r.said())
		}
		var open, worked int
		for n := 0; r.play.At() < 3 && n < 20; n++ {
			if r.play.Open() && !r.play.Busy() {
				open++
			}
			r.key(input.PageDown)
			if r.state() == stepMeasured {
				worked++
			}
		}
		if open != 3 || worked != 2 {
			t.Errorf("live %v: %d questions stood open and %d students measured, want 3 and 2", live, open, worked)
		}
	}
	r := lectureOf(t, lookedAt)
	r.key(input.PageDown)
	r.key(input.PageDown)
	r.press("Begin again, answers hidden")
	if r.play.At() != 0 || r.play.Answer() != "" {
		t.Error("the control does not begin anew")
	}
}

// However evenly or hastily the presenter presses, and whatever was tried in
// between, no step with a question is left before its verdict has been on the
// screen.
func TestNoVerdictIsPassedUnseen(t *testing.T) {
	between := map[string][]input.Key{
		"no other key": nil, "live play": {input.F5}, "live play and Escape": {input.F5, input.Escape}, "back": {input.PageUp},
	}
	for what, keys := range between {
		for _, pace := range []int{0, 30, 121, 480, 1700, 9000} {
			r := lectureOf(t, lookedAt)
			seen := map[int]bool{}
			for n := 0; r.play.At() < 3 && n < 60; n++ {
				if n == 5 {
					for _, k := range keys {
						r.key(k)
					}
				}
				was := r.play.At()
				r.key(input.PageDown)
				if r.play.At() > was && !seen[was] {
					t.Errorf("%s, every %d ticks: step %d was left unjudged", what, pace, was+1)
				}
				if w, ok := r.play.Written(); r.play.Answer() != "" && (!ok || w.Outcome != "" && strings.Contains(r.said(), w.Outcome)) {
					seen[r.play.At()] = true
				}
				r.wait(pace)
			}
			if r.play.At() != 3 {
				t.Errorf("%s, every %d ticks: came to step %d", what, pace, r.play.At()+1)
			}
		}
	}
}

// A quiet sign beside the counter says what the next press does.
func TestTheCounterSaysHowFarAStepIs(t *testing.T) {
	sign := func(r room) string {
		if n := r.Description().Find(idLectureState); n != nil && n.Role == describe.Status {
			return n.Name
		}
		return ""
	}
	for _, p := range [][2]float64{{1920, 1080}, {390, 844}} {
		l, err := lesson.Parse("test", []byte(lookedAt))
		if err != nil {
			t.Fatal(err)
		}
		r := inRoom(t, l, Settings{}, p[0], p[1])
		r.wait(0)
		if got := sign(r); got != "The instrument is being moved." && got != "An answer is hidden: R or Page Down shows it." {
			t.Errorf("at the start: %q", got)
		}
		r.play.Reveal()
		r.wait(0)
		for i, want := range []string{"The student is measuring.", "An answer is hidden: R or Page Down shows it.", "", "The student is measuring."} {
			r.key(input.PageDown)
			if got := sign(r); got != want {
				t.Errorf("press %d: got %q, want %q", i+1, got, want)
			}
			if z := r.screen.zones[menuZone].list.Texts; want != "" && len(z) < 2 {
				t.Errorf("press %d: the sign is not drawn", i+1)
			}
		}
	}
}

// The place that was magnified need not be worth a look in live play, where the
// eye is elsewhere.
func TestLivePlayBeginsAndEndsUnmagnified(t *testing.T) {
	r := lectureOf(t, lookedAt)
	r.typed("m")
	r.key(input.F5)
	if !r.play.IsLive() || r.magnify {
		t.Errorf("live %v, magnified %v, want live play of the whole", r.play.IsLive(), r.magnify)
	}
	r.typed("m")
	r.press("Back to the lesson as it stood")
	if r.play.IsLive() || r.magnify {
		t.Errorf("live %v, magnified %v, want the step as it stood", r.play.IsLive(), r.magnify)
	}
}

// A magnified place belongs to its step; an answer revealed there leaves it.
func TestAnotherStepBeginsUnmagnified(t *testing.T) {
	r := lectureOf(t, lookedAt)
	for r.play.At() == 0 {
		r.key(input.PageDown)
	}
	for _, k := range []input.Key{input.PageDown, input.PageUp, input.Home} {
		r.key(input.PageDown)
		r.typed("m")
		at := r.play.At()
		for r.play.Busy() || r.play.Open() {
			if r.key(input.PageDown); r.play.At() == at && !r.magnify {
				t.Fatalf("step %d: what stays there is magnified no more", at+1)
			}
		}
		r.key(k)
		if r.play.At() == at {
			t.Fatalf("%v does not leave step %d", k, at+1)
		}
		if r.magnify {
			t.Errorf("%v leads to step %d, which begins magnified", k, r.play.At()+1)
		}
	}
}

// A step that plays again asks again: the class sees no answer before it has
// looked.
func TestAStepThatPlaysAgainHidesItsAnswer(t *testing.T) {
	r := lectureOf(t, lookedAt)
	for r.play.At() < 3 {
		r.key(input.PageDown)
	}
	r.key(input.PageUp)
	r.key(input.PageUp)
	if r.play.At() != 1 || r.play.Answer() == "" {
		t.Fatalf("step %d, answer %q, want the second step as it ended", r.play.At()+1, r.play.Answer())
	}
	r.key(input.PageDown)
	if r.play.At() != 2 || r.state() != stepMeasured || !r.play.Open() || r.play.Answer() != "" {
		t.Errorf("step %d, state %v, answer %q, want it under way and hidden", r.play.At()+1, r.state(), r.play.Answer())
	}
	r.key(input.PageDown)
	r.key(input.PageDown)
	if r.play.At() != 2 || r.play.Answer() == "" {
		t.Errorf("step %d, answer %q, want it revealed", r.play.At()+1, r.play.Answer())
	}
}

// Whoever looks for the way out is told the key, as it is mapped.
func TestALectureSaysHowToGetOut(t *testing.T) {
	other, _, err := keymap.Map{}.With(keymap.Menu, keymap.Stroke{Key: input.F12})
	if err != nil {
		t.Fatal(err)
	}
	for _, tt := range []struct {
		set   Settings
		guest bool
		want  string
	}{
		{Settings{}, true, "F10: menu."},
		{Settings{Keys: other}, true, "F12: menu."},
		{Settings{}, false, ""},
	} {
		l, err := lesson.Parse("test", []byte(lookedAt))
		if err != nil {
			t.Fatal(err)
		}
		r := inRoom(t, l, tt.set, 1920, 1080)
		if tt.guest {
			r.Leaves(func() {})
		}
		r.key(input.Escape)
		if r.notice != tt.want {
			t.Errorf("Escape says %q, want %q", r.notice, tt.want)
		}
		for r.play.At()+1 < r.play.Len() {
			r.key(input.PageDown)
		}
		r.key(input.PageDown)
		if want := strings.TrimSpace("This was the last step. " + tt.want); r.notice != want {
			t.Errorf("after the last step it says %q, want %q", r.notice, want)
		}
	}
}

func TestEscapeEndsLivePlay(t *testing.T) {
	r := lectureOf(t, lookedAt)
	for r.play.At() < 1 || r.play.Busy() {
		r.key(input.PageDown)
	}
	for _, keys := range [][]input.Key{{}, {input.Left, input.Up}, {input.F1, input.Escape}, {input.Tab, input.Tab}} {
		r.key(input.F5)
		hash := r.play.Session().World().Hash() // at rest
		for _, k := range keys {
			r.key(k)
		}
		r.key(input.Escape)
		if r.play.IsLive() || r.play.At() != 1 || r.play.Session().World().Hash() != hash {
			t.Errorf("%v: Escape does not lead back (live %v, step %d)", keys, r.play.IsLive(), r.play.At()+1)
		}
		r.key(input.Escape)
	}
	r.key(input.F5)
	r.key(input.PageDown)
	if r.play.IsLive() || r.play.At() != 1 || !r.play.Open() {
		t.Error("Page Down in live play does not come back to the open question")
	}
	r.key(input.Escape)
	if r.play.IsLive() || r.play.At() != 1 {
		t.Error("Escape after Page Down does more than it should")
	}
	r.key(input.PageDown)
	if r.play.Answer() == "" {
		t.Error("then Page Down does not reveal the answer")
	}
}

func TestTheMagnifierBeginsAtTheInstrument(t *testing.T) {
	r := lectureOf(t, lookedAt)
	var l draw.List
	for _, mouse := range []bool{false, true} {
		r.wait(600)
		if mouse {
			r.frame(input.Frame{Pointers: []input.Pointer{{Kind: input.PointerMove, X: 40, Y: 900}}})
		}
		r.Picture(&l)
		b := r.stage.InstrumentBounds()
		r.typed("m")
		if !contains(b, r.spot.X, r.spot.Y) {
			t.Fatalf("mouse %v: it begins at %v, the instrument lies in %v", mouse, r.spot, b)
		}
		r.Picture(&l)
		at := r.stage.InstrumentBounds()
		r.key(input.Right)
		r.Picture(&l)
		if moved := at.X - r.stage.InstrumentBounds().X; moved < r.h/20 {
			t.Errorf("an arrow moves the picture by %.0f px", moved)
		}
		r.typed("m")
	}
	r.typed("m")
	for range 60 {
		r.key(input.Right)
	}
	if r.screen.looksAt(r.Lecture) == noMagnifier && !contains(r.screen.lay.Scene, r.spot.X, r.spot.Y) {
		t.Errorf("the arrows lead to %v, where there is nothing", r.spot)
	}
}

// The controls of live play stand in even rows under the slab and its ring.
func TestLiveControlsStandUnderThePicture(t *testing.T) {
	l, err := lesson.Parse("test", []byte(lookedAt))
	if err != nil {
		t.Fatal(err)
	}
	for i := range 2 * len(projectors) {
		p, text := projectors[i/2], [...]TextSize{Text100, Text200}[i%2]
		r := inRoom(t, l, Settings{Text: text}, p[0], p[1])
		r.key(input.F5)
		r.wait(0)
		z, s, bar := r.screen.zones[stripZone].rect, r.screen.lay.Scene, r.screen.zones[barZone].rect
		if z.Y < s.Y+s.H-1 || z.Y+z.H > bar.Y+1 {
			t.Errorf("%v, text %v: the controls %+v lie on the picture %+v or the line %+v", p, text, z, s, bar)
		}
		rows := map[float64]float64{}
		widest, least := 0.0, p[0]
		for _, w := range r.screen.zones[stripZone].widgets {
			rows[w.rect.Y] += w.rect.W
		}
		for _, w := range rows {
			widest, least = max(widest, w), min(least, w)
		}
		if len(rows) > 1 && least < .5*widest {
			t.Errorf("%v: rows of %.0f and %.0f px", p, widest, least)
		}
	}
}

// The level is compared with what was judged, so it stays beside the verdict.
func TestTheLevelStaysBesideTheVerdict(t *testing.T) {
	l, ok := lesson.Named("how-readings-go-wrong")
	if !ok {
		t.Fatal("the lesson is not there")
	}
	for _, p := range [][2]float64{{1920, 1080}, {1280, 720}, {3840, 2160}} {
		r := inRoom(t, l, Settings{}, p[0], p[1])
		for r.play.At() < r.play.Len()-1 {
			r.key(input.PageDown)
			if r.play.Answer() != "" && r.shows(lesson.Student) && r.screen.lay.Round.R <= 0 {
				t.Errorf("%v, step %d: the level gives way to the verdict", p, r.play.At()+1)
			}
		}
	}
}

func TestTheKeysOfALectureAreAllTold(t *testing.T) {
	r := lectureOf(t, lookedAt)
	r.key(input.F1)
	told := r.said()
	for range 4 {
		if r.screen.tree.Find(idPanelMore) != nil {
			r.act(idPanelMore)
			r.wait(0)
			told += r.said()
		}
	}
	for _, k := range []string{"Page Down", "Page Up", "F1 ", "F2:", "F5", "F10:", "F11:", "Home:", "Escape:"} {
		if !strings.Contains(told, k) {
			t.Errorf("%s is not told: %s", k, told)
		}
	}
}

// A lesson of one's own that asks what went wrong shows it: the dial that was
// read, its figure, and what the student wrote.
func TestAMistakeOfOnesOwnIsOnTheScreen(t *testing.T) {
	r := lectureOf(t, `title = "Mine"
plane = "035/30"
[[step]]
show = ["instrument", "levels", "reading"]
mistake = "other-end"
ask = "What went wrong?"
answer = "The other end was read."
`)
	r.play.Finish()
	r.wait(0)
	if r.play.View() != lesson.ViewStrike || r.screen.lay.Dial.R <= 0 || r.screen.lay.Card.H <= 0 {
		t.Errorf("view %q, dial %v, card %v", r.play.View(), r.screen.lay.Dial, r.screen.lay.Card)
	}
	w, _ := r.play.Written()
	scale, wrote := r.Description().Find(idLectureScale), r.Description().Find(idLectureWrote)
	if scale == nil || scale.Name != "Dial, north end" || scale.Value != fmt.Sprintf("%03d°", r.reading()) {
		t.Errorf("got the scale %+v", scale)
	}
	if wrote == nil || !strings.Contains(wrote.Name, w.Text) {
		t.Errorf("got %+v, want what the student wrote, %s", wrote, w.Text)
	}
}
