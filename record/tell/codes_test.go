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
	for code := range tell.English.Codes {
		if !joined(code, texts) {
			t.Errorf("nothing says %q", code)
		}
	}
	if len(tell.English.Codes) < 100 {
		t.Errorf("only %d codes", len(tell.English.Codes))
	}
}
