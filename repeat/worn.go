package repeat

import (
	"tsugime/repeat/cloth"
	"tsugime/repeat/geom"
)

// A JointOn is a stretch of a joint line as a piece of the garment shows it, in the
// piece's view.
type JointOn struct {
	N int // the placement that begins here; the one before it ends here
	// Ends says that it is the end of the one before, where the two lie apart.
	Ends bool
	Line []geom.Point
}

// Pivot returns the middle between the outer leading stars, about which a sheet that
// is laid askew is turned.
func (w Work) Pivot() geom.Point {
	lead := w.Sheet.Stars.Leading()
	if len(lead) < 2 {
		return geom.Point{X: w.Order.Sheet.Field.Left + w.Order.Sheet.Field.Width/2}
	}
	return geom.Point{X: (lead[0].X + lead[1].X) / 2, Y: (lead[0].Y + lead[1].Y) / 2}
}

// jointLine returns the sheet's joint line; without one, straight across the cloth.
func (w Work) jointLine() []geom.Point {
	if line := w.Sheet.Joint.Line; len(line) > 1 && !w.Run.Bolt.Folded {
		return line
	}
	width, _ := w.Run.Bolt.FinishedSize()
	return []geom.Point{{}, {X: width}}
}

// JointsOn returns the joint lines that a piece shows, in their true shape, for
// placements that lie so: where each begins and, where that is elsewhere, where the
// one before it ends.
func (w Work) JointsOn(p cloth.Piece, prints []cloth.Print) []JointOn {
	line, pivot, window := w.jointLine(), w.Pivot(), p.Window()
	var reach geom.Box
	for _, at := range line {
		reach = reach.With(at)
	}
	var all []JointOn
	add := func(n int, ends bool, pts []geom.Point) {
		for i, at := range pts {
			pts[i] = p.FromCloth(at)
		}
		for _, piece := range p.Area.Cut(pts) {
			all = append(all, JointOn{n, ends, piece})
		}
	}
	for n, print := range prints {
		away := print.Off.By.Norm() + print.Step.MM()*1e6*0.02 // by a turn and a growth
		near := geom.Length(away) + reach.Height()
		if !window.Grown(near).Meets(reach.Moved(geom.Point{Y: print.Y})) {
			continue
		}
		begins := make([]geom.Point, len(line))
		ends := make([]geom.Point, len(line))
		apart := false
		for i, at := range line {
			if n == 0 {
				begins[i] = print.Place(at, pivot)
				continue
			}
			ends[i], begins[i] = prints[n-1].Joined(print, at, pivot)
			apart = apart || ends[i] != begins[i]
		}
		if apart {
			add(n, true, ends)
		}
		add(n, false, begins)
	}
	return all
}

// A Parting is how two placements lie to each other at a place of their joint.
type Parting struct {
	N     int // the later placement
	Piece string
	View  cloth.View
	At    geom.Point // in the view, where the later one begins
	// Off is the way along the cloth from where the one before ends to where this
	// one begins: Y above zero is a gap, below zero a lap.
	Off geom.Point
}

// WorstJoint returns where, of all joints that the garment shows, two placements
// lie furthest apart, and whether any do.
func (w Work) WorstJoint(prints []cloth.Print) (Parting, bool) {
	line, pivot := w.jointLine(), w.Pivot()
	var worst Parting
	for n := 1; n < len(prints); n++ {
		for _, at := range line {
			before, after := prints[n-1].Joined(prints[n], at, pivot)
			off := after.Sub(before)
			if off.Norm() <= worst.Off.Norm() {
				continue
			}
			for _, p := range w.Dressed.Pieces() {
				if p.Window().Holds(after) {
					worst = Parting{n, p.Name, p.View, p.FromCloth(after), off}
					break
				}
			}
		}
	}
	return worst, worst.N > 0
}

// StarPrints follows the marks of the feed stars into the garment; none where all
// stars lie in holes.
func (w Work) StarPrints() []cloth.StarPrint {
	lead := w.Sheet.Stars.Marking()
	if len(lead) == 0 || len(w.Dressed.Panels) == 0 {
		return nil
	}
	return cloth.StarPrints(w.Dressed, w.Run, lead)
}
