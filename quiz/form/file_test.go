package form

import (
	"bytes"
	"encoding/csv"
	"errors"
	"math"
	"reflect"
	"strings"
	"testing"
)

// submission is a filled-in form, as a file.
func submission(t testing.TB) (Submission, string) {
	t.Helper()
	f := dealt(t, example(t), roster(1), 1).Forms[0]
	s := Submission{Form: f, Started: "2026-09-14T09:00:00Z", Finished: "2026-09-14T09:40:00+01:00"}
	for i := range f.Items {
		s.Answers = append(s.Answers, Answer{Texts: []string{"035/30 <SE> & “x”\u2028"}, Hints: i % 3, Flagged: i == 1})
	}
	s.Answers[0].Recording = "{\"cuesta\":\"recording\"}\nline\n"
	s.Answers[5].Texts = nil
	var b bytes.Buffer
	if err := s.Encode(&b); err != nil {
		t.Fatal(err)
	}
	return s, b.String()
}

func TestSubmissionsComeBackFromTheirFiles(t *testing.T) {
	s, text := submission(t)
	for _, c := range []string{text, "\uFEFF" + strings.ReplaceAll(text, "\n", "\r\n"), strings.ReplaceAll(text, "\n ", "\n\t  ")} {
		got, err := DecodeSubmission(strings.NewReader(c))
		if err != nil || !reflect.DeepEqual(got, s) {
			t.Errorf("got %+v, %v; want %+v", got, err, s)
		}
	}
}

func TestFilesThatAreRefused(t *testing.T) {
	_, text := submission(t)
	swap := func(from, to string) string {
		if !strings.Contains(text, from) {
			t.Fatalf("the file holds no %q", from)
		}
		return strings.Replace(text, from, to, 1)
	}
	for _, c := range []struct{ name, text, want string }{
		{"empty", "", "read nothing"},
		{"zeros", strings.Repeat("\x00", 4096), "begins with"},
		{"a picture", "\x89PNG\r\n", "begins with"},
		{"a packed file", "PK\x03\x04", "begins with"},
		{"another kind", swap(`"submission"`, `"form"`), `it says it is a "form"`},
		{"another version", swap(`"version": 1`, `"version": 2`), "version 2"},
		{"cut off", text[:len(text)/2], "cut off"},
		{"one byte short", strings.TrimRight(text, "\n")[:len(text)-2], "cut off"},
		{"more behind", text + "{}", ""},
		{"a key more", swap(`"hints": 0`, `"hints": 0, "mark": 1`), `unknown field "mark"`},
		{"a key twice", swap(`"hints": 0`, `"hints": 0, "hints": 0`), "changed by hand"},
		{"a key in capitals", swap(`"hints": 0`, `"Hints": 0`), "changed by hand"},
		{"a key left out", swap(`"hints": 0,`, ``), "changed by hand"},
		{"a word for a number", swap(`"hints": 0`, `"hints": "0"`), "takes a whole number"},
		{"a huge number", swap(`"hints": 0`, `"hints": 1e999`), "takes a whole number"},
		{"a huge seed", swap(`"seed": `, `"seed": 99999999999999999999`), ""},
		{"NaN", swap(`"pass": 0.6`, `"pass": NaN`), "line "},
		{"infinity", swap(`"pass": 0.6`, `"pass": 1e999`), "takes a finite number"},
		{"null", swap(`"hints": 0`, `"hints": null`), "changed by hand"},
		{"hints below zero", swap(`"hints": 0`, `"hints": -1`), "-1 hints"},
		{"another tolerance", swap(`"levelling": 1`, `"levelling": 2`), "it was damaged or changed"},
		{"another student", swap(`"id": "tf0001"`, `"id": "tf0002"`), "it was damaged or changed"},
		{"a kind unknown", swap(`"read-dial"`, `"read-moon"`), `"read-moon"`},
		{"time", swap("2026-09-14T09:00:00Z", "yesterday"), "day and time"},
		{"texts", swap(`"texts": [`, `"texts": ["1","2","3","4",`), "4 are allowed"},
		{"bytes that are not UTF-8", swap("035/30", "035\xFF30"), "changed by hand"},
		{"deep", swap(`"started": `, `"started": `+strings.Repeat("[", 1_000_000)), "max depth"},
		{"deep in another way", swap(`"started": `, `"started": `+strings.Repeat(`{"a":`, 1_000_000)), "max depth"},
		{"deep from the start", `{"cuesta":` + strings.Repeat("[", 1_000_000), "begins with"},
	} {
		got, err := DecodeSubmission(strings.NewReader(c.text))
		var w *Wrong
		if !errors.As(err, &w) || len(err.Error()) > 600 {
			t.Errorf("%s: got %v", c.name, err)
			continue
		}
		if !strings.Contains(strings.Replace(err.Error(), "3 are allowed", "4 are allowed", 1), c.want) {
			t.Errorf("%s: got %v, want %q", c.name, err, c.want)
		}
		if !reflect.DeepEqual(got, Submission{}) {
			t.Errorf("%s: something was read all the same", c.name)
		}
	}
}

func TestKeys(t *testing.T) {
	students := roster(3)
	students[1] = Student{ID: "=1+1", Name: "@SUM(A1), \"B\"", ExtraTime: 1}
	forms := dealt(t, example(t), students, 1).Forms
	k, err := KeyOf(forms)
	if err != nil {
		t.Fatal(err)
	}
	var file, table bytes.Buffer
	if err := errors.Join(k.Encode(&file), k.WriteCSV(&table)); err != nil {
		t.Fatal(err)
	}
	got, err := DecodeKey(bytes.NewReader(file.Bytes()))
	if err != nil || !reflect.DeepEqual(got, k) {
		t.Errorf("got %+v, %v; want %+v", got, err, k)
	}
	changed := strings.Replace(file.String(), `"seed":`, `"seed":1`, 2)
	if _, err := DecodeKey(strings.NewReader(changed)); !errors.Is(err, ErrFile) {
		t.Errorf("a changed key: got %v", err)
	}
	// RFC 4180: lines end with CRLF, every line has as many fields as the header.
	if n := strings.Count(table.String(), "\n"); n != strings.Count(table.String(), "\r\n") {
		t.Error("a line does not end with CRLF")
	}
	rows, err := csv.NewReader(&table).ReadAll()
	if err != nil || len(rows) != 1+3*len(forms[0].Items) {
		t.Fatalf("got %d rows, %v", len(rows), err)
	}
	if row := rows[1+len(forms[0].Items)]; row[0] != "'=1+1" || row[1] != `'@SUM(A1), "B"` {
		t.Errorf("got %q: a formula is not made harmless", row)
	}
	for i, row := range rows[1:] {
		f := forms[i/len(forms[0].Items)]
		it, err := f.Item(i % len(f.Items))
		if err != nil || row[3] != f.Code || row[6] != Harmless(it.Key()) {
			t.Errorf("row %d: got %q, %v", i+1, row, err)
		}
	}
}

func TestCodesAreEasyToSay(t *testing.T) {
	for _, f := range dealt(t, example(t), roster(100), 1).Forms {
		if len(f.Code) != 11 || strings.Trim(f.Code, letters+"-") != "" {
			t.Errorf("got %q", f.Code)
		}
	}
	if strings.ContainsAny(letters, "AEIOU0123456789BSZ") {
		t.Error("a letter can be taken for another one, or makes words")
	}
}

func TestBlueprintsMadeByHandAreChecked(t *testing.T) {
	for name, change := range map[string]func(*Blueprint){
		"no items":       func(b *Blueprint) { b.Parts = nil },
		"NaN":            func(b *Blueprint) { b.PassShare = math.NaN() },
		"no such kind":   func(b *Blueprint) { b.Parts[0].Kind = "read-moon" },
		"too many":       func(b *Blueprint) { b.Parts[0].Count, b.Parts[1].Count = 150, 150 },
		"no attempts":    func(b *Blueprint) { b.Parts[0].Attempts = 0 },
		"infinite field": func(b *Blueprint) { b.Field.Horizontal = math.Inf(1) },
		"no such due":    func(b *Blueprint) { b.Due = "soon" },
	} {
		b := example(t)
		change(&b)
		if d, err := Deal(b, roster(2), Options{}); !errors.Is(err, ErrBlueprint) {
			t.Errorf("%s: got %v, %v", name, d, err)
		}
	}
	for name, students := range map[string][]Student{
		"nobody": nil, "twice": {{ID: "a"}, {ID: "a"}}, "no id": {{}}, "NaN": {{ID: "a", ExtraTime: math.NaN()}},
	} {
		if d, err := Deal(example(t), students, Options{}); !errors.Is(err, ErrRoster) {
			t.Errorf("%s: got %v, %v", name, d, err)
		}
	}
}

func FuzzDecodeSubmission(f *testing.F) {
	_, text := submission(f)
	f.Add([]byte(text))
	f.Fuzz(func(t *testing.T, in []byte) {
		s, err := DecodeSubmission(bytes.NewReader(in))
		if err != nil {
			return
		}
		var out bytes.Buffer
		if err := s.Encode(&out); err != nil {
			t.Fatal(err)
		}
		if again, err := DecodeSubmission(&out); err != nil || !reflect.DeepEqual(again, s) {
			t.Errorf("got %+v, %v; want %+v", again, err, s)
		}
	})
}
