package sim

import (
	"go/ast"
	"go/parser"
	"go/token"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// exact are the functions of math that give the same bits on amd64 and in
// WebAssembly: they are exact, or compiled from the same Go on both.
var exact = []string{
	"Abs", "Atan2", "Ceil", "Copysign", "Float64bits", "Inf", "IsInf", "IsNaN", "Pi", "Remainder", "Round", "Sqrt",
}

// Nothing that a step or a command runs may differ between targets: no other
// function of math, no clock, no global random source.
func TestSourcesAreDeterministic(t *testing.T) {
	var files []string
	for _, dir := range []string{".", "instrument", "record"} {
		f, err := filepath.Glob(filepath.Join(dir, "*.go"))
		if err != nil || len(f) == 0 {
			t.Fatalf("%s: %v, %v", dir, f, err)
		}
		files = append(files, f...)
	}
	for _, name := range files {
		if strings.HasSuffix(name, "_test.go") {
			continue
		}
		set := token.NewFileSet()
		file, err := parser.ParseFile(set, name, nil, 0)
		if err != nil {
			t.Fatal(err)
		}
		ast.Inspect(file, func(n ast.Node) bool {
			if what := varies(n); what != "" {
				t.Errorf("%v: %s may differ between targets or runs", set.Position(n.Pos()), what)
			}
			return true
		})
	}
}

// varies names what may differ in a node, if anything.
func varies(n ast.Node) string {
	s, ok := n.(*ast.SelectorExpr)
	if !ok {
		return ""
	}
	p, ok := s.X.(*ast.Ident)
	if !ok {
		return ""
	}
	switch p.Name {
	case "math":
		if slices.Contains(exact, s.Sel.Name) {
			return ""
		}
	case "rand":
		if s.Sel.Name == "New" || s.Sel.Name == "NewPCG" || s.Sel.Name == "Rand" {
			return ""
		}
	case "time", "r3":
	default:
		return ""
	}
	return p.Name + "." + s.Sel.Name
}
