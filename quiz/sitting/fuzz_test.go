package sitting_test

import (
	"bytes"
	"errors"
	"os"
	"path/filepath"
	"testing"

	"cuesta/quiz/sitting"
)

// FuzzOpen opens any file as a journal: it is either gone on with or refused,
// and a refused one is left as it is.
func FuzzOpen(f *testing.F) {
	form := dealt(f, blueprint, ada)
	path := filepath.Join(f.TempDir(), "a"+sitting.Ending)
	j, err := sitting.Open(path, form, began)
	if err != nil {
		f.Fatal(err)
	}
	for _, e := range entries(f, j.Sitting) {
		_ = j.Do(e)
	}
	j.Close()
	whole, err := os.ReadFile(path)
	if err != nil {
		f.Fatal(err)
	}
	f.Add(whole)
	f.Add(whole[:len(whole)-5])
	f.Add([]byte("00000000 {}\n"))
	f.Fuzz(func(t *testing.T, text []byte) {
		path := filepath.Join(t.TempDir(), "b"+sitting.Ending)
		if err := os.WriteFile(path, text, 0o600); err != nil {
			t.Fatal(err)
		}
		j, err := sitting.Open(path, form, began)
		if err != nil {
			after, _ := os.ReadFile(path)
			if !errors.Is(err, sitting.ErrJournal) || !bytes.Equal(after, text) {
				t.Errorf("got %v; changed: %v", err, !bytes.Equal(after, text))
			}
			return
		}
		defer j.Close()
		if err := j.Do(sitting.Entry{Do: sitting.Go, Item: 1}); err != nil && !j.Finished() {
			t.Errorf("it cannot be gone on with: %v", err)
		}
	})
}
