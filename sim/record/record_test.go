package record_test

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"cuesta/orient"
	"cuesta/sim"
	"cuesta/sim/record"
)

const deg = orient.Degree

// session is a short recording with one command of each kind.
func session(t testing.TB) record.Recording {
	t.Helper()
	r, err := record.Start(sim.Setup{Seed: 7, Plane: orient.PlaneOf(35*deg, 30*deg)})
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []sim.Command{
		{Kind: sim.Swing, Angle: -12.5 * deg},
		{Kind: sim.Roll, Angle: 7 * deg},
		{Kind: sim.Ring, Angle: 4 * deg},
		{Kind: sim.Tap},
		{Kind: sim.Lock},
		{Kind: sim.Free},
		{Kind: sim.Read},
		{Kind: sim.Place, Seat: sim.OnSide},
		{Kind: sim.Flip},
		{Kind: sim.Arm, Angle: 30 * deg},
		{Kind: sim.Idle},
		{Kind: sim.Note, Text: "035/30 <“”> \u2028 \"°\""},
	} {
		if err := r.Do(c); err != nil {
			t.Fatal(err)
		}
		r.Advance(90)
	}
	return r.Recording()
}

func written(t testing.TB, r record.Recording) string {
	t.Helper()
	var b strings.Builder
	if err := r.Write(&b); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

func TestRecordingComesBackBitForBit(t *testing.T) {
	want := session(t)
	got, err := record.Read(strings.NewReader(written(t, want)))
	if err != nil {
		t.Fatal(err)
	}
	if fmt.Sprintf("%#v", got) != fmt.Sprintf("%#v", want) {
		t.Errorf("got %#v\nwant %#v", got, want)
	}
	res, err := record.Replay(got)
	if err != nil || !res.Same {
		t.Errorf("replay: %+v, %v", res, err)
	}
}

func TestWindowsLineEndsAreRead(t *testing.T) {
	crlf := strings.ReplaceAll(written(t, session(t)), "\n", "\r\n")
	if _, err := record.Read(strings.NewReader(crlf)); err != nil {
		t.Error(err)
	}
}

func TestRefusedCommandsLeaveNoTrace(t *testing.T) {
	r, err := record.Start(sim.Setup{})
	if err != nil {
		t.Fatal(err)
	}
	if err := r.Do(sim.Command{Kind: sim.Arm, Angle: deg}); !errors.Is(err, sim.ErrNotOnSide) {
		t.Errorf("got %v", err)
	}
	if n := len(r.Recording().Entries); n != 0 {
		t.Errorf("%d entries", n)
	}
}

func TestUnusedPartsOfACommandAreDropped(t *testing.T) {
	r, err := record.Start(sim.Setup{})
	if err != nil {
		t.Fatal(err)
	}
	if err := r.Do(sim.Command{Kind: sim.Tap, Seat: sim.OnBack, Angle: deg, Text: "x"}); err != nil {
		t.Fatal(err)
	}
	if got, want := r.Recording().Entries[0].Command, (sim.Command{Kind: sim.Tap}); got != want {
		t.Errorf("got %+v, want %+v", got, want)
	}
}

// lines edits the lines of a good file.
func lines(edit func(l []string) []string) func(string) string {
	return func(s string) string {
		l := strings.SplitAfter(s, "\n")
		return strings.Join(edit(l[:len(l)-1]), "")
	}
}

// swap replaces old by new in the nth line, from 1.
func swap(n int, old, new string) func(string) string {
	return lines(func(l []string) []string {
		if !strings.Contains(l[n-1], old) {
			panic("no " + old + " in " + l[n-1])
		}
		l[n-1] = strings.Replace(l[n-1], old, new, 1)
		return l
	})
}

func TestReadRefuses(t *testing.T) {
	good := written(t, session(t))
	last := strings.Count(good, "\n")
	for _, c := range []struct {
		name string
		edit func(string) string
		want error
		line int
		says string
	}{
		{"nothing", func(string) string { return "" }, record.ErrCut, 1, "last line"},
		{"cut between lines", lines(func(l []string) []string { return l[:4] }), record.ErrCut, 5, `{"end":`},
		{"cut in a line", func(s string) string { return s[:len(s)-9] }, record.ErrCut, last, "line break"},
		{"no last line break", func(s string) string { return s[:len(s)-1] }, record.ErrCut, last, "line break"},
		{"version", swap(1, `"version":1`, `"version":2`), record.ErrVersion, 1, "version 1"},
		{"other format", swap(1, `"recording"`, `"roster"`), record.ErrFormat, 1, "first line"},
		{"other file", func(string) string { return "id,name\n" }, record.ErrFormat, 1, "JSON object"},
		{"unknown field", swap(1, `"version":1`, `"version":1,"x":2`), record.ErrFormat, 1, "leave it out"},
		{"balance", swap(1, `"here"`, `"there"`), record.ErrFormat, 1, "equator"},
		{"tool", swap(1, `"plain"`, `"hammer"`), record.ErrFormat, 1, "one of plain"},
		{"dip over 90", swap(1, `"dip":0.5235987755982988`, `"dip":2`), record.ErrFormat, 1, "from 0° to 90°"},
		{"strike below 0", swap(1, `"strike":0.6`, `"strike":-0.6`), record.ErrFormat, 1, "360"},
		{"negative field", swap(1, `"horizontal":0`, `"horizontal":-1`), record.ErrFormat, 1, "above 0"},
		{"start hash", swap(1, `"hash":"`, `"hash":"x`), record.ErrFormat, 1, "sixteen"},
		{"unknown kind", swap(2, `"swing"`, `"spin"`), record.ErrFormat, 2, "one of idle"},
		{"NaN", swap(2, `"turn":-0`, `"turn":NaN,"x":-0`), record.ErrFormat, 2, "finite"},
		{"huge number", swap(2, `"turn":-0`, `"turn":1e999,"x":-0`), record.ErrFormat, 2, "finite number"},
		{"two turns", swap(2, `"turn":-0.2181661564992912`, `"turn":-7`), record.ErrFormat, 2, "at most one full turn"},
		{"no turn", swap(2, `"swing"`, `"tap"`), record.ErrFormat, 2, "only there"},
		{"text", swap(2, `"do"`, `"text":"a","do"`), record.ErrFormat, 2, "it would read"},
		{"note without text", swap(5, `"tap"`, `"note"`), record.ErrFormat, 5, "stands with note"},
		{"seat without place", swap(9, `"place"`, `"flip"`), record.ErrFormat, 9, "stands with place"},
		{"no such seat", swap(9, `"seat":"side"`, `"seat":"chair"`), record.ErrFormat, 9, "edge, side"},
		{"text for a number", swap(2, `"tick":0`, `"tick":"0"`), record.ErrFormat, 2, "whole number"},
		{"other spacing", swap(2, `"tick":0`, `"tick": 0`), record.ErrFormat, 2, "from column 9 on it would read ‘0,"},
		{"said twice", swap(2, `"tick":0`, `"tick":0,"tick":0`), record.ErrFormat, 2, "it would read ‘do"},
		{"more in the line", swap(2, "}\n", "} x\n"), record.ErrFormat, 2, "it would end after column"},
		{"ticks going back", swap(3, `"tick":90`, `"tick":300`), record.ErrFormat, 4, "lies from 300"},
		{"tick below 0", swap(2, `"tick":0`, `"tick":-1`), record.ErrFormat, 2, "lies from 0"},
		{"tick beyond all", swap(last, `"tick":1080`, `"tick":900000000`), record.ErrFormat, last, "lies from 990"},
		{"hash", swap(2, `"hash":"`, `"hash":"0`), record.ErrFormat, 2, "sixteen"},
		{"empty line", swap(3, "\n", "\n\n"), record.ErrFormat, 4, "JSON object"},
		{"wrong total", swap(last, `"end":12`, `"end":11`), record.ErrFormat, last, "holds 12"},
		{"no such seat at the end", swap(last, `"seat":"side"`, `"seat":"sofa"`), record.ErrFormat, last, "left or right"},
		{"after the end", func(s string) string { return s + "x\n" }, record.ErrFormat, last + 1, "nothing stands"},
		{"after the end, no break", func(s string) string { return s + "x" }, record.ErrFormat, last + 1, "nothing stands"},
		{"two recordings", func(s string) string { return s + s }, record.ErrFormat, last + 1, "nothing stands"},
	} {
		_, err := record.Read(strings.NewReader(c.edit(good)))
		var e *record.Error
		if !errors.As(err, &e) || !errors.Is(err, c.want) {
			t.Errorf("%s: got %v, want %v", c.name, err, c.want)
			continue
		}
		if e.Line != c.line || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%s: got %q, want line %d and %q", c.name, err, c.line, c.says)
		}
		if strings.ContainsAny(err.Error(), "\n") || len(err.Error()) > 500 {
			t.Errorf("%s: not one short line: %q", c.name, err)
		}
	}
}

// endless gives the same byte for ever, up to a gigabyte.
type endless struct{ left int }

func (e *endless) Read(p []byte) (int, error) {
	if e.left <= 0 {
		return 0, io.EOF
	}
	n := min(len(p), e.left)
	for i := range p[:n] {
		p[i] = 'x'
	}
	e.left -= n
	return n, nil
}

func TestAGigabyteInOneLineIsNotRead(t *testing.T) {
	const gigabyte = 1 << 30
	for _, before := range []string{"", written(t, session(t))} {
		e := &endless{left: gigabyte}
		_, err := record.Read(io.MultiReader(strings.NewReader(before), e))
		if !errors.Is(err, record.ErrFormat) {
			t.Errorf("got %v", err)
		}
		if read := gigabyte - e.left; read > 64<<10 {
			t.Errorf("%d bytes were read", read)
		}
	}
}

func TestErrorsOfTheReaderComeThrough(t *testing.T) {
	broken := io.MultiReader(strings.NewReader(written(t, session(t))[:900]), failing{})
	if _, err := record.Read(broken); !errors.Is(err, errBroken) {
		t.Errorf("got %v", err)
	}
}

var errBroken = errors.New("broken")

type failing struct{}

func (failing) Read([]byte) (int, error)  { return 0, errBroken }
func (failing) Write([]byte) (int, error) { return 0, errBroken }

func TestErrorsOfTheWriterComeThrough(t *testing.T) {
	if err := session(t).Write(failing{}); !errors.Is(err, errBroken) {
		t.Errorf("got %v", err)
	}
}

func TestReplayFindsTheFirstDifference(t *testing.T) {
	for _, c := range []struct {
		name  string
		edit  func(r *record.Recording)
		stage record.Stage
		entry int
		tick  sim.Tick
		close bool
		says  string
	}{
		{"other start", func(r *record.Recording) { r.Setup.Seed++ }, record.AtStart, 0, 0, false, "from the start"},
		{"other turn", func(r *record.Recording) { r.Entries[1].Command.Angle += 1e-15 }, record.AtCommand, 2, 90, true, "command 2 on, at tick 90 (0.8 s). What can be read off"},
		{"later", func(r *record.Recording) { r.Entries[6].Tick++ }, record.AtCommand, 7, 541, true, "command 7"},
		{"left out", func(r *record.Recording) { r.Entries = append(r.Entries[:2], r.Entries[3:]...) }, record.AtCommand, 3, 270, false, "command 3"},
		{"refused", func(r *record.Recording) { r.Entries[2].Command.Kind = sim.Arm }, record.AtCommand, 3, 180, false, "refuses it"},
		{"other end", func(r *record.Recording) { r.End.Hash++ }, record.AtEnd, 0, 1080, true, "after its last command"},
		{"other sight", func(r *record.Recording) { r.End.Seen.North++ }, record.AtEnd, 0, 1080, false, "after its last command"},
	} {
		r := session(t)
		c.edit(&r)
		got, err := record.Replay(r)
		if err != nil {
			t.Errorf("%s: %v", c.name, err)
			continue
		}
		if got.Same || got.Stage != c.stage || got.Entry != c.entry || got.Tick != c.tick || got.Close != c.close {
			t.Errorf("%s: got %+v, want stage %v, entry %d, tick %d, close %v", c.name, got, c.stage, c.entry, c.tick, c.close)
		}
		if !strings.Contains(got.String(), c.says) {
			t.Errorf("%s: got %q, want %q in it", c.name, got, c.says)
		}
	}
}

func TestReplayRefusesWhatCannotBeRun(t *testing.T) {
	back := session(t)
	back.Entries[3].Tick = 1
	if _, err := record.Replay(back); !errors.Is(err, record.ErrFormat) {
		t.Errorf("ticks going back: got %v", err)
	}
	early := session(t)
	early.End.Tick = 1
	if _, err := record.Replay(early); !errors.Is(err, record.ErrFormat) {
		t.Errorf("early end: got %v", err)
	}
	steep := session(t)
	steep.Setup.Plane.Dip = 2
	if _, err := record.Replay(steep); !errors.Is(err, sim.ErrSetup) {
		t.Errorf("impossible set-up: got %v", err)
	}
}

func TestReplayOfAMonthIsQuick(t *testing.T) {
	r, err := record.Start(sim.Setup{Plane: orient.PlaneOf(35*deg, 30*deg)})
	if err != nil {
		t.Fatal(err)
	}
	r.Advance(2 * record.LastTick)
	if got := r.World().Tick(); got != record.LastTick {
		t.Errorf("got tick %d, want %d", got, record.LastTick)
	}
	if err := r.Do(sim.Command{Kind: sim.Tap}); !errors.Is(err, record.ErrFull) {
		t.Errorf("got %v, want %v", err, record.ErrFull)
	}
	if res, err := record.Replay(r.Recording()); err != nil || !res.Same {
		t.Errorf("got %+v, %v", res, err)
	}
}

func TestWriteFileIsWholeOrNotAtAll(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, "a.rec")
	r := session(t)
	if err := r.WriteFile(path, false); err != nil {
		t.Fatal(err)
	}
	if err := (record.Recording{}).WriteFile(path, false); !errors.Is(err, fs.ErrExist) {
		t.Errorf("over a file: got %v, want %v", err, fs.ErrExist)
	}
	if got, err := os.ReadFile(path); err != nil || string(got) != written(t, r) {
		t.Errorf("the file has changed (%v)", err)
	}
	if err := r.WriteFile(path, true); err != nil {
		t.Errorf("by force: %v", err)
	}
	if err := r.WriteFile(filepath.Join(dir, "none", "a.rec"), false); err == nil {
		t.Error("a folder that is not there was taken")
	}
	left, err := os.ReadDir(dir)
	if err != nil || len(left) != 1 {
		t.Errorf("got %v, %v; want one file", left, err)
	}
}

func FuzzRead(f *testing.F) {
	good := written(f, session(f))
	f.Add([]byte(good))
	f.Add([]byte(good[:len(good)/2]))
	f.Add([]byte(swap(2, `"turn":-0`, `"turn":1e308,"x":-0`)(good)))
	f.Add([]byte("{\"cuesta\":\"recording\",\"version\":9}\n"))
	f.Fuzz(func(t *testing.T, b []byte) {
		r, err := record.Read(bytes.NewReader(b))
		if err != nil {
			return
		}
		again := written(t, r)
		if want := strings.ReplaceAll(string(b), "\r\n", "\n"); again != want {
			t.Fatalf("read %q, written %q", want, again)
		}
		if r.End.Tick > 1e6 {
			return // a hand-made recording may be long; it is bounded, not quick
		}
		if _, err := record.Replay(r); err != nil {
			t.Fatalf("a recording that reads well cannot be run: %v", err)
		}
	})
}
