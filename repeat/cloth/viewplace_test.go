package cloth

import (
	"math/rand/v2"
	"strconv"
	"testing"

	"tsugime/repeat/geom"
)

func TestAViewStandsUnderTheOneBeforeWhereThatIsLarger(t *testing.T) {
	piece := func(v View, wide, tall float64) Piece {
		return Piece{View: v, Area: geom.BoxOf(geom.PtMM(-wide/2, 0), geom.PtMM(wide/2, tall))}
	}
	coat := []Piece{piece("back", 1300, 800), piece("front", 1200, 800), piece("collar", 60, 2000)}
	got := PlaceViews(coat, []View{"back", "front", "collar"}, 100*geom.Millimetre, 1)
	for v, want := range map[View]geom.Point{"back": geom.PtMM(650, 0), "front": geom.PtMM(600, 900), "collar": geom.PtMM(1430, 0)} {
		if got[v] != want {
			t.Errorf("%s at %v, want %v", v, got[v], want)
		}
	}
	if got := PlaceViews(coat[:2], []View{"back", "front"}, 100*geom.Millimetre, 3); got["front"] != geom.PtMM(2000, 0) {
		t.Errorf("in a wide room the front is at %v, not beside the back", got["front"])
	}
}

func TestPlacedViewsStandApart(t *testing.T) {
	random := rand.New(rand.NewPCG(11, 5))
	for range 500 {
		var pieces []Piece
		var views []View
		for i := range 1 + random.IntN(6) {
			v := View(strconv.Itoa(i))
			corner := geom.PtMM(random.Float64()*500-250, random.Float64()*500-250)
			pieces = append(pieces, Piece{View: v, Area: geom.BoxOf(corner, corner.Add(geom.PtMM(1+random.Float64()*900, 1+random.Float64()*900)))})
			views = append(views, v)
		}
		gap := 50 * geom.Millimetre
		places := PlaceViews(pieces, views, gap, 0.3+random.Float64()*3)
		for i, p := range pieces {
			a := p.Area.Moved(places[p.View])
			if a.Min.X < 0 || a.Min.Y < 0 {
				t.Fatalf("%v begins outside the picture", a)
			}
			for _, q := range pieces[:i] {
				b := q.Area.Moved(places[q.View])
				if a.Min.X < b.Max.X+gap && b.Min.X < a.Max.X+gap && a.Min.Y < b.Max.Y+gap && b.Min.Y < a.Max.Y+gap {
					t.Fatalf("%v and %v stand closer than the gap", a, b)
				}
			}
		}
	}
}
