package report

import (
	"bytes"
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"os"
	"regexp"
	"strconv"
	"strings"
	"testing"
	"unicode"

	"tsugime/assets"
	"tsugime/export"
	"tsugime/export/wording"
	"tsugime/repeat"
	"tsugime/repeat/document"
	"tsugime/repeat/geom"
)

// saying lists the functions that word their argument, and which one that is.
var saying = map[string]int{"say": 0, "head": 0, "count": 1, "newPlate": 3, "pair": 0, "row": 0}

// TestEverySentenceOfTheSourceHasItsJapanese reads this package: each sentence
// that it words is in the table.
func TestEverySentenceOfTheSourceHasItsJapanese(t *testing.T) {
	files, err := os.ReadDir(".")
	if err != nil {
		t.Fatal(err)
	}
	found := 0
	for _, file := range files {
		if !strings.HasSuffix(file.Name(), ".go") || strings.HasSuffix(file.Name(), "_test.go") {
			continue
		}
		parsed, err := parser.ParseFile(token.NewFileSet(), file.Name(), nil, 0)
		if err != nil {
			t.Fatal(err)
		}
		ast.Inspect(parsed, func(n ast.Node) bool {
			call, ok := n.(*ast.CallExpr)
			if !ok {
				return true
			}
			name := called(call)
			i, ok := saying[name]
			if !ok || i >= len(call.Args) {
				return true
			}
			text, ok := literal(call.Args[i])
			if !ok {
				return true
			}
			if name == "count" {
				text = "%d " + text + "s"
			}
			found++
			if !wording.Japanese.Knows(text) {
				t.Errorf("%s: %q has no Japanese", file.Name(), text)
			}
			return true
		})
	}
	if found < 150 {
		t.Errorf("%d sentences were found", found)
	}
	for _, e := range allEntries() {
		if !wording.Japanese.Knows(e.about) {
			t.Errorf("%s: %q has no Japanese", e.name, e.about)
		}
	}
}

func called(call *ast.CallExpr) string {
	switch f := call.Fun.(type) {
	case *ast.Ident:
		return f.Name
	case *ast.SelectorExpr:
		return f.Sel.Name
	}
	return ""
}

// literal returns a string that is written out, perhaps in pieces.
func literal(e ast.Expr) (string, bool) {
	switch e := e.(type) {
	case *ast.BasicLit:
		text, err := strconv.Unquote(e.Value)
		return text, err == nil && e.Kind == token.STRING
	case *ast.BinaryExpr:
		a, okA := literal(e.X)
		b, okB := literal(e.Y)
		return a + b, okA && okB
	}
	return "", false
}

// latin are words in Latin letters; those of latinAllowed may stand in Japanese:
// units, names of stars, faces and files, and what a standard is called.
var (
	latin        = regexp.MustCompile(`[A-Za-z][A-Za-z0-9.\-_]*`)
	latinAllowed = regexp.MustCompile(`^(mm|cm|m|n|N|A|B|AB|[A-Z]{1,2}|[LTM]\d*|ISO|cut-[A-Za-z0-9_-]+|[a-z-]+\.(csv|txt|pdf|png|svg|dxf|hpgl|html)|README\.txt)$`)
)

func checkJapanese(t *testing.T, where, text string) {
	t.Helper()
	for _, word := range latin.FindAllString(text, -1) {
		if !latinAllowed.MatchString(strings.TrimRight(word, ".")) {
			t.Errorf("%s: %q stands in %q", where, word, text)
		}
	}
	if lacking := export.Lacking(text); len(lacking) > 0 {
		t.Errorf("%s: no face has %q of %q", where, string(lacking), text)
	}
}

// starter builds the order of a starter.
func starter(t *testing.T, name string) repeat.Work {
	t.Helper()
	data, ok := assets.Starter(name)
	if !ok {
		t.Fatalf("there is no starter %s", name)
	}
	o, err := document.Read(bytes.NewReader(data))
	if err != nil {
		t.Fatal(err)
	}
	return built(t, o)
}

// withoutTools takes out what the cutter calls the tools of the order.
func withoutTools(w repeat.Work, text string) string {
	for _, p := range w.Order.Rack {
		text = strings.ReplaceAll(text, p.Name, "")
	}
	return text
}

// TestNoEnglishIsLeftOnAJapaneseSheet walks through every text of every page of
// every starter. In either language and any unit no two of them overlap, by the
// widths of their letters, and none leaves its page.
func TestNoEnglishIsLeftOnAJapaneseSheet(t *testing.T) {
	texts := 0
	for _, s := range assets.Starters() {
		w := starter(t, s.Name)
		work := Options{}.with(w).job
		for _, u := range []string{inMM, inSun} {
			english := Options{Units: u, Language: "en", PrintedAcross: geom.MM(99.7), PrintedAlong: geom.MM(100.2), job: work}
			for name, b := range books(t, w, english) {
				for i, p := range b.Pages {
					checkTexts(t, fmt.Sprintf("%s %s page %d in English, %s", s.Name, name, i+1, u), p)
				}
			}
			opt := Options{Units: u, Language: "ja", job: work}
			for name, b := range books(t, w, opt) {
				checkJapanese(t, s.Name+" "+name, b.Title+" "+b.Subject)
				for i, p := range b.Pages {
					checkTexts(t, fmt.Sprintf("%s %s page %d in Japanese, %s", s.Name, name, i+1, u), p)
					for _, text := range pageTexts(p) {
						texts++
						checkJapanese(t, s.Name+" "+name, withoutTools(w, text.Text.Text))
					}
				}
			}
			var index bytes.Buffer
			if err := writeIndex(&index, w, opt.with(w)); err != nil {
				t.Fatal(err)
			}
			for line := range strings.Lines(index.String()) {
				checkJapanese(t, s.Name+" README.txt", strings.TrimSpace(line))
			}
		}
	}
	if texts < 5000 {
		t.Errorf("%d texts were read", texts)
	}
}

// The sheets of a split say more.
func TestNoEnglishIsLeftOnTheSheetsOfASplit(t *testing.T) {
	w := built(t, splitOrder(t, 1, "tie-places"))
	w.Order.Title, w.Order.Note, w.Order.Sheets.Language = "輪", "", "ja"
	for name, b := range books(t, w, Options{Language: "ja"}) {
		for _, p := range b.Pages {
			for _, text := range pageTexts(p) {
				checkJapanese(t, name, text.Text.Text)
			}
		}
	}
	for _, d := range CutDrawings(w, Options{}) {
		for _, text := range textsOf(d, geom.Point{}) {
			checkJapanese(t, d.Title, text.Text.Text)
		}
	}
	for _, of := range Pictures(w) {
		for _, s := range subjects() {
			if s.name == of {
				p, err := s.draw(w, 200)
				if err != nil {
					t.Fatal(err)
				}
				checkJapanese(t, of, p.name+" "+p.about)
				for _, text := range textsOf(p.over.drawing(""), geom.Point{}) {
					checkJapanese(t, of, text.Text.Text)
				}
			}
		}
	}
	// What the checks find is retold as far as it is known; the rest is ours.
	w.Findings = nil
	var out bytes.Buffer
	if err := WriteFindings(&out, w, Options{}); err != nil {
		t.Fatal(err)
	}
	for line := range strings.Lines(out.String()) {
		checkJapanese(t, "findings.txt", strings.TrimSpace(line))
	}
}

// In Japanese no line begins with a sign that ends something, nor ends with one
// that begins something; figures stay with their units; nothing is lost.
func TestJapaneseLinesBreakWhereTheyMay(t *testing.T) {
	const text = "標準偏差で、星の合わせは 0.10 mm、送りの狂いは一回 0.00 mm とみる（40 cm離れて）。終いでは横 12.5 鯨尺寸、縦「中」。端まで70回、チョッとずつ。100 % で刷る。"
	for mm := 24.0; mm < 130; mm += 0.7 {
		lines := wrap(text, bodyStyle, geom.MM(mm))
		for i, line := range lines {
			r := []rune(line)
			first, last := r[0], r[len(r)-1]
			if i > 0 && strings.ContainsRune(closing, first) || strings.ContainsRune(opening, last) && i < len(lines)-1 {
				t.Errorf("in %.1f mm line %d is %q", mm, i+1, line)
			}
			if i > 0 && unicode.IsDigit([]rune(lines[i-1])[len([]rune(lines[i-1]))-1]) && (strings.HasPrefix(line, "mm") || strings.HasPrefix(line, "鯨") || strings.HasPrefix(line, "回")) {
				t.Errorf("in %.1f mm %q is parted from %q", mm, lines[i-1], line)
			}
		}
		strip := func(s string) string { return strings.ReplaceAll(s, " ", "") }
		if strip(strings.Join(lines, "")) != strip(text) {
			t.Fatalf("in %.1f mm: %q", mm, lines)
		}
	}
}
