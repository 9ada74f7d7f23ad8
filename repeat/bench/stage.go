package bench

import (
	"math"

	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
	"tsugime/repeat/stencil"
)

// Where the rim and the joint edge are. Both are our choice, no source.
const (
	// rimShare is how much of the field's width and height on each side is rim.
	rimShare = 0.1
	// jointEdge is how near to the joint line or its copy a cut-out is cut last.
	jointEdge = 3 * geom.Millimetre
	// deepest is how many cut-outs around another are told apart.
	deepest = 8
)

// staged is when a cut-out is cut: the number of its stage, and how many others
// enclose it.
type staged struct{ stage, depth int }

// stagesOf says when each cut-out of a sheet is cut.
func stagesOf(s stencil.Sheet) []staged {
	boxes := make([]geom.Box, len(s.CutOuts))
	var field geom.Box
	for i, c := range s.CutOuts {
		boxes[i] = c.Shape.Bounds()
		field = field.Union(boxes[i])
	}
	inner := field
	if !field.Empty() {
		off := geom.Point{X: field.Width().Times(rimShare), Y: field.Height().Times(rimShare)}
		inner = geom.BoxOf(field.Min.Add(off), field.Max.Sub(off))
	}
	depths := enclosed(s.CutOuts, boxes)
	tied := tiedMotifs(s)
	edge := edgeOf(s)
	out := make([]staged, len(s.CutOuts))
	for i, b := range boxes {
		stage := 2 // the centre
		switch {
		case tied[s.CutOuts[i].Motif] || edge.near(b):
			stage = 4
		case depths[i] > 0:
			stage = 1
		case !inner.Holds(b.Centre()):
			stage = 3
		}
		out[i] = staged{stage, depths[i]}
	}
	return out
}

// enclosed counts for each cut-out the outlines whose boxes hold its box: a quick
// measure that takes a cut-out in the hollow of another for enclosed too, which
// does no harm.
func enclosed(cuts []pattern.CutOut, boxes []geom.Box) []int {
	depths := make([]int, len(cuts))
	var outlines []geom.Box
	var which []int
	for i, c := range cuts {
		if !c.Shape.Round() {
			outlines, which = append(outlines, boxes[i]), append(which, i)
		}
	}
	if len(outlines) == 0 {
		return depths
	}
	index := geom.NewIndex(outlines)
	for i, b := range boxes {
		index.Visit(geom.BoxOf(b.Centre()), func(k int) bool {
			if o := outlines[k]; which[k] != i && o.HoldsBox(b) && o != b {
				depths[i]++
			}
			return depths[i] < deepest
		})
	}
	return depths
}

// tiedMotifs returns the motifs that a tie of the sheet's order crosses.
func tiedMotifs(s stencil.Sheet) map[pattern.ID]bool {
	tied := map[pattern.ID]bool{}
	for _, t := range s.Ties.Ties {
		tied[t.Tie.Motif] = true
	}
	return tied
}

// An edge is the joint line and its copy one step on.
type edge struct {
	index *geom.Index
	ends  [][2]geom.Point
}

func edgeOf(s stencil.Sheet) edge {
	var e edge
	var boxes []geom.Box
	line := s.Joint.Line
	for i := 1; i < len(line); i++ {
		for _, shift := range [2]geom.Point{{}, {Y: s.Spec.Step}} {
			a, b := line[i-1].Add(shift), line[i].Add(shift)
			e.ends = append(e.ends, [2]geom.Point{a, b})
			boxes = append(boxes, geom.BoxOf(a, b))
		}
	}
	e.index = geom.NewIndex(boxes)
	return e
}

// near reports whether a box comes near to the joint line: whether its middle is no
// farther from it than jointEdge and half the box's diagonal.
func (e edge) near(b geom.Box) bool {
	c := b.Centre()
	reach := float64(jointEdge) + b.Max.Sub(b.Min).Norm()/2
	found := false
	e.index.Visit(b.Grown(jointEdge), func(k int) bool {
		found = away(c, e.ends[k][0], e.ends[k][1]) <= reach
		return !found
	})
	return found
}

// away is the distance from p to the piece a–b, in nanometres.
func away(p, a, b geom.Point) float64 {
	px, py := float64(p.X-a.X), float64(p.Y-a.Y)
	dx, dy := float64(b.X-a.X), float64(b.Y-a.Y)
	t := 0.0
	if l := dx*dx + dy*dy; l > 0 {
		t = math.Min(math.Max((px*dx+py*dy)/l, 0), 1)
	}
	return math.Hypot(px-t*dx, py-t*dy)
}
