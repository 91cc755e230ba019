package form

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"regexp"
	"strconv"
	"strings"

	"cuesta/quiz/written"
)

// Sizes in bytes above which files are not read, and their version.
const (
	LargestForm       = 1 << 20
	LargestSubmission = 64 << 20
	LargestKey        = 256 << 20
	version           = 1
)

// The endings of the files of a student, behind FileName.
const (
	FormEnding       = ".form.json"
	SubmissionEnding = ".submission.json"
)

// head is how every file begins.
type head struct {
	Cuesta  string `json:"cuesta"`
	Version int    `json:"version"`
}

// encode writes a file: one object, indented, so that it can be looked at.
func encode(to io.Writer, v any) error {
	text, err := marshal(v)
	if err != nil {
		return err
	}
	var b bytes.Buffer
	if err := json.Indent(&b, text, "", " "); err != nil {
		return err
	}
	_, err = to.Write(b.Bytes())
	return err
}

func marshal(v any) ([]byte, error) {
	var b bytes.Buffer
	e := json.NewEncoder(&b)
	e.SetEscapeHTML(false)
	err := e.Encode(v)
	return b.Bytes(), err
}

// decode reads a file of a kind into v. It takes only what encode would write,
// but for white space: no unknown key, none twice, none in other letters,
// nothing behind the end. An error of the file is a *Wrong.
func decode(from io.Reader, largest int, kind string, v any) error {
	text, err := readAll(from, largest, kind)
	if err != nil {
		return err
	}
	d := json.NewDecoder(bytes.NewReader(text))
	d.DisallowUnknownFields()
	if err := d.Decode(v); err != nil {
		return jsonProblem(text, err)
	}
	return sameAgain(text, v)
}

// readAll reads the file, and leaves one that cannot be right unread.
func readAll(from io.Reader, largest int, kind string) ([]byte, error) {
	start := make([]byte, 512)
	n, err := io.ReadFull(from, start)
	if err != nil && err != io.EOF && err != io.ErrUnexpectedEOF {
		return nil, err
	}
	start = bytes.TrimPrefix(start[:n], []byte("\uFEFF"))
	if err := checkHead(start, kind); err != nil {
		return nil, err
	}
	rest, err := io.ReadAll(io.LimitReader(from, int64(largest-n)+1))
	if err != nil {
		return nil, err
	}
	if n+len(rest) > largest {
		return nil, wrong(ErrFile, "it is longer than %d MB, the most a %s can be", largest>>20, kind)
	}
	return append(start, rest...), nil
}

// begun is how a file begins, without its white space.
var begun = regexp.MustCompile(`^\{"cuesta":"([^"]*)","version":(-?[0-9]+)[,}]`)

// checkHead looks at kind and version, which decide how the rest is read.
func checkHead(start []byte, kind string) error {
	words := strings.Fields(strings.ToValidUTF8(string(start), "·"))
	text := strings.Join(words, "")
	h := begun.FindStringSubmatch(text)
	switch {
	case text == "":
		return wrong(ErrFile, "read nothing; a %s begins with {\"cuesta\": %q", kind, kind)
	case h == nil:
		return wrong(ErrFile, "read %s; a %s begins with {\"cuesta\": %q, \"version\": %d", shortened(strings.Join(words, " ")), kind, kind, version)
	case h[1] != kind:
		return wrong(ErrFile, "it says it is a %s; this takes a %s", shortened(h[1]), kind)
	case h[2] != strconv.Itoa(version):
		return wrong(ErrVersion, "it has version %s; this program reads version %d", h[2], version)
	}
	return nil
}

// jsonProblem says in plain words what the decoder missed, and where.
func jsonProblem(text []byte, err error) error {
	var syntax *json.SyntaxError
	var kind *json.UnmarshalTypeError
	switch {
	case errors.As(err, &syntax) && int(syntax.Offset) >= len(bytes.TrimRight(text, " \t\r\n")) && strings.Contains(err.Error(), "unexpected end"):
		return wrong(ErrFile, "it is cut off: it ends before its last bracket")
	case errors.As(err, &syntax):
		return problemAt(text, int(syntax.Offset)-1, "%v", syntax)
	case errors.As(err, &kind):
		return problemAt(text, int(kind.Offset)-1, "%s takes %s, not %s", kind.Field, plainType(kind.Type.Kind().String()), kind.Value)
	case errors.Is(err, io.ErrUnexpectedEOF):
		return wrong(ErrFile, "it is cut off: it ends before its last bracket")
	case strings.Contains(err.Error(), "unknown field"):
		return wrong(ErrFile, "it holds an %s", strings.TrimPrefix(err.Error(), "json: "))
	}
	return wrong(ErrFile, "%v", err)
}

func problemAt(text []byte, offset int, format string, a ...any) error {
	line, column := written.Place(text, max(0, offset))
	return &Wrong{Err: ErrFile, Problems: []Problem{{Line: line, Column: column, Said: fmt.Sprintf(format, a...)}}}
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
	case "slice":
		return "a list"
	}
	return "a text"
}

// sameAgain says whether the file is what would be written for what was read.
func sameAgain(text []byte, v any) error {
	again, err := marshal(v)
	if err != nil {
		return wrong(ErrFile, "%v", err)
	}
	var got, want bytes.Buffer
	if err := json.Compact(&got, text); err != nil {
		return jsonProblem(text, err)
	}
	if err := json.Compact(&want, again); err != nil {
		return wrong(ErrFile, "%v", err)
	}
	g, w := got.Bytes(), want.Bytes()
	if bytes.Equal(g, w) {
		return nil
	}
	n := 0
	for n < min(len(g), len(w)) && g[n] == w[n] {
		n++
	}
	return wrong(ErrFile, "it was changed by hand or another program: behind %s it reads %s and would read %s",
		shortened(excerpt(g, n-20, n)), shortened(excerpt(g, n, n+20)), shortened(excerpt(w, n, n+20)))
}

func excerpt(b []byte, from, to int) string {
	return strings.ToValidUTF8(string(b[max(0, min(from, len(b))):max(0, min(to, len(b)))]), "·")
}
