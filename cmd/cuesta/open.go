package main

import (
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"strings"

	"github.com/spf13/cobra"

	"cuesta/cmd/internal/display"
)

func openCommand(e env) *cobra.Command {
	return &cobra.Command{
		Use:   "open [SCENE] [FILE]",
		Short: "The bench, or a form, in a window",
		Long: "Starts the bench program that stands beside this one, or, inside a checkout, builds\n" +
			"and starts it. It needs a display; cuesta spoken is the same bench without one.\n\n" +
			"The only scene is bench; a form (ID.form.json) opens by its file alone.",
		Example: "  cuesta open\n  cuesta open a17.form.json",
		RunE:    func(_ *cobra.Command, words []string) error { return open(e, words) },
	}
}

// scenes are the names a scene can be asked for by.
var scenes = []string{"bench"}

func open(e env, words []string) error {
	file := ""
	if len(words) == 1 && strings.HasSuffix(words[0], ".json") {
		if _, err := os.Stat(words[0]); err != nil {
			return err
		}
		file, words = words[0], nil
	}
	if len(words) > 0 && words[0] != scenes[0] {
		return misreadf("read %q, which is no scene; write %s, or nothing", words[0], strings.Join(scenes, " or "))
	}
	if len(words) > 1 {
		return misreadf("read %q, but the scene bench takes no file", strings.Join(words[1:], " "))
	}
	if err := display.Check(); err != nil {
		return fmt.Errorf("%w, so no window can be opened; cuesta spoken is the same bench line by line", err)
	}
	c, err := benchProgram()
	if err != nil {
		return err
	}
	if file != "" {
		path, err := filepath.Abs(file)
		if err != nil {
			return err
		}
		c.Args = append(c.Args, path)
	}
	c.Stdin, c.Stdout, c.Stderr = e.in, e.out, e.err
	if err := c.Run(); err != nil {
		return fmt.Errorf("the bench ended early: %w", err)
	}
	return nil
}

// benchProgram is the bench beside this program, or the one that the checkout
// around the current folder builds.
func benchProgram() (*exec.Cmd, error) {
	if here, err := os.Executable(); err == nil {
		beside := filepath.Join(filepath.Dir(here), benchName())
		if info, err := os.Stat(beside); err == nil && info.Mode().IsRegular() {
			return exec.Command(beside), nil
		}
	}
	if root, ok := checkout(); ok {
		c := exec.Command("go", "run", "./cmd/bench")
		c.Dir = root
		return c, nil
	}
	return nil, errors.New("the program " + benchName() + " does not stand beside this one, and this is no checkout of cuesta with Go to build it; go run ./cmd/dev run, in a checkout, opens the bench")
}

func benchName() string {
	if runtime.GOOS == "windows" {
		return "bench.exe"
	}
	return "bench"
}

// checkout looks for the module cuesta from the current folder upwards.
func checkout() (root string, ok bool) {
	if _, err := exec.LookPath("go"); err != nil {
		return "", false
	}
	dir, err := os.Getwd()
	for err == nil {
		if text, err := os.ReadFile(filepath.Join(dir, "go.mod")); err == nil {
			first, _, _ := strings.Cut(string(text), "\n")
			return dir, strings.TrimSpace(first) == "module cuesta"
		}
		up := filepath.Dir(dir)
		if up == dir {
			break
		}
		dir = up
	}
	return "", false
}
