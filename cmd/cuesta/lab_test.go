package main

import (
	"bufio"
	"bytes"
	"encoding/json"
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
	"cuesta/quiz/lab"
	"cuesta/quiz/sitting"
)

// labScript is what a class types, and what the readings should be after each
// line. The model knows lists of texts and nothing of journals.
type labScript struct {
	lines  []string
	states []map[string]string // readings by student and station
}

func typedInALab(r *rand.Rand) labScript {
	type deed struct{ student, station int }
	var s labScript
	now := map[[2]int][]string{}
	past := map[int][]deed{}
	keep := func(line string) {
		state := map[string]string{}
		for at, texts := range now {
			if len(texts) > 0 {
				state[fmt.Sprintf("s%d %c", at[0], 'A'+at[1])] = strings.Join(texts, "|")
			}
		}
		s.lines, s.states = append(s.lines, line), append(s.states, state)
	}
	keep("")
	for range 120 {
		who, where := r.IntN(4), r.IntN(3)
		at := [2]int{who, where}
		if len(now[at]) == 5 || len(past[who]) > 0 && r.IntN(6) == 0 {
			if len(past[who]) == 0 {
				continue
			}
			last := past[who][len(past[who])-1]
			past[who] = past[who][:len(past[who])-1]
			from := [2]int{last.student, last.station}
			now[from] = now[from][:len(now[from])-1]
			keep(fmt.Sprintf("student s%d\nundo", who))
			continue
		}
		text := fmt.Sprintf("%03d/%02d", r.IntN(360), 10+r.IntN(70))
		now[at] = append(now[at][:len(now[at]):len(now[at])], text)
		past[who] = append(past[who], deed{who, where})
		keep(fmt.Sprintf("s%d %c %s", who, 'A'+where, text))
	}
	return s
}

// labState is what the folder holds. Each submission must be there and be of
// the journal, or of the journal without its last entry.
func labState(t *testing.T, dir string, b form.Blueprint) map[string]string {
	t.Helper()
	state := map[string]string{}
	paths, err := filepath.Glob(filepath.Join(dir, "*"+sitting.Ending))
	if err != nil {
		t.Fatal(err)
	}
	for _, path := range paths {
		id := strings.TrimSuffix(filepath.Base(path), sitting.Ending)
		f, err := b.Fixed(form.Student{ID: id})
		if err != nil {
			t.Fatal(err)
		}
		j, err := sitting.Open(path, f, "")
		if err != nil {
			t.Error(err)
			continue
		}
		for i := range j.Len() {
			if texts := j.Answer(i).Texts; len(texts) > 0 {
				state[fmt.Sprintf("%s %c", id, 'A'+i)] = strings.Join(texts, "|")
			}
		}
		if err := j.Close(); err != nil {
			t.Error(err)
		}
	}
	return state
}

// TestLabKilledAtAnyMoment kills the program 60 times while a class types.
// Every reading that was confirmed must be there afterwards, and nothing else
// but the one that was being taken; the next start hands it on.
func TestLabKilledAtAnyMoment(t *testing.T) {
	program := built(t)
	file := filepath.Join(t.TempDir(), "stations.toml")
	if err := os.WriteFile(file, []byte(lab.Example()), 0o600); err != nil {
		t.Fatal(err)
	}
	b, err := form.ReadStations(strings.NewReader(lab.Example()))
	if err != nil {
		t.Fatal(err)
	}
	const kills, workers = 60, 6
	var wait sync.WaitGroup
	var mutex sync.Mutex
	total := 0
	for w := range workers {
		dir := t.TempDir()
		wait.Go(func() {
			for i := w; i < kills; i += workers {
				n := killLabOnce(t, program, file, filepath.Join(dir, fmt.Sprint(i)), b, uint64(i))
				mutex.Lock()
				total += n
				mutex.Unlock()
			}
		})
	}
	wait.Wait()
	if total < kills {
		t.Errorf("only %d readings were confirmed in %d runs: the kills came too early to show anything", total, kills)
	}
	t.Logf("%d readings were confirmed and found again", total)
}

func killLabOnce(t *testing.T, program, file, dir string, b form.Blueprint, seed uint64) int {
	r := rand.New(rand.NewPCG(seed, 3))
	s := typedInALab(r)
	c := exec.Command(program, "lab", file, "--out", dir)
	out := killedAfter(t, c, strings.Join(s.lines[1:], "\n")+"\n", 1+r.IntN(6), time.Duration(r.IntN(20_000))*time.Microsecond)
	n := bytes.Count(out, []byte("\nKept. "))
	got := labState(t, dir, b)
	next := min(n+1, len(s.states)-1)
	if !reflect.DeepEqual(got, s.states[n]) && !reflect.DeepEqual(got, s.states[next]) {
		t.Errorf("run %d: after %d confirmed readings got %v, want %v or %v", seed, n, got, s.states[n], s.states[next])
	}
	if n == 0 || seed%10 != 0 {
		return n
	}
	if text, err := exec.Command(program, "lab", file, "--out", dir).CombinedOutput(); err != nil {
		t.Errorf("run %d: it does not go on: %v: %s", seed, err, text)
	}
	for at, texts := range got {
		id, station, _ := strings.Cut(at, " ")
		f, err := os.Open(filepath.Join(dir, id+form.SubmissionEnding))
		if err != nil {
			t.Error(err)
			continue
		}
		sub, err := form.DecodeSubmission(f)
		f.Close()
		if err != nil || strings.Join(sub.Answers[station[0]-'A'].Texts, "|") != texts {
			t.Errorf("run %d: the submission of %s holds %v, %v, want %q at station %s", seed, id, sub.Answers, err, texts, station)
		}
	}
	return n
}

// killedAfter runs a program, kills it a while after a number of readings have
// been confirmed, however slow the machine, and gives all it wrote.
func killedAfter(t *testing.T, c *exec.Cmd, lines string, readings int, after time.Duration) []byte {
	in, err1 := c.StdinPipe()
	out, err2 := c.StdoutPipe()
	if err1 != nil || err2 != nil || c.Start() != nil {
		t.Error("the program cannot be started")
		return nil
	}
	go func() {
		io.WriteString(in, lines) // ends with an error when the program is killed
	}()
	var all bytes.Buffer
	from := bufio.NewReader(out)
	for n := 0; ; {
		line, err := from.ReadBytes('\n')
		all.Write(line)
		if err != nil {
			break
		}
		if !bytes.HasPrefix(line, []byte("Kept. ")) {
			continue
		}
		if n++; n == readings {
			defer time.AfterFunc(after, func() { c.Process.Kill() }).Stop()
		}
	}
	in.Close()
	c.Wait() // the kill is no news
	return all.Bytes()
}

// TestLabLines types lines and looks at who, where and what came of each.
func TestLabLines(t *testing.T) {
	dir := t.TempDir()
	file, roster := filepath.Join(dir, "stations.toml"), filepath.Join(dir, "roster.csv")
	for path, text := range map[string]string{file: lab.Example(), roster: "id,name\nA17,Ada Moss\n4711,Bo Fell\n"} {
		if err := os.WriteFile(path, []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	cases := []struct{ line, student, station, want string }{
		{"035/30", "", "", "Not kept: write who reads first"},
		{"list", "", "", "Nobody has read anything yet."},
		{"undo", "", "", "Not kept: write whose reading"},
		{"a17 035/30", "", "", "Not kept: write where too, such as A17 A 035/30."},
		{"a17", "A17", "", "Ada Moss (A17), no reading yet. Write station and its name."},
		{"035/30", "A17", "", "Not kept: write where first"},
		{"station Q", "A17", "", `Not kept: there is no such station: "Q"; the stations are A, B, C.`},
		{"station a", "A17", "A", "Station A, sandstone slab"},
		{"n35e 30 se", "A17", "A", "Kept. Ada Moss (A17), station A, reading 1 of 5"},
		{"35 30", "A17", "A", "Kept. Ada Moss (A17), station A, reading 2 of 5"},
		{"4711 b 262/64", "4711", "B", "Kept. Bo Fell (4711), station B, reading 1 of 5"},
		{"4711 082/64 N", "4711", "B", "Kept. Bo Fell (4711), station B, reading 2 of 5"},
		{"bo fell", "4711", "B", `Not kept: "bo" means nothing here`},
		{"student bo fell", "4711", "B", "Bo Fell (4711), 1 of 3 stations read. Station B."},
		{"A71 A 035/30", "4711", "B", `Not kept: there is no such student: "A71"; perhaps a17 was meant.`},
		{"a17 Z 035/30", "4711", "B", `Not kept: there is no such station: "Z"; the stations are A, B, C.`},
		{"040/30 NE", "4711", "B", "Not kept: NE was read, but a plane striking 040 dips SE or NW"},
		{"A17 C 118/95", "A17", "C", "Not kept: 95 was read as the dip; a dip lies from 0 to 90"},
		{"undo", "A17", "A", `Kept. The reading "35 30" of Ada Moss (A17) at station A is taken back; 4 readings may follow there.`},
		{"4711 C", "4711", "C", "Station C, limestone"},
		{"B 262/64", "4711", "B", "Kept. Bo Fell (4711), station B, reading 3 of 5"},
		{"a17 A", "A17", "A", "Station A, sandstone slab on a wedge, by the window. Measure the slab and write it as right-hand strike and dip. The declination of the place is set on the dial. The reading is missing: write it, such as 035/30, or all in one line, such as A17 A 035/30."},
		{"c", "A17", "C", "Station C, limestone block in the sand tray; read the bedding, not the joint. Measure the slab and write it as right-hand strike and dip. The declination of the place is set on the dial. The reading is missing: write it, such as 035/30, or all in one line, such as A17 C 035/30."},
		{"a", "A17", "A", "Station A, sandstone"},
		{"q", "A17", "A", `Not kept: "q" means nothing here`},
		{"next", "", "A", "Next, please"},
		{"student", "", "A", "Not kept: write a name behind student"},
		{"list", "", "A", "2 students with a reading:\n  Ada Moss (A17): 1 of 3 stations\n  Bo Fell (4711): 1 of 3 stations"},
		{"# a remark", "", "", ""},
		{"help", "", "A", "The lines:"},
	}
	var lines []string
	for _, c := range cases {
		lines = append(lines, c.line)
	}
	var out bytes.Buffer
	l := []string{"lab", file, "--roster", roster, "--out", filepath.Join(dir, "readings"), "--json"}
	if got := run(l, env{in: strings.NewReader(strings.Join(lines, "\r\n") + "\r\nquit\r\n"), out: &out, err: io.Discard}); got != done {
		t.Fatalf("status %d", got)
	}
	replies := json.NewDecoder(&out)
	var r labLine
	for range 3 { // the welcome
		if err := replies.Decode(&r); err != nil {
			t.Fatal(err)
		}
	}
	for _, c := range cases {
		if c.want == "" {
			continue
		}
		if strings.Count(c.line, " ") == 1 && strings.HasPrefix(c.want, "Station ") && !strings.HasPrefix(c.line, "station") { // it greets first
			if err := replies.Decode(&r); err != nil {
				t.Fatalf("%s: %v", c.line, err)
			}
		}
		r = labLine{}
		if err := replies.Decode(&r); err != nil {
			t.Fatalf("%s: %v", c.line, err)
		}
		if r.Student != c.student || r.Station != c.station || !strings.HasPrefix(r.Said, c.want) || r.OK == strings.HasPrefix(r.Said, "Not kept") {
			t.Errorf("%s: got %q at %q, %v %q; want %q at %q, %q", c.line, r.Student, r.Station, r.OK, r.Said, c.student, c.station, c.want)
		}
	}
}

// FuzzLabLines: no line makes the room fall over, and what is confirmed is kept.
func FuzzLabLines(f *testing.F) {
	for _, s := range []string{"a17 A 035/30", "student a\nstation B\n30→125", "a A 1/1\nundo\nlist", "student ../x\nb1\n\xff", "4 4 4 4", "station\nquit"} {
		f.Add(s)
	}
	b, err := form.ReadStations(strings.NewReader(lab.Example()))
	if err != nil {
		f.Fatal(err)
	}
	f.Fuzz(func(t *testing.T, text string) {
		dir := t.TempDir()
		room, err := lab.NewRoom(b, lab.Options{Folder: dir, Now: func() string { return "" }})
		if err != nil {
			t.Fatal(err)
		}
		var out bytes.Buffer
		p := &labTaking{room: room, out: &out, folder: dir}
		if err := p.run(strings.NewReader(text)); err != nil {
			t.Fatal(err)
		}
		if err := room.Close(); err != nil {
			t.Fatal(err)
		}
		readings := 0
		for _, texts := range labState(t, dir, b) {
			readings += 1 + strings.Count(texts, "|")
		}
		taken, back := strings.Count(out.String(), "Kept. ")-strings.Count(out.String(), "Kept. The reading"), strings.Count(out.String(), "Kept. The reading")
		if !strings.ContainsAny(text, "|K") && readings != taken-back {
			t.Fatalf("confirmed %d and took back %d, found %d", taken, back, readings)
		}
	})
}
