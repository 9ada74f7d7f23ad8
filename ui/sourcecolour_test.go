package ui

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"strings"
	"testing"
)

// Every colour of the window is in the palette, so that both looks have it: no other
// file of the window or of the surface writes one down.
func TestOnlyThePaletteWritesColoursDown(t *testing.T) {
	files, found := 0, 0
	err := fs.WalkDir(os.DirFS("."), ".", func(name string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() || !strings.HasSuffix(name, ".go") || strings.HasSuffix(name, "_test.go") {
			return err
		}
		files++
		set := token.NewFileSet()
		file, err := parser.ParseFile(set, name, nil, 0)
		if err != nil {
			return err
		}
		ast.Inspect(file, func(n ast.Node) bool {
			if !writesColour(n) {
				return true
			}
			if found++; name != "palette.go" {
				t.Errorf("%s: a colour beside the palette", set.Position(n.Pos()))
			}
			return true
		})
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	if files < 80 || found == 0 {
		t.Errorf("%d colours in %d files were found: the test looks at the wrong place", found, files)
	}
}

// writesColour reports whether a node is a colour of the package color: a literal with
// a number in it, or black or white. A colour made of another's channels is none.
func writesColour(n ast.Node) bool {
	switch n := n.(type) {
	case *ast.CompositeLit:
		s, ok := n.Type.(*ast.SelectorExpr)
		if !ok || !isColourPackage(s.X) {
			return false
		}
		numbers := 0
		for _, e := range n.Elts {
			if kv, ok := e.(*ast.KeyValueExpr); ok {
				e = kv.Value
			}
			if l, ok := e.(*ast.BasicLit); ok && l.Kind == token.INT {
				numbers++
			}
		}
		return numbers > 1
	case *ast.SelectorExpr:
		return isColourPackage(n.X) && (n.Sel.Name == "Black" || n.Sel.Name == "White")
	}
	return false
}

func isColourPackage(x ast.Expr) bool {
	id, ok := x.(*ast.Ident)
	return ok && id.Name == "color"
}
