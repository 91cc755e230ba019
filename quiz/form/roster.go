package form

import (
	"bufio"
	"bytes"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"strconv"
	"strings"
	"unicode/utf8"
)

// Bounds of a roster.
const (
	LargestRoster = 16 << 20 // bytes
	MostStudents  = 100_000
	mostProblems  = 20 // told of one roster
)

// columns are the columns a roster can have; id and name it must.
var columns = []string{"id", "name", "extra_time", "class"}

// ReadRoster reads a roster (CSV): a first line with the names of its columns,
// id, name and, if wanted, extra_time and class, in any order, then a line for
// each student. The separator is a comma, a semicolon or a tab, as the first
// line shows. extra_time is a factor on the time limit, such as 1.25; an empty
// one is 1. Students of one class share no plane. An error of the file is a
// *Wrong with line numbers; others are those of the reader.
func ReadRoster(from io.Reader) ([]Student, error) {
	in := &counted{from: from, left: LargestRoster}
	text := bufio.NewReaderSize(in, 64<<10)
	separator, err := rosterStart(text)
	if err != nil {
		return nil, err
	}
	r := rosterReader{csv: csv.NewReader(text), seen: map[string]int{}}
	r.csv.Comma = separator
	r.csv.FieldsPerRecord = -1
	r.csv.ReuseRecord = true
	err = r.run()
	if in.over != nil {
		return nil, in.over
	}
	return r.students, err
}

// counted reads no more than what is left, and no line without an end.
type counted struct {
	from io.Reader
	left int
	line int // bytes of the line so far
	over error
}

// longestRow bounds a line of a roster, in bytes.
const longestRow = 64 << 10

// Read reads and counts.
func (c *counted) Read(p []byte) (int, error) {
	switch {
	case c.left <= 0:
		c.over = wrong(ErrRoster, "it is longer than %d MB; a roster has a short line for each student", LargestRoster>>20)
		return 0, io.EOF
	case c.line > longestRow:
		c.over = wrong(ErrRoster, "a line is longer than %d KB; a roster has a short line for each student", longestRow>>10)
		return 0, io.EOF
	}
	n, err := c.from.Read(p[:min(len(p), c.left)])
	c.left -= n
	c.line += n
	if i := bytes.LastIndexByte(p[:n], '\n'); i >= 0 {
		c.line = n - i - 1
	}
	return n, err
}

// rosterStart looks at the first bytes: the byte order mark, encodings that
// are not UTF-8, files that are no text, and the separator.
func rosterStart(text *bufio.Reader) (rune, error) {
	b, err := text.Peek(32 << 10)
	if err != nil && err != io.EOF && !errors.Is(err, bufio.ErrBufferFull) {
		return 0, err
	}
	switch {
	case bytes.HasPrefix(b, []byte("\xFF\xFE")) || bytes.HasPrefix(b, []byte("\xFE\xFF")):
		return 0, wrong(ErrRoster, "it is written in UTF-16; save it as CSV in UTF-8")
	case bytes.HasPrefix(b, []byte("PK\x03\x04")):
		return 0, wrong(ErrRoster, "it is a workbook or another packed file; save it as CSV in UTF-8")
	case bytes.IndexByte(b, 0) >= 0:
		return 0, wrong(ErrRoster, "it is no text; save it as CSV in UTF-8")
	}
	if bytes.HasPrefix(b, []byte("\uFEFF")) {
		if _, err := text.Discard(3); err != nil {
			return 0, err
		}
		b = b[3:]
	}
	first, _, _ := bytes.Cut(b, []byte("\n"))
	for _, s := range []rune{';', '\t'} {
		if bytes.ContainsRune(first, s) && !bytes.ContainsRune(first, ',') {
			return s, nil
		}
	}
	return ',', nil
}

type rosterReader struct {
	csv      *csv.Reader
	column   [4]int // where each of columns stands, or −1
	students []Student
	seen     map[string]int // line of each id, in small letters
	problems []Problem
}

func (r *rosterReader) blame(line int, format string, a ...any) {
	r.problems = append(r.problems, Problem{Line: line, Said: fmt.Sprintf(format, a...)})
}

func (r *rosterReader) run() error {
	for {
		row, err := r.csv.Read()
		if err == io.EOF {
			break
		}
		if err := r.row(row, err); err != nil {
			return err
		}
		if len(r.problems) >= mostProblems {
			r.problems = append(r.problems, Problem{Said: "and perhaps more: the reading ended here"})
			break
		}
		if len(r.students) > MostStudents {
			return wrong(ErrRoster, "it has more than %d students", MostStudents)
		}
	}
	if len(r.problems) == 0 && len(r.students) == 0 {
		return wrong(ErrRoster, "it names no student; write the line id,name and then a line for each student")
	}
	if len(r.problems) > 0 {
		r.students = nil
		return &Wrong{Problems: r.problems, Err: ErrRoster}
	}
	return nil
}

// row takes a line in. The error ends the reading.
func (r *rosterReader) row(row []string, err error) error {
	var parse *csv.ParseError
	switch {
	case errors.As(err, &parse):
		r.blame(parse.StartLine, "column %d: %v; put a value that holds quotes in quotes, and double those inside", parse.Column, parse.Err)
		return &Wrong{Problems: r.problems, Err: ErrRoster}
	case err != nil:
		return err
	}
	line, _ := r.csv.FieldPos(0)
	for _, cell := range row {
		if !utf8.ValidString(cell) {
			r.blame(line, "read bytes that are not UTF-8; save the file as CSV in UTF-8")
			return nil
		}
	}
	if r.column == [4]int{} {
		return r.header(line, row)
	}
	r.student(line, row)
	return nil
}

// header finds the columns; without id and name nothing can be read.
func (r *rosterReader) header(line int, row []string) error {
	r.column = [4]int{-1, -1, -1, -1}
	for i, cell := range row {
		name := strings.ToLower(strings.TrimSpace(cell))
		c := indexOf(columns, name)
		switch {
		case c < 0:
			r.blame(line, "read the column %s; %s", shortened(cell), wouldColumn(name))
		case r.column[c] >= 0:
			r.blame(line, "the column %s stands here twice", name)
		default:
			r.column[c] = i
		}
	}
	for c, name := range columns[:2] {
		if r.column[c] < 0 {
			r.blame(line, "there is no column %s; the first line names the columns, such as id,name,extra_time", name)
		}
	}
	if len(r.problems) > 0 {
		return &Wrong{Problems: r.problems, Err: ErrRoster}
	}
	return nil
}

func indexOf(words []string, s string) int {
	for i, w := range words {
		if w == s {
			return i
		}
	}
	return -1
}

func wouldColumn(name string) string {
	if n := Nearest(name, columns); n != "" {
		return "perhaps " + n + " was meant"
	}
	return "the columns are " + strings.Join(columns, ", ") + "; leave others out"
}

func (r *rosterReader) student(line int, row []string) {
	cell := func(c int) string {
		if i := r.column[c]; i >= 0 && i < len(row) {
			return strings.TrimSpace(row[i])
		}
		return ""
	}
	s := Student{ID: cell(0), Name: cell(1), ExtraTime: 1, Class: cell(3)}
	if s.ID == "" && s.Name == "" && strings.Join(row, "") == "" {
		return
	}
	if len(row) > r.width() {
		r.blame(line, "read %d values for %d columns; put a value that holds the separator in quotes", len(row), r.width())
		return
	}
	if text := cell(2); text != "" {
		x, err := strconv.ParseFloat(strings.Replace(text, ",", ".", 1), 64)
		if err != nil || !(x >= 1 && x <= mostExtra) {
			r.blame(line, "extra_time: read %s; write a factor from 1 to %d, such as 1.25", shortened(text), mostExtra)
			return
		}
		s.ExtraTime = x
	}
	if err := s.check(); err != nil {
		r.blame(line, "%v", err)
		return
	}
	r.add(line, s)
}

// width is the number of columns.
func (r *rosterReader) width() int {
	n := 0
	for _, i := range r.column {
		n = max(n, i+1)
	}
	return n
}

// add takes a student in, unless the id is there already.
func (r *rosterReader) add(line int, s Student) {
	low := strings.ToLower(s.ID)
	if before, ok := r.seen[low]; ok {
		r.blame(line, "the id %s stands in line %d too; every student has an id of their own, whatever its capitals", shortened(s.ID), before)
		return
	}
	r.seen[low] = line
	r.students = append(r.students, s)
}
