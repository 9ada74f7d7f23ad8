package stencil

import (
	"context"
	"fmt"
	"math"

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
	// that every line must cross, the best one crossing none that is narrower.
	Widest geom.Length
}

// Choices of the joint line.
const (
	// keptClearance is the share of the greatest clearance that the line keeps;
	// with all of it the line wanders, at this share it is short (our choice).
	keptClearance = 0.8
	// jointBand is how far above and below the start of the placement a line that
	// must cross cut-outs may run, unless the step is too short for that, and how
	// far cut-outs are looked for about a line.
	jointBand = 12 * geom.Millimetre
	// jointCells bounds the grid on which a line that crosses is sought.
	jointCells = 1_000_000
)

// FindJoint returns a line from the left edge of the field to the right through
// the paper between whole motifs. The greatest clearance that a line can have is
// half the narrowest web on the best way across; the line returned is the
// shortest that keeps four fifths of it, begins near y = 0 and never meets its
// copy one step on. Where every line must cross cut-outs (full-width stripes,
// interlaced rings) Widest is zero, and the line crosses as little as it can in a
// band about y = 0; its clearance is negative by how deep, or zero where an
// outline is crossed. Where the field is empty the clearance is half the step.
// It stops early only when ctx is done.
func FindJoint(ctx context.Context, u pattern.Unit, field Field, step geom.Length) (Joint, error) {
	if field.Width <= 0 || step <= 0 {
		return Joint{}, fmt.Errorf("a field of %s mm and a step of %s mm leave no joint; give both more than zero", field.Width, step)
	}
	c, empty, err := clothOf(u, field, step)
	if err != nil {
		return Joint{}, err
	}
	if empty {
		line := []geom.Point{{X: field.Left}, {X: field.Right()}}
		return Joint{Line: line, Clearance: step / 2, Length: field.Width, Widest: step / 2}, nil
	}
	var best Joint
	for wider := 1.0; wider <= 8; wider *= 2 {
		r, ok, err := c.route(ctx, field, keptClearance, wider)
		if err != nil {
			return Joint{}, err
		}
		if !ok {
			break
		}
		// Where a web was too wide to be found two pockets seem one, and the way
		// through may not be led: look farther.
		j, ok := r.joint(u, field, step)
		if ok && j.Clearance > best.Clearance {
			best = j
		}
		if best.Clearance >= j.Widest.Times(keptClearance)-3*geom.Grid {
			break
		}
	}
	if best.Line != nil {
		return best, nil
	}
	return acrossCutOuts(ctx, u, field, step)
}

// joint draws the line along r: tight where that keeps it off its copy. It
// reports whether the line keeps clear of all cut-outs.
func (r route) joint(u pattern.Unit, field Field, step geom.Length) (Joint, bool) {
	clearance := keptClearance * r.widest / 2
	j := Joint{Widest: geom.Length(math.Round(r.widest / 2))}
	way := make([]geom.Point, len(r.at))
	for i, p := range r.at {
		way[i] = p.point()
	}
	box := geom.BoxOf(way...)
	for range 8 {
		n := around(fieldCuts(u, field, box.Min.Y-jointBand, box.Max.Y+jointBand))
		line := n.drawn(r.at, field, clearance)
		if tight := n.tightened(line, clearance); !meetsCopy(tight, step) {
			line = tight
		}
		j = j.along(n, line)
		// A line that was led far away may lie where no cut-outs were looked for.
		if all := box.Union(geom.BoxOf(line...)); all != box && all.Height() > box.Height()+jointBand/2 {
			box = all
			continue
		}
		break
	}
	return j, j.Clearance > 0 && !meetsCopy(j.Line, step)
}

// acrossCutOuts returns the line that crosses cut-outs least, in a band narrower than
// the step.
func acrossCutOuts(ctx context.Context, u pattern.Unit, field Field, step geom.Length) (Joint, error) {
	band := min(jointBand, step*9/20)
	n := around(fieldCuts(u, field, -band-jointBand, band+jointBand))
	g := newJointGrid(n, field, band, 0)
	path, _ := g.path(0, true)
	j := Joint{}.along(n, n.pulled(path, math.Inf(-1)))
	j.Widest = max(j.Clearance, 0)
	return j, ctx.Err()
}

// along returns j on the line, measured. What is farther than jointBand counts as
// that far.
func (j Joint) along(n *neighbourhood, line []geom.Point) Joint {
	j.Line, j.Length = line, geom.Length(math.Round(lengthOf(line)))
	for reach := float64(max(j.Widest, geom.Millimetre/4)) + grain; ; reach *= 2 {
		clear := min(reach, float64(jointBand))
		for i, b := range line[1:] {
			clear = min(clear, n.clearOf(line[i], b, max(clear, 0)))
		}
		j.Clearance = geom.Length(math.Round(clear))
		if clear < reach {
			return j
		}
	}
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
