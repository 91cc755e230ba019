package spoken

import (
	"math"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"cuesta/orient"
	"cuesta/sim"
)

// Line is one line as it was understood. The zero value does nothing.
type Line struct {
	Word  Word
	Seat  sim.Seat     // of seat
	Angle orient.Angle // of swing, roll, arm and ring
	Ticks int          // of wait
	Text  string       // of note, the file of picture, the subject of help
	Seed  uint64       // of new
	Given bool         // new came with a seed
}

// LineError says why a line was not understood.
type LineError struct {
	Read  string // what was read
	Would string // what would do
}

// Error is two sentences: what was read, and what would do.
func (e *LineError) Error() string { return e.Read + ". " + capital(e.Would) + "." }

func capital(s string) string {
	if s == "" {
		return s
	}
	return strings.ToUpper(s[:1]) + s[1:]
}

// LongestLine is the length in bytes above which a line is not read.
const LongestLine = 4096

// Parse reads one line. Upper and lower case are alike; an empty line and one
// that starts with # are Nothing. An error is a *LineError.
func Parse(text string) (Line, error) {
	if len(text) > LongestLine || !utf8.ValidString(text) {
		return Line{}, fail("Read a line that is not plain text of at most "+strconv.Itoa(LongestLine)+" bytes", "help lists the lines")
	}
	text = strings.TrimSpace(strings.TrimPrefix(text, "\uFEFF"))
	if text == "" || text[0] == '#' {
		return Line{}, nil
	}
	first, rest := split(text)
	w, ok := wordOf(strings.ToLower(first))
	if !ok {
		return Line{}, unknown(first)
	}
	l := Line{Word: w}
	return l, l.read(strings.TrimSpace(rest))
}

// split takes the first word off; a number may follow without a space.
func split(text string) (first, rest string) {
	i := strings.IndexFunc(text, func(r rune) bool { return unicode.IsSpace(r) || unicode.IsDigit(r) || isSign(r) })
	if i <= 0 {
		i = strings.IndexFunc(text, unicode.IsSpace)
	}
	if i <= 0 {
		return text, ""
	}
	return text[:i], text[i:]
}

func unknown(first string) error {
	if n := Nearest(first, words[:]...); n != "" {
		return fail("Read "+quoted(first)+", which is no line of the bench", "perhaps "+n+" was meant; help lists the lines")
	}
	return fail("Read "+quoted(first)+", which is no line of the bench", "help lists the lines")
}

// read takes in what follows the word.
func (l *Line) read(rest string) error {
	switch l.Word {
	case Seat:
		return l.readSeat(rest)
	case Swing, Roll, Arm:
		return l.readTurn(rest)
	case Ring:
		return l.readRing(rest)
	case Wait:
		return l.readWait(rest)
	case Note:
		return l.readText(rest, "write the answer behind note, such as note 125/40 NE or note N20W 40NE")
	case Picture:
		return l.readFile(rest)
	case New:
		return l.readSeed(rest)
	case Help:
		return l.readHelp(rest)
	case Nothing, Flip, Tap, Lock, Free, Calibrate, Look, Bubble, Read, Reveal, Quit:
		if rest != "" {
			return fail("Read "+quoted(rest)+" behind "+l.Word.String(), l.Word.String()+" stands alone")
		}
	}
	return nil
}

var seatWords = [...]string{sim.OnEdge: "edge", sim.OnSide: "side", sim.OnLid: "lid", sim.OnBack: "flat"}

func (l *Line) readSeat(rest string) error {
	for s, w := range seatWords {
		if strings.EqualFold(rest, w) {
			l.Seat = sim.Seat(s)
			return nil
		}
	}
	would := "write seat edge, seat side, seat lid or seat flat"
	if n := Nearest(rest, seatWords[:]...); rest != "" && n != "" {
		would = "perhaps seat " + n + " was meant"
	}
	return fail("Read "+orNothing(rest)+" behind seat", would)
}

// mostTurn bounds one turn, in degrees.
const mostTurn = 360

func (l *Line) readTurn(rest string) error {
	w := l.Word.String()
	deg, ok := number(rest, "°", "º", "degrees", "degree", "deg")
	if !ok || math.Abs(deg) > mostTurn {
		return fail("Read "+orNothing(rest)+" behind "+w, "write "+w+" and a number of degrees up to 360, such as "+w+" 5 or "+w+" -2.5")
	}
	l.Angle = orient.Angle(deg) * orient.Degree
	return nil
}

func (l *Line) readRing(rest string) error {
	number, letter := cutLetter(rest)
	deg, ok := declination(number, letter)
	if !ok || math.Abs(deg) > 180 {
		return fail("Read "+orNothing(rest)+" behind ring", "write the declination, such as ring 12E, ring 3.5 W or ring -3 (east is positive)")
	}
	l.Angle = orient.Angle(deg) * orient.Degree
	return nil
}

// cutLetter takes east or west off the end.
func cutLetter(s string) (rest string, letter byte) {
	low := strings.ToLower(s)
	for _, w := range []string{"east", "west", "e", "w"} {
		if strings.HasSuffix(low, w) {
			return strings.TrimSpace(s[:len(s)-len(w)]), w[0]
		}
	}
	return s, 0
}

// declination is east positive. A sign and a letter together are ambiguous.
func declination(text string, letter byte) (deg float64, ok bool) {
	deg, ok = number(text, "°", "º", "degrees", "degree", "deg")
	if r, _ := utf8.DecodeRuneInString(text); letter != 0 && isSign(r) {
		return 0, false
	}
	if letter == 'w' {
		deg = -deg
	}
	return deg, ok
}

// mostWait is the longest wait of one line, in seconds.
const mostWait = 60

func (l *Line) readWait(rest string) error {
	s, ok := number(rest, "seconds", "second", "sec", "s")
	if !ok || s <= 0 || s > mostWait {
		return fail("Read "+orNothing(rest)+" behind wait", "write wait and a number of seconds above 0 and up to 60, such as wait 5")
	}
	l.Ticks = max(1, int(math.Round(s*sim.TicksPerSecond)))
	return nil
}

func (l *Line) readText(rest, would string) error {
	if rest == "" {
		return fail("Read nothing behind "+l.Word.String(), would)
	}
	l.Text = rest
	return nil
}

func (l *Line) readFile(rest string) error {
	if !strings.HasSuffix(strings.ToLower(rest), ".png") || strings.ContainsRune(rest, 0) {
		return fail("Read "+orNothing(rest)+" behind picture", "write the name of a new file that ends in .png, such as picture bench.png")
	}
	l.Text = rest
	return nil
}

func (l *Line) readSeed(rest string) error {
	if rest == "" {
		return nil
	}
	seed, err := strconv.ParseUint(rest, 10, 64)
	if err != nil {
		return fail("Read "+quoted(rest)+" behind new", "write new alone, or new and a whole number, such as new 7")
	}
	l.Seed, l.Given = seed, true
	return nil
}

func (l *Line) readHelp(rest string) error {
	if _, ok := wordOf(strings.ToLower(rest)); rest != "" && !ok {
		return fail("Read "+quoted(rest)+" behind help", "help stands alone, or with one word of the bench, such as help swing")
	}
	l.Text = strings.ToLower(rest)
	return nil
}

func fail(read, would string) error { return &LineError{read, would} }

func orNothing(s string) string {
	if s == "" {
		return "nothing"
	}
	return quoted(s)
}

// quoted is the text in quotes, cut to a length that can be heard.
func quoted(s string) string {
	const longest = 40
	if r := []rune(s); len(r) > longest {
		s = string(r[:longest]) + "…"
	}
	return strconv.Quote(s)
}
