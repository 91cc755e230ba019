package spoken

import (
	"errors"
	"math"
	"strings"
	"testing"

	"cuesta/orient"
	"cuesta/sim"
)

func TestParse(t *testing.T) {
	const d = orient.Degree
	tests := []struct {
		text string
		want Line
	}{
		{"", Line{}},
		{"   \t", Line{}},
		{"# a remark", Line{}},
		{"seat edge", Line{Word: Seat, Seat: sim.OnEdge}},
		{"SEAT Side", Line{Word: Seat, Seat: sim.OnSide}},
		{"seat lid", Line{Word: Seat, Seat: sim.OnLid}},
		{"seat flat", Line{Word: Seat, Seat: sim.OnBack}},
		{"swing 5", Line{Word: Swing, Angle: 5 * d}},
		{"swing +5", Line{Word: Swing, Angle: 5 * d}},
		{"swing -5", Line{Word: Swing, Angle: -5 * d}},
		{"swing − 2.5°", Line{Word: Swing, Angle: -2.5 * d}},
		{"swing –0,25 deg", Line{Word: Swing, Angle: -0.25 * d}},
		{"swing-90", Line{Word: Swing, Angle: -90 * d}},
		{"roll .5 degrees", Line{Word: Roll, Angle: 0.5 * d}},
		{"roll 360", Line{Word: Roll, Angle: 360 * d}},
		{"arm 12", Line{Word: Arm, Angle: 12 * d}},
		{"arm -0", Line{Word: Arm}},
		{"flip", Line{Word: Flip}},
		{"ring 12E", Line{Word: Ring, Angle: 12 * d}},
		{"ring 3.5 W", Line{Word: Ring, Angle: -3.5 * d}},
		{"ring 2° west", Line{Word: Ring, Angle: -2 * d}},
		{"ring -3", Line{Word: Ring, Angle: -3 * d}},
		{"ring 0", Line{Word: Ring}},
		{"wait 5", Line{Word: Wait, Ticks: 600}},
		{"wait 0.5 s", Line{Word: Wait, Ticks: 60}},
		{"wait 0.001", Line{Word: Wait, Ticks: 1}},
		{"wait 60", Line{Word: Wait, Ticks: 7200}},
		{"tap", Line{Word: Tap}},
		{"lock", Line{Word: Lock}},
		{"free", Line{Word: Free}},
		{"calibrate", Line{Word: Calibrate}},
		{"look", Line{Word: Look}},
		{"bubble\r", Line{Word: Bubble}},
		{"read", Line{Word: Read}},
		{"note N35E 30SE", Line{Word: Note, Text: "N35E 30SE"}},
		{"note 035/30", Line{Word: Note, Text: "035/30"}},
		{"picture two words.PNG", Line{Word: Picture, Text: "two words.PNG"}},
		{"reveal", Line{Word: Reveal}},
		{"new", Line{Word: New}},
		{"new 7", Line{Word: New, Seed: 7, Given: true}},
		{"new 18446744073709551615", Line{Word: New, Seed: math.MaxUint64, Given: true}},
		{"help", Line{Word: Help}},
		{"help Swing", Line{Word: Help, Text: "swing"}},
		{"quit", Line{Word: Quit}},
		{"\uFEFFlook", Line{Word: Look}},
	}
	for _, tt := range tests {
		got, err := Parse(tt.text)
		if err != nil || !alike(got, tt.want) {
			t.Errorf("Parse(%q) = %+v, %v; want %+v", tt.text, got, err, tt.want)
		}
	}
}

func alike(a, b Line) bool {
	near := (a.Angle - b.Angle).Abs() < 1e-12
	a.Angle, b.Angle = 0, 0
	return near && a == b
}

func TestParseSaysWhatWasReadAndWhatWouldDo(t *testing.T) {
	tests := []struct{ text, read, would string }{
		{"swng 5", `"swng"`, "swing"},
		{"bubbel", `"bubbel"`, "bubble"},
		{"hlep", `"hlep"`, "perhaps help was meant"},
		{"lokc", `"lokc"`, "perhaps lock was meant"},
		{"SIWNG 5", `"SIWNG"`, "perhaps swing was meant"},
		{"dance", `"dance"`, "help"},
		{"5", `"5"`, "help"},
		{"seat", "nothing", "seat edge"},
		{"seat egde", `"egde"`, "seat edge"},
		{"seat chair", `"chair"`, "seat side"},
		{"swing", "nothing", "swing 5"},
		{"swing far", `"far"`, "swing 5"},
		{"swing 5 5", `"5 5"`, "swing 5"},
		{"swing 1e3", `"1e3"`, "swing 5"},
		{"swing 361", `"361"`, "360"},
		{"swing --5", `"--5"`, "swing 5"},
		{"roll NaN", `"NaN"`, "roll 5"},
		{"arm Inf", `"Inf"`, "arm 5"},
		{"arm 0x10", `"0x10"`, "arm 5"},
		{"ring -3W", `"-3W"`, "ring 12E"},
		{"ring 190", `"190"`, "ring 12E"},
		{"ring east", `"east"`, "ring 12E"},
		{"wait 0", `"0"`, "60"},
		{"wait -1", `"-1"`, "60"},
		{"wait 61", `"61"`, "60"},
		{"wait", "nothing", "wait 5"},
		{"flip over", `"over"`, "alone"},
		{"read dial", `"dial"`, "alone"},
		{"note", "nothing", "note 125/40"},
		{"picture", "nothing", ".png"},
		{"picture a.jpg", `"a.jpg"`, ".png"},
		{"new plane", `"plane"`, "new 7"},
		{"new -1", `"-1"`, "new 7"},
		{"new 18446744073709551616", `"18446744073709551616"`, "new 7"},
		{"help me", `"me"`, "help swing"},
		{"look \xff", "plain text", "help"},
		{strings.Repeat("x", LongestLine+1), "4096", "help"},
	}
	for _, tt := range tests {
		l, err := Parse(tt.text)
		var wrong *LineError
		if !errors.As(err, &wrong) {
			t.Errorf("Parse(%q) = %+v, %v; want a *LineError", tt.text, l, err)
			continue
		}
		if !strings.Contains(wrong.Read, tt.read) || !strings.Contains(wrong.Would, tt.would) {
			t.Errorf("Parse(%q): %v; want it to tell of %s and of %s", tt.text, err, tt.read, tt.would)
		}
	}
}

func FuzzParse(f *testing.F) {
	for _, s := range []string{"swing −5,5°", "ring 3.5 W", "wait 5", "seat side", "note N35E 30SE", "new 7", "help swing", "# x", "picture a.png", "\xff"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, text string) {
		l, err := Parse(text)
		var wrong *LineError
		switch {
		case err != nil && !errors.As(err, &wrong):
			t.Fatalf("%q: %v is no *LineError", text, err)
		case err != nil && (wrong.Read == "" || wrong.Would == "" || len(err.Error()) > 600 || strings.Contains(err.Error(), "\n")):
			t.Fatalf("%q: the error does not say enough in one line: %v", text, err)
		case err != nil:
			return
		case !(l.Angle.Abs() <= orient.Full):
			t.Fatalf("%q: angle %v", text, l.Angle)
		case l.Word == Wait && (l.Ticks < 1 || l.Ticks > mostWait*sim.TicksPerSecond):
			t.Fatalf("%q: %d ticks", text, l.Ticks)
		}
		upper, err := Parse(strings.ToUpper(text))
		if err == nil && upper.Word != l.Word {
			t.Fatalf("%q is %v in lower case and %v in upper", text, l.Word, upper.Word)
		}
	})
}

func TestEveryWordHasItsHelpAndItsAct(t *testing.T) {
	all := help("")
	for w := Seat; w <= Quit; w++ {
		if w.String() == "" || helpOf(w) == "" || !strings.Contains(all, helpOf(w)) {
			t.Errorf("word %d (%q) has no help", w, w)
		}
		if help(w.String()) != helpOf(w) {
			t.Errorf("help %s is not the help of %s", w, w)
		}
	}
	acts := map[Word]sim.Kind{Seat: sim.Place, Swing: sim.Swing, Roll: sim.Roll, Arm: sim.Arm, Flip: sim.Flip,
		Ring: sim.Ring, Tap: sim.Tap, Lock: sim.Lock, Free: sim.Free, Calibrate: sim.Calibrate, Read: sim.Read}
	for w := Nothing; w <= Quit; w++ {
		if got := (Line{Word: w}).Command().Kind; got != acts[w] {
			t.Errorf("%v does %v, want %v", w, got, acts[w])
		}
	}
}
