package record

import (
	"bufio"
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"strings"
	"unicode"

	"cuesta/orient"
	"cuesta/sim"
)

// What can be wrong with a file; every Error wraps one of them.
var (
	ErrFormat  = errors.New("not a recording as cuesta writes them")
	ErrVersion = errors.New("a recording of another version")
	ErrCut     = errors.New("the recording is cut off")
)

// Error is a mistake in a file: where, what was read, and what would do.
type Error struct {
	Line int    // from 1
	Read string // what stands there, shortened
	Want string // what would do
	Err  error  // ErrFormat, ErrVersion, ErrCut, or one of sim
}

// Error is the mistake as one line.
func (e *Error) Error() string {
	return fmt.Sprintf("line %d: %v: read %s; %s", e.Line, e.Err, e.Read, e.Want)
}

// Unwrap is the sentinel.
func (e *Error) Unwrap() error { return e.Err }

// Read reads a recording and checks everything that can be checked without
// running it. Errors of the file are an *Error; others are those of the
// reader. It holds no more than one line at a time beside the recording.
func Read(from io.Reader) (Recording, error) {
	f := &reader{in: bufio.NewReaderSize(from, LongestLine+2)}
	var r Recording
	if err := f.head(&r); err != nil {
		return Recording{}, err
	}
	for {
		done, err := f.body(&r)
		if err != nil {
			return Recording{}, err
		}
		if done {
			return r, f.nothingMore()
		}
	}
}

// reader is a file being read.
type reader struct {
	in     *bufio.Reader
	number int    // of the line in text
	text   []byte // the line, valid until the next one
}

// next takes the next line; io.EOF after the last.
func (f *reader) next() error {
	f.number++
	b, err := f.in.ReadSlice('\n')
	f.text = bytes.TrimSuffix(bytes.TrimSuffix(b, []byte("\n")), []byte("\r"))
	switch {
	case errors.Is(err, bufio.ErrBufferFull):
		return f.wrong(ErrFormat, fmt.Sprintf("a line is at most %d bytes long", LongestLine))
	case err == io.EOF && len(b) > 0:
		return f.wrong(ErrCut, "every line ends with a line break, and the last one starts with {\"end\":")
	case err != nil:
		return err
	}
	return nil
}

// wrong is a mistake in the line being read.
func (f *reader) wrong(err error, want string) error {
	return &Error{Line: f.number, Read: f.quoted(), Want: want, Err: err}
}

// quoted is the line, shortened and made printable.
func (f *reader) quoted() string {
	const most = 60
	b := f.text[:min(len(f.text), most)]
	s := strings.Map(func(r rune) rune {
		if unicode.IsPrint(r) && r != unicode.ReplacementChar {
			return r
		}
		return '·'
	}, string(b))
	switch {
	case s == "":
		return "nothing"
	case len(f.text) > most:
		return "‘" + s + "…’"
	default:
		return "‘" + s + "’"
	}
}

// cut is the mistake of a file that ends too early.
func (f *reader) cut(err error) error {
	if err == io.EOF {
		return f.wrong(ErrCut, "the last line of a whole recording starts with {\"end\":")
	}
	return err
}

// decode reads the line into v, and takes it only in the form encode writes.
func (f *reader) decode(v any) error {
	d := json.NewDecoder(bytes.NewReader(f.text))
	d.DisallowUnknownFields()
	if err := d.Decode(v); err != nil {
		return f.wrong(ErrFormat, hint(err))
	}
	if got := encode(v); !bytes.Equal(got, f.text) {
		return f.wrong(ErrFormat, difference(f.text, got))
	}
	return nil
}

// difference says where a line leaves the one form it can have.
func difference(read, want []byte) string {
	n := 0
	for n < min(len(read), len(want)) && read[n] == want[n] {
		n++
	}
	if n == len(want) {
		return fmt.Sprintf("it would end after column %d", n)
	}
	const most = 60
	rest := string(want[n:min(len(want), n+most)])
	return fmt.Sprintf("from column %d on it would read ‘%s’", n+1, rest)
}

// hint says in plain words what the decoder missed.
func hint(err error) string {
	var kind *json.UnmarshalTypeError
	switch {
	case errors.As(err, &kind):
		return fmt.Sprintf("%q takes %s, not %s", kind.Field, plainType(kind.Type.Kind().String()), kind.Value)
	case strings.Contains(err.Error(), "unknown field"):
		return strings.TrimPrefix(err.Error(), "json: ") + "; leave it out"
	}
	return "a line is one JSON object with finite numbers"
}

func plainType(kind string) string {
	switch kind {
	case "float64":
		return "a finite number"
	case "int", "int64", "uint64":
		return "a whole number"
	case "bool":
		return "true or false"
	case "struct":
		return "an object"
	}
	return "a text"
}

func (f *reader) head(r *Recording) error {
	if err := f.next(); err != nil {
		return f.cut(err)
	}
	var v struct {
		Cuesta  string
		Version int
	}
	// Only the version decides how the rest is read, so it comes first.
	if json.Unmarshal(f.text, &v) == nil && v.Cuesta == format && v.Version != version {
		return f.wrong(ErrVersion, fmt.Sprintf("this program reads version %d", version))
	}
	var h head
	if err := f.decode(&h); err != nil {
		return err
	}
	if h.Cuesta != format {
		return f.wrong(ErrFormat, `the first line starts with {"cuesta":"recording","version":1,`)
	}
	var ok bool
	if r.Setup, ok = h.setup(); !ok {
		return f.wrong(ErrFormat, "the balance is one of here, north, equator, south, and the tool one of plain, lid, sensor, lid and sensor")
	}
	if err := r.Setup.Check(); err != nil {
		return f.wrong(ErrFormat, err.Error())
	}
	return f.hash(h.Hash, &r.Start)
}

func (f *reader) hash(s string, to *uint64) error {
	h, ok := hashOf(s)
	if !ok {
		return f.wrong(ErrFormat, "a hash is sixteen hexadecimal digits in lower case")
	}
	*to = h
	return nil
}

// body reads a command or the end, and says whether it was the end.
func (f *reader) body(r *Recording) (done bool, err error) {
	if err := f.next(); err != nil {
		return false, f.cut(err)
	}
	if bytes.HasPrefix(f.text, []byte(`{"end":`)) {
		return true, f.tail(r)
	}
	if len(r.Entries) >= MostEntries {
		return false, f.wrong(ErrFormat, fmt.Sprintf("a recording holds at most %d commands", MostEntries))
	}
	var l line
	if err := f.decode(&l); err != nil {
		return false, err
	}
	e, err := f.entry(l)
	if err != nil {
		return false, err
	}
	if err := f.tick(r, e.Tick); err != nil {
		return false, err
	}
	r.Entries = append(r.Entries, e)
	return false, nil
}

// tick says whether a line may stand at tick t after the commands so far.
func (f *reader) tick(r *Recording, t sim.Tick) error {
	var last sim.Tick
	if n := len(r.Entries); n > 0 {
		last = r.Entries[n-1].Tick
	}
	if t < last || t > LastTick {
		return f.wrong(ErrFormat, fmt.Sprintf("the tick here lies from %d to %d", last, sim.Tick(LastTick)))
	}
	return nil
}

// entry is the command of a line, with just what its kind takes.
func (f *reader) entry(l line) (Entry, error) {
	k, ok := sim.KindOf(l.Do)
	if !ok {
		return Entry{}, f.wrong(ErrFormat, "what is done is one of idle, place, swing, roll, arm, flip, ring, tap, lock, free, read, note, calibrate")
	}
	if err := f.shape(l, k); err != nil {
		return Entry{}, err
	}
	c := sim.Command{Kind: k}
	if l.Turn != nil {
		c.Angle = orient.Angle(*l.Turn)
	}
	if l.Text != nil {
		c.Text = *l.Text
	}
	if c.Seat, ok = sim.SeatOf(l.Seat); k == sim.Place && !ok {
		return Entry{}, f.wrong(ErrFormat, "the seat is one of edge, side, lid, flat")
	}
	e := Entry{Tick: sim.Tick(l.Tick), Command: c}
	return e, f.hash(l.Hash, &e.Hash)
}

// shape says whether the line has what its kind takes and nothing else.
func (f *reader) shape(l line, k sim.Kind) error {
	switch {
	case (l.Turn != nil) != k.Turns():
		return f.wrong(ErrFormat, `"turn" stands with swing, roll, arm and ring, and only there`)
	case l.Turn != nil && orient.Angle(*l.Turn).Abs() > orient.Full:
		return f.wrong(ErrFormat, "a turn is at most one full turn, in radians")
	case (l.Text != nil) != (k == sim.Note):
		return f.wrong(ErrFormat, `"text" stands with note, and only there`)
	case (l.Seat != "") != (k == sim.Place):
		return f.wrong(ErrFormat, `"seat" stands with place, and only there`)
	}
	return nil
}

func (f *reader) tail(r *Recording) error {
	var t tail
	if err := f.decode(&t); err != nil {
		return err
	}
	if t.End != len(r.Entries) {
		return f.wrong(ErrFormat, fmt.Sprintf("the file holds %d commands", len(r.Entries)))
	}
	r.End.Tick = sim.Tick(t.Tick)
	if err := f.tick(r, r.End.Tick); err != nil {
		return err
	}
	var ok bool
	if r.End.Seen, ok = t.seen(); !ok {
		return f.wrong(ErrFormat, "the seat is one of edge, side, lid, flat, and the seated edge left or right")
	}
	return f.hash(t.Hash, &r.End.Hash)
}

// nothingMore says whether the file ends after its last line.
func (f *reader) nothingMore() error {
	switch err := f.next(); {
	case err == io.EOF:
		return nil
	case errors.Is(err, ErrCut) || err == nil:
		return f.wrong(ErrFormat, "nothing stands after the line of the end")
	default:
		return err
	}
}
