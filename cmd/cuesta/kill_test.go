package main

import (
	"bufio"
	"bytes"
	"fmt"
	"io"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"reflect"
	"strings"
	"sync"
	"testing"
	"time"

	"cuesta/quiz/form"
	"cuesta/quiz/sitting"
)

const killBlueprint = `title = "Kill test"
[[item]]
kind = "read-dial"
count = 8
attempts = 20
[[item]]
kind = "measure-slab"
attempts = 20
`

// killForm is a form of eight dials and a bench.
func killForm(t *testing.T) (form.Form, []byte) {
	t.Helper()
	b, err := form.ReadBlueprint(strings.NewReader(killBlueprint))
	if err != nil {
		t.Fatal(err)
	}
	d, err := form.Deal(b, []form.Student{{ID: "tf1", Name: "Ada Moss"}}, form.Options{Seed: 1})
	if err != nil {
		t.Fatal(err)
	}
	var text bytes.Buffer
	if err := d.Forms[0].Encode(&text); err != nil {
		t.Fatal(err)
	}
	return d.Forms[0], text.Bytes()
}

// script is what a student types, and what the form should hold after each
// line. The model is kept apart from the program: it knows lists of texts.
type script struct {
	lines  []string
	marks  []string // how the reply that confirms the line begins
	states []killState
}

type killState struct {
	position int
	texts    [9]string
	flags    [9]bool
	hints    [9]int
	swings   int
}

func typed(r *rand.Rand) script {
	var s script
	var now killState
	s.states = append(s.states, now)
	add := func(line, mark string) {
		s.lines, s.marks, s.states = append(s.lines, line), append(s.marks, mark), append(s.states, now)
	}
	for range 150 {
		at := now.position
		switch n := r.IntN(10); {
		case n < 3:
			now.position = r.IntN(9)
			add(fmt.Sprintf("go %d", now.position+1), fmt.Sprintf("Item %d of 9", now.position+1))
		case n < 4:
			now.flags[at] = !now.flags[at]
			add("flag", "Kept. Item")
		case n < 5 && now.hints[at] < 1:
			now.hints[at]++
			add("hint", "Kept. Hint")
		case n < 8 && strings.Count(now.texts[at], "|") < 20:
			text := fmt.Sprintf("%03d", r.IntN(360))
			if at == 8 {
				text += "/30"
			}
			if at < 8 && strings.HasSuffix("|"+now.texts[at], "|"+text+"|") { // the same is no other answer
				add("answer "+text, fmt.Sprintf("Item %d is answered", at+1))
				break
			}
			now.texts[at] += text + "|"
			add("answer "+text, "Kept. Item")
		case at == 8:
			now.swings++
			add("swing 1", "Swung 1")
		}
	}
	return s
}

// stateOf is the state of a sitting, as the model has it.
func stateOf(s *sitting.Sitting) killState {
	k := killState{position: s.Position()}
	for i := range k.texts {
		a := s.Answer(i)
		for _, text := range a.Texts {
			k.texts[i] += text + "|"
		}
		k.flags[i], k.hints[i] = a.Flagged, a.Hints
		k.swings += strings.Count(a.Recording, `"do":"swing"`)
	}
	return k
}

// confirmed counts the lines whose confirmation stands in the output.
func (s script) confirmed(out []byte) int {
	n := 0
	lines := bufio.NewScanner(bytes.NewReader(out))
	for seen := 0; lines.Scan(); {
		text := lines.Text()
		if strings.HasPrefix(text, "Item ") && seen == 0 {
			seen++ // the item shown before anything is typed
			continue
		}
		if seen > 0 && n < len(s.marks) && strings.HasPrefix(text, s.marks[n]) {
			n++
		}
	}
	return n
}

// TestKilledAtAnyMoment kills the program 200 times while it takes entries.
// Every entry that was confirmed must be there afterwards, and nothing else but
// the one that was being taken.
func TestKilledAtAnyMoment(t *testing.T) {
	f, text := killForm(t)
	program := built(t)
	const kills, workers = 200, 12
	var wait sync.WaitGroup
	var mutex sync.Mutex
	total := 0
	for w := range workers {
		wait.Go(func() {
			for i := w; i < kills; i += workers {
				n := killOnce(t, program, f, text, uint64(i))
				mutex.Lock()
				total += n
				mutex.Unlock()
			}
		})
	}
	wait.Wait()
	if total < kills {
		t.Errorf("only %d entries were confirmed in %d runs: the kills came too early to show anything", total, kills)
	}
	t.Logf("%d entries were confirmed and found again", total)
}

// built is the program as people run it. The race detector, under which these
// tests may run, would make each of its starts several times slower.
func built(t *testing.T) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), "cuesta-take.exe")
	if out, err := exec.Command("go", "build", "-o", path, ".").CombinedOutput(); err != nil {
		t.Fatalf("%v: %s", err, out)
	}
	return path
}

func killOnce(t *testing.T, program string, f form.Form, text []byte, seed uint64) int {
	r := rand.New(rand.NewPCG(seed, 1))
	s := typed(r)
	dir, err := os.MkdirTemp(t.TempDir(), "")
	if err != nil {
		t.Error(err)
		return 0
	}
	path := filepath.Join(dir, "tf1.form.json")
	if err := os.WriteFile(path, text, 0o600); err != nil {
		t.Error(err)
		return 0
	}
	out := outputUntilKilled(t, exec.Command(program, "take", path), strings.Join(s.lines, "\n")+"\n", time.Duration(r.IntN(40_000))*time.Microsecond)
	n := s.confirmed(out)
	if _, err := os.Stat(filepath.Join(dir, "tf1"+sitting.Ending)); err != nil {
		if n > 0 {
			t.Errorf("run %d: %d entries confirmed, but no journal: %v", seed, n, err)
		}
		return n
	}
	j, err := sitting.Open(filepath.Join(dir, "tf1"+sitting.Ending), f, "")
	if err != nil {
		t.Errorf("run %d: %v", seed, err)
		return n
	}
	defer j.Close()
	got := stateOf(j.Sitting)
	next := min(n+1, len(s.states)-1)
	if !reflect.DeepEqual(got, s.states[n]) && !reflect.DeepEqual(got, s.states[next]) {
		t.Errorf("run %d: after %d confirmed entries got %+v, want %+v or %+v", seed, n, got, s.states[n], s.states[next])
	}
	return n
}

// outputUntilKilled runs the program, kills it a while after its first word,
// and gives all it wrote.
func outputUntilKilled(t *testing.T, c *exec.Cmd, lines string, after time.Duration) []byte {
	in, err1 := c.StdinPipe()
	out, err2 := c.StdoutPipe()
	if err1 != nil || err2 != nil || c.Start() != nil {
		t.Error("the program cannot be started")
		return nil
	}
	go func() {
		io.WriteString(in, lines) // ends with an error when the program is killed
	}()
	first := make([]byte, 1)
	if _, err := io.ReadFull(out, first); err != nil {
		t.Errorf("it said nothing: %v", err)
	}
	timer := time.AfterFunc(after, func() { c.Process.Kill() })
	defer timer.Stop()
	rest, err := io.ReadAll(out)
	if err != nil {
		t.Error(err)
	}
	in.Close()
	c.Wait() // the kill is no news
	return append(first, rest...)
}
