package gradebook_test

import (
	"bytes"
	"encoding/csv"
	"errors"
	"regexp"
	"strings"
	"testing"

	"cuesta/quiz/form"
	"cuesta/quiz/grade"
	"cuesta/quiz/gradebook"
)

// record is a line of RFC 4180, section 2: fields parted by commas, each bare
// or in quotes with quotes doubled, ended by CR LF.
var record = regexp.MustCompile(`\A(?:(?:[^",\r\n]*|"(?:[^"]|"")*")(?:,|\r\n))+\z`)

func TestGradesAreRFC4180(t *testing.T) {
	rep, all := class(t, 6)
	text := page(t, func(b *bytes.Buffer) error { return gradebook.WriteGrades(b, rep) })
	if !record.MatchString(text) {
		t.Errorf("not as RFC 4180 has it:\n%s", text)
	}
	if strings.Count(text, "\n") != strings.Count(text, "\r\n") || !strings.HasSuffix(text, "\r\n") {
		t.Error("a line does not end with CR LF")
	}
	rows, err := csv.NewReader(strings.NewReader(text)).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	const head = "id name class form points of percent passed finished item_1 item_2 item_3 item_4 item_5 remarks"
	if got := strings.Join(rows[0], " "); got != head {
		t.Errorf("the header is %q, want %q", got, head)
	}
	if len(rows) != 1+len(all)+1 {
		t.Errorf("%d lines, want one a student of the roster", len(rows)-1)
	}
	if got := rows[2][1]; got != "'"+hostile {
		t.Errorf("the name is %q, want it with an apostrophe in front", got)
	}
	if got := rows[6]; got[0] != "tf06" || got[4] != "" || got[14] != "no submission" {
		t.Errorf("who is missing has the line %q", got)
	}
	if got := rows[1][14]; !strings.Contains(got, "handed in more than once") {
		t.Errorf("the remark of a double is %q", got)
	}
}

// Signs that begin a formula in common spreadsheets (common practice; OWASP
// names = + - @, tab and carriage return, from memory).
func TestNoCellBeginsAFormula(t *testing.T) {
	for _, first := range []string{"=", "+", "-", "@", "\t", "\r"} {
		evil := first + "1+1"
		rep := grade.Report{
			Results: []grade.Result{{ID: evil, Name: evil, Class: evil, Code: evil, Finished: evil, Of: 1}},
			Missing: []form.Student{{ID: evil, Name: evil, Class: evil}},
			Doubles: []grade.Double{{ID: evil, Left: evil}},
		}
		text := page(t, func(b *bytes.Buffer) error { return gradebook.WriteGrades(b, rep) })
		rows, err := csv.NewReader(strings.NewReader(text)).ReadAll()
		if err != nil {
			t.Fatal(err)
		}
		for _, row := range rows {
			for _, cell := range row {
				if cell != "" && strings.ContainsRune("=+-@\t\r", rune(cell[0])) {
					t.Errorf("the cell %q begins a formula", cell)
				}
			}
		}
	}
}

type full struct{}

func (full) Write([]byte) (int, error) { return 0, errors.New("the disk is full") }

func TestWriteErrorsComeBack(t *testing.T) {
	rep, all := class(t, 3)
	for what, err := range map[string]error{
		"grades":   gradebook.WriteGrades(full{}, rep),
		"report":   gradebook.WriteReport(full{}, rep, ""),
		"feedback": gradebook.WriteFeedback(full{}, all[0]),
	} {
		if err == nil || !strings.Contains(err.Error(), "the disk is full") {
			t.Errorf("%s: %v", what, err)
		}
	}
}
