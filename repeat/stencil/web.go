package stencil

import (
	"cmp"
	"math"
	"slices"

	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

// Webs measures the paper between neighbouring cut-outs: in the plane, repeated
// along one period, or on the torus of two. Every narrow place is told once: a
// shortest segment across paper whose diametral disc holds no rim (an index-1
// critical point of the distance to the cut-outs), necks within one outline and
// webs to a cut-out's own copies among them. Between discs widths are closed
// forms; an outline is measured on straight pieces no farther than geom.Chord
// from its rim. Cut-outs that overlap have no web there; where they touch in a
// point the web is zero wide.
//
// All webs below limit are found. Where all are discs the report tells those up to
// three quarters of their usual spacing too. Where there are none the search
// grows until it finds one or no more paper lies between cut-outs, or until it
// would walk over mostWalked: where all cut-outs hang together (interlaced rings)
// it would look across the whole unit for a web that there is not.
func Webs(cuts []pattern.CutOut, limit geom.Length, periods ...geom.Point) WebReport {
	report := WebReport{Limit: limit}
	if len(cuts) == 0 {
		return report
	}
	most := farthest(cuts, periods)
	reach := min(webReach(cuts, limit, periods), most)
	for {
		if s := fieldScene(cuts, reach, periods); s != nil {
			if t := s.tallied(limit, reach); !t.doubled && t.found {
				return report.of(s, t)
			}
		}
		s := sceneOf(cuts, reach, periods...)
		found := s.links(reach)
		next := min(2*reach, most)
		if len(found) > 0 || reach >= most || s.pieces()*next > mostWalked*s.spacing(len(cuts)) {
			return report.with(s, found)
		}
		reach = next
	}
}

// mostWalked bounds how far a search for a web wider than the limit may grow: the
// pieces of all rims, times the usual spacings that each looks over.
const mostWalked = 1e6

// pieces returns of how many discs and straight pieces the rims are.
func (s *scene) pieces() float64 {
	n := len(s.cuts)
	if s.sides != nil {
		n += len(s.sides.sides)
	}
	return float64(n)
}

// webReach returns how wide the webs are that a report tells all of.
func webReach(cuts []pattern.CutOut, limit geom.Length, periods []geom.Point) float64 {
	reach := max(float64(limit), float64(geom.Touch))
	if allRound(cuts) {
		f := frameAround(cuts, periods)
		reach = discReach(&f, limit, len(cuts))
	}
	return reach
}

func allRound(cuts []pattern.CutOut) bool {
	return !slices.ContainsFunc(cuts, func(c pattern.CutOut) bool { return !c.Shape.Round() })
}

// Widths returns how wide every web found is, ascending. The list is the report's
// own and not to be changed.
func (r WebReport) Widths() []geom.Length {
	if r.grid != nil {
		return r.grid.widths(r.reach)
	}
	return r.widths
}

// of returns the report filled from the webs tallied.
func (r WebReport) of(s *scene, t tally) WebReport {
	r.widths, r.Narrowest, r.Found = t.widths, s.web(t.least), true
	slices.SortFunc(t.below, narrower)
	for _, l := range t.below {
		r.Below = append(r.Below, s.web(l))
	}
	return r
}

// with returns the report filled from the webs found.
func (r WebReport) with(s *scene, found []link) WebReport {
	if len(found) == 0 {
		return r
	}
	r.widths = make([]geom.Length, len(found))
	least := 0
	var below []link
	for i, l := range found {
		r.widths[i] = geom.Length(math.Round(l.width))
		if r.widths[i] < r.Limit {
			below = append(below, l)
		}
		if narrower(l, found[least]) < 0 {
			least = i
		}
	}
	slices.Sort(r.widths)
	slices.SortFunc(below, narrower)
	for _, l := range below {
		r.Below = append(r.Below, s.web(l))
	}
	r.Narrowest, r.Found = s.web(found[least]), true
	return r
}

// narrower orders webs by width, then as a cutter reads the sheet.
func narrower(l, o link) int {
	return cmp.Or(cmp.Compare(l.width, o.width),
		cmp.Compare(l.p.y+l.q.y, o.p.y+o.q.y), cmp.Compare(l.p.x+l.q.x, o.p.x+o.q.x),
		cmp.Compare(l.a, o.a), cmp.Compare(l.b, o.b), cmp.Compare(l.ea, o.ea), cmp.Compare(l.eb, o.eb))
}

// web returns a link as the report tells it, its ends put on the grid.
func (s *scene) web(l link) Web {
	return Web{
		P: l.p.point(), Q: l.q.point(), Width: geom.Length(math.Round(l.width)),
		A: s.cuts[l.a].Motif, B: s.cuts[l.b].Motif,
	}
}

// discReach returns how wide the webs are that a report of n discs tells all of.
func discReach(f *frame, limit geom.Length, n int) float64 {
	return max(float64(limit), float64(geom.Touch), 0.75*f.spacing(n))
}

// spacing returns the usual distance between n cut-outs: the side of the square
// that each has for itself.
func (f *frame) spacing(n int) float64 { return math.Sqrt(f.det / float64(n)) }

// farthest returns a length beyond which no web can be: the periods, or the
// whole drawing where nothing repeats.
func farthest(cuts []pattern.CutOut, periods []geom.Point) float64 {
	var far float64
	for _, p := range periods {
		far += p.Norm()
	}
	if len(periods) < 2 {
		all := boundsOf(cuts)
		far += all.Max.Sub(all.Min).Norm()
	}
	return math.Ceil(far) + 1
}

func boundsOf(cuts []pattern.CutOut) geom.Box {
	var all geom.Box
	for _, c := range cuts {
		all = all.Union(c.Shape.Bounds())
	}
	return all
}
