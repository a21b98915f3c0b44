package model_test

import (
	"go/ast"
	"go/parser"
	"go/token"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// describing are the types whose methods are words of the description language.
var describing = []string{"Design", "Room", "Wall", "Bound", "SlabPiece", "AnglePiece", "RollOutPiece", "Preset", "Offers"}

// TestEveryWordHasAnExample: every exported function, every method of the
// describing types and every struct that a user writes out for them stands in a
// runnable example.
func TestEveryWordHasAnExample(t *testing.T) {
	words, used := map[string]bool{}, map[string]bool{}
	wanted, made, structs := map[string]bool{}, map[string]bool{}, map[string]bool{}
	for name, file := range sources(t) {
		for _, decl := range file.Decls {
			switch d := decl.(type) {
			case *ast.FuncDecl:
				if strings.HasSuffix(name, "_test.go") {
					if runs(file, d) {
						said(d.Body, used)
					}
					continue
				}
				if !d.Name.IsExported() || d.Recv != nil && !slices.Contains(describing, receiver(d)) {
					continue
				}
				words[d.Name.Name] = true
				mentioned(d.Type.Params, wanted)
				mentioned(d.Type.Results, made)
			case *ast.GenDecl:
				for _, s := range d.Specs {
					if ts, ok := s.(*ast.TypeSpec); ok && !strings.HasSuffix(name, "_test.go") {
						_, structs[ts.Name.Name] = ts.Type.(*ast.StructType)
					}
				}
			}
		}
	}
	for s := range wanted {
		if structs[s] && ast.IsExported(s) && !made[s] {
			words[s] = true
		}
	}
	if len(words) < 60 || len(used) < 60 {
		t.Fatalf("%d words, %d used in examples: the search went wrong", len(words), len(used))
	}
	for w := range words {
		if !used[w] {
			t.Errorf("%s has no runnable example", w)
		}
	}
}

func sources(t *testing.T) map[string]*ast.File {
	t.Helper()
	names, err := filepath.Glob("*.go")
	if err != nil {
		t.Fatal(err)
	}
	set, out := token.NewFileSet(), map[string]*ast.File{}
	for _, name := range names {
		if out[name], err = parser.ParseFile(set, name, nil, parser.ParseComments); err != nil {
			t.Fatal(err)
		}
	}
	return out
}

// runs tells whether a function is an example with an output to compare.
func runs(file *ast.File, d *ast.FuncDecl) bool {
	if !strings.HasPrefix(d.Name.Name, "Example") {
		return false
	}
	for _, c := range file.Comments {
		if c.Pos() > d.Pos() && c.End() < d.End() && strings.HasPrefix(c.Text(), "Output:\n") && len(c.Text()) > len("Output:\n") {
			return true
		}
	}
	return false
}

// receiver is the name of the type that a method belongs to.
func receiver(d *ast.FuncDecl) string {
	x := d.Recv.List[0].Type
	if star, ok := x.(*ast.StarExpr); ok {
		x = star.X
	}
	if id, ok := x.(*ast.Ident); ok {
		return id.Name
	}
	return ""
}

// said gathers what is called or named of another value or package.
func said(body *ast.BlockStmt, into map[string]bool) {
	ast.Inspect(body, func(n ast.Node) bool {
		if s, ok := n.(*ast.SelectorExpr); ok {
			into[s.Sel.Name] = true
		}
		return true
	})
}

// mentioned gathers the types in a list of parameters or results.
func mentioned(list *ast.FieldList, into map[string]bool) {
	if list == nil {
		return
	}
	ast.Inspect(list, func(n ast.Node) bool {
		if id, ok := n.(*ast.Ident); ok {
			into[id.Name] = true
		}
		return true
	})
}
