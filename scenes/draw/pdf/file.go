package pdf

import (
	"bytes"
	"fmt"
	"regexp"
	"slices"
	"strconv"
)

// file is a finished file in parts: the body of each object by its number, and
// the numbers of the catalog and of the description.
type file struct {
	objects    map[int][]byte
	last       int
	root, info int
}

var (
	startxref = regexp.MustCompile(`startxref\n(\d+)\n%%EOF\s*$`)
	rootRef   = regexp.MustCompile(`/Root (\d+) 0 R`)
	infoRef   = regexp.MustCompile(`/Info (\d+) 0 R`)
)

// takeApart cuts a file up along its cross-reference table.
func takeApart(raw []byte) (*file, error) {
	m := startxref.FindSubmatch(raw)
	if m == nil {
		return nil, fmt.Errorf("pdf: the file has no end")
	}
	table, _ := strconv.Atoi(string(m[1]))
	if table >= len(raw) {
		return nil, fmt.Errorf("pdf: the table of objects is not at %d", table)
	}
	offsets, err := readTable(raw[table:])
	if err != nil {
		return nil, err
	}
	f := &file{objects: map[int][]byte{}, last: len(offsets) - 1}
	ends := append(slices.Sorted(slices.Values(offsets[1:])), table)
	for n := 1; n < len(offsets); n++ {
		i, _ := slices.BinarySearch(ends, offsets[n])
		head := fmt.Appendf(nil, "%d 0 obj\n", n)
		body := raw[offsets[n]:ends[i+1]]
		if !bytes.HasPrefix(body, head) {
			return nil, fmt.Errorf("pdf: object %d is not at %d", n, offsets[n])
		}
		f.objects[n] = bytes.TrimSuffix(body[len(head):], []byte("endobj\n"))
	}
	f.root, f.info = reference(rootRef, raw[table:]), reference(infoRef, raw[table:])
	return f, nil
}

// readTable reads a cross-reference table of one section; entry 0 is unused.
func readTable(s []byte) ([]int, error) {
	var first, n int
	if _, err := fmt.Sscanf(string(s[:min(len(s), 40)]), "xref\n%d %d\n", &first, &n); err != nil || first != 0 {
		return nil, fmt.Errorf("pdf: the table of objects was not understood")
	}
	lines := bytes.Split(s, []byte("\n"))
	if len(lines) < n+2 {
		return nil, fmt.Errorf("pdf: the table of objects is cut off")
	}
	out := make([]int, n)
	for i := range out {
		v, err := strconv.Atoi(string(lines[i+2][:10]))
		if err != nil {
			return nil, fmt.Errorf("pdf: the table of objects was not understood: %w", err)
		}
		out[i] = v
	}
	return out, nil
}

func reference(re *regexp.Regexp, s []byte) int {
	if m := re.FindSubmatch(s); m != nil {
		n, _ := strconv.Atoi(string(m[1]))
		return n
	}
	return 0
}

// add gives a new object its number.
func (f *file) add() int {
	f.last++
	return f.last
}

func (f *file) set(n int, format string, a ...any) {
	f.objects[n] = fmt.Appendf(nil, format+"\n", a...)
}

// stream is what lies between stream and endstream in an object.
func (f *file) stream(n int) ([]byte, error) {
	_, body, found := bytes.Cut(f.objects[n], []byte("stream\n"))
	end := bytes.LastIndex(body, []byte("\nendstream"))
	if !found || end < 0 {
		return nil, fmt.Errorf("pdf: object %d is no stream", n)
	}
	return body[:end], nil
}

// extend puts entries at the end of the dictionary that an object begins with
// and consists of.
func (f *file) extend(n int, entries string) error {
	body := f.objects[n]
	i := bytes.LastIndex(body, []byte(">>"))
	if i < 0 || bytes.Contains(body, []byte("stream")) {
		return fmt.Errorf("pdf: object %d is no plain dictionary", n)
	}
	out := append(bytes.Clone(body[:i]), '\n')
	out = append(out, entries...)
	f.objects[n] = append(out, body[i:]...)
	return nil
}

// bytes puts the file together again. Its identifier is a digest of what it
// holds.
func (f *file) bytes() []byte {
	out := bytes.NewBufferString("%PDF-1.7\n%\xE2\xE3\xCF\xD3\n")
	offsets := make([]int, f.last+1)
	for n := 1; n <= f.last; n++ {
		offsets[n] = out.Len()
		fmt.Fprintf(out, "%d 0 obj\n", n)
		out.Write(f.objects[n])
		out.WriteString("endobj\n")
	}
	table := out.Len()
	id := digest(out.Bytes())
	fmt.Fprintf(out, "xref\n0 %d\n0000000000 65535 f \n", f.last+1)
	for _, o := range offsets[1:] {
		fmt.Fprintf(out, "%010d 00000 n \n", o)
	}
	fmt.Fprintf(out, "trailer\n<</Size %d /Root %d 0 R /Info %d 0 R /ID [<%s> <%s>]>>\nstartxref\n%d\n%%%%EOF\n",
		f.last+1, f.root, f.info, id, id, table)
	return out.Bytes()
}
