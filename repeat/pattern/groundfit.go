package pattern

import (
	"maps"
	"math"

	"tsugime/repeat/geom"
)

// Fitted returns the recipe that draws on the lattice of f what r draws on that of
// its own step, and whether there is one: then laying it again doesn't undo the
// fit. There is none where f leans the columns, bends a tile too far, or where
// l, which f was found for, is neither the lattice of the recipe's unit nor that of
// a tile of it. across is about the width in which it is to repeat where f names
// none and r has none.
func (r Recipe) Fitted(f Fit, l Lattice, step, across geom.Length) (Recipe, bool) {
	was, err := r.Laying(step)
	if err != nil || !f.Lattice.square() || f.M != 0 || f.Q != 0 {
		return Recipe{}, false
	}
	switch l {
	case was.Lattice:
	case was.tileLattice():
		was.cols, was.rows = 1, 1
	default:
		return Recipe{}, false
	}
	next := r
	next.Rows = was.rows * f.N
	switch g, _ := r.ground(); {
	case f.Width > 0:
		next.Width, next.Columns = f.Width, was.cols*f.P
	case r.Width > 0:
		next.Columns = was.Columns
	case !g.draft.apart && f.Lattice.B.Y != l.B.Y:
		// What is across no longer follows from what is along.
		n := 1
		if r.Value("swell") == swellNone {
			n = max(1, int(across/f.Lattice.A.X))
		}
		next.Width, next.Columns = f.Lattice.A.X*geom.Length(n), was.cols*n
	}
	next = next.scaledBy(1 + f.Strain.Y)
	is, err := next.Laying(f.Step)
	w, h := float64(f.Lattice.A.X)/float64(was.cols), float64(f.Lattice.B.Y)/float64(was.rows)
	if err != nil || math.Abs(is.w-w) > 1 || math.Abs(is.h-h) > 1 || !is.Lattice.Holds(f.Lattice.A) || !is.Lattice.Holds(f.Lattice.B) {
		return Recipe{}, false
	}
	return next, true
}

// Tile returns the unit of a single tile of u, which was laid so, to the nearest
// nanometre. It is u where a cell holds one.
func (l Laying) Tile(u Unit) Unit {
	n := l.cols * l.rows
	if n == 0 || len(u.Motifs)%n != 0 {
		return u
	}
	return Unit{l.tileLattice(), u.Motifs[:len(u.Motifs)/n]}
}

func (l Laying) tileLattice() Lattice {
	return Straight(geom.Length(math.Round(l.w)), geom.Length(math.Round(l.h)))
}

// scaledBy returns r with the value that scales its tile multiplied, where it has
// one and the table allows it.
func (r Recipe) scaledBy(times float64) Recipe {
	g, err := r.ground()
	if err != nil || g.draft.scale == "" || times == 1 {
		return r
	}
	p, _ := g.Param(g.draft.scale)
	v := math.Round(r.Value(p.Key)*times*1e6) / 1e6
	if p.Check(v) != nil {
		return r
	}
	set := maps.Clone(r.Values)
	if set == nil {
		set = map[string]float64{}
	}
	set[p.Key] = v
	r.Values = set
	return r
}

// square reports whether A lies across and B along.
func (l Lattice) square() bool { return l.A.Y == 0 && l.B.X == 0 && l.A.X > 0 && l.B.Y > 0 }

// MostBent is by how much a ground may be bent before it needs a look: trade
// practice asks for a word above half a percent (our figure, no source).
const MostBent = 0.005

// Eased returns the recipe nearest in size whose tiles meet the step and the
// recipe's width bent by no more than half of MostBent, and whether there is one
// within a third of the size. A recipe that isn't bent is its own.
func (r Recipe) Eased(step geom.Length) (Recipe, bool) {
	now, err := r.Laying(step)
	if err != nil {
		return r, false
	}
	if math.Abs(now.Bent) <= MostBent/2 {
		return r, true
	}
	along := now.h / (1 + now.Stretch.Y)
	best, least := r, math.Inf(1)
	for n := 1; n <= 2*now.Rows; n++ {
		size := float64(step) / float64(n) / along
		change := math.Abs(math.Log(size))
		if change >= least || change > maxStretch {
			continue
		}
		next := r
		next.Columns, next.Rows = 0, 0
		next = next.scaledBy(size)
		if l, err := next.Laying(step); err == nil && math.Abs(l.Bent) <= MostBent/2 {
			best, least = next, change
		}
	}
	return best, !math.IsInf(least, 1)
}
