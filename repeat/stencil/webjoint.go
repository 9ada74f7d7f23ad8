package stencil

import (
	"cmp"
	"math"
	"slices"

	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

// A JointWeb is the paper between a cut-out of one placement and one of the next
// when the next is laid as unluckily as its slack allows.
type JointWeb struct {
	// Web tells the narrowest place then: P on the placement, Q on the next one
	// where it is off by Off. Width is negative where round holes overlap and zero
	// where outlines do.
	Web
	Off geom.Point
}

// JointWebs returns the webs below limit between the cut-outs of one placement and
// those of the next, which lies off by way and on top of that by up to slack.X
// across and slack.Y along, either way: of every two cut-outs the narrowest, with
// the misplacement that brings them nearest; the narrowest first.
//
// Laying the next placement anywhere within the slack sweeps each of its rims over
// a rectangle, so the worst is the way to the swept rim: between discs that is the
// way from centre to rectangle less the radii.
func JointWebs(cuts []pattern.CutOut, way, slack geom.Point, limit geom.Length) []JointWeb {
	if len(cuts) == 0 {
		return nil
	}
	slack = geom.Point{X: slack.X.Abs(), Y: slack.Y.Abs()}
	here := around(cuts)
	places := geom.NewIndex(here.boxes)
	grow := geom.Point{X: slack.X + limit, Y: slack.Y + limit}
	var all []JointWeb
	for j, c := range cuts {
		least := map[int]sweep{}
		for k := here.first[j]; k < here.first[j+1]; k++ {
			e := here.rims[k].moved(way)
			here.index.Visit(e.box(grow), func(m int) bool {
				i := here.rims[m].item
				g := swept(here.rims[m], e, slack)
				if o, ok := least[i]; g.width < float64(limit) && (!ok || g.width < o.width) {
					least[i] = g
				}
				return true
			})
		}
		next := c.Shape.Moved(way)
		places.Visit(next.Bounds(), func(i int) bool {
			if p, ok := nested(cuts[i].Shape, next); ok && (!cuts[i].Shape.Round() || !c.Shape.Round()) {
				at := placeOf(p)
				if o, told := least[i]; !told || o.width > 0 {
					least[i] = sweep{gap{at.x, at.y, at.x, at.y, 0}, place{}}
				}
			}
			return true
		})
		for i, g := range least {
			all = append(all, JointWeb{Web{
				P: place{g.px, g.py}.point(), Q: place{g.qx, g.qy}.point(),
				Width: geom.Length(math.Round(g.width)), A: cuts[i].Motif, B: c.Motif,
			}, g.off.point()})
		}
	}
	slices.SortFunc(all, func(a, b JointWeb) int {
		return cmp.Or(cmp.Compare(a.Width, b.Width), cmp.Compare(a.P.Y, b.P.Y), cmp.Compare(a.P.X, b.P.X),
			cmp.Compare(a.Q.Y, b.Q.Y), cmp.Compare(a.Q.X, b.Q.X), cmp.Compare(a.A, b.A), cmp.Compare(a.B, b.B))
	})
	return all
}

// nested returns a rim point of one shape that the other one covers, if one lies
// wholly in the other.
func nested(s, t geom.Shape) (geom.Point, bool) {
	for _, pair := range [2][2]geom.Shape{{s, t}, {t, s}} {
		p := pair[0].Disc.Centre
		if !pair[0].Round() {
			p = pair[0].Outline[0].Start
		}
		if pair[1].Contains(p) {
			return p, true
		}
	}
	return geom.Point{}, false
}

// box returns the box around a rim, grown.
func (e rim) box(by geom.Point) geom.Box {
	b := boxAround(e.ax, e.ay, e.r+1)
	if !e.round {
		b = b.Union(boxAround(e.bx, e.by, 1))
	}
	return geom.BoxOf(b.Min.Sub(by), b.Max.Add(by))
}

// A sweep is the shortest way to a rim that may be off, and by how much it is off
// then.
type sweep struct {
	gap
	off place
}

// swept returns the shortest way from e to f moved by up to slack.
func swept(e, f rim, slack geom.Point) sweep {
	if e.round && f.round {
		off := place{-clamped(f.ax-e.ax, float64(slack.X)), -clamped(f.ay-e.ay, float64(slack.Y))}
		f.ax, f.ay = f.ax+off.x, f.ay+off.y
		return sweep{between(e, f), off}
	}
	best := sweep{gap: gap{width: math.Inf(1)}}
	for _, end := range f.ends() {
		// Let an end be off: its rectangle meets e nearest at one of the ends of e, or
		// where e is a piece, at a corner of the rectangle.
		for _, p := range e.ends() {
			best.try(e, f, place{clamped(p.x-end.x, float64(slack.X)), clamped(p.y-end.y, float64(slack.Y))})
		}
	}
	for _, x := range [2]float64{-1, 1} {
		for _, y := range [2]float64{-1, 1} {
			best.try(e, f, place{x * float64(slack.X), y * float64(slack.Y)})
		}
	}
	// An end of e may lie in what the whole piece sweeps, or e may run through it.
	best.across(e, f, slack)
	return best
}

func (e rim) ends() []place {
	if e.round {
		return []place{{e.ax, e.ay}}
	}
	return []place{{e.ax, e.ay}, {e.bx, e.by}}
}

func (s *sweep) try(e, f rim, off place) {
	f.ax, f.ay, f.bx, f.by = f.ax+off.x, f.ay+off.y, f.bx+off.x, f.by+off.y
	if g := between(e, f); g.width < s.width {
		*s = sweep{g, off}
	}
}

// across tries the offs that bring an end of one rim onto the other where that is
// within slack: there the two cross.
func (s *sweep) across(e, f rim, slack geom.Point) {
	onto := func(p place, r rim, sign float64) {
		for _, t := range r.crossings(p, float64(slack.X), float64(slack.Y)) {
			s.try(e, f, t.times(sign))
		}
	}
	for _, p := range e.ends() {
		onto(p, f, 1)
	}
	for _, p := range f.ends() {
		onto(p, e, -1)
	}
}

// crossings returns ways within half width and height from places of the straight
// piece to p: where the piece enters and leaves the rectangle about p.
func (e rim) crossings(p place, w, h float64) []place {
	if e.round {
		return nil
	}
	a, d := place{e.ax, e.ay}.sub(p), place{e.bx - e.ax, e.by - e.ay}
	lo, hi := 0.0, 1.0
	for _, axis := range [2][3]float64{{a.x, d.x, w}, {a.y, d.y, h}} {
		if axis[1] == 0 {
			if math.Abs(axis[0]) > axis[2] {
				return nil
			}
			continue
		}
		t, u := (-axis[2]-axis[0])/axis[1], (axis[2]-axis[0])/axis[1]
		lo, hi = max(lo, min(t, u)), min(hi, max(t, u))
	}
	if lo > hi {
		return nil
	}
	return []place{a.add(d.times(lo)).times(-1), a.add(d.times(hi)).times(-1), a.add(d.times((lo + hi) / 2)).times(-1)}
}

// clamped returns v within most of zero.
func clamped(v, most float64) float64 { return min(max(v, -most), most) }
