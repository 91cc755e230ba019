package scenes

import (
	"strings"
	"testing"

	"cuesta/orient"
	"cuesta/scenes/input"
)

// undone is Ctrl Z.
var undone = input.Press{Rune: 'z', Mods: input.Ctrl}

func benchWriting(t *testing.T, text string, n orient.Notation) (*Bench, drive) {
	t.Helper()
	plane := orient.PlaneOf(120*orient.Degree, 30*orient.Degree)
	b, err := NewBench(BenchOptions{Seed: 7, Plane: &plane})
	if err != nil {
		t.Fatal(err)
	}
	b.Choose(Settings{Notation: n})
	d := drive{1280, 720, b}
	d.wait()
	d.write(text)
	return b, d
}

// A plane in the notebook stays the same plane when the notation changes; the
// written forms of one plane are those of the table in orient/doc.go.
func TestThePlaneStaysWhenTheNotationChanges(t *testing.T) {
	tests := []struct {
		text     string
		from, to orient.Notation
		want     string
		told     string
	}{
		{"120/30", orient.AzimuthDip, orient.DirectionDip, "210/30", "Rewritten as 210/30"},
		{"120/30", orient.AzimuthDip, orient.Quadrant, "N60W 30SW", "Rewritten as N60W 30SW"},
		{"120/30", orient.DirectionDip, orient.AzimuthDip, "030/30", "Rewritten as 030/30"},
		{"n60w 30sw", orient.Quadrant, orient.DirectionDip, "210/30", "Rewritten as 210/30"},
		{"N60W 30SW", orient.AzimuthDip, orient.Quadrant, "N60W 30SW", ""}, // is in it already
		{"horizontal", orient.AzimuthDip, orient.DirectionDip, "horizontal", ""},
		{"120/", orient.AzimuthDip, orient.DirectionDip, "120/", "120/ stays as it is and is read as a dip direction now"},
		{"120/", orient.DirectionDip, orient.AzimuthDip, "120/", "120/ stays as it is and is read as a strike now"},
		{"", orient.AzimuthDip, orient.DirectionDip, "", ""},
	}
	for _, tt := range tests {
		b, d := benchWriting(t, tt.text, tt.from)
		before, err := orient.Parse(tt.text, tt.from)
		b.notice = ""
		set := b.Settings()
		set.Notation = tt.to
		b.Choose(set)
		d.wait()
		if b.text != tt.want || !strings.HasPrefix(b.notice, tt.told) || (tt.told == "") != (b.notice == "") {
			t.Errorf("%q from %v to %v: %q, told %q; want %q, told %q", tt.text, tt.from, tt.to, b.text, b.notice, tt.want, tt.told)
		}
		after, _ := orient.Parse(b.text, tt.to)
		if err == nil && after.Plane != before.Plane {
			t.Errorf("%q from %v to %v is another plane: %v, was %v", tt.text, tt.from, tt.to, after.Plane, before.Plane)
		}
	}
}

// Undo, and the former notation chosen again, bring back what stood there with
// the notation in which it was written.
func TestUndoBringsTheOldNotationBack(t *testing.T) {
	ways := map[string]func(*Bench, drive){
		"undo": func(_ *Bench, d drive) { d.frame(input.Frame{Ticks: 2, Presses: []input.Press{undone}}) },
		"the setting": func(b *Bench, d drive) {
			s := b.Settings()
			s.Notation = orient.AzimuthDip
			b.Choose(s)
		},
	}
	for name, back := range ways {
		b, d := benchWriting(t, "120 - 30", orient.AzimuthDip)
		s := b.Settings()
		s.Notation = orient.DirectionDip
		b.Choose(s)
		d.wait()
		back(b, d)
		d.wait()
		if b.text != "120 - 30" || b.set.Notation != orient.AzimuthDip || b.ses.Options().Notation != orient.AzimuthDip {
			t.Errorf("%s: %q in notation %v, judged in %v; want what stood there before", name, b.text, b.set.Notation, b.ses.Options().Notation)
		}
		if !strings.Contains(b.notice, "120 - 30") {
			t.Errorf("%s: told %q", name, b.notice)
		}
	}
}

// What is undone first is what was done last.
func TestUndoTakesWritingBackBeforeTheNotation(t *testing.T) {
	b, d := benchWriting(t, "120/30", orient.AzimuthDip)
	s := b.Settings()
	s.Notation = orient.DirectionDip
	b.Choose(s)
	d.wait()
	d.write("211/30")
	want := []struct {
		text string
		in   orient.Notation
	}{{"210/30", orient.DirectionDip}, {"120/30", orient.AzimuthDip}, {"", orient.AzimuthDip}}
	for _, w := range want {
		d.frame(input.Frame{Ticks: 2, Presses: []input.Press{undone}})
		if b.text != w.text || b.set.Notation != w.in {
			t.Errorf("%q in notation %v, want %q in %v", b.text, b.set.Notation, w.text, w.in)
		}
	}
}

// What has been judged is told in the new notation, as the plane it was.
func TestAJudgedPlaneStaysWhenTheNotationChanges(t *testing.T) {
	b, d := benchWriting(t, "120/30", orient.AzimuthDip)
	d.act(idPrimary)
	if b.phase != judged {
		d.act(idPrimary)
	}
	s := b.Settings()
	s.Notation = orient.DirectionDip
	b.Choose(s)
	d.wait()
	if b.phase != judged || b.text != "210/30" || b.entryPlane() != b.answer {
		t.Errorf("phase %v, %q; want 210/30 judged", b.phase, b.text)
	}
}
