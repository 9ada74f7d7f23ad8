package stencil

import (
	"context"
	"fmt"

	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

// A Joint is the line between two placements, from the left edge of the field to
// the right. Its copy one step on bounds the sheet below.
type Joint struct {
	Line      []geom.Point
	Clearance geom.Length // from the line to the nearest cut-out; negative where one is crossed
	Length    geom.Length
	// Widest is the greatest clearance that any line could have: half the web
	// that every line must cross, the best one crossing none that is narrower. Where
	// only lines that climb far have it, this is the greatest of the level ones.
	Widest geom.Length
	ByHand bool         // the line is the one that was drawn by hand
	Faults []JointFault // what is wrong with a line drawn by hand
	// Crossed is how much of the line lies in cut-outs, Crossings are the places
	// from left to right. Both are zero for a line through paper alone.
	Crossed   geom.Length
	Crossings []Crossing
	// Lap is by how much a crossed cut-out should reach over the line on both
	// placements, so that no gap shows between them; zero where none is crossed.
	Lap geom.Length
}

// A Crossing is a place where the line runs through cut-outs.
type Crossing struct {
	From, To geom.Point
	Width    geom.Length // along the line
	Depth    geom.Length // how far from the rim the line comes at most
	Motif    pattern.ID  // the one that is crossed first
}

// Choices of the joint line.
const (
	// keptClearance is the share of the greatest clearance that the line keeps
	// where none is asked for; with all of it the line wanders, at this share it
	// is short (our choice).
	keptClearance = 0.8
	// jointBand is how far above and below the start of the placement a line that
	// must cross cut-outs may run, unless the step is too short for that, and how
	// far cut-outs are looked for about a line.
	jointBand = 12 * geom.Millimetre
	// jointCells bounds the grid on which a line that crosses is sought.
	jointCells = 100_000
	// crossingLap is how far crossed cut-outs should reach over the line: as the
	// openings of two sheets of one design reach over each other (our choice).
	crossingLap = geom.Millimetre / 5
)

// FindJoint returns a line from the left edge of the field to the right through
// the paper between whole motifs. The greatest clearance that a line can have is
// half the narrowest web on the best way across; the line returned is the
// shortest that keeps the share asked for, begins near y = 0 and never meets its
// copy one step on; where that line climbs by more than an eighth of the step, as
// between slanted rows, one that stays nearer to level is taken if it is not
// longer by more than it is lower. Where every line must cross cut-outs (full-width stripes,
// interlaced rings) Widest is zero, and the line crosses as little as it can in a
// band about y = 0; its clearance is negative by how deep. Where the field is
// empty the clearance is half the step.
//
// A line drawn by hand is measured as it is; what is wrong with it is told in
// Faults. It stops early only when ctx is done.
func FindJoint(ctx context.Context, u pattern.Unit, field Field, step geom.Length, spec JointSpec) (Joint, error) {
	w, err := newJointWays(ctx, u, field, step)
	if err != nil {
		return Joint{}, err
	}
	if len(spec.Line) > 0 {
		return w.byHand(ctx, spec.Line)
	}
	share, err := spec.share()
	if err != nil {
		return Joint{}, err
	}
	return w.find(ctx, share)
}

// share returns the share of the greatest clearance that is asked for.
func (s JointSpec) share() (float64, error) {
	switch {
	case s.Share == 0:
		return keptClearance, nil
	case s.Share > 0 && s.Share <= 1:
		return s.Share, nil
	}
	return 0, fmt.Errorf("a joint line can't keep %g of the greatest clearance; give over 0 to 1", s.Share)
}

// find returns the line that keeps the share, or the one that crosses least.
func (w *jointWays) find(ctx context.Context, share float64) (Joint, error) {
	if w.empty {
		line := []geom.Point{{X: w.field.Left}, {X: w.field.Right()}}
		return Joint{Line: line, Clearance: w.step / 2, Length: w.field.Width, Widest: w.step / 2}, nil
	}
	j, ok, err := w.best(ctx, share)
	if ok || err != nil {
		return j, err
	}
	return w.acrossCutOuts(ctx)
}

// fieldCuts returns the whole motifs of the pattern in the field whose boxes meet
// the stretch between from and to, motif by motif.
func fieldCuts(u pattern.Unit, field Field, from, to geom.Length) []pattern.CutOut {
	window := geom.BoxOf(geom.Point{X: field.Left, Y: from}, geom.Point{X: field.Right(), Y: to})
	// All motifs stand at places of one window, grown by the largest of them.
	shapes := make([]geom.Shape, len(u.Motifs))
	boxes := make([]geom.Box, len(u.Motifs))
	var all geom.Box
	for i, m := range u.Motifs {
		shapes[i] = m.Placed()
		boxes[i] = shapes[i].Bounds()
		all = all.Union(boxes[i])
	}
	if all.Empty() {
		return nil
	}
	places := u.Lattice.Places(geom.BoxOf(window.Min.Sub(all.Max), window.Max.Sub(all.Min)))
	var cuts []pattern.CutOut
	for i, m := range u.Motifs {
		for _, p := range places {
			if box := boxes[i].Moved(p); box.Meets(window) && field.whole(box) {
				cuts = append(cuts, pattern.CutOut{Shape: shapes[i].Moved(p), Motif: m.ID})
			}
		}
	}
	return cuts
}

// sets are disjoint sets of numbers, with paths halved as they are followed.
type sets []int

func newSets(n int) sets {
	s := make(sets, n)
	for i := range s {
		s[i] = i
	}
	return s
}

func (s sets) find(i int) int {
	for s[i] != i {
		s[i] = s[s[i]]
		i = s[i]
	}
	return i
}

func (s sets) join(i, j int) { s[s.find(i)] = s.find(j) }
