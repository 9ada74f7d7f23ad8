package report

import (
	"testing"

	"tsugime/repeat/repeattest"
	"tsugime/repeat/stencil"
)

// One small picture of each kind is held to, so that a change of a mark, a tone
// or a word is seen.
func TestPicturesLookAsTheyWereLookedAt(t *testing.T) {
	w := built(t, dotOrder(t, 1.3, 0.5))
	split := built(t, splitOrder(t, 1, stencil.TiePlaces))
	for _, of := range Pictures(split) {
		w := w
		if of == "sheet-second" || of == "set" {
			w = split
		}
		picture, err := Picture(w, of, 480)
		if err != nil {
			t.Fatal(err)
		}
		repeattest.GoldenPNG(t, of+".png", picture)
	}
}
