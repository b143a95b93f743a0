package record_test

import (
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"path/filepath"
	"reflect"
	"strings"
	"testing"

	"backleaf/record"
)

// mostNames bounds the exported names of this package; kinds, the types of
// their fields, methods and fields are not counted.
const mostNames = 100

func TestExportedNames(t *testing.T) {
	ofKinds := map[string]bool{}
	var take func(reflect.Type)
	take = func(x reflect.Type) {
		for x.Kind() == reflect.Slice || x.Kind() == reflect.Pointer {
			x = x.Elem()
		}
		if ofKinds[x.Name()] || !strings.HasSuffix(x.PkgPath(), "/record") {
			return
		}
		ofKinds[x.Name()] = true
		if x.Kind() == reflect.Struct {
			for i := range x.NumField() {
				take(x.Field(i).Type)
			}
		}
	}
	for _, k := range record.Kinds() {
		b, _ := record.Blank(k)
		take(reflect.TypeOf(b))
	}
	take(reflect.TypeFor[record.Entry]())
	files, err := filepath.Glob("*.go")
	if err != nil {
		t.Fatal(err)
	}
	var names []string
	for _, file := range files {
		if strings.HasSuffix(file, "_test.go") {
			continue
		}
		f, err := parser.ParseFile(token.NewFileSet(), file, nil, parser.SkipObjectResolution)
		if err != nil {
			t.Fatal(err)
		}
		for _, d := range f.Decls {
			switch d := d.(type) {
			case *ast.FuncDecl:
				if d.Recv == nil {
					names = append(names, d.Name.Name)
				}
			case *ast.GenDecl:
				for _, s := range d.Specs {
					switch s := s.(type) {
					case *ast.TypeSpec:
						names = append(names, s.Name.Name)
					case *ast.ValueSpec:
						for _, n := range s.Names {
							names = append(names, n.Name)
						}
					}
				}
			}
		}
	}
	var own []string
	for _, n := range names {
		if ast.IsExported(n) && !ofKinds[n] {
			own = append(own, n)
		}
	}
	if len(own) == 0 || len(own) > mostNames {
		t.Errorf("%d exported names, at most %d: %s", len(own), mostNames, fmt.Sprint(own))
	}
}
