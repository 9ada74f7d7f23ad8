package report

import (
	"strings"
	"testing"

	"tsugime/export"
	"tsugime/repeat/geom"
)

func TestWrappedLinesFitAndLoseNothing(t *testing.T) {
	const text = "Soak the sheet, " + "anunbrokenwordthatiswiderthanthewholeline " + "布地の小紋を染める then lay it."
	for _, mm := range []float64{8, 20, 45, 90, 400} {
		width := geom.MM(mm)
		lines := wrap(text, bodyStyle, width)
		for _, line := range lines {
			if w := bodyStyle.width(line); w > width {
				t.Errorf("in %g mm: %q is %s mm wide", mm, line, w)
			}
		}
		strip := func(s string) string { return strings.ReplaceAll(s, " ", "") }
		if got := strip(strings.Join(lines, "")); got != strip(text) {
			t.Errorf("in %g mm: got %q", mm, got)
		}
	}
	if got := wrap(" \n", bodyStyle, geom.MM(10)); got != nil {
		t.Errorf("blanks became %q", got)
	}
	if got := wrap("measure "+unbroken(figuresIn(inMM, "").checkText()), bodyStyle, bodyStyle.width("measure "+figuresIn(inMM, "").checkText())-1); len(got) != 2 || got[1] != unbroken(figuresIn(inMM, "").checkText()) {
		t.Errorf("the check text was parted: %q", got)
	}
}

func TestATitleShrinksBeforeItIsCut(t *testing.T) {
	for _, c := range []struct {
		text  string
		width float64
		whole bool
	}{{"Small dots", 100, true}, {"Small dots for a coat", 66, true}, {strings.Repeat("Small dots ", 40), 100, false}} {
		text, s := fit(c.text, titleStyle, geom.MM(c.width))
		if s.width(text) > geom.MM(c.width) {
			t.Errorf("%q is %s mm wide, more than %g", text, s.width(text), c.width)
		}
		if s.height < titleStyle.height.Times(0.7)-1 || s.height > titleStyle.height {
			t.Errorf("%q has letters of %s mm", text, s.height)
		}
		if whole := !strings.HasSuffix(text, "…"); whole != c.whole {
			t.Errorf("%q in %g mm became %q", c.text, c.width, text)
		}
	}
}

// TestTheFontHasEveryLetterOfTheSheets: a letter that is lacking would be drawn
// as a frame.
func TestTheFontHasEveryLetterOfTheSheets(t *testing.T) {
	w := built(t, dotOrder(t, 8, 2))
	for _, units := range []string{inMM, inSun} {
		for name, b := range books(t, w, Options{Units: units}) {
			for _, p := range b.Pages {
				for _, text := range pageTexts(p) {
					if lacking := export.Lacking(text.Text.Text); len(lacking) > 0 {
						t.Errorf("%s: the font lacks %q of %q", name, string(lacking), text.Text.Text)
					}
				}
			}
		}
	}
}

func TestFiguresKeepTheirDecimals(t *testing.T) {
	for _, c := range []struct {
		r    ruler
		mm   float64
		want string
	}{
		{figuresIn(inMM, "").sheet, 12.5, "12.50 mm"},
		{figuresIn(inMM, "").sheet, 0, "0.00 mm"},
		{figuresIn(inMM, "").sheet, -0.001, "0.00 mm"},
		{figuresIn(inMM, "").cloth, 12600, "12600.0 mm"},
		{figuresIn(inMM, "").arm, 400, "40 cm"},
		{figuresIn(inSun, "").sheet, 181.818182, "6.0000 kane sun"},
		{figuresIn(inSun, "").cloth, 378.787879, "10.000 kujira sun"},
		{figuresIn(inSun, "").fine, 0.5, "0.165 kane bu"},
	} {
		if got := c.r.with(geom.MM(c.mm)); got != c.want {
			t.Errorf("%g mm reads %q, want %q", c.mm, got, c.want)
		}
	}
	if got := figuresIn(inMM, "").both(checkLength); got != "100.00 mm = 3.3000 kane sun" {
		t.Errorf("the check length reads %q", got)
	}
}
