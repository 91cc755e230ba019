package spoken

import (
	"bufio"
	"errors"
	"fmt"
	"io"
	"strings"
)

// Run answers the lines of in until quit or the end of the input: in words, or
// with objects one a line. The error is that of in or out.
func (b *Bench) Run(in io.Reader, out io.Writer, objects bool) error {
	lines := bufio.NewReaderSize(in, 1<<16)
	for {
		text, err := nextLine(lines)
		if err != nil && !errors.Is(err, io.EOF) {
			return err
		}
		end := err != nil
		if r, told := b.Line(text); told {
			if err := r.write(out, objects); err != nil {
				return err
			}
			end = end || r.End
		}
		if end {
			return nil
		}
	}
}

func (r Reply) write(out io.Writer, objects bool) error {
	if objects {
		return r.WriteJSON(out)
	}
	_, err := fmt.Fprintln(out, r.Said)
	return err
}

// nextLine reads one line. Of a line that is too long it keeps what is needed
// to refuse it, so that no input fills the memory.
func nextLine(r *bufio.Reader) (string, error) {
	var text strings.Builder
	for {
		part, err := r.ReadSlice('\n')
		if room := LongestLine + 1 - text.Len(); room > 0 {
			text.Write(part[:min(room, len(part))])
		}
		if !errors.Is(err, bufio.ErrBufferFull) {
			return strings.TrimRight(text.String(), "\r\n"), err
		}
	}
}
