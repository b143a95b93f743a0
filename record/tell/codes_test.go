package tell_test

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"backleaf/record/tell"
)

// joined reports that a code is put together of texts that begin at a hyphen.
func joined(code string, texts map[string]bool) bool {
	if texts[code] {
		return true
	}
	for i := range code {
		if i > 0 && (code[i] == '-' || code[i-1] == '-') && texts[code[:i]] && joined(code[i:], texts) {
			return true
		}
	}
	return false
}

var quoted = regexp.MustCompile(`\{\{(?:say|input) "([a-z-]+)"`)

// Every code of the catalogue is said somewhere in the program: it stands as a
// text in its source, or is put together of several.
func TestEveryCodeIsSaid(t *testing.T) {
	texts := map[string]bool{}
	err := filepath.WalkDir(filepath.Join("..", ".."), func(path string, d fs.DirEntry, err error) error {
		if err == nil && filepath.Ext(path) == ".html" { // a page says codes too
			page, err := os.ReadFile(path)
			for _, m := range quoted.FindAllSubmatch(page, -1) {
				texts[string(m[1])] = true
			}
			return err
		}
		if err != nil || filepath.Ext(path) != ".go" || strings.HasSuffix(path, "_test.go") || strings.Contains(path, "catalogue") {
			return err
		}
		f, err := parser.ParseFile(token.NewFileSet(), path, nil, 0)
		if err != nil {
			return err
		}
		ast.Inspect(f, func(n ast.Node) bool {
			if lit, ok := n.(*ast.BasicLit); ok && lit.Kind == token.STRING {
				if s, err := strconv.Unquote(lit.Value); err == nil {
					texts[s] = true
				}
			}
			return true
		})
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	for code := range tell.English().Codes {
		if !joined(code, texts) {
			t.Errorf("nothing says %q", code)
		}
	}
	if len(tell.English().Codes) < 100 {
		t.Errorf("only %d codes", len(tell.English().Codes))
	}
}

// Every text of a paper is asked for by its name, and each name that is asked for
// is there.
func TestEveryTextIsAskedFor(t *testing.T) {
	dossier, plan, label, lines, certificate := tell.English().Dossier.Texts, tell.English().Plan.Texts, tell.English().Label.Texts, tell.English().Lines.Texts, tell.English().Certificate
	asked := map[string]bool{}
	for dir, texts := range map[string][]tell.Texts{"certificate/dossier": {dossier, lines}, "record/plan/worksheet": {plan}, "record/studio/planning": {plan, lines},
		"label": {label, lines}, "record/studio/papers": {label}, "record/tell": {lines, label, certificate},
		"certificate": {certificate, lines}, "certificate/page": {certificate, lines}} {
		files, err := filepath.Glob(filepath.Join("..", "..", dir, "*.go"))
		if err != nil || files == nil {
			t.Fatalf("%s: %v", dir, err)
		}
		for _, path := range files {
			f, err := parser.ParseFile(token.NewFileSet(), path, nil, 0)
			if err != nil {
				t.Fatal(err)
			}
			ast.Inspect(f, func(n ast.Node) bool {
				call, ok := n.(*ast.CallExpr)
				if !ok || len(call.Args) != 1 {
					return true
				}
				if sel, ok := call.Fun.(*ast.SelectorExpr); !ok || sel.Sel.Name != "T" {
					return true
				}
				lit, ok := call.Args[0].(*ast.BasicLit)
				if !ok {
					t.Errorf("%s asks for a text by a name that is put together", path)
					return true
				}
				name, _ := strconv.Unquote(lit.Value)
				there := false
				for _, x := range texts {
					if _, ok := x[name]; ok {
						there = true
						asked[string(x[name])] = asked[string(x[name])] || !strings.HasSuffix(path, "_test.go")
					}
				}
				if !there {
					t.Errorf("%s asks for %q, which is not there", path, name)
				}
				return true
			})
		}
	}
	for _, texts := range []tell.Texts{dossier, plan, label, lines, certificate} {
		for name, text := range texts {
			if !asked[string(text)] {
				t.Errorf("nobody asks for %q, %q", name, text)
			}
		}
	}
	page, err := os.ReadFile(filepath.Join("..", "..", "certificate", "page", "page.html"))
	for _, m := range regexp.MustCompile(`\.T "([^"]*)"`).FindAllSubmatch(page, -1) {
		if _, ok := certificate[string(m[1])]; !ok {
			t.Errorf("the page asks for %q, which is not there", m[1])
		}
	}
	if err != nil {
		t.Fatal(err)
	}
	if len(asked) < 250 {
		t.Errorf("only %d texts", len(asked))
	}
}
