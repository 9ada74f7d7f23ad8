package board

import (
	"image"
	"image/color"
	"testing"

	"tsugime/repeat/geom"
)

// Lines of the grid stand at whole numbers of the unit, on light and on dark ground.
func TestTheGridStandsAtTheNumbersOfTheUnit(t *testing.T) {
	for _, u := range []geom.Unit{geom.MMUnit, geom.CMUnit, geom.InchUnit, geom.KaneSun, geom.KujiraSun} {
		for _, ground := range []color.RGBA{{250, 245, 235, 255}, {20, 24, 40, 255}} {
			b := &Board{Unit: u, view: window{x: -1.3, y: -0.7, zoom: 9.7}}
			img := image.NewRGBA(image.Rect(0, 0, 900, 700))
			fill(img, img.Rect, ground)
			b.grid(img, 1)
			lines := 0
			for _, tick := range gridTicks(ticks(u, b.view.x, b.view.zoom, 900)) {
				x := int(tick.at + 0.5)
				if x >= 900 || x < 0 {
					continue
				}
				lines++
				if img.RGBAAt(x, 3) == ground {
					t.Fatalf("%s: no line at %d", u.Name, x)
				}
			}
			changed := 0
			for x := range 900 {
				if img.RGBAAt(x, 3) != ground {
					changed++
				}
			}
			if lines < 2 || changed > lines+1 && img.RGBAAt(450, 3) == ground {
				t.Errorf("%s: %d columns are lines, want %d", u.Name, changed, lines)
			}
		}
	}
}
