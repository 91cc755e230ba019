package main

import (
	"bytes"
	"fmt"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"cuesta/scenes/draw/pdf"
	"cuesta/scenes/lesson"
	"cuesta/scenes/spoken/telling"
)

// listener follows a lesson by its words alone.
type listener struct {
	t    *testing.T
	s    *telling.Telling
	p    *lesson.Player
	out  bytes.Buffer
	said string // the last reply
	used int
}

func listen(t *testing.T, name string) *listener {
	t.Helper()
	l, ok := lesson.Named(name)
	if !ok {
		t.Fatalf("there is no lesson %s", name)
	}
	p, err := lesson.NewPlayer(l)
	if err != nil {
		t.Fatal(err)
	}
	h := &listener{t: t, p: p}
	h.s = telling.New(p, telling.Options{Out: &h.out, Remarks: &h.out, Painter: picture})
	h.s.Welcome()
	h.said = h.out.String()
	return h
}

// types gives a line and takes in the reply.
func (h *listener) types(format string, a ...any) string {
	h.t.Helper()
	h.out.Reset()
	h.s.Line(fmt.Sprintf(format, a...))
	if err := h.s.Err(); err != nil {
		h.t.Fatal(err)
	}
	if h.used++; h.used > 300 {
		h.t.Fatal("no end after 300 lines")
	}
	h.said = h.out.String()
	return h.said
}

// number is the first one that a pattern finds in what was said.
func (h *listener) number(pattern string) float64 {
	h.t.Helper()
	m := regexp.MustCompile(pattern).FindStringSubmatch(h.said)
	if m == nil {
		h.t.Fatalf("no %s in %q", pattern, h.said)
	}
	x, err := strconv.ParseFloat(m[1], 64)
	if err != nil {
		h.t.Fatal(err)
	}
	return x
}

// goesOnTo follows the lesson until it says so.
func (h *listener) goesOnTo(words string) {
	h.t.Helper()
	for !strings.Contains(h.said, words) {
		if before := h.said; h.types("next") == before {
			h.t.Fatalf("the lesson never says %q", words)
		}
	}
}

// Someone who hears the lesson on the two readings, and no more, reads both
// numbers off where the lesson asks for them, and they are right.
func TestReadingAlongByWords(t *testing.T) {
	h := listen(t, "two-readings")
	h.goesOnTo("Read the dial")
	h.types("read")
	strike := h.number(`north end stands at (\d+)`)
	h.goesOnTo("Read the degree scale")
	h.types("read")
	dip := h.number(`index stands at (\d+) on the degree scale`)
	if got := h.types("note %03.0f/%02.0f", strike, dip); !strings.Contains(got, "Right: strike and dip") {
		t.Errorf("%03.0f/%02.0f: %s", strike, dip, got)
	}
}

// off is how far the bubble was said to stand towards the one side, in radii of
// the ring; negative towards the other.
func (h *listener) off(plus, minus string) float64 {
	side := h.number(`([\d.]+) (?:` + plus + `|` + minus + `)`)
	if strings.Contains(h.said, fmt.Sprintf("%.2f %s", side, minus)) {
		return -side
	}
	return side
}

// The same listener takes the plate in hand where the lesson seats it, levels it
// by the words on the bubble, and measures on: the lesson goes on undisturbed.
func TestMeasuringAlongByWords(t *testing.T) {
	h := listen(t, "two-readings")
	h.goesOnTo("bubble of the round level say?")
	step := 4.0 // degrees of turn for a ring's radius
	for h.types("bubble"); !strings.Contains(h.said, "inside the ring") || strings.Contains(h.said, "not inside"); h.types("bubble") {
		if x := h.off("right", "left"); math.Abs(x) > .1 {
			h.types("roll %.1f", x*step) // what is on the high side comes down
			h.types("wait 1")
			h.types("bubble")
		}
		h.types("swing %.1f", h.off("forward", "back")*step)
		h.types("wait 1")
		step = max(.3, step*.9)
	}
	h.types("tap")
	h.types("wait 10")
	h.types("read")
	strike := h.number(`north end stands at (\d+)`)
	h.types("seat side")
	h.types("swing 90")
	for turn := 8.0; !strings.Contains(h.types("wait 2"), "bubble between the marks"); {
		if strings.Contains(h.said, "towards the index") {
			turn = -math.Abs(turn) * .7
		} else if turn < 0 {
			turn = math.Abs(turn) * .7
		}
		h.types("arm %.1f", turn)
	}
	h.types("read")
	dip := h.number(`index stands at (\d+) on the degree scale`)
	if got := h.types("note %03.0f/%02.0f", strike, dip); !strings.Contains(got, "Right: strike and dip") {
		t.Errorf("%03.0f/%02.0f: %s", strike, dip, got)
	}
	if got := h.types("return"); !strings.Contains(got, "bubble of the round level say?") {
		t.Errorf("after return: %q", got)
	}
	if got := h.types(""); !strings.HasPrefix(got, "6 of ") {
		t.Errorf("after return and Enter: %q", got)
	}
}

// Every step of every lesson says something new, forwards and backwards, and
// every question has its answer.
func TestEveryStepSaysSomething(t *testing.T) {
	for _, l := range lesson.Shipped() {
		h := listen(t, l.Name)
		for i := range l.Steps {
			if !strings.Contains(h.said, fmt.Sprintf("%d of %d. %s", i+1, len(l.Steps), h.p.Line())) {
				t.Fatalf("%s, step %d: %q", l.Name, i+1, h.said)
			}
			if l.Steps[i].Ask != "" {
				if got := h.types("reveal"); !strings.HasPrefix(got, l.Steps[i].Answer) {
					t.Errorf("%s, step %d: revealed %q", l.Name, i+1, got)
				}
			}
			if got := h.types("notes"); len(got) < 40 {
				t.Errorf("%s, step %d: notes %q", l.Name, i+1, got)
			}
			h.types("next")
		}
		if !strings.Contains(h.said, "That was the last step") {
			t.Errorf("%s ends with %q", l.Name, h.said)
		}
		for i := len(l.Steps) - 1; i > 0; i-- {
			if got := h.types("back"); !strings.HasPrefix(got, fmt.Sprintf("%d of ", i)) {
				t.Fatalf("%s: back from %d says %q", l.Name, i+1, got)
			}
		}
		h.types("back")
		if !strings.Contains(h.said, "This is the first step") {
			t.Errorf("%s begins with %q", l.Name, h.said)
		}
	}
}

// The notes to every lesson can be read by poppler, which is no kin of the
// library that writes them: a heading a step, its answer and its notes. The
// script prints notes with pictures.
func TestNotesOfShipped(t *testing.T) {
	file := filepath.Join(t.TempDir(), "notes.pdf")
	for _, l := range lesson.Shipped() {
		for _, sheet := range []pdf.Size{pdf.A4, pdf.Letter} {
			raw, err := notesOf(l, make([]stepPicture, len(l.Steps)), sheet)
			if err != nil {
				t.Fatal(err)
			}
			if got := bytes.Count(raw, []byte("/S /H2 ")); got != len(l.Steps) {
				t.Errorf("%s: %d headings of steps, want %d", l.Name, got, len(l.Steps))
			}
			if err := os.WriteFile(file, raw, 0o644); err != nil {
				t.Fatal(err)
			}
			text, err := exec.Command("pdftotext", file, "-").Output()
			if err != nil {
				t.Fatalf("%v (pdftotext comes with the package poppler-utils; go run ./cmd/dev test installs it)", err)
			}
			flat := oneLine(string(text))
			for i, s := range l.Steps {
				for _, want := range []string{fmt.Sprintf("%d. %s", i+1, lineOf(s)), s.Answer, oneLine(s.Notes)} {
					if !strings.Contains(flat, want) {
						t.Errorf("%s, step %d: the notes lack %q", l.Name, i+1, want)
					}
				}
			}
		}
	}
}

// The pictures are those of the steps: where a thing appears, the picture
// changes, and the words in its stead tell of it.
func TestPicturesOfSteps(t *testing.T) {
	l, err := lesson.Parse("two", []byte("title = \"a\"\nplane = \"035/30\"\n[[step]]\nask = \"One?\"\nanswer = \"Two.\"\n[[step]]\nsay = \"Two.\"\nshow = [\"water\"]\n"))
	if err != nil {
		t.Fatal(err)
	}
	got, err := picturesOf(l)
	if err != nil {
		t.Fatal(err)
	}
	if len(got) != 2 || strings.Contains(got[0].words, "water") || !strings.Contains(got[1].words, "water") {
		t.Fatalf("the words are %q and %q", got[0].words, got[1].words)
	}
	blue := func(p stepPicture) int { // signs of water: pixels that are bluer than rock and paper
		n := 0
		for y := range stepHeight {
			for x := range stepWidth {
				if r, _, b, _ := p.image.At(x, y).RGBA(); b > r+0x2000 {
					n++
				}
			}
		}
		return n
	}
	if before, after := blue(got[0]), blue(got[1]); before > 200 || after < 2000 {
		t.Errorf("%d blue pixels before the water, %d after", before, after)
	}
}

// Whatever is typed, a lesson goes on or says why not.
func FuzzLessonLines(f *testing.F) {
	for _, s := range []string{"", "next", "go 3", "go -1", "go", "back", "reveal", "look", "notes", "return", "swing 5", "read", "note 035/30", "help swing", "ring 4E", "quit", "wait 9", "\x00", "go 99999999999999999999", "seat side", "arm 400"} {
		f.Add(s, "next")
	}
	l, err := lesson.Parse("two", []byte("title = \"a\"\nplane = \"035/30\"\n[[step]]\nask = \"One?\"\nanswer = \"Two.\"\n[[step]]\nsay = \"Two.\"\nshow = [\"water\"]\n"))
	if err != nil {
		f.Fatal(err)
	}
	f.Fuzz(func(t *testing.T, first, second string) {
		if strings.Contains(strings.ToLower(first+second), "picture") {
			return // it would write files
		}
		p, err := lesson.NewPlayer(l)
		if err != nil {
			t.Fatal(err)
		}
		var out bytes.Buffer
		s := telling.New(p, telling.Options{Out: &out, Remarks: &out, Painter: picture})
		if err := give(s, strings.NewReader(first+"\n"+second+"\nreturn\ngo 1\n")); err != nil {
			t.Fatal(err)
		}
		if p.At() != 0 && !s.Ended() {
			t.Errorf("%q, %q: at step %d after go 1", first, second, p.At()+1)
		}
	})
}

func TestBrokenOutputOfLessons(t *testing.T) {
	for _, args := range [][]string{{"lesson"}, {"lesson", "--json"}, {"lesson", "--example"}, {"lesson", "right-hand"}, {"lesson", "right-hand", "--json"}} {
		var told bytes.Buffer
		if got := run(args, env{in: strings.NewReader("\n"), out: broken{}, err: &told}); got != failed {
			t.Errorf("%v: status %d, want %d", args, got, failed)
		}
		if !strings.Contains(told.String(), "the disk is full") {
			t.Errorf("%v: told %q", args, told.String())
		}
	}
}
