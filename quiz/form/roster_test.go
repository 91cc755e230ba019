package form

import (
	"errors"
	"io"
	"reflect"
	"strings"
	"testing"
)

func TestRosters(t *testing.T) {
	want := []Student{{"tf1", "Ada Moss", 1, ""}, {"tf2", "Fell, Bram", 1.25, ""}}
	for _, c := range []struct{ name, text string }{
		{"plain", "id,name,extra_time\ntf1,Ada Moss,\ntf2,\"Fell, Bram\",1.25\n"},
		{"byte order mark and CRLF", "\uFEFFid,name,extra_time\r\ntf1,Ada Moss,\r\ntf2,\"Fell, Bram\",1.25\r\n"},
		{"semicolons and a decimal comma", "id;name;extra_time\ntf1;Ada Moss;1\ntf2;Fell, Bram;1,25\n"},
		{"tabs", "ID\tName\textra_time\ntf1\tAda Moss\ntf2\tFell, Bram\t1.25"},
		{"other order, spaces, empty lines", "extra_time, name ,id\n\n,Ada Moss, tf1\n,,\n1.25,\"Fell, Bram\",tf2\n"},
	} {
		got, err := ReadRoster(strings.NewReader(c.text))
		if err != nil || !reflect.DeepEqual(got, want) {
			t.Errorf("%s: got %v, %v; want %v", c.name, got, err, want)
		}
	}
	got, err := ReadRoster(strings.NewReader("id,name,class\n=1+1,+Ada,b\n"))
	if err != nil || !reflect.DeepEqual(got, []Student{{"=1+1", "+Ada", 1, "b"}}) {
		t.Errorf("formulas and classes: got %v, %v", got, err)
	}
}

func TestRostersThatAreRefused(t *testing.T) {
	for _, c := range []struct {
		name, text string
		want       []string
	}{
		{"empty", "", []string{"it names no student"}},
		{"no students", "id,name\n", []string{"it names no student"}},
		{"no header", "tf1,Ada Moss\n", []string{`line 1: read the column "tf1"`, `line 1: read the column "Ada Moss"`, "line 1: there is no column id", "line 1: there is no column name"}},
		{"slips in the header", "id,nmae,extra-time\n", []string{"perhaps name was meant", "perhaps extra_time was meant", "there is no column name"}},
		{"a column twice", "id,name,id\n", []string{"line 1: the column id stands here twice"}},
		{"ids twice", "id,name\na,A\nb,B\nA,C\nb,D\n", []string{`line 4: the id "A" stands in line 2 too`, `line 5: the id "b" stands in line 3 too`}},
		{"no id", "id,name\n,A\n", []string{"line 2: the id is"}},
		{"extra time", "id,name,extra_time\na,A,0.5\nb,B,twice\nc,C,NaN\nd,D,1e9\n", []string{"line 2: extra_time", "line 3: extra_time", "line 4: extra_time", "line 5: extra_time"}},
		{"too many values", "id,name\na,A,x\n", []string{"line 2: read 3 values for 2 columns"}},
		{"quotes", "id,name\na,\"A\nb,B\n", []string{"line 2: column"}},
		{"line in a name", "id,name\na,\"A\nB\"\n", []string{"line 2: name and class"}},
		{"Latin-1", "id,name\na,J\xE4rn\n", []string{"line 2: read bytes that are not UTF-8"}},
		{"UTF-16", "\xFF\xFEi\x00d\x00", []string{"UTF-16"}},
		{"a workbook", "PK\x03\x04....", []string{"workbook"}},
		{"zeros", strings.Repeat("\x00", 100), []string{"it is no text"}},
		{"long name", "id,name\na," + strings.Repeat("x", 201) + "\n", []string{"line 2: name and class"}},
	} {
		got, err := ReadRoster(strings.NewReader(c.text))
		if !errors.Is(err, ErrRoster) || got != nil {
			t.Errorf("%s: got %v, %v; want a refusal", c.name, got, err)
			continue
		}
		lines := said(t, err)
		if len(lines) != len(c.want) {
			t.Errorf("%s: got %q, want %d problems", c.name, lines, len(c.want))
			continue
		}
		for i, w := range c.want {
			if !strings.Contains(lines[i], w) {
				t.Errorf("%s: got %q, want %q", c.name, lines[i], w)
			}
		}
	}
}

// endless is a source of one byte without end.
type endless byte

func (e endless) Read(p []byte) (int, error) {
	for i := range p {
		p[i] = byte(e)
	}
	return len(p), nil
}

func TestEndlessFilesAreRefused(t *testing.T) {
	const some = 1 << 30
	for _, c := range []struct {
		name string
		read func(io.Reader) error
	}{
		{"blueprint", func(r io.Reader) error { _, err := ReadBlueprint(r); return err }},
		{"roster", func(r io.Reader) error { _, err := ReadRoster(r); return err }},
		{"form", func(r io.Reader) error { _, err := DecodeForm(r); return err }},
		{"submission", func(r io.Reader) error { _, err := DecodeSubmission(r); return err }},
		{"key", func(r io.Reader) error { _, err := DecodeKey(r); return err }},
	} {
		for _, start := range []string{"", "id,name\n", `{"cuesta":"`} {
			for _, b := range []byte{0, 'x', '['} {
				if c.name == "key" && start != "" {
					continue // it may be large, and reading it takes long
				}
				in := io.LimitReader(io.MultiReader(strings.NewReader(start), endless(b)), some)
				var w *Wrong
				if err := c.read(in); !errors.As(err, &w) || len(err.Error()) > 500 {
					t.Errorf("%s of %q after %q: got %v", c.name, b, start, err)
				}
			}
		}
	}
}

func TestManyProblemsAreCutShort(t *testing.T) {
	_, err := ReadRoster(strings.NewReader("id,name\n" + strings.Repeat("a,A\n", 5000)))
	if lines := said(t, err); len(lines) != mostProblems+1 || !strings.Contains(lines[mostProblems], "perhaps more") {
		t.Errorf("got %d problems", len(lines))
	}
}

func FuzzReadRoster(f *testing.F) {
	f.Add("id,name,extra_time,class\ntf1,\"Moss, Ada\",1.5,a\n")
	f.Add("\uFEFFid;name\r\n1;2\r\n")
	f.Fuzz(func(t *testing.T, text string) {
		students, err := ReadRoster(strings.NewReader(text))
		if err != nil {
			if len(said(t, err)) == 0 || len(err.Error()) > 20_000 {
				t.Errorf("got %v", err)
			}
			return
		}
		if err := checkRoster(students); err != nil {
			t.Errorf("a roster that was taken is refused: %v", err)
		}
	})
}
