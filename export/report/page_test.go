package report

import (
	"fmt"
	"strings"
	"testing"

	"tsugime/export"
	"tsugime/repeat"
	"tsugime/repeat/document"
	"tsugime/repeat/geom"
	"tsugime/repeat/stencil"
)

// books returns every book of a work, by name.
func books(t testing.TB, w repeat.Work, opt Options) map[string]export.Book {
	t.Helper()
	all := map[string]export.Book{}
	for _, name := range Names(w) {
		if strings.HasSuffix(name, ".pdf") && !strings.HasPrefix(name, "cut") {
			b, err := bookNamed(name, w, opt)
			if err != nil {
				t.Fatalf("%s on %s in %s: %v", name, opt.Page, opt.Units, err)
			}
			all[name] = b
		}
	}
	return all
}

// turnedBox returns the box of a text that is level or reads upward.
func turnedBox(text export.Text) geom.Box {
	level := text
	level.TurnDeg, level.At = 0, geom.Point{}
	b := textBox(level)
	if text.TurnDeg == 0 {
		return b.Moved(text.At)
	}
	turn := geom.Rotate(text.TurnDeg)
	return geom.BoxOf(turn.Apply(b.Min), turn.Apply(b.Max)).Moved(text.At)
}

type placedText struct {
	export.Text
	box geom.Box
}

func textsOf(d export.Drawing, move geom.Point) []placedText {
	var all []placedText
	for _, l := range d.Layers {
		for _, text := range l.Texts {
			all = append(all, placedText{text, turnedBox(text).Moved(move)})
		}
	}
	return all
}

// pageTexts returns the texts of a page and of what its windows show whole.
func pageTexts(p export.Page) []placedText {
	all := textsOf(p.Drawing, geom.Point{})
	for _, v := range p.Views {
		move := v.At.Sub(v.Window.Min)
		for _, text := range textsOf(*v.Of, move) {
			if text.box.Meets(v.Window.Moved(move)) {
				all = append(all, text)
			}
		}
	}
	return all
}

// longOrder has what strains a page: a title and a note of many words, one of
// them longer than a line.
func longOrder(t testing.TB) document.Order {
	o := dotOrder(t, 4, 1.5)
	o.Title = "A ground of small dots at forty-five degrees for a light indoor coat with a very longwordedandunbrokenname that goes on and on"
	o.Note = strings.Repeat("Soak the sheet before the first placement. ", 20)
	return o
}

func TestNoTwoTextsOnAPageOverlapAndAllStayOnIt(t *testing.T) {
	for _, o := range []document.Order{dotOrder(t, 4, 1.5), longOrder(t), splitOrder(t, 1, stencil.TiePlaces)} {
		w := built(t, o)
		for _, page := range export.Pages() {
			for _, units := range []string{inMM, inSun} {
				for name, b := range books(t, w, Options{Page: page.Name, Units: units}) {
					for i, p := range b.Pages {
						checkTexts(t, fmt.Sprintf("%s page %d on %s in %s", name, i+1, page.Name, units), p)
					}
				}
			}
		}
	}
}

func checkTexts(t *testing.T, where string, p export.Page) {
	t.Helper()
	sheet := geom.BoxOf(geom.Point{}, geom.Point{X: p.Drawing.Width, Y: p.Drawing.Height}).Grown(-5 * geom.Millimetre)
	own := len(textsOf(p.Drawing, geom.Point{}))
	texts := pageTexts(p)
	if own == 0 {
		t.Errorf("%s: no text at all", where)
	}
	for _, l := range p.Drawing.Layers {
		for _, line := range l.Lines {
			for _, a := range texts {
				if l.Name == "marks" && geom.BoxOf(line.Points...).Meets(a.box) {
					t.Errorf("%s: a mark at %v runs through %q", where, line.Points, a.Text.Text)
				}
			}
		}
	}
	for i, a := range texts {
		if i < own && !sheet.HoldsBox(a.box) {
			t.Errorf("%s: %q leaves the page: %v", where, a.Text.Text, a.box)
		}
		for _, b := range texts[:i] {
			if common := a.box.Intersect(b.box); common.Width() > 0 && common.Height() > 0 {
				t.Errorf("%s: %q and %q overlap by %s by %s mm", where, a.Text.Text, b.Text.Text, common.Width(), common.Height())
			}
		}
	}
}

func TestNoTextLiesOnWhatIsCut(t *testing.T) {
	for _, o := range []document.Order{dotOrder(t, 4, 1.5), splitOrder(t, 1, stencil.Whole)} {
		checkOffTheField(t, built(t, o))
	}
}

func checkOffTheField(t *testing.T, w repeat.Work) {
	t.Helper()
	s := Options{}.together(w)
	field := patternField(s.Sheet)
	for _, d := range append(CutDrawings(w, Options{}), bindingDrawing(w, s, bind(s), figuresIn(inMM, ""))) {
		for _, text := range textsOf(d, geom.Point{}) {
			if text.Text.Text != "cut field" && text.box.Meets(field) {
				t.Errorf("%q at %v lies on the field %v", text.Text.Text, text.At, field)
			}
			if !s.Paper.HoldsBox(text.box) {
				t.Errorf("%q at %v leaves the paper %v", text.Text.Text, text.At, s.Paper)
			}
		}
	}
}
