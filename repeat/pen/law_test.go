package pen_test

import (
	"math/rand/v2"
	"testing"

	"tsugime/repeat/geom"
	"tsugime/repeat/pen"
)

// edit does a random thing to a stroke.
func edit(random *rand.Rand, s pen.Stroke) (pen.Stroke, error) {
	any := func() geom.Point { return geom.PtMM(float64(random.IntN(17))/2, float64(random.IntN(17))/2) }
	node, segment, t := random.IntN(len(s.Segments)+2), random.IntN(len(s.Segments)+1), random.Float64()
	switch random.IntN(12) {
	case 0, 1:
		return s.MoveNode(node, any())
	case 2:
		return s.MoveHandle(pen.Handle{Node: node, Out: random.IntN(2) == 0, At: any()}, random.IntN(2) == 0)
	case 3:
		return s.MoveSegment(segment, t, any())
	case 4, 5:
		return s.InsertNode(segment, t)
	case 6:
		return s.DeleteNode(node)
	case 7:
		return s.Corner(node)
	case 8:
		return s.Smooth(node)
	case 9:
		return s.ToLine(segment)
	case 10:
		return s.ToArc(segment)
	}
	return s.ToCurve(segment)
}

// Three thousand random edits: each is refused in words and changes nothing, or the
// line stays closed and well formed; and what it bounds is sound or refused.
func TestRandomEditsKeepAClosedLineOrRefuse(t *testing.T) {
	random := rand.New(rand.NewPCG(23, 1))
	start := stroke(t, "M0 0C1 -1 3 -2 4 0A3 3 0 0 1 2 4L0 3Z")
	s, done, refused, drawn := start, 0, 0, 0
	for n := range 3000 {
		if n%40 == 0 || len(s.Segments) > 30 {
			s = start
		}
		next, err := edit(random, s)
		if err != nil {
			if refused++; err.Error() == "" {
				t.Fatal("refused without a word")
			}
			continue
		}
		done++
		if s = next; !s.Closed || len(s.Segments) == 0 || s.End() != s.Start || len(s.Nodes()) != len(s.Segments) {
			t.Fatalf("after %d edits the line is %+v", n, s)
		}
		o, _, err := pen.Outline(s)
		if err != nil {
			continue
		}
		drawn++
		coversAlike(t, random, s, o)
	}
	t.Logf("%d edits done, %d refused, %d outlines", done, refused, drawn)
	if done < 1500 || refused < 300 || drawn < 1400 {
		t.Error("too few of them mean anything")
	}
}

// Open lines: whatever is added, taken back, closed and parted, they stay whole.
func TestRandomDrawingEndsClosedOrRefused(t *testing.T) {
	random := rand.New(rand.NewPCG(23, 2))
	for range 800 {
		s := pen.Begin(geom.PtMM(float64(random.IntN(9)), float64(random.IntN(9))))
		for range random.IntN(9) {
			to := geom.PtMM(float64(random.IntN(9)), float64(random.IntN(9)))
			g := pen.LineTo(to)
			switch random.IntN(3) {
			case 1:
				arc, err := pen.ArcThrough(s.End(), geom.PtMM(random.Float64()*9, random.Float64()*9), to)
				if err != nil {
					continue
				}
				g = arc
			case 2:
				g = pen.CurveTo(s.End(), geom.PtMM(random.Float64()*9, 0), geom.PtMM(0, random.Float64()*9), to)
			}
			if next, err := s.Add(g); err == nil {
				s = next
			}
		}
		nodes := s.Nodes()
		if nodes[len(nodes)-1] != s.End() || nodes[0] != s.Start {
			t.Fatalf("nodes %v of %+v", nodes, s)
		}
		closed, err := s.Close()
		if err != nil {
			continue
		}
		if closed.End() != closed.Start || closed.Reversed().Reversed().Start != closed.Start {
			t.Fatalf("closed is %+v", closed)
		}
		if o, _, err := pen.Outline(closed); err == nil {
			coversAlike(t, random, closed, o)
		}
	}
}

// coversAlike checks at random places that an outline, whose contours must all turn
// as rims and holes do, covers what a stroke winds around.
func coversAlike(t *testing.T, random *rand.Rand, s pen.Stroke, o geom.Outline) {
	t.Helper()
	raw := geom.Outline{{Start: s.Start, Segments: s.Segments}}
	ring, rings := raw.Rings(geom.Chord)[0], o.Rings(geom.Chord)
	box := raw.Bounds()
	for range 12 {
		p := box.Min.Add(geom.Point{X: geom.Length(random.Int64N(int64(box.Width()) + 1)), Y: geom.Length(random.Int64N(int64(box.Height()) + 1))})
		near := false
		for i, g := range s.Segments {
			_, at := g.Nearest(s.Node(i), p)
			near = near || at.Sub(p).Norm() < 10*float64(geom.Chord)
		}
		if near {
			continue
		}
		turns := 0
		for _, r := range rings {
			turns += r.Winding(p)
		}
		if want := ring.Winding(p) != 0; turns != 0 && turns != 1 || (turns == 1) != want {
			t.Fatalf("at %v, %v the outline winds %d times, drawn covers it: %v\n%s\nmended\n%s", p.X, p.Y, turns, want, raw.PathData(6), o.PathData(6))
		}
	}
}
