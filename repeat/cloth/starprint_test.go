package cloth

import (
	"testing"

	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

// coatOf is the women's kimono cut from the coat's cloth.
func coatOf(t *testing.T) (Dressed, Run) {
	t.Helper()
	run := mustLay(t, coatBolt, coatBoard, design, sixSun)
	step := coatBolt.Finished(geom.Point{Y: sixSun}).Y
	return mustDress(t, coatBolt, run, pattern.Straight(step, step), 160, false), run
}

// Every place of the cloth is asked for by itself whether some piece shows it.
func TestAStarIsSeenWhereAPieceShowsItsPlace(t *testing.T) {
	d, run := coatOf(t)
	seen, hidden := 0, 0
	for x := 2 * geom.Millimetre; x < 371*geom.Millimetre; x += 7 * geom.Millimetre {
		for _, s := range StarPrints(d, run, []geom.Point{{X: x}}) {
			shows, covered := 0, false
			for _, p := range d.Pieces() {
				w := p.Window()
				if w.Min.X <= s.At.X && s.At.X <= w.Max.X && w.Min.Y <= s.At.Y && s.At.Y <= w.Max.Y {
					shows++
					covered = covered || p.Name == "collar" // the over-collar may lie on it
				}
			}
			if s.Seen && shows == 0 || !s.Seen && shows == 1 && !covered {
				t.Fatalf("star at %v: seen %v, but %d pieces show its place", s.At, s.Seen, shows)
			}
			if s.Seen {
				seen++
				for _, p := range d.Pieces() {
					if p.Name == s.Piece && p.ToCloth(s.Place) != s.At {
						t.Fatalf("star at %v is told at %v of %s", s.At, s.Place, s.Piece)
					}
				}
			} else {
				hidden++
			}
		}
	}
	if seen < 1000 || hidden < 500 {
		t.Errorf("%d seen and %d hidden are too few to tell", seen, hidden)
	}
}

// A print is where the placement after it is laid: one row of prints for each
// placement and one at the end.
func TestEachPrintIsCountedOnce(t *testing.T) {
	d, run := coatOf(t)
	stars := []geom.Point{geom.PtMM(4, 0), geom.PtMM(368, 0)}
	prints := StarPrints(d, run, stars)
	if want := 2 * (len(run.Placements) + 1); len(prints) != want {
		t.Fatalf("%d prints of %d placements, want %d", len(prints), len(run.Placements), want)
	}
	step := coatBolt.Finished(geom.Point{Y: sixSun}).Y
	for i := 2; i < len(prints); i++ {
		way := prints[i].At.Sub(prints[i-2].At)
		if way.X != 0 || (way.Y-step).Abs() > 2 {
			t.Fatalf("print %d lies %v after the one before; want one finished step of %s mm", i, way, step)
		}
	}
}

func TestStarsInTheHiddenStripAreNotSeen(t *testing.T) {
	d, run := coatOf(t)
	edge := d.Hidden - geom.Millimetre
	if edge <= 0 {
		t.Fatal("the garment has no hidden strip")
	}
	width, _ := coatBolt.FinishedSize()
	prints := StarPrints(d, run, []geom.Point{{X: edge}, {X: width - edge}})
	if seen := SeenStars(prints); len(seen) != 0 {
		t.Errorf("%d of %d stars in the hidden strip are seen, the first at %v on %s", len(seen), len(prints), seen[0].At, seen[0].Piece)
	}
}
