package report

import (
	"math/rand/v2"
	"strings"
	"testing"

	"tsugime/export"
	"tsugime/repeat/geom"
)

// TestEveryPlaceOfTheAreaIsOnAPage: the windows start and end with the area, no
// gap is between them, none is larger than the room, neighbours lap by at least
// what was asked for, and there are as few of them as can be.
func TestEveryPlaceOfTheAreaIsOnAPage(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	for range 2000 {
		lap := leastLap + geom.Length(r.Int64N(int64(20*geom.Millimetre)))
		room := 2*lap + 1 + geom.Length(r.Int64N(int64(300*geom.Millimetre)))
		from := geom.Length(r.Int64N(int64(geom.Metre))) - geom.Metre/2
		all := span{from, from + 1 + geom.Length(r.Int64N(int64(2*geom.Metre)))}
		windows, nodes := tiles(all, room, lap)
		n := geom.Length(len(windows))
		if windows[0].from != all.from || windows[n-1].to < all.to || windows[n-1].to > max(all.to, all.from+lap)+n {
			t.Fatalf("windows %v don't begin and end with %v", windows, all)
		}
		if n > 1 && (n-1)*room-(n-2)*lap >= all.to-all.from {
			t.Fatalf("%d windows of %s mm, lap %s, for %s mm: one less is enough", n, room, lap, all.to-all.from)
		}
		if len(nodes) != len(windows)+1 {
			t.Fatalf("%d crosses for %d windows", len(nodes), len(windows))
		}
		for i, w := range windows {
			if w.to-w.from > room {
				t.Fatalf("window %v is wider than %s mm", w, room)
			}
			if i > 0 && windows[i-1].to-w.from < lap {
				t.Fatalf("windows %v and %v lap by less than %s mm", windows[i-1], w, lap)
			}
			for _, node := range nodes[i : i+2] {
				if node < w.from || node > w.to {
					t.Fatalf("cross at %s is outside its window %v", node, w)
				}
			}
		}
	}
}

// pageCross is a cross as it was drawn on a page, by its place in the drawing.
func pageCrosses(p export.Page) map[geom.Point]bool {
	move := p.Views[0].Window.Min.Sub(p.Views[0].At)
	found := map[geom.Point]bool{}
	upright := map[geom.Point]bool{}
	for _, l := range p.Drawing.Layers {
		if l.Name != "marks" {
			continue
		}
		for _, line := range l.Lines {
			a, b := line.Points[0], line.Points[1]
			c := geom.BoxOf(a, b).Centre().Add(move)
			if a.X == b.X {
				upright[c] = true
			} else if upright[c] {
				found[c] = true
			}
		}
		for _, line := range l.Lines {
			a, b := line.Points[0], line.Points[1]
			if c := geom.BoxOf(a, b).Centre().Add(move); a.Y == b.Y && upright[c] {
				found[c] = true
			}
		}
	}
	return found
}

func TestCrossesOfNeighbouringPagesAreTheSamePlace(t *testing.T) {
	w := built(t, dotOrder(t, 6, 2))
	for _, page := range export.Pages() {
		for name, b := range books(t, w, Options{Page: page.Name}) {
			var seen []export.Page
			for _, p := range b.Pages {
				if len(p.Views) == 1 && strings.HasPrefix(name, "transfer") && name != "transfer-whole.pdf" {
					seen = append(seen, p)
				}
			}
			for i, p := range seen {
				crosses := pageCrosses(p)
				if len(crosses) != 4 {
					t.Fatalf("%s on %s: page %d has %d crosses, want 4", name, page.Name, i+1, len(crosses))
				}
				for j, q := range seen[:i] {
					common := p.Views[0].Window.Intersect(q.Views[0].Window)
					other := pageCrosses(q)
					shared := 0
					for c := range crosses {
						if common.Holds(c) != other[c] {
							t.Errorf("%s on %s: the cross at %v of page %d lies on page %d but isn't drawn there", name, page.Name, c, i+1, j+1)
						}
						if other[c] {
							shared++
						}
					}
					long := max(common.Width(), common.Height()) > 20*geom.Millimetre
					if !common.Empty() && long && shared != 2 {
						t.Errorf("%s on %s: pages %d and %d share %d crosses, want 2", name, page.Name, i+1, j+1, shared)
					}
				}
			}
		}
	}
}

func TestALapThatCantBePastedIsRefused(t *testing.T) {
	a4, err := export.PageNamed("A4")
	if err != nil {
		t.Fatal(err)
	}
	area := geom.BoxOf(geom.Point{}, geom.PtMM(400, 300))
	for _, mm := range []float64{-1, 3.9, 90, 1000} {
		if _, err := pagesFor(a4, area, geom.MM(mm)); err == nil {
			t.Errorf("a lap of %g mm was taken", mm)
		}
	}
}

func TestColumnsAreNamedLikeALedger(t *testing.T) {
	for i, want := range map[int]string{0: "A", 25: "Z", 26: "AA", 27: "AB", 51: "AZ", 52: "BA", 701: "ZZ", 702: "AAA"} {
		if got := columnName(i); got != want {
			t.Errorf("column %d is %q, want %q", i, got, want)
		}
	}
}
