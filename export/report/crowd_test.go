package report

import (
	"fmt"
	"testing"

	"tsugime/export"
	"tsugime/repeat/cloth"
	"tsugime/repeat/document"
	"tsugime/repeat/geom"
	"tsugime/repeat/stencil"
)

// laidOtherwise are orders whose sheets say more than the usual: of a split, of cloth
// that is folded, printed on both sides, laid every other placement first, dyed in
// three colours, on a short board and turned.
func laidOtherwise(t *testing.T) map[string]document.Order {
	orders := map[string]document.Order{
		"split for ties": splitOrder(t, 1, stencil.TiePlaces), "split in halves": splitOrder(t, 1, stencil.Whole),
	}
	for name, change := range map[string]func(*document.Order){
		"folded":      func(o *document.Order) { o.Cloth.Bolt.Folded = true },
		"both sides":  func(o *document.Order) { o.Cloth.Bolt.Sides = cloth.BothSides },
		"every other": func(o *document.Order) { o.Board.Sequence = cloth.EveryOther },
		"three colours": func(o *document.Order) {
			o.Register.Sheets, o.Board.Sequence = 3, cloth.EveryOther
			o.Cloth.Bolt.Sides = cloth.BothSides
		},
		"short board": func(o *document.Order) { o.Board.Length = geom.MM(3200) },
		"star to star": func(o *document.Order) {
			o.Register.Way, o.Register.PitchError, o.Register.Growth.Start = cloth.StarToStar, geom.MM(0.02), 0.001
		},
		"mirrored": func(o *document.Order) { o.Sheets.Mirrored, o.Sheets.Marks = true, document.CentreMarks },
	} {
		o := dotOrder(t, 6, 2)
		change(&o)
		orders[name] = o
	}
	return orders
}

// TestNoPageIsCrowdedHoweverTheClothIsLaid measures the boxes of all words of every
// page and of every cut drawing, in either language and any unit.
func TestNoPageIsCrowdedHoweverTheClothIsLaid(t *testing.T) {
	for kind, o := range laidOtherwise(t) {
		w := built(t, o)
		job := Options{}.with(w).job
		for _, units := range []string{inMM, inSun} {
			for _, language := range []string{"en", "ja"} {
				opt := Options{Units: units, Language: language, job: job}
				where := fmt.Sprintf("%s in %s, %s:", kind, language, units)
				for name, b := range books(t, w, opt) {
					for i, p := range b.Pages {
						checkTexts(t, fmt.Sprintf("%s %s page %d", where, name, i+1), p)
					}
				}
				for _, d := range CutDrawings(w, opt) {
					checkTexts(t, where+" "+d.Title, export.Page{Drawing: d})
				}
			}
		}
	}
}
