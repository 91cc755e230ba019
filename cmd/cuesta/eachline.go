package main

import (
	"bufio"
	"errors"
	"io"
	"strings"
)

// eachLine hands on the lines of the input until it is over, or the input is.
func eachLine(in io.Reader, over func() bool, line func(string)) error {
	lines := bufio.NewReaderSize(in, 1<<12)
	for !over() {
		text, err := boundedLine(lines)
		if err != nil && !errors.Is(err, io.EOF) {
			return err
		}
		line(text)
		if err != nil {
			return nil
		}
	}
	return nil
}

// boundedLine reads one line; of one that is too long it keeps what is needed
// to refuse it.
func boundedLine(r *bufio.Reader) (string, error) {
	const longest = 4096
	var text strings.Builder
	for {
		part, err := r.ReadSlice('\n')
		if room := longest - text.Len(); room > 0 {
			text.Write(part[:min(room, len(part))])
		}
		if !errors.Is(err, bufio.ErrBufferFull) {
			return strings.TrimRight(text.String(), "\r\n"), err
		}
	}
}
