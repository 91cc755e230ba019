package main

import (
	_ "embed"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"
)

//go:embed page/index.html
var indexPage []byte

// webFiles is what the folder of the browser program holds.
var webFiles = []string{"index.html", "wasm_exec.js", "cuesta.wasm"}

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
	for _, f := range webFiles {
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
	for _, f := range webFiles {
		if err := os.Rename(filepath.Join(tmp, f), filepath.Join(dir, f)); err != nil {
			return err
		}
	}
	return nil
}

// buildWeb builds the browser program into an existing folder.
func buildWeb(dir string) error {
	support, err := wasmSupport("wasm_exec.js")
	if err != nil {
		return err
	}
	js, err := os.ReadFile(support)
	if err != nil {
		return err
	}
	out, err := filepath.Abs(filepath.Join(dir, "cuesta.wasm"))
	if err != nil {
		return err
	}
	said, err := quiet(wasmCommand("build", "-trimpath", "-ldflags=-s -w", "-o", out, "./cmd/bench"))()
	if err != nil {
		return fmt.Errorf("%s\nthe browser program could not be built: %w", said, err)
	}
	return errors.Join(
		os.WriteFile(filepath.Join(dir, "index.html"), indexPage, 0o644),
		os.WriteFile(filepath.Join(dir, "wasm_exec.js"), js, 0o644),
		os.Chmod(out, 0o644))
}
