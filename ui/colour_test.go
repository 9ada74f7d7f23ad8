package ui

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"path/filepath"
	"strings"
	"testing"
)

// Whatever has a colour takes it from the palette that is worn: else the other look
// would show it as it is in this one.
func TestColoursStandInThePaletteAlone(t *testing.T) {
	files := token.NewFileSet()
	err := filepath.WalkDir(".", func(path string, _ fs.DirEntry, err error) error {
		if err != nil || !strings.HasSuffix(path, ".go") || strings.HasSuffix(path, "_test.go") || path == "palette.go" {
			return err
		}
		f, err := parser.ParseFile(files, path, nil, 0)
		if err != nil {
			return err
		}
		ast.Inspect(f, func(n ast.Node) bool {
			if name, at, ok := colourIn(n); ok {
				t.Errorf("%s: %s is a colour of its own", files.Position(at), name)
			}
			return true
		})
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
}

// colourIn reports whether a node is a colour that is written out: color.RGBA{…} with
// a number in it, or black or white of package color.
func colourIn(n ast.Node) (name string, at token.Pos, ok bool) {
	switch n := n.(type) {
	case *ast.CompositeLit:
		if name = ofColour(n.Type); name != "" && len(n.Elts) > 0 {
			for _, e := range n.Elts[:len(n.Elts)-1] { // the last is how much is seen through
				if _, literal := e.(*ast.BasicLit); literal {
					return "color." + name + "{…}", n.Pos(), true
				}
			}
		}
	case *ast.SelectorExpr:
		if name = ofColour(n); name == "Black" || name == "White" {
			return "color." + name, n.Pos(), true
		}
	}
	return "", 0, false
}

// ofColour is the name of something of package color, "" for anything else.
func ofColour(e ast.Expr) string {
	if s, ok := e.(*ast.SelectorExpr); ok {
		if from, ok := s.X.(*ast.Ident); ok && from.Name == "color" {
			return s.Sel.Name
		}
	}
	return ""
}
