package main

import (
	"encoding/json"
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
)

// moduleRoot is taken before any test changes the folder.
var moduleRoot, errRoot = filepath.Abs("../..")

func TestMain(m *testing.M) {
	if errRoot != nil {
		fmt.Fprintln(os.Stderr, errRoot)
		os.Exit(1)
	}
	os.Exit(m.Run())
}

// goPackage is what `go list -json` says of a package.
type goPackage struct {
	ImportPath  string
	Dir         string
	Standard    bool
	CgoFiles    []string
	GoFiles     []string
	Imports     []string
	TestImports []string
}

func list(t *testing.T, args ...string) []goPackage {
	t.Helper()
	c := exec.Command("go", append([]string{"list", "-buildvcs=false", "-json=ImportPath,Dir,Standard,CgoFiles,GoFiles,Imports,TestImports"}, args...)...)
	c.Dir = moduleRoot
	c.Env = append(os.Environ(), "CGO_ENABLED=1")
	out, err := c.Output()
	if err != nil {
		t.Fatalf("go list %s: %v", strings.Join(args, " "), err)
	}
	var all []goPackage
	for d := json.NewDecoder(strings.NewReader(string(out))); d.More(); {
		var p goPackage
		if err := d.Decode(&p); err != nil {
			t.Fatal(err)
		}
		all = append(all, p)
	}
	if len(all) == 0 {
		t.Fatalf("go list %s names no package", strings.Join(args, " "))
	}
	return all
}

func isWindow(path string) bool {
	return path == "cuesta/scenes/window" || strings.HasPrefix(path, "cuesta/scenes/window/")
}

// still lists the packages that must run anywhere and answer the same each
// time: orient, sim, quiz and scenes, bar the window.
func still(t *testing.T) []goPackage {
	all := list(t, "./orient/...", "./sim/...", "./quiz/...", "./scenes/...")
	return slices.DeleteFunc(all, func(p goPackage) bool { return isWindow(p.ImportPath) })
}

// isEbiten says whether the path is of the window library, or of the sound
// library it comes with.
func isEbiten(path string) bool {
	return strings.HasPrefix(path, "github.com/hajimehoshi/ebiten") || strings.HasPrefix(path, "github.com/ebitengine/oto")
}

func TestOnlyTheWindowReachesEbiten(t *testing.T) {
	args := []string{"-deps", "-test"}
	for _, p := range still(t) {
		args = append(args, p.ImportPath)
	}
	for _, p := range list(t, args...) {
		if isEbiten(p.ImportPath) {
			t.Errorf("orient, sim, quiz or scenes reach %s", p.ImportPath)
		}
	}
	for _, p := range list(t, "./...") {
		if p.ImportPath == "cuesta/cmd/bench" || isWindow(p.ImportPath) {
			continue
		}
		if i := slices.IndexFunc(p.Imports, isEbiten); i >= 0 {
			t.Errorf("%s imports %s", p.ImportPath, p.Imports[i])
		}
	}
}

func TestTheCommandLineNeedsNeitherDisplayNorC(t *testing.T) {
	for _, p := range list(t, "-deps", "./cmd/cuesta") {
		switch {
		case isEbiten(p.ImportPath):
			t.Errorf("cmd/cuesta reaches %s", p.ImportPath)
		case !p.Standard && len(p.CgoFiles) > 0:
			t.Errorf("cmd/cuesta reaches cgo in %s", p.ImportPath)
		}
	}
}

// mayImport says which packages of the module each part may import, beside
// itself. Assets are embedded files; the fonts and coefficients they hold are
// data, so orient/geomag and scenes may read them.
var mayImport = map[string][]string{
	"orient": {"assets"},
	"sim":    {"orient"},
	"quiz":   {"orient", "sim"},
	"scenes": {"orient", "sim", "quiz", "assets"},
}

// leavesTheQuiz are the packages that put quizzes on paper and into files; they
// may draw figures, and nothing else of the scenes.
var (
	leavesTheQuiz = []string{"cuesta/quiz/gradebook", "cuesta/quiz/paper", "cuesta/quiz/qti"}
	drawing       = []string{"cuesta/scenes/figure", "cuesta/scenes/draw", "cuesta/scenes/theme"}
)

// within says whether the path is one of the roots or lies under one.
func within(path string, roots []string) bool {
	return slices.ContainsFunc(roots, func(r string) bool { return path == r || strings.HasPrefix(path, r+"/") })
}

func part(path string) string {
	p, _, _ := strings.Cut(strings.TrimPrefix(path, "cuesta/"), "/")
	return p
}

func TestTheArrowsPointOneWay(t *testing.T) {
	for _, p := range list(t, "./orient/...", "./sim/...", "./quiz/...", "./scenes/...") {
		from := part(p.ImportPath)
		for _, i := range p.Imports {
			if !strings.HasPrefix(i, "cuesta/") || part(i) == from {
				continue
			}
			if within(p.ImportPath, leavesTheQuiz) && within(i, drawing) {
				continue
			}
			if !slices.Contains(mayImport[from], part(i)) {
				t.Errorf("%s imports %s", p.ImportPath, i)
			}
		}
	}
	for _, p := range list(t, "./orient", "./orient/...") {
		for _, i := range p.Imports {
			if strings.Contains(i, ".") && !strings.HasPrefix(i, "gonum.org/") {
				t.Errorf("%s imports %s: gonum is the only module under orient", p.ImportPath, i)
			}
		}
	}
}

// clock and chance are the functions that answer differently each time.
var (
	clock  = []string{"Now", "Since", "Until", "Sleep", "After", "AfterFunc", "Tick", "NewTicker", "NewTimer"}
	seeded = []string{"New", "NewPCG", "NewChaCha8", "NewZipf", "NewSource", "Rand", "Source", "PCG", "ChaCha8", "Zipf"}
)

func TestTimeAndChanceAreArguments(t *testing.T) {
	for _, p := range still(t) {
		for _, name := range p.GoFiles {
			path := filepath.Join(p.Dir, name)
			f, err := parser.ParseFile(token.NewFileSet(), path, nil, 0)
			if err != nil {
				t.Fatal(err)
			}
			for _, bad := range unsteady(f) {
				t.Errorf("%s: %s", path, bad)
			}
		}
	}
}

// unsteady names the calls of a file that read the clock or draw from a source
// that is not an argument.
func unsteady(f *ast.File) []string {
	names := map[string]string{} // local name → import path
	var bad []string
	for _, i := range f.Imports {
		path, _ := strconv.Unquote(i.Path.Value)
		local := path[strings.LastIndex(path, "/")+1:]
		switch path {
		case "math/rand", "math/rand/v2":
			local = "rand"
		case "crypto/rand":
			bad = append(bad, "imports crypto/rand")
		}
		if i.Name != nil {
			local = i.Name.Name
		}
		names[local] = path
	}
	ast.Inspect(f, func(n ast.Node) bool {
		sel, ok := n.(*ast.SelectorExpr)
		if !ok {
			return true
		}
		if id, ok := sel.X.(*ast.Ident); ok && id.Obj == nil && forbidden(names[id.Name], sel.Sel.Name) {
			bad = append(bad, id.Name+"."+sel.Sel.Name)
		}
		return true
	})
	return bad
}

func forbidden(path, name string) bool {
	switch path {
	case "time":
		return slices.Contains(clock, name)
	case "math/rand", "math/rand/v2":
		return !slices.Contains(seeded, name)
	}
	return false
}

func TestUnsteadyFindsWhatItIsFor(t *testing.T) {
	const src = `package p
import ("time"; r "math/rand/v2"; "math/rand")
var a, b, c = time.Now(), r.IntN(3), rand.New(rand.NewSource(1))
var d time.Duration
var e = c.Intn(3)
`
	f, err := parser.ParseFile(token.NewFileSet(), "p.go", src, 0)
	if err != nil {
		t.Fatal(err)
	}
	if got, want := fmt.Sprint(unsteady(f)), "[time.Now r.IntN]"; got != want {
		t.Errorf("got %s, want %s", got, want)
	}
}

func TestTheTopLevelHoldsWhatItShould(t *testing.T) {
	allowed := []string{"cmd", "sim", "scenes", "quiz", "orient", "assets", "go.mod", "go.sum", "README.md", "DEVELOPERS.md", "dist"}
	entries, err := os.ReadDir(moduleRoot)
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range entries {
		if n := e.Name(); !strings.HasPrefix(n, ".") && !slices.Contains(allowed, n) {
			t.Errorf("%s stands at the top level; %s may", n, strings.Join(allowed, ", "))
		}
	}
}

func TestEveryFontHasItsLicence(t *testing.T) {
	fonts := 0
	err := filepath.WalkDir(moduleRoot, func(path string, d fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		if d.IsDir() && d.Name() == ".git" {
			return fs.SkipDir
		}
		switch strings.ToLower(filepath.Ext(path)) {
		case ".ttf", ".otf", ".woff", ".woff2":
			fonts++
			if !licensed(path) {
				t.Errorf("%s has no licence beside it (LICENSE-Family.txt)", path)
			}
		}
		return nil
	})
	if err != nil || fonts == 0 {
		t.Errorf("%d fonts found, %v", fonts, err)
	}
}

// licensed looks for LICENSE-X.txt with words in it, where the font's name
// starts with X.
func licensed(font string) bool {
	texts, _ := filepath.Glob(filepath.Join(filepath.Dir(font), "LICENSE-*.txt"))
	for _, text := range texts {
		family := strings.TrimSuffix(strings.TrimPrefix(filepath.Base(text), "LICENSE-"), ".txt")
		info, err := os.Stat(text)
		if err == nil && info.Size() > 200 && strings.HasPrefix(filepath.Base(font), family) {
			return true
		}
	}
	return false
}

func TestNoFunctionIsLongerThanAHundredLines(t *testing.T) {
	for _, p := range list(t, "./...") {
		for _, name := range p.GoFiles {
			set := token.NewFileSet()
			f, err := parser.ParseFile(set, filepath.Join(p.Dir, name), nil, 0)
			if err != nil {
				t.Fatal(err)
			}
			for _, d := range f.Decls {
				if fn, ok := d.(*ast.FuncDecl); ok {
					from, to := set.Position(fn.Pos()), set.Position(fn.End())
					if n := to.Line - from.Line + 1; n > 100 {
						t.Errorf("%s: %s has %d lines", from, fn.Name.Name, n)
					}
				}
			}
		}
	}
}
