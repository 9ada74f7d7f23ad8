package stencil

import (
	"context"
	"fmt"
	"math"
	"slices"

	"tsugime/repeat/geom"
)

// A JointFaultKind says what is wrong with a line drawn by hand.
type JointFaultKind string

// What may be wrong with a line drawn by hand.
const (
	CrossesCutOuts JointFaultKind = "crosses-cut-outs"
	PartsAMotif    JointFaultKind = "parts-a-motif" // pieces of one motif lie on both sides
	MeetsItsCopy   JointFaultKind = "meets-its-copy"
	CrossesItself  JointFaultKind = "crosses-itself"
	LeavesTheField JointFaultKind = "leaves-the-field"
	EndsShort      JointFaultKind = "ends-short" // an end doesn't reach the field's edge
)

// A JointFault is what is wrong with a line drawn by hand, and where.
type JointFault struct {
	Kind JointFaultKind
	At   geom.Point
	By   geom.Length // how deep, or how far; zero where the kind has no size
}

// byHand measures a line as it was drawn. One drawn from right to left is turned
// around.
func (w *jointWays) byHand(ctx context.Context, line []geom.Point) (Joint, error) {
	if len(line) < 2 {
		return Joint{}, fmt.Errorf("a joint line of %d place is none; give two or more", len(line))
	}
	line = slices.Clone(line)
	if line[0].X > line[len(line)-1].X {
		slices.Reverse(line)
	}
	j := Joint{ByHand: true, Widest: w.step / 2}
	if !w.empty {
		m, err := w.cloth.mapped(ctx, 1)
		if err != nil {
			return Joint{}, err
		}
		j.Widest = 0
		if m != nil {
			j.Widest = geom.Length(math.Round(m.widest / 2))
		}
	}
	n := w.near(geom.BoxOf(line...))
	j = j.along(n, line).crossing(n)
	if w.empty {
		j.Clearance = w.step / 2
	}
	j.Faults = slices.Concat(w.outside(line), j.through(), j.parted(n), touching(line, w.step))
	return j, ctx.Err()
}

// outside tells where a line leaves the field, at the farthest place of each
// side, and which ends stop short of its edges.
func (w *jointWays) outside(line []geom.Point) []JointFault {
	var faults []JointFault
	left, right := w.field.Left, w.field.Right()
	far := func(beyond func(p geom.Point) geom.Length) {
		worst := JointFault{Kind: LeavesTheField}
		for _, p := range line {
			if by := beyond(p); by > worst.By {
				worst.At, worst.By = p, by
			}
		}
		if worst.By > 0 {
			faults = append(faults, worst)
		}
	}
	far(func(p geom.Point) geom.Length { return left - p.X })
	far(func(p geom.Point) geom.Length { return p.X - right })
	first, last := line[0], line[len(line)-1]
	if first.X > left {
		faults = append(faults, JointFault{EndsShort, first, first.X - left})
	}
	if last.X < right {
		faults = append(faults, JointFault{EndsShort, last, right - last.X})
	}
	return faults
}

// through tells each crossing of cut-outs.
func (j Joint) through() []JointFault {
	var faults []JointFault
	for _, c := range j.Crossings {
		middle := geom.Point{X: (c.From.X + c.To.X) / 2, Y: (c.From.Y + c.To.Y) / 2}
		faults = append(faults, JointFault{CrossesCutOuts, middle, c.Depth})
	}
	return faults
}

// parted tells the motifs whose pieces lie on both sides of the line although it
// crosses none of them.
func (j Joint) parted(n *neighbourhood) []JointFault {
	d := divider{j.Line, geom.BoxOf(j.Line...)}
	var faults []JointFault
	for i, c := range n.cuts {
		if len(c.Shape.Outline) < 2 || !n.boxes[i].Meets(d.box) {
			continue
		}
		below := 0
		for _, contour := range c.Shape.Outline {
			if d.below(contour.Start) {
				below++
			}
		}
		crossed := slices.ContainsFunc(j.Crossings, func(x Crossing) bool {
			return x.Motif == c.Motif && n.boxes[i].Grown(geom.Touch).Holds(x.From)
		})
		if below > 0 && below < len(c.Shape.Outline) && !crossed {
			faults = append(faults, JointFault{Kind: PartsAMotif, At: n.boxes[i].Centre()})
		}
	}
	return faults
}

// touching tells where the line first meets its copy one step on, and itself.
func touching(line []geom.Point, step geom.Length) []JointFault {
	var faults []JointFault
	if at, met := meetsMoved(line, step); met {
		faults = append(faults, JointFault{Kind: MeetsItsCopy, At: at})
	}
	if at, met := meetsMoved(line, 0); met {
		faults = append(faults, JointFault{Kind: CrossesItself, At: at})
	}
	return faults
}

// meetsCopy reports whether a line and its copy a step on have a point in
// common.
func meetsCopy(line []geom.Point, step geom.Length) bool {
	_, met := meetsMoved(line, step)
	return met
}

// meetsMoved returns the first corner of the line after which it meets itself
// moved along by so much; its own neighbours don't count where it is not moved.
func meetsMoved(line []geom.Point, by geom.Length) (geom.Point, bool) {
	boxes := make([]geom.Box, len(line)-1)
	for i := range boxes {
		boxes[i] = geom.BoxOf(line[i], line[i+1])
	}
	index := geom.NewIndex(boxes)
	for i := range boxes {
		a, b := line[i].Add(geom.Point{Y: by}), line[i+1].Add(geom.Point{Y: by})
		met := false
		index.Visit(geom.BoxOf(a, b), func(k int) bool {
			c, d := line[k], line[k+1]
			apart := by != 0 || k > i+1 || k < i-1
			met = apart && differ(geom.Orient(a, b, c), geom.Orient(a, b, d)) && differ(geom.Orient(c, d, a), geom.Orient(c, d, b))
			return !met
		})
		if met {
			return line[i], true
		}
	}
	return geom.Point{}, false
}

// differ reports whether two turns are not both to the same side.
func differ(a, b int64) bool { return a <= 0 && b >= 0 || a >= 0 && b <= 0 }
