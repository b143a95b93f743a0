package main

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"backleaf/record/tell"
)

// silent are the refusals that say all there is to say.
var silent = []string{"extra-not-coated", "no-such-paper", "not-a-head", "not-a-line", "not-read", "not-written", "one-panel", "one-place",
	"places-from-one", "sheet", "single-sheet", "size-unknown"}

// Each code that a room of the studio says has its words, and each word
// is for a code that is said.
func TestEachCodeHasWords(t *testing.T) {
	refusals, warned := codes(t)
	for code := range refusals {
		if _, ok := tell.English().Hints[code]; !ok && !slices.Contains(silent, code) {
			t.Errorf("the refusal %q has no hint, and is not among the silent ones", code)
		}
	}
	for code := range tell.English().Hints {
		if !refusals[code] {
			t.Errorf("the hint %q is for nothing that is refused", code)
		}
	}
	for _, code := range silent {
		if _, ok := tell.English().Hints[code]; ok || !refusals[code] {
			t.Errorf("%q is not refused without a hint", code)
		}
	}
	for code := range warned {
		if _, ok := tell.English().Codes[code]; !ok {
			t.Errorf("what is said as %q has no words", code)
		}
	}
}

var codeText = regexp.MustCompile(`^[a-z0-9]+(-[a-z0-9]+)*$`)

// codes reads the codes out of the rooms of the studio and the commands: the
// text that stands in a call that refuses, or that says something.
func codes(t *testing.T) (refusals, warned map[string]bool) {
	t.Helper()
	refusals, warned = map[string]bool{}, map[string]bool{}
	for _, dir := range []string{filepath.Join("..", "..", "record", "studio"), filepath.Join("..", "internal", "demo"), "."} {
		err := filepath.WalkDir(dir, func(path string, d fs.DirEntry, err error) error {
			if err != nil || filepath.Ext(path) != ".go" || strings.HasSuffix(path, "_test.go") {
				return err
			}
			f, err := parser.ParseFile(token.NewFileSet(), path, nil, 0)
			if err != nil {
				return err
			}
			ast.Inspect(f, func(n ast.Node) bool {
				call, ok := n.(*ast.CallExpr)
				if !ok {
					return true
				}
				name, place := called(call), 0
				in := warned
				if strings.HasSuffix(name, ".Mean") || strings.HasSuffix(name, ".Warn") {
					name = "record.Say"
				}
				switch name {
				case "refuse.Unclearly", "refuse.Because", "refuse.Cannot", "refuse.Breaks":
					in = refusals
				case "refuse.Input":
					in, place = refusals, 1
				case "record.Say", "about", "absent", "a.told", "a.noted", "a.line":
				default:
					return true
				}
				if len(call.Args) <= place {
					return true
				}
				lit, ok := call.Args[place].(*ast.BasicLit)
				if !ok {
					return true // handed on
				}
				code, err := strconv.Unquote(lit.Value)
				if err != nil || !codeText.MatchString(code) {
					t.Errorf("%s: %s is no code", path, lit.Value)
				}
				in[code] = true
				return true
			})
			return nil
		})
		if err != nil {
			t.Fatal(err)
		}
	}
	if len(refusals) < 20 || len(warned) < 10 {
		t.Fatalf("found only %d refusals and %d warnings", len(refusals), len(warned))
	}
	return refusals, warned
}

func called(c *ast.CallExpr) string {
	switch f := c.Fun.(type) {
	case *ast.SelectorExpr:
		if x, ok := f.X.(*ast.Ident); ok {
			return x.Name + "." + f.Sel.Name
		}
	case *ast.Ident:
		return f.Name
	}
	return ""
}
