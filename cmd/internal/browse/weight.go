package browse

import (
	"compress/gzip"
	"io"
	"io/fs"
	"os"
	"path/filepath"
)

// Weight is how many bytes the files of a folder take on their way: those that
// are compressed already as they are, the others as a server compresses them.
func Weight(dir string) (int, error) {
	total := 0
	err := filepath.WalkDir(dir, func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		n, err := compressed(path)
		total += n
		return err
	})
	return total, err
}

func compressed(path string) (int, error) {
	data, err := os.ReadFile(path)
	if err != nil {
		return 0, err
	}
	var n counter
	z, err := gzip.NewWriterLevel(&n, gzip.BestCompression)
	if err != nil {
		return 0, err
	}
	z.Write(data)
	if err := z.Close(); err != nil {
		return 0, err
	}
	return min(int(n), len(data)), nil
}

// counter counts what is written to it.
type counter int

func (c *counter) Write(p []byte) (int, error) {
	*c += counter(len(p))
	return len(p), nil
}

var _ io.Writer = (*counter)(nil)
