package main

import (
	"bytes"
	"fmt"
	"io"
	"strings"

	"cuesta/quiz/form"
	"cuesta/quiz/paper"
)

// write writes what is asked for: cards, the sheet of the instructor, and the
// copy for the room. Everything is made before the first file is written.
func (l *laboratory) write(b form.Blueprint) error {
	files := []struct {
		path, what string
		make       func() ([]byte, error)
	}{
		{l.cards, counted(len(b.Parts), "card") + " for the stations, without the true values", func() ([]byte, error) { return paper.Cards(b, l.sheet) }},
		{l.key, "the true values; keep them apart from the students", func() ([]byte, error) { return paper.StationKey(b, l.sheet) }},
		{l.blank, "a copy for the room, without the true values", func() ([]byte, error) {
			var text bytes.Buffer
			err := b.WriteBlind(&text)
			return text.Bytes(), err
		}},
	}
	if l.key != "" && !b.Keyed() {
		return misreadf("--key: this file does not say how the stations lie; name the one that does")
	}
	made := make([][]byte, len(files))
	for i, f := range files {
		if f.path == "" {
			continue
		}
		if err := writable(f.path, l.force); err != nil {
			return err
		}
		var err error
		if made[i], err = f.make(); err != nil {
			return err
		}
	}
	for i, f := range files {
		if f.path == "" {
			continue
		}
		if err := writeWhole(f.path, l.force, func(w io.Writer) error { _, err := w.Write(made[i]); return err }); err != nil {
			return err
		}
		if _, err := fmt.Fprintf(l.out, "%s: %s.\n", f.path, strings.TrimSpace(f.what)); err != nil {
			return err
		}
	}
	return nil
}
