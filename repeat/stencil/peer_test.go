//go:build geos

package stencil

import (
	"fmt"
	"math"
	"runtime"
	"slices"
	"testing"

	"github.com/twpayne/go-geos"

	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

// The peer is GEOS, the geometry engine of libgeos-dev, through its C interface. It
// works in the plane and in floating point: each design is laid out for it copy by
// copy, and whole nanometres are whole numbers to it. It gets the straight pieces
// that stand for the outlines; what they cover, which paper is left and how far
// apart cut-outs are is its own work.

// peerOff bounds how far putting a line on the grid moves it, in millimetres: three
// rounds of half the diagonal of a grid square.
const peerOff = 3 * 0.7072e-6

const peerMM2 = float64(geom.Millimetre * geom.Millimetre)

// peerLine returns a ring as a closed line.
func peerLine(r geom.Ring) [][]float64 {
	ps := make([][]float64, len(r)+1)
	for i := range ps {
		p := r[i%len(r)]
		ps[i] = []float64{float64(p.X), float64(p.Y)}
	}
	return ps
}

// peerShape returns what rings cover by the non-zero rule: the faces between all
// their lines around which they wind.
func peerShape(rings []geom.Ring) *geos.Geom {
	var lines []*geos.Geom
	for _, r := range rings {
		lines = append(lines, geos.NewLineString(peerLine(r)))
	}
	noded := geos.NewCollection(geos.TypeIDMultiLineString, lines).UnaryUnion()
	faces := geos.Polygonize(parts(noded))
	var in []*geos.Geom
	for _, f := range parts(faces) {
		if p := f.PointOnSurface(); windingAt(rings, p.X(), p.Y()) != 0 {
			in = append(in, f.Clone())
		}
	}
	return geos.NewCollection(geos.TypeIDMultiPolygon, in).UnaryUnion()
}

// parts returns copies of the members of g.
func parts(g *geos.Geom) []*geos.Geom {
	all := make([]*geos.Geom, g.NumGeometries())
	for i := range all {
		all[i] = g.Geometry(i).Clone()
	}
	runtime.KeepAlive(g)
	return all
}

// windingAt returns how many times rings wind around a place: the angles that each
// side is seen under, summed up.
func windingAt(rings []geom.Ring, x, y float64) int {
	var sum float64
	for _, r := range rings {
		for i, p := range r {
			q := r[(i+1)%len(r)]
			ax, ay, bx, by := float64(p.X)-x, float64(p.Y)-y, float64(q.X)-x, float64(q.Y)-y
			sum += math.Atan2(ax*by-ay*bx, ax*bx+ay*by)
		}
	}
	return int(math.Round(sum / (2 * math.Pi)))
}

// A laidOut is a design in the plane: its cut-outs, their copies around, and what
// all of them cover within a window.
type laidOut struct {
	l      pattern.Lattice
	home   []*geos.Geom
	window geom.Box
	ink    *geos.Geom
}

// layOut lays out all copies that reach into a window around the cut-outs, so wide
// that two lattice vectors fit on each side.
func layOut(u pattern.Unit) laidOut {
	out := laidOut{l: u.Lattice}
	var rings [][]geom.Ring
	for _, c := range u.CutOuts() {
		r := c.Shape.Rings(geom.Chord)
		rings = append(rings, r)
		out.home = append(out.home, peerShape(r))
		out.window = out.window.Union(c.Shape.Bounds())
	}
	a, b := u.Lattice.A, u.Lattice.B
	out.window = out.window.Union(geom.BoxOf(geom.Point{}, a, b, a.Add(b)))
	out.window = out.window.Grown(2 * max(u.Lattice.Reduced().A.Distance(geom.Point{}), u.Lattice.Reduced().B.Distance(geom.Point{})))
	const far = 24
	var copies []*geos.Geom
	for k, rs := range rings {
		var box geom.Box
		for _, r := range rs {
			box = box.Union(r.Bounds())
		}
		for m := -far; m <= far; m++ {
			for n := -far; n <= far; n++ {
				by := a.Times(m).Add(b.Times(n))
				if box.Moved(by).Meets(out.window) {
					copies = append(copies, movedPeer(out.home[k], by))
				}
			}
		}
	}
	out.ink = geos.NewCollection(geos.TypeIDGeometryCollection, copies).UnaryUnion()
	return out
}

// movedPeer returns g moved by a lattice vector.
func movedPeer(g *geos.Geom, by geom.Point) *geos.Geom {
	var polygons []*geos.Geom
	for _, p := range parts(g) {
		rings := [][][]float64{movedLine(p.ExteriorRing(), by)}
		for i := range p.NumInteriorRings() {
			rings = append(rings, movedLine(p.InteriorRing(i), by))
		}
		polygons = append(polygons, geos.NewPolygon(rings))
		runtime.KeepAlive(p)
	}
	return geos.NewCollection(geos.TypeIDMultiPolygon, polygons)
}

func movedLine(r *geos.Geom, by geom.Point) [][]float64 {
	ps := r.CoordSeq().ToCoords()
	runtime.KeepAlive(r)
	for i := range ps {
		ps[i] = []float64{ps[i][0] + float64(by.X), ps[i][1] + float64(by.Y)}
	}
	return ps
}

// areaMM2 returns the area covered in one cell.
func (o laidOut) areaMM2() float64 {
	cell := geos.NewPolygon([][][]float64{peerLine(geom.Ring{{}, o.l.A, o.l.A.Add(o.l.B), o.l.B})})
	return o.ink.Intersection(cell).Area() / peerMM2
}

// A piece of paper that ends, as the peer tells it, in millimetres.
type peerIsland struct{ areaMM2, rimMM, x, y float64 }

// islands returns the paper within the window that doesn't reach its edge, once for
// all copies: those whose centroids are a lattice vector apart are one.
func (o laidOut) islands() []peerIsland {
	w := o.window
	sheet := geos.NewGeomFromBounds(float64(w.Min.X), float64(w.Min.Y), float64(w.Max.X), float64(w.Max.Y))
	var all []peerIsland
	for _, p := range parts(sheet.Difference(o.ink)) {
		if p.IsEmpty() {
			continue
		}
		b := p.Bounds()
		if b.MinX <= float64(w.Min.X) || b.MinY <= float64(w.Min.Y) || b.MaxX >= float64(w.Max.X) || b.MaxY >= float64(w.Max.Y) {
			continue
		}
		c := p.Centroid()
		is := peerIsland{p.Area() / peerMM2, p.Length() / 1e6, c.X() / 1e6, c.Y() / 1e6}
		if !slices.ContainsFunc(all, func(q peerIsland) bool { return o.alike(is, q) }) {
			all = append(all, is)
		}
	}
	return all
}

// alike reports whether two islands are copies of one.
func (o laidOut) alike(p, q peerIsland) bool {
	dx, dy := p.x-q.x, p.y-q.y
	det := o.l.A.X.MM()*o.l.B.Y.MM() - o.l.A.Y.MM()*o.l.B.X.MM()
	m := math.Round((dx*o.l.B.Y.MM() - dy*o.l.B.X.MM()) / det)
	n := math.Round((o.l.A.X.MM()*dy - o.l.A.Y.MM()*dx) / det)
	dx, dy = dx-m*o.l.A.X.MM()-n*o.l.B.X.MM(), dy-m*o.l.A.Y.MM()-n*o.l.B.Y.MM()
	const near = 1e-4
	return math.Hypot(dx, dy) < near && math.Abs(p.areaMM2-q.areaMM2) < near*(p.rimMM+near)
}

// gapMM returns the least distance between a cut-out of the cell and what it does
// not hang together with, infinite where all hang together.
func (o laidOut) gapMM() float64 {
	least := math.Inf(1)
	bodies := o.bodies()
	for _, own := range o.home {
		for _, x := range parts(own) {
			for _, body := range bodies {
				if d := x.Distance(body) / 1e6; d > geom.Touch.MM() {
					least = math.Min(least, d)
				}
			}
		}
	}
	return least
}

// bodies returns what hangs together: lobes that meet in a point, or come nearer to
// each other than geom.Touch, are one body.
func (o laidOut) bodies() []*geos.Geom {
	lobes := parts(o.ink)
	sets := newSets(len(lobes))
	for i, p := range lobes {
		for k, q := range lobes[:i] {
			if p.DistanceWithin(q, float64(geom.Touch)) {
				sets.join(i, k)
			}
		}
	}
	members := make([][]*geos.Geom, len(lobes))
	for i, p := range lobes {
		r := sets.find(i)
		members[r] = append(members[r], p)
	}
	var bodies []*geos.Geom
	for _, m := range members {
		if m != nil {
			bodies = append(bodies, geos.NewCollection(geos.TypeIDMultiPolygon, m))
		}
	}
	return bodies
}

// bandsMM2 returns the area in one cell of the paper that goes on in one direction
// only: of each piece of paper in the cell, by which lattice vectors it hangs
// together with its copies within the window.
func (o laidOut) bandsMM2() float64 {
	w := o.window
	sheet := geos.NewGeomFromBounds(float64(w.Min.X), float64(w.Min.Y), float64(w.Max.X), float64(w.Max.Y))
	cell := geos.NewPolygon([][][]float64{peerLine(geom.Ring{{}, o.l.A, o.l.A.Add(o.l.B), o.l.B})})
	var sum float64
	for _, body := range parts(sheet.Difference(o.ink)) {
		if body.IsEmpty() {
			continue
		}
		for _, z := range parts(body.Intersection(cell)) {
			if z.IsEmpty() || z.Area() == 0 {
				continue
			}
			p := z.PointOnSurface()
			var ways [][2]int32
			for m := int32(-2); m <= 2; m++ {
				for n := int32(-2); n <= 2; n++ {
					by := o.l.At(int(m), int(n))
					if (m != 0 || n != 0) && body.Contains(geos.NewPointFromXY(p.X()+float64(by.X), p.Y()+float64(by.Y))) {
						ways = append(ways, [2]int32{m, n})
					}
				}
			}
			if rankOf(ways) == 1 {
				sum += z.Area() / peerMM2
			}
		}
	}
	return sum
}

// The islands, the bands, the area cut and the narrowest web between cut-outs that are apart
// are those of the peer, in every design.
func TestDesignsAgreeWithTheSecondOpinion(t *testing.T) {
	const designs = 200
	islands, gaps, worst := 0, 0, 0.0
	for seed := range uint64(designs) {
		t.Run(fmt.Sprint(seed), func(t *testing.T) {
			u := design(seed)
			cuts, l := u.CutOuts(), u.Lattice
			out := layOut(u)
			compareArea(t, u, out)
			told := mustConnect(t, cuts, l.A, l.B)
			found, bands := out.islands(), out.bandsMM2()
			n, off := compareIslands(t, told.Islands, found)
			compareBands(t, told.Bands, bands)
			if _, is := secondOpinions[seed]; is {
				parts := Connectivity{Bands: []Part{{AreaMM2: bands}}}
				for _, p := range thick(found) {
					parts.Islands = append(parts.Islands, Part{AreaMM2: p.areaMM2})
				}
				settle(t, seed, parts)
			}
			islands, worst = islands+n, math.Max(worst, off)
			if compareGap(t, cuts, l, out.gapMM()) {
				gaps++
			}
		})
	}
	t.Logf("%d islands, %d designs with a web between cut-outs; areas are off by %.3f of what is allowed at most", islands, gaps, worst)
	if !t.Failed() && (islands < 80 || gaps < 80) {
		t.Errorf("only %d islands and %d webs were compared", islands, gaps)
	}
}

func compareArea(t *testing.T, u pattern.Unit, out laidOut) {
	t.Helper()
	cuts, l := u.CutOuts(), u.Lattice
	shapes := make([][]geom.Ring, len(cuts))
	var rim float64
	for i, c := range cuts {
		shapes[i] = c.Shape.Rings(geom.Chord)
		for _, r := range shapes[i] {
			for k, p := range r {
				rim += p.Distance(r[(k+1)%len(r)]).MM()
			}
		}
	}
	r, err := geom.Union(shapes, l.A, l.B)
	if err != nil {
		t.Fatal(err)
	}
	want := out.areaMM2()
	if d := math.Abs(r.AreaMM2() - want); d > rim*peerOff+1e-9 {
		t.Errorf("the union has %.9f mm2, the peer %.9f", r.AreaMM2(), want)
	}
	// The share is that of the true curves where they are discs alone.
	if got := mustOpen(t, cuts, l.A, l.B) / 100 * l.CellMM2(); math.Abs(got-want) > rim*geom.Chord.MM() {
		t.Errorf("%.6f mm2 open, the peer has %.6f", got, want)
	}
}

// thick returns the islands thicker than geom.Touch.
func thick(all []peerIsland) []peerIsland {
	return slices.DeleteFunc(slices.Clone(all), func(p peerIsland) bool { return p.areaMM2 <= p.rimMM/2*geom.Touch.MM() })
}

// compareIslands holds islands against the peer's. Paper thinner than geom.Touch is
// none to us; what bridges and grid take of an island lies along its rim.
func compareIslands(t *testing.T, told []Part, want []peerIsland) (n int, worst float64) {
	t.Helper()
	want = thick(want)
	left := slices.Clone(told)
	for _, p := range want {
		slack := p.rimMM * geom.Touch.MM()
		i := slices.IndexFunc(left, func(q Part) bool { return math.Abs(q.AreaMM2-p.areaMM2) <= slack })
		if i < 0 {
			t.Errorf("no island of %.9f mm2 about %.4f, %.4f mm; told are %+v", p.areaMM2, p.x, p.y, told)
			continue
		}
		worst = math.Max(worst, math.Abs(left[i].AreaMM2-p.areaMM2)/slack)
		left = slices.Delete(left, i, i+1)
	}
	for _, q := range left {
		t.Errorf("an island of %.9f mm2 at %v, which the peer does not have: %+v", q.AreaMM2, q.At, want)
	}
	return len(want), worst
}

// compareBands holds the area of all bands of a cell against the peer's.
func compareBands(t *testing.T, told []Part, want float64) {
	t.Helper()
	var got float64
	for _, b := range told {
		got += b.AreaMM2
	}
	if math.Abs(got-want) > 0.01+1e-3*want {
		t.Errorf("bands of %.6f mm2, the peer has %.6f", got, want)
	}
}

// compareGap holds the webs against the least distance between cut-outs that are
// apart: one of that width is told. Discs are cut into pieces for the peer.
func compareGap(t *testing.T, cuts []pattern.CutOut, l pattern.Lattice, gap float64) bool {
	t.Helper()
	if math.IsInf(gap, 1) || gap <= geom.Touch.MM() {
		return false
	}
	slack := 2*geom.Chord.MM() + 1e-5
	r := Webs(cuts, geom.MM(gap+0.01), l.A, l.B)
	if !r.Found || r.Narrowest.Width.MM() > gap+1e-5 {
		t.Errorf("narrowest web %s mm, the peer has a gap of %.6f", r.Narrowest.Width, gap)
	}
	if !slices.ContainsFunc(r.Below, func(w Web) bool { return math.Abs(w.Width.MM()-gap) <= slack }) {
		t.Errorf("no web of %.6f mm among %v", gap, r.Widths())
	}
	return true
}
