package stencil

import (
	"math"

	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

// leastPaper is the share of paper in an element below which it counts as cut:
// less could not carry its own nodes in float64.
const leastPaper = 1e-3

// paper returns the share of paper in each element, row by row.
//
// The cut-outs are united on the torus, and each straight piece of a boundary
// adds to the elements it passes the exact area between it and their right
// edges. (Summing along a row then fills what lies inside, as rasterisers of type
// do it.)
func (m cellMesh) paper(cuts []pattern.CutOut) ([]float64, error) {
	shapes := make([][]geom.Ring, len(cuts))
	for i, c := range cuts {
		shapes[i] = fairRings(c.Shape)
	}
	nm := float64(geom.Millimetre)
	region, err := geom.Union(shapes, m.a.times(nm).point(), m.b.times(nm).point())
	if err != nil {
		return nil, err
	}
	ink := newInkRows(m, region)
	for _, b := range region.Boundaries {
		ink.add(b)
	}
	return ink.paper(region.AreaMM2() / m.a.cross(m.b)), nil
}

// An inkRows adds up ink along the rows of a mesh. Where boundaries run around
// the torus along its rows it goes through the columns instead: sides p and q are
// b and −a then, which turn alike.
type inkRows struct {
	p, q    place // in nanometres
	np, nq  int
	turned  bool
	enters  []float64 // by element: what begins there and goes on to the right
	periods []float64 // by row: what begins whole periods away
}

func newInkRows(m cellMesh, region geom.Region) *inkRows {
	nm := float64(geom.Millimetre)
	r := &inkRows{p: m.a.times(nm), q: m.b.times(nm), np: m.nx, nq: m.ny}
	for _, b := range region.Boundaries {
		if !b.Closed() {
			_, rows := r.at(placeOf(b.Wrap))
			r.turned = math.Round(rows) == 0
			break
		}
	}
	if r.turned {
		r.p, r.q, r.np, r.nq = r.q, r.p.times(-1), m.ny, m.nx
	}
	r.enters, r.periods = make([]float64, r.np*r.nq), make([]float64, r.nq)
	return r
}

// at returns a place in elements from the origin.
func (r *inkRows) at(p place) (x, y float64) {
	det := r.p.cross(r.q)
	return p.cross(r.q) / det * float64(r.np), r.p.cross(p) / det * float64(r.nq)
}

func (r *inkRows) add(b geom.Boundary) {
	x0, y0 := r.at(placeOf(b.Points[0]))
	for i := range b.Points {
		next := b.Points[0].Add(b.Wrap)
		if i+1 < len(b.Points) {
			next = b.Points[i+1]
		}
		x1, y1 := r.at(placeOf(next))
		r.line(x0, y0, x1, y1)
		x0, y0 = x1, y1
	}
}

// line adds a straight piece row by row.
func (r *inkRows) line(x0, y0, x1, y1 float64) {
	if y0 == y1 {
		return
	}
	sign := -1.0
	if y0 > y1 {
		x0, y0, x1, y1, sign = x1, y1, x0, y0, 1
	}
	slope := (x1 - x0) / (y1 - y0)
	for y := y0; y < y1; {
		row := math.Floor(y)
		end := min(row+1, y1)
		from, to := x0+(y-y0)*slope, x0+(end-y0)*slope
		r.inRow(modulo(int(row), r.nq), from, to, sign*(end-y))
		y = end
	}
}

// inRow adds a straight piece that stays in a row, column by column.
func (r *inkRows) inRow(row int, x0, x1, height float64) {
	if x0 > x1 {
		x0, x1 = x1, x0
	}
	if math.Floor(x0) == math.Floor(x1) || x0 == x1 {
		r.in(row, math.Floor(x0), (x0+x1)/2, height)
		return
	}
	share := height / (x1 - x0)
	for x := x0; x < x1; {
		column := math.Floor(x)
		end := min(column+1, x1)
		r.in(row, column, (x+end)/2, share*(end-x))
		x = end
	}
}

// in adds a piece of the given height in one element whose middle is at x.
func (r *inkRows) in(row int, column, x, height float64) {
	beyond := height * (x - column)
	r.begin(row, int(column), height-beyond)
	r.begin(row, int(column)+1, beyond)
}

// begin adds ink that begins in a column and goes on to the right. A column
// outside the cell stands for the one in it, periods away.
func (r *inkRows) begin(row, column int, ink float64) {
	home := modulo(column, r.np)
	r.enters[row*r.np+home] += ink
	r.periods[row] -= float64((column-home)/r.np) * ink
}

// paper sums up. Boundaries that run around the torus leave open by how many
// whole layers all is too high or too low; the share of ink in the cell tells.
func (r *inkRows) paper(ink float64) []float64 {
	cover := make([]float64, len(r.enters))
	var sum float64
	for row := range r.nq {
		c := r.periods[row]
		for k := range r.np {
			c += r.enters[row*r.np+k]
			cover[row*r.np+k] = c
			sum += c
		}
	}
	layers := math.Round(ink - sum/float64(len(cover)))
	share := make([]float64, len(cover))
	for row := range r.nq {
		for k := range r.np {
			i := row*r.np + k
			if r.turned { // column k of rows that run down from the right
				i = k*r.nq + r.nq - 1 - row
			}
			share[i] = solidOrVoid(1 - cover[row*r.np+k] - layers)
		}
	}
	return share
}

func solidOrVoid(share float64) float64 {
	switch {
	case share < leastPaper:
		return 0
	case share > 1-1e-9:
		return 1
	}
	return share
}

func modulo(a, n int) int { return (a%n + n) % n }
