package repeat_test

import (
	"go/parser"
	"go/token"
	"io/fs"
	"path"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
)

const module = "tsugime/"

// layers states what each package may import besides the standard library,
// lowest layer first. It is policy: a build that breaks it is wrong, not the
// table. On the left "a/*" is each folder right under a; on the right "a/..."
// is a and all below it, "!" forbids, and the first match decides.
const layers = `
repeat/geom          :
repeat/pen           : repeat/geom
repeat/pattern       : repeat/geom
repeat/stencil       : repeat/geom repeat/pattern
repeat/bench         : repeat/geom repeat/pattern repeat/stencil
repeat/cloth         : repeat/geom repeat/pattern assets github.com/expr-lang/expr/...
repeat/check         : repeat/geom repeat/pattern repeat/stencil repeat/bench repeat/cloth
repeat/document      : repeat/geom repeat/pattern repeat/stencil repeat/bench repeat/cloth
repeat/outlinefile   : repeat/geom
repeat/repeattest    : repeat/...
repeat               : repeat/...
export               : repeat/geom assets github.com/tdewolff/canvas golang.org/x/image/...
export/report        : export/... repeat/...
export/wording       : assets
export/*             : export repeat/geom github.com/fogleman/gg golang.org/x/image/...
assets               :
ui/session           : repeat/...
ui/printer           : export golang.org/x/text/width
ui/board             : export export/raster repeat/... !fyne.io/fyne/v2/app fyne.io/fyne/v2/...
ui                   : repeat/... export/... ui/board ui/printer ui/session assets !fyne.io/fyne/v2/app fyne.io/fyne/v2/...
cmd/tsugime          : repeat/... export/... assets
cmd/tsugime-desktop  : repeat/... export/... ui ui/session assets cmd/tsugime-desktop/opening fyne.io/fyne/v2/...
cmd/tsugime-desktop/opening     : repeat/document ui assets
cmd/tsugime-desktop/windowbench :
`

// outsideRepeat are standard packages that nothing under repeat may import: it
// does no input or output and knows no clock.
var outsideRepeat = map[string]bool{"os": true, "time": true, "net/http": true, "os/exec": true}

func TestImportsFollowTheLayers(t *testing.T) {
	rules := map[string][]string{}
	for line := range strings.Lines(layers) {
		if pkg, allowed, ok := strings.Cut(line, ":"); ok {
			rules[strings.TrimSpace(pkg)] = strings.Fields(allowed)
		}
	}
	// The files are read here, not by a child process, so that go test sees them
	// as inputs and does not serve a stale result from its cache.
	const root = ".."
	err := filepath.WalkDir(root, func(file string, d fs.DirEntry, err error) error {
		switch {
		case err != nil:
			return err
		case d.IsDir() && file != root && (d.Name() == "testdata" || d.Name() == "out" || strings.HasPrefix(d.Name(), ".")):
			return filepath.SkipDir
		case d.IsDir() || !strings.HasSuffix(file, ".go") || strings.HasSuffix(file, "_test.go"):
			return nil
		}
		return checkFile(t, root, file, rules)
	})
	if err != nil {
		t.Fatal(err)
	}
}

func checkFile(t *testing.T, root, file string, rules map[string][]string) error {
	dir, err := filepath.Rel(root, filepath.Dir(file))
	if err != nil {
		return err
	}
	pkg := filepath.ToSlash(dir)
	allowed, ok := rules[pkg]
	if !ok {
		allowed, ok = rules[path.Dir(pkg)+"/*"]
	}
	if !ok {
		t.Errorf("%s: not in the layers table; say where it stands", pkg)
	}
	f, err := parser.ParseFile(token.NewFileSet(), file, nil, parser.ImportsOnly)
	if err != nil {
		return err
	}
	for _, spec := range f.Imports {
		imp, err := strconv.Unquote(spec.Path.Value)
		if err != nil {
			return err
		}
		own, ours := strings.CutPrefix(imp, module)
		host, _, _ := strings.Cut(imp, "/")
		switch {
		case ours && permits(allowed, own):
		case !ours && strings.Contains(host, ".") && permits(allowed, imp):
		case !ours && !strings.Contains(host, "."):
			if strings.HasPrefix(pkg, "repeat") && pkg != "repeat/repeattest" && outsideRepeat[imp] {
				t.Errorf("%s: nothing under repeat may import %s", file, imp)
			}
		default:
			t.Errorf("%s: %s must not import %s", file, pkg, imp)
		}
	}
	return nil
}

func permits(allowed []string, imp string) bool {
	for _, rule := range allowed {
		rule, forbids := strings.CutPrefix(rule, "!")
		below, ok := strings.CutSuffix(rule, "/...")
		if imp == below || ok && strings.HasPrefix(imp, below+"/") {
			return !forbids
		}
	}
	return false
}
