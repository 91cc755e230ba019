package draw

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"unicode"
)

// used gathers the signs of every string in the sources of a folder, and where
// one of them stands.
func used(t *testing.T, root string) map[rune]string {
	t.Helper()
	signs := map[rune]string{}
	err := filepath.WalkDir(root, func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() || !strings.HasSuffix(path, ".go") || strings.HasSuffix(path, "_test.go") {
			return err
		}
		set := token.NewFileSet()
		f, err := parser.ParseFile(set, path, nil, 0)
		if err != nil {
			return err
		}
		ast.Inspect(f, func(n ast.Node) bool {
			if lit, ok := n.(*ast.BasicLit); ok && (lit.Kind == token.STRING || lit.Kind == token.CHAR) {
				for _, r := range unquoted(lit) {
					signs[r] = set.Position(lit.Pos()).String()
				}
			}
			return true
		})
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	return signs
}

func unquoted(lit *ast.BasicLit) string {
	if lit.Kind == token.CHAR {
		r, _, _, err := strconv.UnquoteChar(strings.Trim(lit.Value, "'"), '\'')
		if err != nil {
			return ""
		}
		return string(r)
	}
	s, err := strconv.Unquote(lit.Value)
	if err != nil {
		return ""
	}
	return s
}

// onlyRead says of a sign that the program takes it from others' texts and
// never writes it: small and wide forms, and what stands for a broken sign.
func onlyRead(r rune) bool {
	return r >= '\uFE50' && r <= '\uFE6F' || r >= '\uFF00' && r <= '\uFFEF' || r == '\u29F8' || r == unicode.ReplacementChar
}

// A sign without a glyph would be drawn as a box, and no one would be told.
func TestEverySignHasAGlyph(t *testing.T) {
	total := 0
	for _, root := range []string{"../../orient", "../../sim", "../../quiz", "../../scenes"} {
		for r, where := range used(t, root) {
			if !unicode.IsPrint(r) || onlyRead(r) {
				continue
			}
			total++
			for _, f := range []Font{Regular, Bold} {
				if !HasGlyph(f, r) {
					t.Errorf("%q (%U) in %s has no glyph in font %d", r, r, where, f)
				}
			}
		}
	}
	if total < 80 {
		t.Errorf("only %d signs were found in the sources", total)
	}
}

// What a student may see beside the program's own words: every sign of a
// notation, arrows, primes, Greek, and the letters of European languages.
func TestSignsOfTheTradeHaveGlyphs(t *testing.T) {
	const signs = "0123456789/°′″→←↑↓±×−–—‹›·…½αβγδλμνπστφψωΔΣ≤≥≈√½¼☞✓" +
		"äöüßéèêçñåøæłšžőÄÖÜÉ"
	for _, r := range signs {
		if !HasGlyph(Regular, r) || !HasGlyph(Bold, r) {
			t.Errorf("%q (%U) has no glyph", r, r)
		}
	}
}

func TestASignNoFaceHas(t *testing.T) {
	const r = '\U000E0FFF' // not assigned in Unicode
	if HasGlyph(Regular, r) {
		t.Fatalf("%U has a glyph", r)
	}
	if w := Measure(Regular, 10, string(r), 0); w <= 0 {
		t.Errorf("the box that stands for it is %g wide, want more than nothing", w)
	}
}
