package main

import (
	"context"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"os/signal"
	"path/filepath"
	"runtime"
	"slices"
	"strings"
	"syscall"

	"github.com/spf13/cobra"

	"cuesta/cmd/internal/display"
	"cuesta/quiz/form"
	"cuesta/scenes/lesson"
)

// opener is how a window is opened. What it holds beside the scene is handed on
// to the bench program.
type opener struct {
	env
	full, guest, announce, speak, withhold bool
	roster, folder, station                string // of a lab
}

func openCommand(e env) *cobra.Command {
	o := &opener{env: e}
	cmd := &cobra.Command{
		Use:        "open [SCENE] [FILE]",
		SuggestFor: []string{"bench", "hall", "run", "start"},
		Short:      "The bench, a form or anything else, in a window",
		Long: "Starts the bench program that stands beside this one, or, inside a checkout, builds\n" +
			"and starts it. It needs a display; cuesta spoken is the same bench without one.\n\n" +
			"The scenes:\n" + sceneLines() +
			"A form (ID.form.json) opens by its file alone.",
		Example: "  cuesta open\n  cuesta open hall\n  cuesta open lecture two-readings --full-screen\n" +
			"  cuesta open lab stations.toml --roster class.csv --station A\n  cuesta open a17.form.json",
		RunE: func(_ *cobra.Command, words []string) error { return o.open(words) },
	}
	f := cmd.Flags()
	f.BoolVar(&o.full, "full-screen", false, "fill the screen")
	f.BoolVar(&o.guest, "guest", false, "keep nothing: no progress, no settings")
	f.BoolVar(&o.announce, "announce", false, "write each change of the screen as a line on standard output")
	f.BoolVar(&o.speak, "speak", false, "have it spoken, as the setting Speech does")
	f.StringVar(&o.roster, "roster", "", "of a lab: the class (CSV); others are refused then")
	f.StringVar(&o.folder, "out", "", "of a lab: folder for the readings (readings)")
	f.StringVar(&o.station, "station", "", "of a lab: the one station that stands beside this screen")
	f.BoolVar(&o.withhold, "withhold", false, "of a lab: say nothing about right or wrong before the marking")
	return cmd
}

// flags are what the bench program is told before the scene. Files have names
// that hold wherever it runs, and a roster is read first, so that all that is
// wrong with it is told here.
func (o *opener) flags(scene []string) ([]string, error) {
	lab := len(scene) > 0 && scene[0] == "lab"
	var out []string
	for _, f := range []struct {
		name string
		on   bool
	}{{"--full-screen", o.full}, {"--guest", o.guest}, {"--announce", o.announce}, {"--speak", o.speak}} {
		if f.on {
			out = append(out, f.name)
		}
	}
	if !lab && (o.roster != "" || o.folder != "" || o.station != "" || o.withhold) {
		return nil, misreadf("--roster, --out, --station and --withhold are of a lab; write them with open lab and its file")
	}
	if o.roster != "" {
		if _, err := readFile(o.env, o.roster, form.ReadRoster); err != nil {
			return nil, err
		}
	}
	for _, f := range []struct{ name, path string }{{"--roster", o.roster}, {"--out", o.folder}} {
		if f.path == "" {
			continue
		}
		path, err := filepath.Abs(f.path)
		if err != nil {
			return nil, err
		}
		out = append(out, f.name, path)
	}
	if o.station != "" {
		out = append(out, "--station", o.station)
	}
	if o.withhold {
		out = append(out, "--withhold")
	}
	return out, nil
}

// scene is what can be opened in a window.
type scene struct {
	name  string
	file  string // what is named behind it, or ""
	words string
}

var scenes = []scene{
	{"bench", "", "the bench; nothing said means this"},
	{"hall", "", "everything there is, to choose from"},
	{"lecture", "the name of a lesson, such as two-readings, or its file", "a lecture for the projector; cuesta lesson lists them"},
	{"lab", "a file of stations", "the screen of a lab; cuesta lab --help says more"},
	{"form", "a form, ID.form.json", "a form to answer"},
}

func sceneLines() string {
	var b strings.Builder
	for _, s := range scenes {
		head := s.name
		if s.file != "" {
			head += " " + strings.ToUpper(s.name)
		}
		fmt.Fprintf(&b, "  %-16s %s\n", head, s.words)
	}
	return b.String()
}

// sceneOf reads the words behind open: the words for the bench program.
func sceneOf(e env, words []string) ([]string, error) {
	if len(words) == 0 {
		return nil, nil
	}
	if len(words) == 1 && strings.HasSuffix(words[0], ".json") {
		words = []string{"form", words[0]}
	}
	at := slices.IndexFunc(scenes, func(s scene) bool { return s.name == words[0] })
	if at < 0 && strings.HasSuffix(words[0], ".toml") {
		return nil, misreadf("read %q without a scene; write open lecture %[1]s for a lesson, open lab %[1]s for stations", words[0])
	}
	if at < 0 {
		return nil, misreadf("read %q, which is no scene; write %s, or nothing", words[0], sceneNames())
	}
	switch s := scenes[at]; {
	case s.file == "" && len(words) > 1:
		return nil, misreadf("read %q, but the scene %s takes no file", strings.Join(words[1:], " "), s.name)
	case s.file != "" && len(words) != 2:
		return nil, misreadf("open %s takes %s; read %d words", s.name, s.file, len(words)-1)
	case s.file == "":
		return words, nil
	default:
		path, err := fileOf(e, s, words[1])
		return []string{s.name, path}, err
	}
}

func sceneNames() string {
	var names []string
	for _, s := range scenes {
		names = append(names, s.name)
	}
	return strings.Join(names[:len(names)-1], ", ") + " or " + names[len(names)-1]
}

// fileOf is the file in words that hold wherever the bench program runs. A
// lesson is read first, so that all that is wrong with it is told here.
func fileOf(e env, s scene, name string) (string, error) {
	if s.name == "lecture" {
		if _, err := (&teacher{env: e}).read(name); err != nil {
			return "", err
		}
		if _, ok := lesson.Named(name); ok {
			return name, nil
		}
	}
	if _, err := os.Stat(name); err != nil {
		return "", err
	}
	return filepath.Abs(name)
}

func (o *opener) open(words []string) error {
	words, err := sceneOf(o.env, words)
	if err != nil {
		return err
	}
	flags, err := o.flags(words)
	if err != nil {
		return err
	}
	if err := display.Check(); err != nil {
		return fmt.Errorf("%w, so no window can be opened; cuesta spoken is the same bench line by line", err)
	}
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	defer stop()
	c, err := benchProgram(ctx)
	if err != nil {
		return err
	}
	c.Cancel = func() error { return end(c.Process) }
	if here, err := os.Getwd(); err == nil {
		c.Args = append(c.Args, "--folder", here)
	}
	c.Args = append(append(c.Args, flags...), words...)
	c.Stdin, c.Stdout, c.Stderr = o.in, o.out, o.err
	err = c.Run()
	if ctx.Err() != nil {
		return nil
	}
	var ended *exec.ExitError
	if errors.As(err, &ended) && ended.Exited() {
		return toldByOther{ended}
	}
	if err != nil {
		return fmt.Errorf("the bench ended early: %w", err)
	}
	return nil
}

// end asks the window to close when this program is told to end, or kills it where
// a system knows no asking.
func end(window *os.Process) error {
	if err := window.Signal(syscall.SIGTERM); err == nil || errors.Is(err, os.ErrProcessDone) {
		return err
	}
	return window.Kill()
}

// benchProgram is the bench beside this program, or the one that the checkout
// around the current folder builds.
func benchProgram(ctx context.Context) (*exec.Cmd, error) {
	if here, err := os.Executable(); err == nil {
		beside := filepath.Join(filepath.Dir(here), benchName())
		if info, err := os.Stat(beside); err == nil && info.Mode().IsRegular() {
			return exec.CommandContext(ctx, beside), nil
		}
	}
	if root, ok := checkout(); ok {
		c := exec.CommandContext(ctx, "go", "run", "./cmd/bench")
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
