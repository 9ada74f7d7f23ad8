package pen_test

import (
	"math"
	"math/rand/v2"
	"reflect"
	"strings"
	"testing"

	"tsugime/repeat/geom"
	"tsugime/repeat/pen"
)

// line draws a stroke of straight pieces through places in mm.
func line(t *testing.T, mm ...float64) pen.Stroke {
	t.Helper()
	s := pen.Begin(geom.PtMM(mm[0], mm[1]))
	for i := 2; i < len(mm); i += 2 {
		s = added(t, s, pen.LineTo(geom.PtMM(mm[i], mm[i+1])))
	}
	return s
}

func added(t *testing.T, s pen.Stroke, g geom.Segment) pen.Stroke {
	t.Helper()
	next, err := s.Add(g)
	return must(t)(next, err)
}

func must(t *testing.T) func(pen.Stroke, error) pen.Stroke {
	return func(s pen.Stroke, err error) pen.Stroke {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
		return s
	}
}

// stroke reads path data as one stroke.
func stroke(t *testing.T, path string) pen.Stroke {
	t.Helper()
	o, err := geom.ParsePathData(path)
	if err != nil {
		t.Fatal(err)
	}
	return pen.Of(o)[0]
}

func TestATriangleHasTheNodesThatWereDrawn(t *testing.T) {
	s := must(t)(line(t, 0, 0, 4, 0, 2, 3).Close())
	want := []geom.Point{geom.PtMM(0, 0), geom.PtMM(4, 0), geom.PtMM(2, 3)}
	if got := s.Nodes(); !reflect.DeepEqual(got, want) {
		t.Errorf("nodes are %v, want %v", got, want)
	}
	o, mends, err := pen.Outline(s)
	if err != nil || len(mends) > 0 || math.Abs(o.AreaMM2()-6) > 1e-12 {
		t.Errorf("area %v mm², mends %v, %v; want 6 mm²", o.AreaMM2(), mends, err)
	}
}

func TestAnEditLeavesTheStrokeBefore(t *testing.T) {
	s := stroke(t, "M0 0C1 -1 3 -1 4 0A2 2 0 0 1 0 0Z")
	before := s
	before.Segments = append([]geom.Segment(nil), s.Segments...)
	edits := map[string]func() (pen.Stroke, error){
		"MoveNode": func() (pen.Stroke, error) { return s.MoveNode(1, geom.PtMM(5, 1)) },
		"MoveHandle": func() (pen.Stroke, error) {
			return s.MoveHandle(pen.Handle{Node: 0, Out: true, At: geom.PtMM(1, -2)}, false)
		},
		"MoveSegment": func() (pen.Stroke, error) { return s.MoveSegment(0, 0.5, geom.PtMM(2, -3)) },
		"InsertNode":  func() (pen.Stroke, error) { return s.InsertNode(0, 0.5) },
		"Corner":      func() (pen.Stroke, error) { return s.Corner(0) },
		"Smooth":      func() (pen.Stroke, error) { return s.Smooth(0) },
		"ToLine":      func() (pen.Stroke, error) { return s.ToLine(0) },
		"ToArc":       func() (pen.Stroke, error) { return s.ToArc(0) },
		"ToCurve":     func() (pen.Stroke, error) { return s.ToCurve(1) },
	}
	for name, edit := range edits {
		next, err := edit()
		if err != nil {
			t.Errorf("%s: %v", name, err)
		}
		if reflect.DeepEqual(next, s) {
			t.Errorf("%s changed nothing", name)
		}
		if !reflect.DeepEqual(s, before) {
			t.Fatalf("%s changed the stroke before", name)
		}
	}
}

// The circle through three places, worked out another way: its centre by the
// perpendicular bisectors.
func TestAnArcGoesThroughItsThreePlaces(t *testing.T) {
	random := rand.New(rand.NewPCG(22, 1))
	any := func() geom.Point {
		return geom.Point{X: geom.Length(random.Int64N(8e6)), Y: geom.Length(random.Int64N(8e6))}
	}
	arcs := 0
	for range 3000 {
		a, m, b := any(), any(), any()
		g, err := pen.ArcThrough(a, m, b)
		if err != nil || g.Kind != geom.Arc {
			continue
		}
		arcs++
		_, near := g.Nearest(a, m)
		height := math.Abs(g.Bulge) * b.Sub(a).Norm() / 2
		if off := near.Sub(m).Norm(); off > 2+1e-9*height {
			t.Fatalf("the arc from %v through %v to %v passes it at %.1f nm", a, m, b, off)
		}
	}
	if arcs < 2900 {
		t.Errorf("only %d of 3000 were arcs", arcs)
	}
}

func TestAnArcGoesOnSmoothly(t *testing.T) {
	s := added(t, line(t, 0, 0, 3, 1), geom.Segment{})
	s, _ = s.Back()
	_, heading := s.Segments[0].Headings(s.Start)
	g, err := pen.ArcOn(s.End(), heading, geom.PtMM(5, 5))
	if err != nil {
		t.Fatal(err)
	}
	if s = added(t, s, g); !s.SmoothAt(1) {
		t.Error("the arc leaves with a corner")
	}
	if _, err := pen.ArcOn(geom.PtMM(3, 1), geom.PtMM(1, 0), geom.PtMM(-4, 1)); err == nil {
		t.Error("an arc that would have to turn right back was drawn")
	}
}

func TestANodeInsertedAndDeletedAgainLeavesTheLineAsItWas(t *testing.T) {
	random := rand.New(rand.NewPCG(22, 2))
	for _, path := range []string{"M0 0C1 -1 3 -2 4 0C5 2 1 4 0 0Z", "M0 0A3 3 0 0 1 4 0L2 5Z", "M0 0H4V3H0Z"} {
		s := stroke(t, path)
		for range 200 {
			i := random.IntN(len(s.Segments))
			more := must(t)(s.InsertNode(i, 0.1+0.8*random.Float64()))
			if len(more.Segments) != len(s.Segments)+1 {
				t.Fatalf("%s: no node more", path)
			}
			less := must(t)(more.DeleteNode(i + 1))
			for k, g := range less.Segments {
				w := s.Segments[k]
				if g.Kind != w.Kind || g.End != w.End || g.C1.Sub(w.C1).Norm() > 40 || g.C2.Sub(w.C2).Norm() > 40 || math.Abs(g.Bulge-w.Bulge) > 1e-5 {
					t.Fatalf("%s: piece %d became %+v, was %+v", path, k, g, w)
				}
			}
		}
	}
}

func TestASmoothNodeStaysSmooth(t *testing.T) {
	s := must(t)(stroke(t, "M0 0C1 -1 3 -2 4 0C5 2 1 4 0 0Z").Smooth(1))
	if !s.SmoothAt(1) {
		t.Fatal("not smooth")
	}
	random := rand.New(rand.NewPCG(22, 3))
	for range 300 {
		to := geom.PtMM(random.Float64()*8, random.Float64()*8)
		s = must(t)(s.MoveHandle(pen.Handle{Node: 1, Out: random.IntN(2) == 0, At: to}, false))
		s = must(t)(s.MoveNode(1, geom.PtMM(random.Float64()*8, random.Float64()*8)))
		s = must(t)(s.MoveSegment(random.IntN(2), 0.3+0.4*random.Float64(), geom.PtMM(random.Float64()*8, random.Float64()*8)))
		if !s.SmoothAt(1) {
			t.Fatalf("node 2 of %+v became a corner", s)
		}
	}
	if s = must(t)(s.MoveHandle(pen.Handle{Node: 1, Out: true, At: geom.PtMM(40, -3)}, true)); s.SmoothAt(1) {
		t.Error("a handle moved apart left the node smooth")
	}
}

func TestALineIntoACurveStaysSmoothWhenItsNodesMove(t *testing.T) {
	s := must(t)(stroke(t, "M0 0H4C6 1 5 4 0 5Z").Smooth(1))
	if !s.SmoothAt(1) || s.Segments[1].C1.Y != 0 {
		t.Fatalf("the handle at %v does not go on as the line does", s.Segments[1].C1)
	}
	if s = must(t)(s.MoveNode(0, geom.PtMM(0, -3))); !s.SmoothAt(1) {
		t.Error("turning the line made a corner")
	}
}

func TestADraggedPieceGoesWhereItIsDragged(t *testing.T) {
	s := stroke(t, "M0 0C1 -1 3 -2 4 0A3 3 0 0 1 0 0Z")
	for segment, at := range []float64{0.37, 0.5} {
		to := geom.PtMM(2, 3.3)
		if segment == 0 {
			to = geom.PtMM(1.7, -2.9)
		}
		next := must(t)(s.MoveSegment(segment, at, to))
		_, near := next.Segments[segment].Nearest(next.Node(segment), to)
		if off := near.Sub(to).Norm(); off > 4 {
			t.Errorf("piece %d passes %.0f nm beside where it was dragged to", segment, off)
		}
		if next.Segments[segment].Kind != s.Segments[segment].Kind {
			t.Errorf("piece %d is of another kind", segment)
		}
	}
}

func TestJoinedLinesMeetAtTheirNearestEnds(t *testing.T) {
	a, b := line(t, 0, 0, 4, 0), line(t, 9, 9, 4, 0)
	j := must(t)(a.Join(b))
	if want := []geom.Point{{}, geom.PtMM(4, 0), geom.PtMM(9, 9)}; !reflect.DeepEqual(j.Nodes(), want) {
		t.Errorf("joined through %v, want %v", j.Nodes(), want)
	}
	j = must(t)(a.Join(line(t, -5, 1, -1, 1)))
	if want := []geom.Point{geom.PtMM(-5, 1), geom.PtMM(-1, 1), {}, geom.PtMM(4, 0)}; !reflect.DeepEqual(j.Nodes(), want) {
		t.Errorf("joined through %v, want %v", j.Nodes(), want)
	}
	if _, err := must(t)(line(t, 0, 0, 4, 0, 2, 3).Close()).Join(a); err == nil {
		t.Error("a closed line was joined")
	}
}

func TestAPartedLineJoinsAgain(t *testing.T) {
	s := line(t, 0, 0, 4, 0, 6, 3, 1, 9)
	parts, err := s.Part(2)
	if err != nil || len(parts) != 2 {
		t.Fatal(parts, err)
	}
	if j := must(t)(parts[0].Join(parts[1])); !reflect.DeepEqual(j.Nodes(), s.Nodes()) {
		t.Errorf("joined again through %v, was %v", j.Nodes(), s.Nodes())
	}
	closed := must(t)(s.Close())
	if parts, err = closed.Part(2); err != nil || len(parts) != 1 || parts[0].Closed || parts[0].Start != parts[0].End() || parts[0].Start != geom.PtMM(6, 3) {
		t.Fatal(parts, err)
	}
	again := must(t)(parts[0].Close())
	if a, _, _ := pen.Outline(again); math.Abs(a.AreaMM2()-geom.Outline{{Start: closed.Start, Segments: closed.Segments}}.AreaMM2()) > 1e-9 {
		t.Error("closed again it covers another area")
	}
	if _, err := s.Part(0); err == nil {
		t.Error("a line was parted at its end")
	}
}

func TestALineIsShownToItsEnd(t *testing.T) {
	open := line(t, 0, 0, 4, 0, 2, 3, 0, 0)
	for what, s := range map[string]pen.Stroke{"closed": must(t)(open.Close()), "back at its start": open, "open": line(t, 0, 0, 4, 0, 2, 3)} {
		points := s.Points(geom.Chord)
		if points[0] != s.Start || points[len(points)-1] != s.End() || len(points) != len(s.Segments)+1 {
			t.Errorf("%s: shown through %v", what, points)
		}
	}
}

func TestOpenAndEmptyLinesAreRefusedWithTheRemedy(t *testing.T) {
	for what, s := range map[string]pen.Stroke{
		"an open line": line(t, 0, 0, 4, 0, 2, 3),
		"a flat line":  must(t)(line(t, 0, 0, 4, 0, 2, 0).Close()),
	} {
		if _, _, err := pen.Outline(s); err == nil || !strings.Contains(err.Error(), ";") {
			t.Errorf("%s: %v", what, err)
		}
	}
	if _, err := line(t, 0, 0, 4, 0).Close(); err == nil {
		t.Error("a line there and back was closed")
	}
}

func TestAnOutlineIsPartedIntoPiecesWithTheirHoles(t *testing.T) {
	o, err := geom.ParsePathData("M0 0H9V9H0ZM20 0H29V9H20ZM2 2V7H7V2ZM3 3H6V6H3ZM22 2V7H27V2Z")
	if err != nil {
		t.Fatal(err)
	}
	var areas []float64
	for _, p := range pen.Parts(o) {
		areas = append(areas, p.AreaMM2())
	}
	if want := []float64{56, 56, 9}; !reflect.DeepEqual(areas, want) {
		t.Errorf("the pieces cover %v mm², want %v", areas, want)
	}
}
