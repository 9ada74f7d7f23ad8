package repeat_test

import (
	"testing"

	"tsugime/repeat/geom"
)

// Every point of a joint on a piece, taken back to the cloth and to the start of its
// placement, lies on the sheet's own joint line.
func TestJointsOnAPieceHaveTheLinesOwnShape(t *testing.T) {
	w := built(t, ringOrder(t))
	line := w.Sheet.Joint.Line
	if len(line) < 10 {
		t.Fatalf("the joint line has %d points; want one that winds", len(line))
	}
	prints, joints := w.Run.Prints(), 0
	for _, p := range w.Dressed.Pieces() {
		for _, j := range w.JointsOn(p, prints) {
			joints++
			if j.Ends {
				t.Fatalf("placements where they belong part at joint %d", j.N)
			}
			for _, at := range j.Line {
				if !p.Area.Holds(at) {
					t.Fatalf("%v of joint %d lies outside the %s", at, j.N, p.Name)
				}
				on := p.ToCloth(at).Sub(geom.Point{Y: prints[j.N].Y})
				if d := beside(on, line); d > 2*geom.Nanometre {
					t.Fatalf("joint %d on the %s: %v lies %v beside the line", j.N, p.Name, on, d)
				}
			}
		}
	}
	// 160 cm of height take some 10 m of cloth at a step of 180 mm; halves of the
	// width lie side by side.
	if joints < 40 {
		t.Errorf("the garment shows %d stretches of joints", joints)
	}
}

// beside is how far a place is from a line.
func beside(p geom.Point, line []geom.Point) geom.Length {
	best := geom.Metre
	for i := 1; i < len(line); i++ {
		a, way := line[i-1], line[i].Sub(line[i-1])
		f := 0.0
		if l := way.Norm(); l > 0 {
			to := p.Sub(a)
			f = min(max((float64(to.X)*float64(way.X)+float64(to.Y)*float64(way.Y))/l/l, 0), 1)
		}
		best = min(best, p.Distance(a.Add(geom.Point{X: way.X.Times(f), Y: way.Y.Times(f)})))
	}
	return best
}

// The worst joint is on a piece, is as far open as it says, and no other place of a
// joint that a piece shows is further.
func TestTheWorstJointIsTheWidestThatIsSeen(t *testing.T) {
	w := built(t, ringOrder(t))
	if _, any := w.WorstJoint(w.Run.Prints()); any {
		t.Error("placements where they belong have a worst joint")
	}
	for seed := range uint64(3) {
		prints, err := w.Run.ScatteredPrints(1, seed)
		if err != nil {
			t.Fatal(err)
		}
		worst, any := w.WorstJoint(prints)
		if !any {
			t.Fatal("no joint is off")
		}
		for _, p := range w.Dressed.Pieces() {
			for _, at := range w.Sheet.Joint.Line {
				for n := 1; n < len(prints); n++ {
					before, after := prints[n-1].Joined(prints[n], at, w.Pivot())
					if off := after.Sub(before); p.Window().Holds(after) && off.Norm() > worst.Off.Norm() {
						t.Fatalf("seed %d: joint %d on the %s is %v off, the worst %v", seed, n, p.Name, off, worst.Off)
					}
				}
			}
			if p.Name != worst.Piece {
				continue
			}
			found := false
			for _, j := range w.JointsOn(p, prints) {
				found = found || j.N == worst.N && !j.Ends && beside(worst.At, j.Line) <= 2*geom.Nanometre
			}
			if !found {
				t.Errorf("the worst joint, %d at %v, is on no line of the %s", worst.N, worst.At, p.Name)
			}
		}
	}
}

// Each mark is where its star prints: a star's own place from the start of its
// placement.
func TestEveryStarThatIsSeenIsAStarOfItsPlacement(t *testing.T) {
	w := built(t, ringOrder(t))
	prints, marks := w.Run.Prints(), w.StarPrints()
	if lead := w.Sheet.Stars.Marking(); len(marks) != len(lead)*(len(w.Run.Placements)+1) {
		t.Fatalf("%d marks of %d stars on %d placements", len(marks), len(lead), len(w.Run.Placements))
	}
	for _, m := range marks {
		at := prints[m.Placement].Place(w.Sheet.Stars.Marking()[m.Star], w.Pivot())
		if at != m.At && at.Add(geom.Point{Y: prints[m.Placement].Step}) != m.At {
			t.Fatalf("star %d of placement %d prints at %v, is followed at %v", m.Star, m.Placement, at, m.At)
		}
	}
}
