package stencil

import (
	"math"

	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

// A place is a point in nanometres, as float64: whole numbers below 9 km are
// exact, so a place and its copy differ by the period to the bit.
type place struct{ x, y float64 }

func placeOf(p geom.Point) place { return place{float64(p.X), float64(p.Y)} }

func (p place) add(q place) place             { return place{p.x + q.x, p.y + q.y} }
func (p place) sub(q place) place             { return place{p.x - q.x, p.y - q.y} }
func (p place) times(f float64) place         { return place{float64(p.x * f), float64(p.y * f)} }
func (p place) dot(q place) float64           { return float64(p.x*q.x) + float64(p.y*q.y) }
func (p place) cross(q place) float64         { return float64(p.x*q.y) - float64(p.y*q.x) }
func (p place) norm() float64                 { return math.Sqrt(p.dot(p)) }
func (p place) less(q place) bool             { return p.y < q.y || p.y == q.y && p.x < q.x }
func (p place) near(q place, by float64) bool { d := p.sub(q); return d.dot(d) <= by*by }
func (p place) point() geom.Point {
	return geom.Point{X: geom.Length(math.Round(p.x)), Y: geom.Length(math.Round(p.y))}
}

// A frame is where webs are measured: the plane, the cloth that repeats along
// one period, or the torus of two. Its cell has the sides a and b; along a side
// that wraps the cell repeats, along one that doesn't it holds everything.
type frame struct {
	corner       place
	a, b         place
	wrapA, wrapB bool
	det          float64
	tallA, tallB float64 // across the cell, from the side b to its copy, and from a to its copy
}

// frameAround returns the frame of the periods with the cut-outs in it.
func frameAround(cuts []pattern.CutOut, periods []geom.Point) frame {
	f := frame{}
	switch len(periods) {
	case 0:
		all := boundsOf(cuts)
		f.corner = placeOf(all.Min)
		f.a, f.b = place{float64(all.Width()) + 1, 0}, place{0, float64(all.Height()) + 1}
	case 1:
		all := boundsOf(cuts)
		f.a, f.wrapA = placeOf(periods[0]), true
		up := place{-f.a.y, f.a.x}.times(1 / f.a.norm())
		lo, hi := math.Inf(1), math.Inf(-1)
		for _, c := range []geom.Point{all.Min, all.Max, {X: all.Min.X, Y: all.Max.Y}, {X: all.Max.X, Y: all.Min.Y}} {
			h := placeOf(c).dot(up)
			lo, hi = min(lo, h), max(hi, h)
		}
		f.corner, f.b = up.times(lo-1), up.times(hi-lo+2)
	default:
		l := pattern.Lattice{A: periods[0], B: periods[1]}.Reduced()
		f.a, f.b, f.wrapA, f.wrapB = placeOf(l.A), placeOf(l.B), true, true
		if f.a.cross(f.b) < 0 {
			f.b = f.b.times(-1)
		}
	}
	f.det = f.a.cross(f.b)
	f.tallA, f.tallB = f.det/f.b.norm(), f.det/f.a.norm()
	return f
}

// at returns p in sides of the cell.
func (f *frame) at(p place) (u, v float64) {
	p = p.sub(f.corner)
	return p.cross(f.b) / f.det, f.a.cross(p) / f.det
}

// home returns the copy of p in the cell. Along a side that does not wrap p
// stays.
func (f *frame) home(p place) place {
	u, v := f.at(p)
	return p.sub(f.shift(f.turns(u, v)))
}

// turns returns by how many periods a place at u, v lies outside the cell.
func (f *frame) turns(u, v float64) (i, j int) {
	if f.wrapA {
		i = int(math.Floor(u))
	}
	if f.wrapB {
		j = int(math.Floor(v))
	}
	return i, j
}

func (f *frame) shift(i, j int) place {
	return f.a.times(float64(i)).add(f.b.times(float64(j)))
}

// A mesh cuts the frame's cell into nu by nv equal parts.
type mesh struct {
	*frame
	nu, nv int
}

// meshOf returns a mesh whose parts are about size across, at most two for each
// of n items.
func (f *frame) meshOf(size float64, n int) mesh {
	nu, nv := math.Max(1, math.Floor(f.tallA/size)), math.Max(1, math.Floor(f.tallB/size))
	most := float64(2*n + 1)
	if nu*nv > most {
		shrink := math.Sqrt(most / (nu * nv))
		nu, nv = math.Max(1, math.Floor(nu*shrink)), math.Max(1, math.Floor(nv*shrink))
		nu, nv = math.Min(nu, most), math.Min(nv, most)
	}
	return mesh{f, int(nu), int(nv)}
}

// part returns the part of the cell that holds a place of the cell.
func (m mesh) part(p place) int {
	u, v := m.at(p)
	i := min(max(int(u*float64(m.nu)), 0), m.nu-1)
	j := min(max(int(v*float64(m.nv)), 0), m.nv-1)
	return j*m.nu + i
}

// A window is a range of parts, counted on beyond the cell where it wraps.
type window struct{ i0, i1, j0, j1 int }

// within returns the parts that meet the circle around p.
func (m mesh) within(p place, radius float64) window {
	u, v := m.at(p)
	du, dv := radius/m.tallA, radius/m.tallB
	return m.clamped(u-du, u+du, v-dv, v+dv)
}

// over returns the parts that meet the upright rectangle from lo to hi.
func (m mesh) over(lo, hi place) window {
	u0, v0 := m.at(lo)
	u1, v1 := u0, v0
	for _, p := range [3]place{hi, {lo.x, hi.y}, {hi.x, lo.y}} {
		u, v := m.at(p)
		u0, u1, v0, v1 = min(u0, u), max(u1, u), min(v0, v), max(v1, v)
	}
	return m.clamped(u0, u1, v0, v1)
}

func (m mesh) clamped(u0, u1, v0, v1 float64) window {
	w := window{floor(u0 * float64(m.nu)), floor(u1 * float64(m.nu)), floor(v0 * float64(m.nv)), floor(v1 * float64(m.nv))}
	if !m.wrapA {
		w.i0, w.i1 = min(max(w.i0, 0), m.nu-1), min(max(w.i1, 0), m.nu-1)
	}
	if !m.wrapB {
		w.j0, w.j1 = min(max(w.j0, 0), m.nv-1), min(max(w.j1, 0), m.nv-1)
	}
	return w
}

func floor(v float64) int {
	i := int(v)
	if v < float64(i) {
		i--
	}
	return i
}

// wrap parts a count into the rest within n and the whole turns.
func wrap(i, n int) (rest, turns int) {
	turns = i / n
	if i < turns*n {
		turns--
	}
	return i - turns*n, turns
}
