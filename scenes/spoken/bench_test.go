package spoken_test

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"math"
	"os"
	"path/filepath"
	"reflect"
	"regexp"
	"slices"
	"sort"
	"strings"
	"testing"

	"cuesta/orient"
	"cuesta/scenes/session"
	"cuesta/scenes/spoken"
	"cuesta/sim"
	"cuesta/sim/record"
)

func given(strike, dip float64) session.Options {
	p := orient.PlaneOf(orient.Angle(strike)*orient.Degree, orient.Angle(dip)*orient.Degree)
	return session.Options{Plane: &p, Seed: 5}
}

func run(t *testing.T, o session.Options, objects bool, lines string) []string {
	t.Helper()
	ses, err := session.New(o)
	if err != nil {
		t.Fatal(err)
	}
	var out bytes.Buffer
	if err := spoken.NewBench(ses, nil).Run(strings.NewReader(lines), &out, objects); err != nil {
		t.Fatal(err)
	}
	return strings.Split(strings.TrimSuffix(out.String(), "\n"), "\n")
}

func keys(t *testing.T, object string) (names []string, values map[string]any) {
	t.Helper()
	if err := json.Unmarshal([]byte(object), &values); err != nil {
		t.Fatalf("%v in %s", err, object)
	}
	for k := range values {
		names = append(names, k)
	}
	sort.Strings(names)
	return names, values
}

func TestTheObjectsHaveTheKeysThatWereAgreed(t *testing.T) {
	got := run(t, given(35, 30), true, "look\nseat side\nnote 215/30\nwhat\n")
	if len(got) != 4 {
		t.Fatalf("%d objects for 4 lines", len(got))
	}
	edge := []string{"dial", "ok", "round", "said", "tick"}
	side := []string{"arc", "dial", "ok", "round", "said", "tick", "tube"}
	judged := []string{"arc", "dial", "ok", "round", "said", "tick", "tube", "verdict"}
	for i, want := range [][]string{edge, side, judged, side} {
		if names, _ := keys(t, got[i]); !reflect.DeepEqual(names, want) {
			t.Errorf("object %d has the keys %v, want %v", i, names, want)
		}
	}
	_, o := keys(t, got[2])
	for part, want := range map[string][]string{
		"round": {"centred", "forward", "right"}, "tube": {"centred", "off"},
		"dial": {"north", "resting"}, "arc": {"degrees", "percent"},
		"verdict": {"dip_error", "mistakes", "of", "points", "pole_angle", "right", "strike_error", "understood"},
	} {
		b, _ := json.Marshal(o[part])
		if names, _ := keys(t, string(b)); !reflect.DeepEqual(names, want) {
			t.Errorf("%s has the keys %v, want %v", part, names, want)
		}
	}
	if _, o := keys(t, got[3]); o["ok"] != false || o["said"] == "" {
		t.Errorf("a line that was not understood: %s", got[3])
	}
}

func TestEachReplyIsOneLineInWordsButTheHelp(t *testing.T) {
	lines := []string{"look", "swing 3", "roll -2", "bubble", "tap", "wait 2", "lock", "free", "flip", "ring 3E",
		"read", "seat side", "look", "arm 10", "read", "bubble", "note 035/30", "note nonsense", "reveal", "new 3", "what", "help swing", "quit"}
	got := run(t, given(35, 30), false, strings.Join(lines, "\n"))
	if len(got) != len(lines) {
		t.Errorf("%d lines of reply to %d lines:\n%s", len(got), len(lines), strings.Join(got, "\n"))
	}
	for i, g := range got {
		if !strings.HasSuffix(g, ".") || strings.Contains(g, "  ") || strings.Contains(g, "..") {
			t.Errorf("reply to %q is no plain sentence: %q", lines[i], g)
		}
	}
}

func TestMovesTakeASecondAndQuestionsNoTime(t *testing.T) {
	s := sit(t, given(35, 30))
	for _, tt := range []struct {
		line  string
		ticks int
	}{
		{"swing 1", 120}, {"roll 1", 120}, {"flip", 120}, {"ring 1E", 120}, {"tap", 120}, {"lock", 120},
		{"free", 120}, {"seat side", 120}, {"arm 3", 120}, {"wait 2.5", 300}, {"look", 0}, {"bubble", 0}, {"read", 0},
		{"note 035/30", 0}, {"reveal", 0}, {"help", 0}, {"nonsense", 0}, {"seat lid", 0}, {"calibrate", 0},
	} {
		before := s.now.Tick
		if got := s.try("%s", tt.line).Tick - before; got != tt.ticks {
			t.Errorf("%s took %d ticks, want %d", tt.line, got, tt.ticks)
		}
	}
}

// A student who has seen look, bubble and read knows where things are, and not
// which way they lie on the compass.
func TestLookGivesNoAzimuthAway(t *testing.T) {
	figure := regexp.MustCompile(`\d{3}`)
	compass := regexp.MustCompile(`\b(north|south|east|west|[NS][EW])\b`)
	for _, o := range planes(3, 50) {
		s := sit(t, o)
		for _, line := range []string{"look", "seat side", "look"} {
			said := s.typed("%s", line).Said
			if figure.MatchString(said) || compass.MatchString(said) {
				t.Fatalf("%s gives away: %s", line, said)
			}
		}
	}
}

// The rock falls away to the right of a student who looks along the right-hand
// strike (the right-hand convention).
func TestLookTellsTheFallingSide(t *testing.T) {
	for _, o := range planes(4, 100) {
		s := sit(t, o)
		swing := s.bench.Session().World().Pose().Swing
		if got, want := s.fallsRight(), swing.Cos() > 0; got != want {
			t.Errorf("swing %v°: falls right %v, want %v", swing.Degrees(), got, want)
		}
	}
}

func TestTheArrowIsToldAsItPoints(t *testing.T) {
	for _, tt := range []struct {
		swing float64
		want  string
	}{
		{0, "level across the slope. Seen along it, the rock falls away to the right"},
		{180, "level across the slope. Seen along it, the rock falls away to the left"},
		{15, "a little down. Seen along it, the rock falls away to the right"},
		{-15, "a little up. Seen along it, the rock falls away to the right"},
		{120, "slantwise down the slope. Seen along it, the rock falls away to the left"},
		{-45, "slantwise up the slope. Seen along it, the rock falls away to the right"},
		{90, "straight down the slope"},
		{-88, "straight up the slope"},
	} {
		s := sit(t, given(35, 30))
		now := s.bench.Session().World().Pose().Swing.Degrees()
		s.typed("swing %.4f", tt.swing-now)
		if said := s.typed("look").Said; !strings.Contains(said, tt.want) {
			t.Errorf("swing %v: %q, want it to tell %q", tt.swing, said, tt.want)
		}
	}
}

func TestThePlateTellsWhenItTouchesTheRock(t *testing.T) {
	s := sit(t, given(35, 30))
	s.typed("roll 170")
	a := s.now.Said
	s.typed("roll -340")
	if b := s.now.Said; !strings.Contains(a, "touches the rock") || !strings.Contains(b, "touches the rock") {
		t.Errorf("%q and %q do not tell of the contact", a, b)
	}
}

func TestWhatCannotBeDoneIsToldAndChangesNothing(t *testing.T) {
	s := sit(t, given(35, 30))
	before := s.bench.Session().World().Hash()
	for _, line := range []string{"arm 5", "note what", "note 040/30 NE", "picture x.png", "jump"} {
		if r := s.try("%s", line); r.OK || r.Said == "" {
			t.Errorf("%s: %+v, want a refusal", line, r)
		}
	}
	if s.bench.Session().World().Hash() != before {
		t.Error("a refused line left a trace")
	}
}

// Left edge seated the arm opens upwards, right edge seated the arc hangs down:
// the same turn then lowers the index end.
func TestTheArmTellsWhichWayItsEndWent(t *testing.T) {
	for _, tt := range []struct {
		swing float64
		want  string
	}{{90, "away from the seated edge. Its index end went up."}, {-90, "away from the seated edge. Its index end went down."}} {
		s := sit(t, given(35, 30))
		s.typed("swing %.4f", tt.swing-s.bench.Session().World().Pose().Swing.Degrees())
		s.typed("seat side")
		off := s.now.Tube.Off
		if said := s.typed("arm 10").Said; !strings.Contains(said, tt.want) {
			t.Errorf("swing %v: %q, want it to tell %q", tt.swing, said, tt.want)
		}
		// From the edge, 30° off level, the bubble still lies at the same, high
		// end; past the level it changes over.
		if s.typed("arm 60"); s.now.Tube.Off*off >= 0 {
			t.Errorf("swing %v: bubble from %v to %v", tt.swing, off, s.now.Tube.Off)
		}
	}
}

// A hinged lid shows dip direction and dip in one operation (common practice).
func TestTheLidInWords(t *testing.T) {
	o := given(310, 42)
	o.Tool, o.Method = sim.Complete, sim.OnLid
	s := sit(t, o)
	if said := s.typed("look").Said; !strings.Contains(said, "The lid lies flush") || !strings.Contains(said, "The hinge is closed") {
		t.Errorf("look: %s", said)
	}
	s.typed("swing %.4f", 90-s.bench.Session().World().Pose().Swing.Degrees())
	s.typed("roll 42")
	s.settle()
	if !s.now.Round.Centred {
		t.Fatalf("the body is not level: %s", s.now.Said)
	}
	said := s.typed("read").Said
	if said != "The north end stands at 40, the hinge at 42." && said != "The north end stands at 41, the hinge at 42." && said != "The north end stands at 39, the hinge at 42." {
		t.Errorf("read: %s", said)
	}
	if r := s.typed("note 42→040"); !r.Verdict.Right {
		t.Errorf("note: %s", r.Said)
	}
	if said := s.typed("roll -170").Said; !strings.Contains(said, "at its stop") {
		t.Errorf("closing the hinge: %s", said)
	}
}

func TestTheSensorInWords(t *testing.T) {
	o := given(310, 42)
	o.Tool, o.Method = sim.Complete, sim.OnBack
	s := sit(t, o)
	if said := s.typed("read").Said; !strings.HasSuffix(said, "It has not been calibrated.") {
		t.Errorf("read: %s", said)
	}
	s.typed("calibrate")
	var direction, dip float64
	said := s.typed("read").Said
	if n, err := fmt.Sscanf(said, "The sensor shows dip direction %g, dip %g.", &direction, &dip); n != 2 {
		t.Fatalf("read: %s: %v", said, err)
	}
	if between(direction, 40) > 4 || math.Abs(dip-42) > 2 {
		t.Errorf("read: %s, want about 040, 42", said)
	}
	if r := s.try("roll 5"); r.OK {
		t.Errorf("roll: %s", r.Said)
	}
}

func TestAnImpossibleDipIsExplained(t *testing.T) {
	const percent = "note 035/173" // 100·tan 60° = 173
	s := sit(t, given(35, 60))
	if r := s.try(percent); r.OK || r.Verdict != nil && len(r.Verdict.Mistakes) > 0 {
		t.Errorf("reply %+v, want no reason: no arc was read", r)
	}
	arm := s.typed("seat side").Arc.Degrees
	s.typed("arm %+d", 60-arm)
	s.typed("read")
	r := s.try(percent)
	if r.OK || r.Verdict == nil || len(r.Verdict.Mistakes) != 1 || r.Verdict.Mistakes[0].Kind != "percent-scale" {
		t.Errorf("reply %+v, want the percent scale as the reason", r)
	}
}

func TestNewGoesOnToTheNextSeed(t *testing.T) {
	s := sit(t, session.Options{Seed: 41})
	r := s.typed("new")
	if !strings.Contains(r.Said, "seed 42") || s.bench.Session().Truth() != session.Deal(42, s.bench.Session().Options().Mix) {
		t.Errorf("new: %s", r.Said)
	}
	if r := s.typed("new 7"); !strings.Contains(r.Said, "seed 7") || r.Tick != 0 {
		t.Errorf("new 7: %+v", r)
	}
	if got := len(s.bench.Session().Recordings()); got != 3 {
		t.Errorf("%d recordings, want 3", got)
	}
}

func TestTheRecordingOfASpokenMeasurementReplays(t *testing.T) {
	s := sit(t, given(215, 48))
	strike, dip := s.measure()
	s.typed("note %03d/%02d", strike, dip)
	res, err := record.Replay(s.bench.Session().Recording())
	if err != nil || !res.Same {
		t.Errorf("replay: %v, %v", res, err)
	}
}

func TestRevealTellsTheTruth(t *testing.T) {
	for _, tt := range []struct {
		strike, dip float64
		want        []string
	}{
		{35, 30, []string{"035/30", "along 035 and 215", "towards 125", "thumb to 035"}},
		{35, 0, []string{"horizontal"}},
		{35, 90, []string{"vertical", "035", "215"}},
	} {
		s := sit(t, given(tt.strike, tt.dip))
		said := s.typed("reveal").Said
		for _, want := range tt.want {
			if !strings.Contains(said, want) {
				t.Errorf("%v/%v: %q lacks %q", tt.strike, tt.dip, said, want)
			}
		}
		if !s.bench.Session().Revealed() {
			t.Error("the plane is not marked as shown")
		}
	}
}

func TestAllPlanesAllPosesHaveWords(t *testing.T) {
	for _, dip := range []float64{0, 1, 2, 45, 89, 90} {
		for _, lines := range []string{"look", "seat side\nlook\nread", "swing 90\nlook\nseat side\nlook", "roll 170\nlook", "roll -170\nlook\nread",
			"seat lid\nlook\nroll 90\nlook\nread\nseat flat\nlook\nread", "seat side\nroll 90\nlook\narm 90\nread\narm 5\narm -90\narm -1"} {
			o := given(350, dip)
			o.Tool = sim.Complete
			for _, said := range run(t, o, false, lines) {
				if said == "" || strings.Contains(said, "NaN") || strings.Contains(said, "Inf") || strings.Contains(said, "%!") {
					t.Errorf("dip %v, %q: %q", dip, lines, said)
				}
			}
		}
	}
}

func TestTheEndOfTheScalesCanBeWritten(t *testing.T) {
	got := run(t, given(35, 80), true, "seat side\narm 90\nread")
	_, o := keys(t, got[2])
	if arc, _ := o["arc"].(map[string]any); arc["degrees"] != 90.0 || arc["percent"] != nil {
		t.Errorf("arc %v, want 90 and null", o["arc"])
	}
}

func TestRunEnds(t *testing.T) {
	if got := run(t, given(35, 30), false, "look\nquit\nlook\n"); len(got) != 2 || got[1] != "The bench is closed." {
		t.Errorf("after quit: %q", got)
	}
	if got := run(t, given(35, 30), false, "\n# a remark\n\nbubble"); len(got) != 1 {
		t.Errorf("one line without an end, remarks and empty lines: %q", got)
	}
}

func TestALineThatIsFarTooLongDoesNotEndTheBench(t *testing.T) {
	got := run(t, given(35, 30), false, "note "+strings.Repeat("x", 1<<20)+"\nbubble\n")
	if len(got) != 2 || !strings.Contains(got[0], "4096") || !strings.HasPrefix(got[1], "Bubble") {
		t.Errorf("%.200q", got)
	}
}

// broken fails after a few bytes.
type broken struct{}

var errBroken = errors.New("broken pipe")

func (broken) Write([]byte) (int, error) { return 0, errBroken }
func (broken) Read([]byte) (int, error)  { return 0, errBroken }

func TestRunTellsOfBrokenPipes(t *testing.T) {
	b := sit(t, given(35, 30)).bench
	if err := b.Run(strings.NewReader("look\n"), broken{}, false); !errors.Is(err, errBroken) {
		t.Errorf("writing: %v", err)
	}
	if err := b.Run(broken{}, io.Discard, true); !errors.Is(err, errBroken) {
		t.Errorf("reading: %v", err)
	}
}

func TestPicture(t *testing.T) {
	dir := t.TempDir()
	ses, err := session.New(given(35, 30))
	if err != nil {
		t.Fatal(err)
	}
	fails := false
	b := spoken.NewBench(ses, func(w io.Writer, s *session.Session) error {
		if s != ses {
			t.Error("a picture of another bench")
		}
		io.WriteString(w, "half of a")
		if fails {
			return errBroken
		}
		_, err := io.WriteString(w, " picture")
		return err
	})
	name := filepath.Join(dir, "bench.png")
	if r, _ := b.Line("picture " + name); !r.OK {
		t.Fatal(r.Said)
	}
	if r, _ := b.Line("picture " + name); r.OK || !strings.Contains(r.Said, "already there") {
		t.Errorf("an existing file: %+v", r)
	}
	fails = true
	if r, _ := b.Line("picture " + filepath.Join(dir, "other.png")); r.OK {
		t.Errorf("a broken painter: %+v", r)
	}
	if r, _ := b.Line("picture " + filepath.Join(dir, "none", "x.png")); r.OK {
		t.Errorf("no such folder: %+v", r)
	}
	if text, err := os.ReadFile(name); err != nil || string(text) != "half of a picture" {
		t.Errorf("the picture holds %q, %v", text, err)
	}
	var left []string
	entries, _ := os.ReadDir(dir)
	for _, e := range entries {
		left = append(left, e.Name())
	}
	if !slices.Equal(left, []string{"bench.png"}) {
		t.Errorf("left in the folder: %v", left)
	}
}

func TestWelcomeTellsWhatTheStudentHasToSet(t *testing.T) {
	o := session.Options{Seed: 9, Place: "Testing Fell", Field: sim.Field{Declination: -3.46 * orient.Degree, Horizontal: 20e-6}}
	said := sit(t, o).bench.Welcome()
	for _, want := range []string{"seed 9", "Testing Fell.", "3.5° west", "ring"} {
		if !strings.Contains(said, want) {
			t.Errorf("%q lacks %q", said, want)
		}
	}
	o.RingPreset = true
	if said := sit(t, o).bench.Welcome(); strings.Contains(said, "declination") {
		t.Errorf("the ring is set, and yet: %q", said)
	}
	if said := sit(t, session.Options{}).bench.Welcome(); strings.Contains(said, "declination") {
		t.Errorf("no declination, and yet: %q", said)
	}
}
