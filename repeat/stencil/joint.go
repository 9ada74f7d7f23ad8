package stencil

import (
	"context"
	"fmt"
	"math"
	"slices"

	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

// A Joint is the line between two placements, from the left edge of the field to
// the right. Its copy one step on bounds the sheet below.
type Joint struct {
	Line      []geom.Point
	Clearance geom.Length // from the line to the nearest cut-out; negative where one is crossed
	Length    geom.Length
	// Widest is the greatest clearance that any line near it could have: half the
	// widest web that every such line must cross.
	Widest geom.Length
}

// Choices of the joint line.
const (
	// keptClearance is the share of the greatest clearance that the line keeps;
	// with all of it the line wanders, at this share it is short (our choice).
	keptClearance = 0.8
	// jointBand is how far above and below the start of the placement the line
	// may run, unless the step is too short for that.
	jointBand = 12 * geom.Millimetre
	// jointCells bounds the grid on which the line is sought.
	jointCells = 1_000_000
)

// FindJoint returns a line from the left edge of the field to the right through
// the paper between whole motifs: the shortest one that keeps four fifths of the
// greatest clearance there is. The line stays in a band about y = 0 that is
// narrower than the step, so it never meets its copy one step on. Where every
// line must cross cut-outs (full-width stripes) the line crosses as little as it
// can, and the clearance is negative by how deep. It stops early only when ctx
// is done.
func FindJoint(ctx context.Context, u pattern.Unit, field Field, step geom.Length) (Joint, error) {
	if field.Width <= 0 || step <= 0 {
		return Joint{}, fmt.Errorf("a field of %s mm and a step of %s mm leave no joint; give both more than zero", field.Width, step)
	}
	band := min(jointBand, step*9/20)
	n := around(fieldCuts(u, field, -band-jointBand, band+jointBand), 0)
	if len(n.cuts) == 0 {
		line := []geom.Point{{X: field.Left}, {X: field.Right()}}
		return Joint{Line: line, Clearance: band, Length: field.Width, Widest: band}, nil
	}
	widest := n.bottleneck(band)
	j := Joint{Widest: geom.Length(math.Round(max(widest, 0) / 2))}
	g := newJointGrid(n, field, band, widest/2)
	for _, share := range []float64{keptClearance, 0.6, 0.4, 0.2, 0.05} {
		if err := ctx.Err(); err != nil {
			return Joint{}, err
		}
		if widest <= 0 {
			break
		}
		if path, ok := g.path(share*widest/2, false); ok {
			return j.along(n, n.pulled(path, share*widest/2)), nil
		}
	}
	path, _ := g.path(0, true)
	return j.along(n, n.pulled(path, math.Inf(-1))), ctx.Err()
}

// along returns j on the line, measured.
func (j Joint) along(n *neighbourhood, line []geom.Point) Joint {
	j.Line = line
	clear := math.Inf(1)
	var length float64
	for i, b := range line[1:] {
		length += b.Sub(line[i]).Norm()
		clear = min(clear, n.clearOf(line[i], b, float64(jointBand)))
	}
	j.Clearance, j.Length = geom.Length(math.Round(clear)), geom.Length(math.Round(length))
	return j
}

// fieldCuts returns the whole motifs of the pattern in the field whose boxes meet
// the stretch between from and to.
func fieldCuts(u pattern.Unit, field Field, from, to geom.Length) []pattern.CutOut {
	window := geom.BoxOf(geom.Point{X: field.Left, Y: from}, geom.Point{X: field.Right(), Y: to})
	var cuts []pattern.CutOut
	for c := range u.In(window) {
		if field.whole(c.Shape.Bounds()) {
			cuts = append(cuts, c)
		}
	}
	return cuts
}

// bottleneck returns the width of the widest web that every line through the
// band must cross, by joining cut-outs over the narrowest webs first (Kruskal)
// until those above the band hang together with those below. It is infinite
// where they never do, and not positive where cut-outs overlap all the way down.
func (n *neighbourhood) bottleneck(band geom.Length) float64 {
	above, below := len(n.items), len(n.items)+1
	sets := newSets(len(n.items) + 2)
	for i, it := range n.items {
		if it.box.Min.Y < -band {
			sets.join(i, above)
		}
		if it.box.Max.Y > band {
			sets.join(i, below)
		}
	}
	n.joinOverlaps(sets)
	if sets.find(above) == sets.find(below) {
		return 0
	}
	for reach := float64(geom.Millimetre); ; reach *= 2 {
		found := sceneOf(n.cuts, reach).links(reach)
		slices.SortFunc(found, narrower)
		for _, l := range found {
			sets.join(int(l.a), int(l.b))
			if sets.find(above) == sets.find(below) {
				return l.width
			}
		}
		if reach > 2*float64(band) {
			return 2 * float64(band)
		}
	}
}

// joinOverlaps joins the cut-outs that touch or overlap.
func (n *neighbourhood) joinOverlaps(sets sets) {
	for k, e := range n.rims {
		box := boxAround(e.ax, e.ay, e.r+float64(geom.Touch))
		if !e.round {
			box = box.Union(boxAround(e.bx, e.by, float64(geom.Touch)))
		}
		n.index.Visit(box, func(m int) bool {
			f := n.rims[m]
			if m > k && f.item != e.item && between(e, f).width <= float64(geom.Touch) {
				sets.join(e.item, f.item)
			}
			return true
		})
	}
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
