package ui

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/test"
	"golang.org/x/image/font/sfnt"

	"tsugime/assets"
	"tsugime/export/wording"
	"tsugime/repeat/cloth"
	"tsugime/repeat/pattern"
)

// inJapanese lets the windows speak Japanese until the test ends.
func inJapanese(t *testing.T) {
	t.Helper()
	test.NewTempApp(t)
	speak(wording.Japanese)
	t.Cleanup(func() { speak(wording.English) })
}

func TestTheSystemsLocaleChoosesTheLanguage(t *testing.T) {
	for _, c := range []struct {
		all, messages, lang, list string
		want                      wording.Language
	}{
		{want: wording.English},
		{lang: "ja_JP.UTF-8", want: wording.Japanese},
		{lang: "ja", want: wording.Japanese},
		{lang: "jam_JM", want: wording.English},
		{lang: "de_DE.UTF-8", want: wording.English},
		{messages: "en_GB", lang: "ja_JP.UTF-8", want: wording.English},
		{all: "ja_JP", messages: "en_GB", lang: "en_GB", want: wording.Japanese},
		{lang: "en_GB", list: "ja:en", want: wording.Japanese},
		{lang: "C", list: "ja", want: wording.English},
		{lang: "ja_JP", list: "en:ja", want: wording.English},
	} {
		env := map[string]string{"LC_ALL": c.all, "LC_MESSAGES": c.messages, "LANG": c.lang, "LANGUAGE": c.list}
		if got := systemLanguage(func(name string) string { return env[name] }); got != c.want {
			t.Errorf("%v asks for %q, want %q", env, got, c.want)
		}
	}
}

func TestTheChosenLanguageIsKept(t *testing.T) {
	a := test.NewTempApp(t)
	if got := languageOf(a.Preferences()); got != ofSystem() {
		t.Errorf("before any choice the window speaks %q, want the system's", got)
	}
	for _, l := range wording.Languages() {
		a.Preferences().SetString(languageKey, string(l))
		if got := languageOf(a.Preferences()); got != l {
			t.Errorf("after a choice of %q the window speaks %q", l, got)
		}
	}
}

func TestFynesOwnDialogsSpeakAsTheWindowDoes(t *testing.T) {
	inJapanese(t)
	if ok, cancel, up := lang.L("OK"), lang.L("Cancel"), lang.X("file.parent", "Parent"); ok != "承知" || cancel != "やめる" || up != "一つ上" {
		t.Errorf("the dialogs say %q, %q, %q", ok, cancel, up)
	}
	speak(wording.English)
	if ok, up := lang.L("OK"), lang.X("file.parent", "Parent"); ok != "OK" || up != "Parent" {
		t.Errorf("back in English the dialogs say %q, %q", ok, up)
	}
}

// What stands in the source and is no text for people: code of findings and files,
// formats of figures, keys of a keyboard, letters of stars.
var noText = regexp.MustCompile(`^[^A-Za-z]*$` + // no letters
	`|^[a-z]*(-[a-z0-9]*)+$` + // codes
	`|^\.(svg|dxf|SVG|DXF|csv|tsugime)$` +
	`|^[^a-zA-Z%]*(%[-+.0-9]*[a-zA-Z%](·[AB])?[^a-zA-Z%]*)+( mm²)?( \()?$` + // figures
	`|^(%s|open %s): %w$` + // of an error, which is told as a whole
	`|^ mm²( \()?$|^[0-9.]+ mm$|^M0 0 ?H2 ?V1 ?(H0)?Z$` +
	`|^(Ctrl|Alt|Shift|[CLMT])$` +
	`|^(LC_ALL|LC_MESSAGES|LANG|LANGUAGE|POSIX|\.utf-8|en|en\.json|mplus-1p-japanese\.ttf|FYNE_THEME|dark|darwin|windows)$` +
	`|^(file\.name|file\.parent|language|look|English| – Tsugime|Tsugime|sun|skew|ribbon|tongue)$`)

// A said is a text of the source: what say would be asked for.
type said struct{ text, at string }

// texts lists those of a file. Parts that say gets strung together are strung
// together here too.
func texts(t *testing.T, name string) []said {
	t.Helper()
	files := token.NewFileSet()
	file, err := parser.ParseFile(files, name, nil, 0)
	if err != nil {
		t.Fatal(err)
	}
	var all []said
	add := func(n ast.Node, text string) { all = append(all, said{text, files.Position(n.Pos()).String()}) }
	literal := func(n ast.Node) (string, bool) {
		l, ok := n.(*ast.BasicLit)
		if !ok || l.Kind != token.STRING {
			return "", false
		}
		text, err := strconv.Unquote(l.Value)
		return text, err == nil
	}
	ast.Inspect(file, func(n ast.Node) bool {
		switch n := n.(type) {
		case *ast.ImportSpec:
			return false
		case *ast.CallExpr:
			if f, ok := n.Fun.(*ast.SelectorExpr); ok && f.Sel.Name == "LogError" {
				return false
			}
			f, ok := n.Fun.(*ast.Ident)
			if !ok {
				break
			}
			switch {
			case f.Name == "counted" && len(n.Args) == 3:
				one, _ := literal(n.Args[1])
				many, _ := literal(n.Args[2])
				add(n, "1 "+one)
				add(n, "%d "+many)
				return false
			case f.Name == "panic":
				return false
			}
		case *ast.BasicLit:
			if text, ok := literal(n); ok {
				add(n, text)
			}
		}
		return true
	})
	return all
}

// strung are texts that the source strings together from a few words.
var strung = map[string][]string{
	"Nudge ":          {"Nudge Left", "Nudge Right", "Nudge Up", "Nudge Down"},
	" Ten Times":      {"Nudge Left Ten Times", "Nudge Right Ten Times", "Nudge Up Ten Times", "Nudge Down Ten Times"},
	"Left":            {"left"},
	"Right":           {"right"},
	"Up":              {"up"},
	"Down":            {"down"},
	" without Saving": {"Close without Saving", "Open without Saving", "Begin Anew without Saving"},
	" on the ":        nil, // of a finding, which is retold whole
	"first":           nil,
	"second":          nil,
	" sheet":          nil,
	"1 ":              nil,
	"%d ":             nil,
}

func TestEveryTextOfTheSourceHasAJapaneseOne(t *testing.T) {
	var lacking []string
	count := 0
	err := fs.WalkDir(os.DirFS("."), ".", func(name string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() || !strings.HasSuffix(name, ".go") || strings.HasSuffix(name, "_test.go") || strings.HasPrefix(name, "session/") || strings.HasPrefix(name, "printer/") || name == "icon.go" { // icons are named, not read
			return err
		}
		for _, s := range texts(t, name) {
			all, ok := strung[s.text]
			if !ok {
				all = []string{s.text}
			}
			for _, text := range all {
				if noText.MatchString(text) {
					continue
				}
				if count++; !wording.Japanese.Knows(text) {
					lacking = append(lacking, s.at+": "+strconv.Quote(text))
				}
			}
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	if count < 600 {
		t.Errorf("only %d texts were found", count)
	}
	slices.Sort(lacking)
	for _, text := range lacking {
		t.Errorf("%s has no Japanese; write it in assets/words/ja.json", text)
	}
}

// What the window shows of tables that know no language.
func TestEveryNameOfATableHasAJapaneseOne(t *testing.T) {
	names := map[string]string{}
	for _, g := range pattern.Grounds() {
		names[g.Name], names[g.Trade], names[g.About] = g.Name, g.Name, g.Name
		for _, p := range g.Params {
			names[p.Name], names[p.Help] = g.Name, g.Name
			for _, c := range p.Choices {
				names[c] = g.Name + ", " + p.Name
			}
		}
	}
	for _, g := range pattern.Grades() {
		names[g.Name], names[g.Trade] = "grade", "grade"
	}
	for _, s := range assets.Starters() {
		names[s.Title], names[s.About] = s.Name, s.Name
	}
	for _, k := range cloth.GarmentKinds() {
		f, err := cloth.FormOf(k)
		if err != nil {
			t.Fatal(err)
		}
		names[f.Title], names[f.About] = string(k), string(k)
		for _, a := range f.Asks {
			names[a.Title] = string(k)
		}
		for _, a := range f.Allowances {
			names[a.Title] = string(k)
		}
	}
	for _, word := range kindNames() {
		names[word] = "choice"
	}
	for name, where := range names {
		if name != "" && wording.Japanese.Retell(name) == name {
			t.Errorf("%s: %q has no Japanese; write it in assets/words/ja.json", where, name)
		}
	}
}

// The line of what no face has is a mark of replacement; Fyne draws one too for a
// space that the face of the letter before it lacks.
func TestJapaneseIsShownByTheTypeThatComesWithTheProgram(t *testing.T) {
	a := test.NewTempApp(t)
	a.Settings().SetTheme(Theme{})
	size := func(text string) fyne.Size { return fyne.MeasureText(text, 40, fyne.TextStyle{}) }
	if w := size("型紙").Width; w != 80 {
		t.Errorf("two letters of Japanese are %v wide at size 40, want a square each", w)
	}
	if a, b := size("型紙").Height, size("stencil").Height; a != b {
		t.Errorf("a line of Japanese is %v high, one of English %v", a, b)
	}
	if bold, plain := fyne.MeasureText("stencil", 40, fyne.TextStyle{Bold: true}), size("stencil"); bold.Width <= plain.Width {
		t.Error("Latin is not bold")
	}
	face, err := sfnt.Parse(assets.JapaneseType())
	if err != nil {
		t.Fatal(err)
	}
	var buffer sfnt.Buffer
	for _, letter := range " 型" {
		if i, err := face.GlyphIndex(&buffer, letter); err != nil || i == 0 {
			t.Errorf("the type has no %q", letter)
		}
	}
}
