package scenes

import (
	"fmt"
	"strings"
	"testing"

	"cuesta/quiz/form"
	"cuesta/quiz/lab"
	"cuesta/scenes/describe"
	"cuesta/scenes/draw"
	"cuesta/scenes/input"
	"cuesta/scenes/theme"
)

// labClass is an invented class, with names of all lengths.
func labClass(n int) []form.Student {
	names := []string{"Ailbe Thornwick", "Bo Ostby", "Íñigo Ståhlbäck of the far end of the class list", "Wren", "Marta Fell-Hollow"}
	var out []form.Student
	for i := range n {
		out = append(out, form.Student{ID: fmt.Sprintf("tf%02d", i+1), Name: names[i%len(names)], ExtraTime: 1})
	}
	return out
}

// labScene is a station screen and what it hands on.
func labScene(t testing.TB, o lab.Options, station string, change ...string) (*Lab, map[string]form.Submission) {
	t.Helper()
	b, err := form.ReadStations(strings.NewReader(strings.NewReplacer(change...).Replace(lab.Example())))
	if err != nil {
		t.Fatal(err)
	}
	kept := map[string]form.Submission{}
	o.Folder, o.Now = t.TempDir(), func() string { return "2026-09-14T10:00:00Z" }
	o.Keep = func(s form.Submission) error { kept[s.Form.Student.ID] = s; return nil }
	room, err := lab.NewRoom(b, o)
	if err != nil {
		t.Fatal(err)
	}
	l, err := NewLab(LabOptions{Room: room, Station: station})
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() {
		if err := l.Close(); err != nil {
			t.Error(err)
		}
	})
	return l, kept
}

// labStations are the screen in every step, one after the other; look is called
// at each.
func labStations(t *testing.T, w, h float64, set Settings, look func(station)) {
	t.Helper()
	for _, o := range []lab.Options{{}, {Roster: labClass(60)}} {
		l, _ := labScene(t, o, "")
		l.Choose(set)
		asGuest(l)
		d := drive{w, h, l}
		d.wait()
		show := func(name string) { look(station{fmt.Sprintf("lab, roster of %d, %s", len(o.Roster), name), l}) }
		show("who")
		for i := range 3 {
			if d.s.Description().Find(idPanelMore) != nil {
				d.act(idPanelMore)
				show(fmt.Sprintf("who, page %d", i+2))
			}
		}
		d.act(idKeypad)
		show("who, keys")
		d.act(idKeypad)
		d.write("tf99zz no such student")
		d.act(idPrimary)
		show("stranger")
		d.write("tf03")
		d.act(idPrimary)
		show("where")
		d.act(idQuestion + 2)
		show("station")
		d.act(idKeypad)
		show("station, keypad")
		d.act(idKeypad)
		for _, text := range []string{"040/30 NE", "298/12", "299/14", "028/12", "118/78", "035/30", "035/30"} {
			d.write(text)
			d.act(idPrimary)
			show("after " + text)
		}
		d.act(idUndo)
		show("taken back")
		d.act(idOverview)
		show("where, with readings")
	}
}

func labFind(t *testing.T, l *Lab, id describe.ID) describe.Node {
	t.Helper()
	n := l.Description().Find(id)
	if n == nil {
		t.Fatalf("there is no control %d in\n%s", id, treeWords(l.Description()))
	}
	return *n
}

func treeWords(t *describe.Tree) string {
	var b strings.Builder
	visit(&t.Root, func(n *describe.Node) { fmt.Fprintf(&b, "%d %s\n", n.ID, n.Say()) })
	return b.String()
}

func typeIn(d drive, text string) {
	for _, r := range text {
		d.frame(input.Frame{Ticks: 2, Presses: []input.Press{{Rune: r}}})
	}
	d.key(input.Enter)
}

// TestLabByKeyboard takes two students through two stations with nothing but
// keys.
func TestLabByKeyboard(t *testing.T) {
	l, kept := labScene(t, lab.Options{Roster: labClass(30)}, "")
	d := drive{1280, 720, l}
	d.wait()
	typeIn(d, "tf07")
	if n := labFind(t, l, idTitle); n.Name != "Which station?" {
		t.Fatalf("got %q", n.Name)
	}
	d.key(input.Right) // from station A to B
	d.key(input.Enter)
	typeIn(d, "082/64 N")
	if said := labFind(t, l, idVerdict).Name; !strings.Contains(said, "understood as strike 262°") || !strings.Contains(said, "Right: ") {
		t.Errorf("said %q", said)
	}
	typeIn(d, "082/64 NE")
	if said := labFind(t, l, idVerdict).Name; !strings.HasPrefix(said, "Not kept") {
		t.Errorf("said %q", said)
	}
	d.key(input.PageDown)
	if n := labFind(t, l, idTitle); n.Name != "Who reads?" || l.Description().Focus != idNotebook || labFind(t, l, idNotebook).Value != "" {
		t.Errorf("the next student finds %q with %q", n.Name, labFind(t, l, idNotebook).Value)
	}
	if n := l.Description().Find(idVerdict); n != nil && n.Name != "" {
		t.Errorf("the next student reads %q", n.Name)
	}
	typeIn(d, "bo ostby")
	d.key(input.Enter)
	typeIn(d, "035/30")
	d.frame(input.Frame{Presses: []input.Press{{Rune: 'z', Mods: input.Ctrl}}})
	if got := kept["tf02"].Answers[0].Texts; len(got) != 0 {
		t.Errorf("Ctrl Z left %v", got)
	}
	if got := kept["tf07"].Answers[1].Texts; len(got) != 1 || got[0] != "082/64 N" {
		t.Errorf("kept %v", got)
	}
}

// TestLabStationByTyping chooses a station as a student is chosen: by its first
// signs, with what was typed to be seen.
func TestLabStationByTyping(t *testing.T) {
	l, kept := labScene(t, lab.Options{Roster: labClass(3)}, "", `"B"`, `"W2"`, `"C"`, `"W10"`)
	d := drive{1280, 720, l}
	d.wait()
	typeIn(d, "tf01")
	for _, r := range "w" {
		d.frame(input.Frame{Ticks: 2, Presses: []input.Press{{Rune: r}}})
	}
	if got := labFind(t, l, idNotebook); got.Value != "w" || l.Description().Focus != idNotebook {
		t.Fatalf("typed w: the field %q has %q, the focus is at %d", got.Name, got.Value, l.Description().Focus)
	}
	if l.Description().Find(idQuestion) != nil || l.Description().Find(idQuestion+1) == nil || l.Description().Find(idQuestion+2) == nil {
		t.Errorf("typed w: want the two stations of the west\n%s", treeWords(l.Description()))
	}
	d.key(input.Enter)
	if said := labFind(t, l, idVerdict).Name; !strings.Contains(said, "W2, W10") {
		t.Errorf("w may be two: said %q", said)
	}
	d.key(input.Escape)
	if labFind(t, l, idNotebook).Value != "" || labFind(t, l, idTitle).Name != "Which station?" {
		t.Errorf("Escape left %q", labFind(t, l, idNotebook).Value)
	}
	typeIn(d, "Q")
	if said := labFind(t, l, idVerdict).Name; !strings.Contains(said, "no such station") || !strings.Contains(said, "A, W2, W10") {
		t.Errorf("Q is none: said %q", said)
	}
	d.key(input.Backspace)
	typeIn(d, "w1")
	if n := labFind(t, l, idTitle); n.Name != "Station W10" {
		t.Fatalf("got %q", n.Name)
	}
	typeIn(d, "120/13")
	if got := kept["tf01"].Answers[2].Texts; len(got) != 1 {
		t.Errorf("kept %v", got)
	}
	d.act(idOverview)
	typeIn(d, "")
	if n := labFind(t, l, idTitle); n.Name != "Station A" {
		t.Errorf("Enter alone takes the station in focus: got %q", n.Name)
	}
}

// TestLabByPointer does the same with nothing but a pointer, on a phone.
func TestLabByPointer(t *testing.T) {
	for _, roster := range [][]form.Student{nil, labClass(3)} {
		l, kept := labScene(t, lab.Options{Roster: roster}, "C")
		d := drive{390, 844, l}
		d.wait()
		click := func(name string) {
			t.Helper()
			var at *describe.Node
			visit(&l.Description().Root, func(n *describe.Node) {
				if n.Name == name && n.Focusable {
					at = n
				}
			})
			if at == nil {
				t.Fatalf("there is no %q in\n%s", name, treeWords(l.Description()))
			}
			x, y := at.Bounds.X+at.Bounds.W/2, at.Bounds.Y+at.Bounds.H/2
			d.frame(input.Frame{Ticks: 2, Pointers: []input.Pointer{{Kind: input.PointerDown, X: x, Y: y, Touch: true}}})
		}
		id := "tf02"
		if roster == nil {
			id = "b2"
			click("Write with buttons, 123")
			click("b")
			click("2")
			click("Go on")
		} else {
			click("tf02 Bo Ostby")
		}
		click("Write with buttons, 123")
		for _, sign := range []string{"1", "2", "0", "Slash", "1", "3"} {
			click(sign)
		}
		click("Keep reading")
		if got := kept[id].Answers; len(got) != 3 || len(got[2].Texts) != 1 || got[2].Texts[0] != "120/13" {
			t.Errorf("kept %v", got)
		}
		if l.Description().Find(idOverview) != nil {
			t.Error("a screen beside one station offers another")
		}
		click("Next student: you have finished here")
		if n := labFind(t, l, idTitle); n.Name != "Who reads?" {
			t.Errorf("got %q", n.Name)
		}
	}
}

// TestLabByOneSwitch takes a student through a station with one switch.
func TestLabByOneSwitch(t *testing.T) {
	l, kept := labScene(t, lab.Options{Roster: labClass(2)}, "A")
	set := Settings{Scan: ScanItself, Pace: PaceQuick}
	l.Choose(set)
	s := NewSwitched(l)
	d := drive{1280, 720, s}
	d.wait()
	press := func(id describe.ID) {
		t.Helper()
		for range 4000 {
			p := s.scan.at()
			if p.id == id || p.sub != nil && find(p.sub, id, nil) != nil {
				d.key(input.Space)
				if p.id == id {
					return
				}
				continue
			}
			d.frame(input.Frame{Ticks: 60})
		}
		t.Fatalf("the mark never comes to %d in\n%s", id, treeWords(l.Description()))
	}
	press(idStudent + 1)
	press(idKeypad)
	for _, sign := range []string{"0", "3", "5", "/", "3", "0"} {
		for n := range 19 {
			if padSign(n) == sign {
				press(idPadKey + describe.ID(n))
			}
		}
	}
	press(idPrimary)
	if got := kept["tf02"].Answers; len(got) == 0 || len(got[0].Texts) != 1 || got[0].Texts[0] != "035/30" {
		t.Errorf("kept %v", got)
	}
}

// TestLabWithholds says nothing of right or wrong where the room does not.
func TestLabWithholds(t *testing.T) {
	l, _ := labScene(t, lab.Options{Withhold: true}, "A")
	d := drive{1280, 720, l}
	d.wait()
	typeIn(d, "a17")
	for _, text := range []string{"215/30", "035/30"} {
		typeIn(d, text)
		said := treeWords(l.Description())
		for _, tell := range []string{"Right: ", "is off", "Probably", "other end of the strike"} {
			if strings.Contains(said, tell) {
				t.Errorf("after %s it says %q", text, tell)
			}
		}
		if !strings.Contains(said, "told after the marking") {
			t.Errorf("after %s it does not say when right or wrong is told", text)
		}
	}
}

// TestLabTakesCare shows the cautions before anyone touches a slab.
func TestLabTakesCare(t *testing.T) {
	l, _ := labScene(t, lab.Options{}, "")
	drive{1280, 720, l}.wait()
	said := treeWords(l.Description())
	for _, want := range []string{"wo people lift", "closed shoes", "licensed practitioner"} {
		if !strings.Contains(said, want) {
			t.Errorf("no %q in\n%s", want, said)
		}
	}
}

// TestLabSettings keeps what is chosen, and draws in every theme.
func TestLabSettings(t *testing.T) {
	l, _ := labScene(t, lab.Options{}, "")
	var stored Settings
	l.store = func(s Settings) { stored = s }
	l.Choose(Settings{Theme: theme.Dark, Text: Text150})
	if l.Settings() != stored || stored.Theme != theme.Dark {
		t.Errorf("stored %+v, in force %+v", stored, l.Settings())
	}
	l.Choose(Settings{Text: 99})
	if l.Settings() != stored {
		t.Errorf("took impossible settings %+v", l.Settings())
	}
	left := false
	l.Leaves(func() { left = true })
	d := drive{1280, 720, l}
	d.wait()
	if d.act(idHall); !left {
		t.Error("there is no way back to the hall")
	}
	if _, err := NewLab(LabOptions{Room: l.room, Station: "Q"}); err == nil {
		t.Error("a screen stands at a station that is not there")
	}
}

// A name in letters that the screen has none for is cut there, without a box,
// and whole in the description.
func TestLabNamesWithoutLetters(t *testing.T) {
	l, _ := labScene(t, lab.Options{Roster: []form.Student{{ID: "b07", Name: "王小明", ExtraTime: 1}}}, "")
	d := drive{1280, 720, l}
	d.wait()
	for _, step := range []string{"who", "where"} {
		if text := treeWords(l.Description()); !strings.Contains(text, "王小明") {
			t.Errorf("%s: the description has not the whole name: %q", step, text)
		}
		words := drawnWords(l)
		if signs := draw.Unprinted(words); len(signs) > 0 || !strings.Contains(words, "b07") {
			t.Errorf("%s: got %q with signs that have no letters: %q", step, words, signs)
		}
		d.write("b07")
		d.act(idPrimary)
	}
}

// drawnWords is every text on the screen.
func drawnWords(l *Lab) string {
	var b strings.Builder
	for _, z := range l.screen.zones {
		for _, w := range z.widgets {
			b.WriteString(w.text + "\n")
		}
	}
	return b.String()
}
