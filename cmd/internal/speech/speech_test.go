package speech

import (
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

// The test program is its own speech program: it notes down what it was called
// with and takes its time.
func TestMain(m *testing.M) {
	to := os.Getenv("SPEECH_TEST_NOTES")
	if to == "" {
		os.Exit(m.Run())
	}
	if os.Args[1] == "fail" {
		os.Exit(1)
	}
	said := strings.Join(os.Args[1:], " ")
	if os.Args[1] == "read" {
		in, err := io.ReadAll(os.Stdin)
		if err != nil {
			os.Exit(1)
		}
		said = string(in)
	}
	f, err := os.OpenFile(to, os.O_APPEND|os.O_CREATE|os.O_WRONLY, 0o644)
	if err != nil {
		os.Exit(1)
	}
	fmt.Fprintf(f, "begin %q\n", said)
	if strings.Contains(said, "long") {
		time.Sleep(time.Minute)
	}
	fmt.Fprintf(f, "end %q\n", said)
	os.Exit(0)
}

// voice is one that speaks through the test program, and where that notes down
// what it says.
func voice(t *testing.T, p program) (*Voice, string) {
	t.Helper()
	notes := filepath.Join(t.TempDir(), "notes")
	t.Setenv("SPEECH_TEST_NOTES", notes)
	t.Setenv("GORACE", "atexit_sleep_ms=0") // or each call takes a second under the race detector
	p.path = os.Args[0]
	return start(p), notes
}

func noted(t *testing.T, notes string) string {
	t.Helper()
	b, err := os.ReadFile(notes)
	if err != nil && !errors.Is(err, os.ErrNotExist) {
		t.Fatal(err)
	}
	return string(b)
}

// await waits for something to be noted down.
func await(t *testing.T, notes, want string) {
	t.Helper()
	for range 500 {
		if strings.Contains(noted(t, notes), want) {
			return
		}
		time.Sleep(10 * time.Millisecond)
	}
	t.Fatalf("%q was not said; there was %q", want, noted(t, notes))
}

// Nothing that is said becomes a flag or a command.
func TestTheTextStaysText(t *testing.T) {
	texts := []string{
		"--help", "-w 3", "$(touch /tmp/x); `id` | cat > y & \"'", "035/30", "Bubble in the ring.", "N35°E → λ",
	}
	for _, p := range []program{
		{args: []string{"read"}, reads: true},
		{args: []string{"argue", "--"}},
	} {
		for _, text := range texts {
			v, notes := voice(t, p)
			v.Say(text)
			v.Finish()
			want := fmt.Sprintf("end %q\n", text+"\n")
			if !p.reads {
				want = fmt.Sprintf("end %q\n", "argue -- "+text)
			}
			if got := noted(t, notes); !strings.HasSuffix(got, want) {
				t.Errorf("%q: %q, want %q at the end", text, got, want)
			}
		}
	}
}

func TestANewSentenceCutsTheOldOne(t *testing.T) {
	v, notes := voice(t, program{args: []string{"read"}, reads: true})
	begun := time.Now()
	v.Say("A long sentence.")
	await(t, notes, "begin \"A long")
	v.Say("A short one.", "And another.")
	v.Finish()
	got := noted(t, notes)
	if strings.Contains(got, "end \"A long") || !strings.Contains(got, "end \"A short one. And another.") {
		t.Errorf("said %q", got)
	}
	if took := time.Since(begun); took > 30*time.Second {
		t.Errorf("it took %v", took)
	}
}

func TestCloseCutsOff(t *testing.T) {
	v, notes := voice(t, program{args: []string{"read"}, reads: true})
	v.Say("A long sentence.")
	await(t, notes, "begin")
	v.Say("Never said.")
	v.Close()
	if got := noted(t, notes); strings.Contains(got, "end") {
		t.Errorf("said %q, want nothing to its end", got)
	}
}

// The one who says never waits, however slow the program is.
func TestSayNeverWaits(t *testing.T) {
	v, _ := voice(t, program{args: []string{"read"}, reads: true})
	defer v.Close()
	begun := time.Now()
	for range 10000 {
		v.Say("A long sentence.")
	}
	if took := time.Since(begun); took > 5*time.Second {
		t.Errorf("10000 sentences took %v to hand over", took)
	}
}

func TestNothingToSay(t *testing.T) {
	v, notes := voice(t, program{args: []string{"read"}, reads: true})
	v.Say()
	v.Say(" \n\x00\x1b ")
	v.Finish()
	if got := noted(t, notes); got != "" {
		t.Errorf("said %q", got)
	}
	var none *Voice
	none.Say("Nobody hears.")
	none.Finish()
	none.Close()
}

// A program that cannot be started leaves the text unsaid, and the voice ends
// as ever.
func TestABrokenProgram(t *testing.T) {
	v := start(program{path: filepath.Join(t.TempDir(), "missing"), reads: true})
	v.Say("Hello.")
	v.Finish()
	if v.next != "" || v.Err() == nil {
		t.Errorf("%q is still to be said, error %v; want nothing, and why", v.next, v.Err())
	}
}

// Where one program fails the next one says it, and is kept.
func TestTheNextProgramStandsIn(t *testing.T) {
	_, notes := voice(t, program{args: []string{"read"}, reads: true})
	missing := program{name: "missing", path: filepath.Join(t.TempDir(), "missing"), reads: true}
	failing := program{name: "failing", path: os.Args[0], args: []string{"fail"}}
	v := start(missing, failing, program{path: os.Args[0], args: []string{"read"}, reads: true})
	v.Say("Hello.")
	v.Finish()
	if got := noted(t, notes); got != "begin \"Hello.\\n\"\nend \"Hello.\\n\"\n" || v.Err() != nil {
		t.Errorf("said %q, error %v; want the greeting once", got, v.Err())
	}
}

func TestNoProgramIsToldWithWhatToInstall(t *testing.T) {
	t.Setenv("PATH", t.TempDir())
	v, err := Open()
	if v != nil || !errors.Is(err, ErrNoProgram) || !strings.Contains(err.Error(), "install") && !strings.Contains(err.Error(), "system") {
		t.Errorf("got %v, %v; want an error that names what to install", v, err)
	}
}

func TestClean(t *testing.T) {
	tests := []struct{ in, want string }{
		{"a\nb\tc", "a b c"}, {"\x00\x1b[31mred", "[31mred"}, {"  ", ""}, {"° λ →", "° λ →"},
	}
	for _, tt := range tests {
		if got := clean(tt.in); got != tt.want {
			t.Errorf("%q: %q, want %q", tt.in, got, tt.want)
		}
	}
}
