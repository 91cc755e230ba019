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
	const head = "id name class form points of percent passed finished answered item_1 item_2 item_3 item_4 item_5 remarks"
	if got := strings.Join(rows[0], " "); got != head {
		t.Errorf("the header is %q, want %q", got, head)
	}
	if len(rows) != 1+len(all)+1 {
		t.Errorf("%d lines, want one a student of the roster", len(rows)-1)
	}
	if got := rows[2][1]; got != "'"+hostile {
		t.Errorf("the name is %q, want it with an apostrophe in front", got)
	}
	if got := rows[6]; got[0] != "tf06" || got[4] != "" || got[15] != "no submission" {
		t.Errorf("who is missing has the line %q", got)
	}
	if got := rows[1][15]; !strings.Contains(got, "handed in more than once") {
		t.Errorf("the remark of a double is %q", got)
	}
}

// A lab is handed in by nobody: who has stations open has not finished, and the
// cell says how many are taken. A quiz is finished when it is handed in.
func TestALabIsFinishedStationByStation(t *testing.T) {
	items := []grade.ItemResult{{Answered: true}, {}, {Answered: true}}
	all := []grade.ItemResult{{Answered: true}, {Answered: true}, {Answered: true}}
	for kind, want := range map[string][2]string{form.LabStation: {"", "2026-09-14T10:00:00Z"}, "read-dial": {"2026-09-14T10:00:00Z", "2026-09-14T10:00:00Z"}} {
		rep := grade.Report{
			Blueprint: form.Blueprint{Parts: []form.Part{{Kind: kind, Count: 3}}},
			Results: []grade.Result{{ID: "a", Finished: "2026-09-14T10:00:00Z", Items: items},
				{ID: "b", Finished: "2026-09-14T10:00:00Z", Items: all}},
		}
		rows, err := csv.NewReader(strings.NewReader(page(t, func(b *bytes.Buffer) error { return gradebook.WriteGrades(b, rep) }))).ReadAll()
		if err != nil {
			t.Fatal(err)
		}
		for i, answered := range []string{"2 of 3", "3 of 3"} {
			if got := rows[i+1]; got[8] != want[i] || got[9] != answered {
				t.Errorf("%s: finished %q, answered %q, want %q and %q", kind, got[8], got[9], want[i], answered)
			}
		}
	}
}

// A mark at the head of the file, by which some spreadsheets know UTF-8, breaks
// the first column of other programs: there is none (RFC 3629, section 6, and
// common practice).
func TestGradesBeginWithTheHeader(t *testing.T) {
	rep := grade.Report{Results: []grade.Result{{ID: "a", Name: "Íñigo Ståhlbäck"}}}
	text := page(t, func(b *bytes.Buffer) error { return gradebook.WriteGrades(b, rep) })
	if !strings.HasPrefix(text, "id,") || !strings.Contains(text, "Íñigo Ståhlbäck") {
		t.Errorf("got %q, want UTF-8 from the first letter", text)
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

// What anybody changed in a page is theirs, and so is any other file.
func TestFeedbackKnowsItsOwnPages(t *testing.T) {
	_, all := class(t, 3)
	own := page(t, func(b *bytes.Buffer) error { return gradebook.WriteFeedback(b, all[0]) })
	if !gradebook.IsFeedback([]byte(own)) {
		t.Error("a page as it was written is not known")
	}
	for name, text := range map[string]string{
		"a word changed": strings.Replace(own, "Tolerance", "tolerance", 1), "a remark behind": own + "See me.\n",
		"cut off": own[:len(own)/2], "empty": "", "another": "<!-- cuesta feedback 00 -->\n", "without a seal": own[:strings.LastIndex(own, "<!--")],
	} {
		if gradebook.IsFeedback([]byte(text)) && text != own {
			t.Errorf("%s: taken for our own", name)
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
