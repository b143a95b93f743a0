package arrows_test

import (
	"go/ast"
	"go/parser"
	"go/token"
	"path/filepath"
	"strings"
	"testing"
)

// mostNames bounds the exported names of a package, methods and fields not
// counted: a room with more holds more than one noun.
var mostNames = map[string]int{"record/paper": 60, "record/measure": 60}

func TestExportedNames(t *testing.T) {
	for _, p := range rooms(t) {
		most, ok := mostNames[ours(p.ImportPath)]
		if !ok {
			continue
		}
		var names []string
		for _, file := range p.GoFiles {
			f, err := parser.ParseFile(token.NewFileSet(), filepath.Join(p.Dir, file), nil, parser.SkipObjectResolution)
			if err != nil {
				t.Fatal(err)
			}
			names = append(names, exported(f)...)
		}
		if len(names) == 0 || len(names) > most {
			t.Errorf("%s exports %d names, at most %d: %s", p.ImportPath, len(names), most, strings.Join(names, " "))
		}
	}
}

func exported(f *ast.File) (names []string) {
	add := func(id *ast.Ident) {
		if id.IsExported() {
			names = append(names, id.Name)
		}
	}
	for _, d := range f.Decls {
		switch d := d.(type) {
		case *ast.FuncDecl:
			if d.Recv == nil {
				add(d.Name)
			}
		case *ast.GenDecl:
			for _, s := range d.Specs {
				switch s := s.(type) {
				case *ast.TypeSpec:
					add(s.Name)
				case *ast.ValueSpec:
					for _, id := range s.Names {
						add(id)
					}
				}
			}
		}
	}
	return names
}
