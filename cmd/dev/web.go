package main

import (
	"bytes"
	"compress/gzip"
	"crypto/sha256"
	"embed"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"text/template"
)

// pageFiles are the files of the page as they are written; index.html and
// sw.js have places to fill in.
//
//go:embed page
var pageFiles embed.FS

// What the build adds to the page's own files.
const (
	packedName = "cuesta.wasm.gz"
	scriptName = "cuesta.js"
)

// supportName is the script of the Go in use, without which no program runs.
const supportName = "wasm_exec.js"

// scripts are the parts of the page's script in the order in which they run;
// they follow the support in one file, since each file asked for is time lost
// before the program begins to come in.
var scripts = []string{"queue.js", "mirror.js", "notice.js", "files.js", "words.js", "start.js"}

// filledFiles are templates: index.html says how large the program is, sw.js
// which files are to be kept and what they hold.
var filledFiles = []string{"index.html", "sw.js"}

// webFiles is what the folder of the browser program holds. sw.js is last: it
// names the others.
func webFiles() []string {
	names := []string{packedName, scriptName}
	found, _ := fs.ReadDir(pageFiles, "page") // embedded: it is there
	for _, f := range found {
		if f.Name() != "sw.js" && !slices.Contains(scripts, f.Name()) {
			names = append(names, f.Name())
		}
	}
	return append(names, "sw.js")
}

// web builds the browser program into the folder that is named.
func web(args []string) error {
	force := false
	var dirs []string
	for _, a := range args {
		switch {
		case a == "--force":
			force = true
		case strings.HasPrefix(a, "-"):
			return fmt.Errorf("%w: web read %q; --force is the only flag", errUsage, a)
		default:
			dirs = append(dirs, a)
		}
	}
	if len(dirs) != 1 {
		return fmt.Errorf("%w: web takes one folder, read %d", errUsage, len(dirs))
	}
	dir := callersPath(dirs[0])
	if err := free(dir); err != nil && !force {
		return err
	}
	if err := publish(dir); err != nil {
		return err
	}
	fmt.Printf("the browser program is in %s\n", dir)
	return nil
}

// callersPath is the path as seen from the folder where the program was
// started, which toModuleRoot has left. The shell keeps it in PWD.
func callersPath(p string) string {
	if wd := os.Getenv("PWD"); !filepath.IsAbs(p) && filepath.IsAbs(wd) {
		return filepath.Join(wd, p)
	}
	return p
}

// free says which file of the program already stands in the folder.
func free(dir string) error {
	for _, f := range webFiles() {
		if _, err := os.Lstat(filepath.Join(dir, f)); err == nil {
			return fmt.Errorf("%s is already there; --force replaces it", filepath.Join(dir, f))
		}
	}
	return nil
}

// publish builds beside the folder first, so that a failed build leaves the
// folder as it was.
func publish(dir string) error {
	if err := os.MkdirAll(dir, 0o755); err != nil {
		return err
	}
	tmp, err := os.MkdirTemp(dir, ".building-")
	if err != nil {
		return err
	}
	defer os.RemoveAll(tmp)
	if err := buildWeb(tmp); err != nil {
		return err
	}
	for _, f := range webFiles() {
		if err := os.Rename(filepath.Join(tmp, f), filepath.Join(dir, f)); err != nil {
			return err
		}
	}
	return nil
}

// buildWeb builds the browser program into an existing folder.
func buildWeb(dir string) error {
	program, err := compileWeb(dir)
	if err != nil {
		return err
	}
	packed, err := pack(program)
	if err != nil {
		return err
	}
	support, err := wasmSupport(supportName)
	if err != nil {
		return err
	}
	js, err := os.ReadFile(support)
	if err != nil {
		return err
	}
	script, err := joined(js)
	if err != nil {
		return err
	}
	written := map[string][]byte{packedName: packed, scriptName: script}
	return writePage(dir, written, len(program))
}

// joined is the script of the page, behind the support.
func joined(support []byte) ([]byte, error) {
	all := [][]byte{support}
	for _, name := range scripts {
		part, err := fs.ReadFile(pageFiles, "page/"+name)
		if err != nil {
			return nil, err
		}
		all = append(all, part)
	}
	return bytes.Join(all, []byte("\n")), nil
}

// compileWeb is the program in WebAssembly.
func compileWeb(dir string) ([]byte, error) {
	out, err := filepath.Abs(filepath.Join(dir, "cuesta.wasm"))
	if err != nil {
		return nil, err
	}
	scratch, err := os.MkdirTemp("", "cuesta-library-")
	if err != nil {
		return nil, err
	}
	defer os.RemoveAll(scratch)
	lean, err := leanLibrary(scratch)
	if err != nil {
		return nil, err
	}
	said, err := quiet(wasmCommand("build", lean, "-trimpath", "-ldflags=-s -w", "-o", out, "./cmd/bench"))()
	if err != nil {
		return nil, fmt.Errorf("%s\nthe browser program could not be built: %w", said, err)
	}
	defer os.Remove(out)
	return os.ReadFile(out)
}

// pack compresses the program: it is unpacked by the page, so that any server
// of files will do.
func pack(program []byte) ([]byte, error) {
	var b bytes.Buffer
	w, err := gzip.NewWriterLevel(&b, gzip.BestCompression)
	if err != nil {
		return nil, err
	}
	_, err = w.Write(program)
	err = errors.Join(err, w.Close())
	return b.Bytes(), err
}

// filling is what the page is told of its build.
type filling struct {
	Packed, Whole int      // bytes of the program, compressed and not
	Files         []string // to be kept for use without a connection
	Mark          string   // follows from what they hold
}

// writePage writes the files of the page beside those that are given.
func writePage(dir string, files map[string][]byte, whole int) error {
	f := filling{Packed: len(files[packedName]), Whole: whole}
	sum := sha256.New()
	for _, name := range webFiles() {
		data, given := files[name]
		if !given {
			var err error
			if data, err = fs.ReadFile(pageFiles, "page/"+name); err != nil {
				return err
			}
		}
		if name == "sw.js" {
			f.Mark = fmt.Sprintf("%x", sum.Sum(nil)[:8])
		}
		data, err := filled(name, data, f)
		if err != nil {
			return err
		}
		if err := os.WriteFile(filepath.Join(dir, name), data, 0o644); err != nil {
			return err
		}
		fmt.Fprintf(sum, "%s %d\n", name, len(data))
		sum.Write(data)
		f.Files = append(f.Files, name)
	}
	return nil
}

func filled(name string, data []byte, f filling) ([]byte, error) {
	for _, t := range filledFiles {
		if name != t {
			continue
		}
		page, err := template.New(name).Parse(string(data))
		if err != nil {
			return nil, err
		}
		var b bytes.Buffer
		err = page.Execute(&b, f)
		return b.Bytes(), err
	}
	return data, nil
}
