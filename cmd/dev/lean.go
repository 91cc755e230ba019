package main

import (
	"bytes"
	"errors"
	"fmt"
	"go/ast"
	"go/format"
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"text/template"
)

// A program that runs a template may call any method of any type by name, so
// the linker must keep them all: that makes the page a third larger. The
// window library runs one template, always with the same few values, when it
// starts. For the page it is run here instead, and the library is built from a
// copy that holds what came out.

// windowLibrary is the module whose template it is.
const windowLibrary = "github.com/hajimehoshi/ebiten/v2"

// shaderFile is where the template stands, from the module's folder.
const shaderFile = "internal/builtinshader/shader.go"

// errShape says that the library is not written as it was.
var errShape = errors.New(shaderFile + " of the window library is not written as cmd/dev/lean.go expects it")

// leanLibrary puts a copy of the window library into a folder, and beside it a
// go.mod that uses it. It returns the flag for go build.
func leanLibrary(dir string) (string, error) {
	out, err := goCommand("list", "-m", "-f={{.Dir}}", windowLibrary).Output()
	if err != nil {
		return "", fmt.Errorf("go list: %w", err)
	}
	to := filepath.Join(dir, "library")
	if err := copyLibrary(strings.TrimSpace(string(out)), to); err != nil {
		return "", err
	}
	if err := rewrite(filepath.Join(to, filepath.FromSlash(shaderFile)), withoutTemplate); err != nil {
		return "", err
	}
	return replaceIn(dir, to)
}

// replaceIn writes a go.mod, and its go.sum, that take the library from a
// folder.
func replaceIn(dir, library string) (flag string, err error) {
	mod := filepath.Join(dir, "page.mod")
	text, err := os.ReadFile("go.mod")
	if err != nil {
		return "", err
	}
	sums, err := os.ReadFile("go.sum")
	if err != nil {
		return "", err
	}
	text = fmt.Appendf(text, "\nreplace %s => %s\n", windowLibrary, strconv.Quote(filepath.ToSlash(library)))
	return "-modfile=" + mod, errors.Join(
		os.WriteFile(mod, text, 0o644),
		os.WriteFile(filepath.Join(dir, "page.sum"), sums, 0o644))
}

// copyLibrary copies a module without its examples and tests.
func copyLibrary(from, to string) error {
	return filepath.WalkDir(from, func(path string, d fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		rel, err := filepath.Rel(from, path)
		if err != nil {
			return err
		}
		if d.IsDir() {
			if slices.Contains([]string{"examples", "misc", "cmd"}, rel) {
				return fs.SkipDir
			}
			return os.MkdirAll(filepath.Join(to, rel), 0o755)
		}
		if strings.HasSuffix(rel, "_test.go") {
			return nil
		}
		data, err := os.ReadFile(path)
		if err != nil {
			return err
		}
		return os.WriteFile(filepath.Join(to, rel), data, 0o644)
	})
}

func rewrite(path string, change func([]byte) ([]byte, error)) error {
	src, err := os.ReadFile(path)
	if err != nil {
		return err
	}
	if src, err = change(src); err != nil {
		return err
	}
	return os.WriteFile(path, src, 0o644)
}

// withoutTemplate is the file of shaders with what its template comes to.
func withoutTemplate(src []byte) ([]byte, error) {
	files := token.NewFileSet()
	file, err := parser.ParseFile(files, shaderFile, src, parser.ParseComments)
	if err != nil {
		return nil, err
	}
	tmpl, text := templateOf(file)
	source := funcNamed(file, "ShaderSource")
	if tmpl == nil || source == nil {
		return nil, errShape
	}
	table, err := shaderTable(text)
	if err != nil {
		return nil, err
	}
	at := func(p token.Pos) int { return files.Position(p).Offset }
	var out bytes.Buffer
	out.WriteString("// This file is not as its authors wrote it: its template has been run.\n")
	out.Write(src[:at(tmpl.Pos())])
	out.WriteString(table)
	out.Write(src[at(tmpl.End()):at(source.Body.Pos())])
	out.WriteString("{\n\tc := 0\n\tif useColorM {\n\t\tc = 1\n\t}\n\treturn []byte(sources[filter][address][c])\n}")
	out.Write(src[at(source.Body.End()):])
	return format.Source(withoutUnused(out.Bytes()))
}

// withoutUnused drops what only the template needed.
func withoutUnused(src []byte) []byte {
	imports := "import (\n\t\"bytes\"\n\t\"fmt\"\n\t\"sync\"\n\t\"text/template\"\n)\n"
	kept := "var (\n\tshaders  [FilterCount][AddressCount][2][]byte\n\tshadersM sync.Mutex\n)\n"
	src = bytes.Replace(src, []byte(imports), nil, 1)
	return bytes.Replace(src, []byte(kept), nil, 1)
}

// templateOf finds the declaration of the template and its text.
func templateOf(file *ast.File) (*ast.GenDecl, string) {
	for _, d := range file.Decls {
		g, ok := d.(*ast.GenDecl)
		if !ok || len(g.Specs) != 1 {
			continue
		}
		v, ok := g.Specs[0].(*ast.ValueSpec)
		if !ok || v.Names[0].Name != "tmpl" {
			continue
		}
		text := ""
		ast.Inspect(v, func(n ast.Node) bool {
			if l, ok := n.(*ast.BasicLit); ok && l.Kind == token.STRING && strings.HasPrefix(l.Value, "`") {
				text = strings.Trim(l.Value, "`")
			}
			return true
		})
		return g, text
	}
	return nil, ""
}

func funcNamed(file *ast.File, name string) *ast.FuncDecl {
	for _, d := range file.Decls {
		if f, ok := d.(*ast.FuncDecl); ok && f.Name.Name == name {
			return f
		}
	}
	return nil
}

// shader are the values the template is run with, under the names it uses.
type shader struct {
	Filter, FilterNearest, FilterLinear                       int
	Address, AddressUnsafe, AddressClampToZero, AddressRepeat int
	UseColorM                                                 bool
}

// The values of the library's constants.
const (
	filters   = 2
	addresses = 3
)

// shaderTable declares all that the template can come to.
func shaderTable(text string) (string, error) {
	t, err := template.New("shader").Parse(text)
	if err != nil {
		return "", fmt.Errorf("%w: %w", errShape, err)
	}
	var b strings.Builder
	b.WriteString("var sources = [FilterCount][AddressCount][2]string{\n")
	for f := range filters {
		b.WriteString("{\n")
		for a := range addresses {
			b.WriteString("{\n")
			for _, m := range []bool{false, true} {
				var one strings.Builder
				if err := t.Execute(&one, shader{f, 0, 1, a, 0, 1, 2, m}); err != nil {
					return "", fmt.Errorf("%w: %w", errShape, err)
				}
				fmt.Fprintf(&b, "%q,\n", one.String())
			}
			b.WriteString("},\n")
		}
		b.WriteString("},\n")
	}
	b.WriteString("}")
	return b.String(), nil
}
