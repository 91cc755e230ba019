package sitting

import (
	"bufio"
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"hash/crc32"
	"io"
	"os"
	"path/filepath"
	"strconv"

	"cuesta/quiz/form"
)

// Ending is the ending of a journal, behind form.FileName.
const Ending = ".journal"

// What can be wrong with a journal.
var (
	ErrJournal = errors.New("not the journal of this form")
	ErrShared  = errors.New("another program is writing this journal")
	ErrBroken  = errors.New("the journal cannot be written any more")
)

// The journal is text: each line is the checksum of the rest (CRC-32 of
// Castagnoli, eight hexadecimal digits), a space, and one JSON object. The first
// names the form; each of the others is an entry, counted from 1.

type headLine struct {
	Cuesta  string `json:"cuesta"`
	Version int    `json:"version"`
	Code    string `json:"code"`
	Started string `json:"started"`
}

type entryLine struct {
	N    int    `json:"n"`
	Do   string `json:"do"`
	Item int    `json:"item"`
	Text string `json:"text,omitempty"`
	Keep int    `json:"keep,omitempty"`
	At   string `json:"at"`
}

const (
	journalName    = "journal"
	journalVersion = 1
	longestLine    = 2*form.LongestRecording + 1<<12
	largestJournal = 256 << 20
)

// File is what a journal is written to; *os.File is one.
type File interface {
	io.Writer
	Sync() error
	Truncate(int64) error
	Stat() (os.FileInfo, error)
	Close() error
}

// Journal is a sitting whose entries are on the disk before they count. Make
// one with Open; it is not safe for use by several goroutines at once.
type Journal struct {
	*Sitting
	file    File
	size    int64 // of what is known to be whole
	entries int
	torn    bool
	broken  bool
}

// Open begins the journal of a form at a time, or goes on with one that is
// there. A last line that was torn by a crash is cut off; anything else that is
// wrong leaves the file as it is, and the error wraps ErrJournal.
func Open(path string, f form.Form, at string) (*Journal, error) {
	file, err := os.OpenFile(path, os.O_RDWR|os.O_CREATE|os.O_APPEND, 0o600)
	if err != nil {
		return nil, err
	}
	j, err := open(file, f, at)
	if err != nil {
		file.Close()
		return nil, err
	}
	return j, syncFolder(filepath.Dir(path))
}

// readable is a File that holds a journal already, or nothing.
type readable interface {
	File
	io.Reader
}

func open(file readable, f form.Form, at string) (*Journal, error) {
	if info, err := file.Stat(); err != nil {
		return nil, err
	} else if info.Size() > largestJournal {
		return nil, fmt.Errorf("%w: it is longer than %d MB", ErrJournal, largestJournal>>20)
	}
	j, err := read(file, f)
	if err != nil {
		return nil, err
	}
	j.file = file
	if j.torn {
		if err := file.Truncate(j.size); err != nil {
			return nil, err
		}
	}
	if j.Sitting != nil {
		return j, nil
	}
	if j.Sitting, err = New(f, at); err != nil {
		return nil, err
	}
	return j, j.write(headLine{journalName, journalVersion, f.Code, at})
}

// syncFolder makes the name of a new file last, where the system can.
func syncFolder(dir string) error {
	d, err := os.Open(dir)
	if err != nil {
		return nil // the file itself is open and safe
	}
	defer d.Close()
	_ = d.Sync() // not every system can
	return nil
}

// Resumed says whether the journal held entries when it was opened.
func (j *Journal) Resumed() bool { return j.entries > 0 }

// Torn says whether a torn last line was cut off when the journal was opened.
func (j *Journal) Torn() bool { return j.torn }

// Do takes an entry: it is checked, written, safe on the disk, and only then
// carried out. After an error the sitting is as it was.
func (j *Journal) Do(e Entry) error {
	if err := j.Check(e); err != nil {
		return err
	}
	if err := j.write(entryLine{j.entries + 1, e.Do.String(), e.Item, e.Text, e.Keep, e.At}); err != nil {
		return err
	}
	j.entries++
	j.apply(e)
	return nil
}

// Close closes the file.
func (j *Journal) Close() error { return j.file.Close() }

// write appends a line and waits until it is safe. A line that could not be
// written whole is cut off again.
func (j *Journal) write(v any) error {
	if j.broken {
		return ErrBroken
	}
	if info, err := j.file.Stat(); err != nil {
		return err
	} else if info.Size() != j.size {
		return ErrShared
	}
	text := lineOf(v)
	if j.size+int64(len(text)) > largestJournal {
		return fmt.Errorf("%w: it is full", ErrBroken)
	}
	_, err := j.file.Write(text)
	if err == nil {
		err = j.file.Sync()
	}
	if err != nil {
		if cut := j.file.Truncate(j.size); cut != nil {
			j.broken = true
		}
		return err
	}
	j.size += int64(len(text))
	return nil
}

// lineOf is a line with its checksum.
func lineOf(v any) []byte {
	var b bytes.Buffer
	e := json.NewEncoder(&b)
	e.SetEscapeHTML(false)
	if err := e.Encode(v); err != nil {
		panic("sitting: an entry that is no JSON: " + err.Error())
	}
	return append(fmt.Appendf(nil, "%08x ", sumOf(bytes.TrimSuffix(b.Bytes(), []byte("\n")))), b.Bytes()...)
}

var table = crc32.MakeTable(crc32.Castagnoli)

func sumOf(b []byte) uint32 { return crc32.Checksum(b, table) }

// read plays a journal again. Without a whole first line there is no sitting
// yet.
func read(from io.Reader, f form.Form) (*Journal, error) {
	j := &Journal{}
	in := bufio.NewReaderSize(from, 1<<16)
	for n := 1; ; n++ {
		line, err := wholeLine(in)
		if err == io.EOF && len(line) == 0 {
			return j, nil
		}
		if err != nil && err != io.EOF {
			return nil, lineError(n, err)
		}
		body, ok := intact(line)
		if !ok {
			if _, err := in.Peek(1); err == io.EOF {
				j.torn = true
				return j, nil
			}
			return nil, lineError(n, errors.New("it was damaged: its checksum does not fit"))
		}
		if err := j.play(body, f); err != nil {
			return nil, lineError(n, err)
		}
		j.size += int64(len(line))
	}
}

func lineError(n int, err error) error { return fmt.Errorf("%w: line %d: %w", ErrJournal, n, err) }

// wholeLine reads a line of bounded length, with its end if it has one.
func wholeLine(in *bufio.Reader) ([]byte, error) {
	var line []byte
	for {
		part, err := in.ReadSlice('\n')
		line = append(line, part...)
		if len(line) > longestLine {
			return nil, errors.New("it is too long")
		}
		if !errors.Is(err, bufio.ErrBufferFull) {
			return line, err
		}
	}
}

// intact is the object of a line whose end and checksum are right.
func intact(line []byte) ([]byte, bool) {
	if len(line) < 10 || line[8] != ' ' || line[len(line)-1] != '\n' {
		return nil, false
	}
	sum, err := strconv.ParseUint(string(line[:8]), 16, 32)
	body := line[9 : len(line)-1]
	return body, err == nil && uint32(sum) == sumOf(body)
}

// play carries a line out.
func (j *Journal) play(body []byte, f form.Form) error {
	if j.Sitting == nil {
		return j.playHead(body, f)
	}
	var l entryLine
	if err := strict(body, &l); err != nil {
		return err
	}
	do, ok := deedOf(l.Do)
	if !ok || l.N != j.entries+1 {
		return fmt.Errorf("read entry %d, %q; it would be entry %d", l.N, l.Do, j.entries+1)
	}
	if err := j.Sitting.Do(Entry{do, l.Item, l.Text, l.Keep, l.At}); err != nil {
		return err
	}
	j.entries++
	return nil
}

func (j *Journal) playHead(body []byte, f form.Form) (err error) {
	var h headLine
	if err := strict(body, &h); err != nil {
		return err
	}
	if h.Cuesta != journalName || h.Version != journalVersion || h.Code != f.Code {
		return fmt.Errorf("it belongs to %s %q, version %d; this form has the code %s", h.Cuesta, h.Code, h.Version, f.Code)
	}
	j.Sitting, err = New(f, h.Started)
	return err
}

func strict(body []byte, v any) error {
	d := json.NewDecoder(bytes.NewReader(body))
	d.DisallowUnknownFields()
	return d.Decode(v)
}
