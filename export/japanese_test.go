package export

import (
	"testing"
	"unicode"

	euc "golang.org/x/text/encoding/japanese"

	"tsugime/repeat/geom"
)

// jis decodes a row and a cell of JIS X 0208 by its EUC form; zero for none.
func jis(row, cell int) rune {
	text, err := euc.EUCJP.NewDecoder().String(string([]byte{byte(row + 0xa0), byte(cell + 0xa0)}))
	r := []rune(text)
	if err != nil || len(r) != 1 || r[0] == unicode.ReplacementChar {
		return 0
	}
	return r[0]
}

// JIS X 0208: rows 16 to 47 hold the 2,965 kanji of level 1, rows 1 to 8 signs,
// kana, and the Latin, Greek and Cyrillic letters.
func TestEveryKanjiOfLevelOneAndEverySignHasALetter(t *testing.T) {
	kanji := 0
	for row := 1; row <= 47; row++ {
		if row > 8 && row < 16 { // empty in the standard
			continue
		}
		for cell := 1; cell <= 94; cell++ {
			r := jis(row, cell)
			if r == 0 {
				continue
			}
			if row >= 16 {
				kanji++
			}
			for _, heavy := range []bool{false, true} {
				if fountOf(r, heavy) == nil || len(letterOf(r, heavy).outline) == 0 && !unicode.IsSpace(r) {
					t.Errorf("%q (row %d, cell %d), bold %t: no letter", r, row, cell, heavy)
				}
			}
		}
	}
	if kanji != 2965 {
		t.Errorf("%d kanji were looked at, want 2965", kanji)
	}
}

// A kanji fills its square: as far above a capital as below the line.
func TestKanjiStandBesideCapitals(t *testing.T) {
	const em = 10 * geom.Millimetre
	capital := Lettering(Text{Text: "H", Height: em}).Bounds()
	kanji := Lettering(Text{Text: "国", Height: em}).Bounds()
	above, below := capital.Min.Y-kanji.Min.Y, kanji.Max.Y-capital.Max.Y
	if above < 0 || below < 0 || (above-below).Abs() > em/50 {
		t.Errorf("a kanji reaches %s mm above a capital and %s mm below the line", above, below)
	}
	if w := TextWidth("国", em, false); w != em.Times(japaneseSize) {
		t.Errorf("it is %s mm wide, want %s", w, em.Times(japaneseSize))
	}
}

// The ink of a bold kanji grows by about half the pen's width all along the rim.
func TestABoldKanjiIsTheSameKanjiHeavier(t *testing.T) {
	const em = geom.Metre
	for _, r := range "口型紙継星長板送鬱" {
		thin, thick := japanese().letter(r), stroked().letter(r)
		if thin.advance != thick.advance {
			t.Errorf("%q: bold is %s wide, plain %s", r, thick.advance, thin.advance)
		}
		grown := thin.outline.Bounds().Grown(em.Times(japaneseStroke) / 2)
		if got := thick.outline.Bounds(); (got.Width()-grown.Width()).Abs() > em/50 || (got.Height()-grown.Height()).Abs() > em/50 {
			t.Errorf("%q: bold fills %v, want about %v", r, got, grown)
		}
		if ratio := thick.outline.AreaMM2() / thin.outline.AreaMM2(); ratio < 1.2 || ratio > 1.9 {
			t.Errorf("%q: bold has %.2f times the ink", r, ratio)
		}
	}
}

// "口" is two squares in one another: the outer grows, the inner shrinks, by the
// half width of the pen on each side.
func TestThickeningMovesEverySideByTheSame(t *testing.T) {
	box := func(a, b geom.Length) geom.Contour {
		return corners(geom.Point{X: a, Y: a}, geom.Point{X: b, Y: a}, geom.Point{X: b, Y: b}, geom.Point{X: a, Y: b})
	}
	inner := corners(geom.Point{X: 30, Y: 30}, geom.Point{X: 30, Y: 70}, geom.Point{X: 70, Y: 70}, geom.Point{X: 70, Y: 30})
	got := thickened(geom.Outline{box(0, 100), inner}, 5)
	if b := got[:1].Bounds(); b != geom.BoxOf(geom.Point{X: -5, Y: -5}, geom.Point{X: 105, Y: 105}) {
		t.Errorf("the outer square became %v", b)
	}
	if b := got[1:].Bounds(); b != geom.BoxOf(geom.Point{X: 35, Y: 35}, geom.Point{X: 65, Y: 65}) {
		t.Errorf("the inner square became %v", b)
	}
}

func TestRunsSetWhatTheLetteringDraws(t *testing.T) {
	text := Text{At: geom.PtMM(40, 30), Height: geom.MM(5), Text: "送り181.82 mm の継ぎ目🖌", Anchor: Middle, TurnDeg: 90, Bold: true}
	runs := Runs(text)
	said, faces := "", ""
	for _, r := range runs {
		said += r.Text
		faces += string("PBJN"[r.Face])
		if n := len([]rune(r.Text)); r.Face != NoFace && n != len(r.Glyphs) {
			t.Errorf("%q: %d glyphs", r.Text, len(r.Glyphs))
		}
		if (r.Stroke > 0) != (r.Face == Japanese) {
			t.Errorf("%q: a stroke of %s", r.Text, r.Stroke)
		}
	}
	if said != text.Text || faces != "JBJN" {
		t.Errorf("runs say %q in the faces %s", said, faces)
	}
	// Turned by 90° the line runs down: each run begins where the one before ends.
	y := text.Begin().Y
	for i, r := range runs {
		rise := geom.Length(0)
		if r.Face == Japanese {
			rise = text.Height.Times(japaneseRise)
		}
		if r.At.X != text.At.X+rise || (r.At.Y-y).Abs() > 5 {
			t.Errorf("run %d begins at %v, want y %s", i, r.At, y)
		}
		y += TextWidth(r.Text, text.Height, text.Bold)
	}
}
