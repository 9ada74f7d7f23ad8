package stencil

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

// A picture is the cell of a lattice as n by n samples in lattice coordinates: true
// where a cut-out or a copy covers the middle of one.
type picture struct {
	n   int
	ink []bool
}

// paint samples the cut-outs row by row with the winding number of each.
func paint(cuts []pattern.CutOut, l pattern.Lattice, n int) picture {
	p := picture{n, make([]bool, n*n)}
	det := l.A.X.MM()*l.B.Y.MM() - l.A.Y.MM()*l.B.X.MM()
	for _, c := range cuts {
		var rings [][][2]float64
		for _, r := range polygons(c.Shape) {
			for i, q := range r {
				x, y := q[0], q[1]
				r[i] = [2]float64{(x*l.B.Y.MM() - y*l.B.X.MM()) / det * float64(n), (l.A.X.MM()*y - l.A.Y.MM()*x) / det * float64(n)}
			}
			rings = append(rings, r)
		}
		p.fill(rings)
	}
	return p
}

// polygons returns a shape as rings in millimetres.
func polygons(s geom.Shape) [][][2]float64 {
	if s.Round() {
		const n = 2000
		r := make([][2]float64, n)
		for i := range r {
			sin, cos := math.Sincos(2 * math.Pi * float64(i) / n)
			r[i] = [2]float64{s.Disc.Centre.X.MM() + s.Disc.RadiusMM()*cos, s.Disc.Centre.Y.MM() + s.Disc.RadiusMM()*sin}
		}
		return [][][2]float64{r}
	}
	var all [][][2]float64
	for _, ring := range s.Outline.Rings(20 * geom.Nanometre) {
		var r [][2]float64
		for _, q := range ring {
			r = append(r, [2]float64{q.X.MM(), q.Y.MM()})
		}
		all = append(all, r)
	}
	return all
}

// fill inks where rings wind around the middle of a sample.
func (p picture) fill(rings [][][2]float64) {
	type crossing struct {
		x    float64
		turn int
	}
	rows := map[int][]crossing{}
	for _, r := range rings {
		for i, a := range r {
			b, turn := r[(i+1)%len(r)], 1
			if a[1] > b[1] {
				a, b, turn = b, a, -1
			}
			for row := int(math.Ceil(a[1] - 0.5)); float64(row)+0.5 < b[1]; row++ {
				t := (float64(row) + 0.5 - a[1]) / (b[1] - a[1])
				rows[row] = append(rows[row], crossing{a[0] + t*(b[0]-a[0]), turn})
			}
		}
	}
	wrap := func(i int) int { return ((i % p.n) + p.n) % p.n }
	for row, xs := range rows {
		slices.SortFunc(xs, func(a, b crossing) int { return int(math.Copysign(1, a.x-b.x)) })
		turns := 0
		for i, x := range xs[:len(xs)-1] {
			if turns += x.turn; turns == 0 {
				continue
			}
			for col := int(math.Ceil(x.x - 0.5)); float64(col)+0.5 < xs[i+1].x; col++ {
				p.ink[wrap(row)*p.n+wrap(col)] = true
			}
		}
	}
}

// A census is what a picture shows of the paper, areas as shares of the cell.
type census struct {
	n              int
	islands, bands []float64
	open           float64
	rim            int // neighbouring samples that differ
}

// counted labels the paper of a picture: each sample remembers the way to the one
// that stands for its piece, in cells; a piece that meets itself by another way goes
// on for ever in that direction.
func (p picture) counted() census {
	parent, off := make([]int32, p.n*p.n), make([][2]int32, p.n*p.n)
	for i := range parent {
		parent[i] = int32(i)
	}
	find := func(i int32) (int32, [2]int32) {
		var d [2]int32
		for parent[i] != i {
			up := parent[i]
			off[i] = [2]int32{off[i][0] + off[up][0], off[i][1] + off[up][1]}
			parent[i] = parent[up]
			d = [2]int32{d[0] + off[i][0], d[1] + off[i][1]}
			i = parent[i]
		}
		return i, d
	}
	ways := map[int32][][2]int32{}
	c := census{n: p.n}
	join := func(i, j int32, wx, wy int32) {
		a, da := find(i)
		b, db := find(j)
		// From i to j is a step over the edge of the cell by so much.
		way := [2]int32{db[0] + wx - da[0], db[1] + wy - da[1]}
		if a == b {
			if way != [2]int32{} {
				ways[a] = append(ways[a], way)
			}
			return
		}
		parent[b], off[b] = a, [2]int32{-way[0], -way[1]}
		ways[a] = append(ways[a], ways[b]...)
		delete(ways, b)
	}
	for row := range p.n {
		for col := range p.n {
			i := int32(row*p.n + col)
			right, wx := int32(row*p.n+(col+1)%p.n), int32((col+1)/p.n)
			down, wy := int32((row+1)%p.n*p.n+col), int32((row+1)/p.n)
			for _, e := range [2][3]int32{{right, wx, 0}, {down, 0, wy}} {
				if p.ink[i] != p.ink[e[0]] {
					c.rim++
				} else if !p.ink[i] {
					join(i, e[0], e[1], e[2])
				}
			}
		}
	}
	count := map[int32]int{}
	for i, ink := range p.ink {
		if ink {
			c.open++
		} else {
			r, _ := find(int32(i))
			count[r]++
		}
	}
	whole := float64(p.n * p.n)
	c.open /= whole
	for r, n := range count {
		switch rankOf(ways[r]) {
		case 0:
			c.islands = append(c.islands, float64(n)/whole)
		case 1:
			c.bands = append(c.bands, float64(n)/whole)
		}
	}
	slices.Sort(c.islands)
	slices.Sort(c.bands)
	return c
}

// rankOf returns in how many directions the ways go.
func rankOf(ways [][2]int32) int {
	rank := 0
	for _, w := range ways {
		if rank == 0 {
			rank = 1
		}
		if w[0]*ways[0][1] != w[1]*ways[0][0] {
			return 2
		}
	}
	return rank
}

// comparePaper holds islands, bands and open area against pictures, each twice as
// fine as the one before where they don't agree. Cut-out or paper thinner than a
// sample the finest can't tell; such a design is open, for a second opinion to settle.
func comparePaper(t *testing.T, cuts []pattern.CutOut, l pattern.Lattice) (islands int, unsure bool) {
	t.Helper()
	paths := mustConnect(t, cuts, l.A, l.B)
	open := mustOpen(t, cuts, l.A, l.B)
	const finest = 2048
	for n := 256; ; n *= 2 {
		p := paint(cuts, l, n)
		c := p.counted()
		// The middles fall on either side of a rim by chance.
		slack := 100 * (6*math.Sqrt(float64(c.rim)) + 8) / float64(n*n)
		// What cut-outs share is measured on straight pieces.
		slack += 100 * geom.Chord.MM() * float64(c.rim) / float64(n) / math.Sqrt(l.CellMM2())
		if d := math.Abs(open - 100*c.open); d > slack && n == finest {
			t.Errorf("%.5f %% open, the picture has %.5f ± %.5f", open, 100*c.open, slack)
		}
		told, seen := c.differs(paths, l.CellMM2())
		if len(told)+len(seen) == 0 {
			return len(paths.Islands) + len(paths.Bands), false
		}
		if n < finest {
			continue
		}
		t.Logf("too fine for %d samples a side: told and not seen %s, seen and not told %s", n, told, seen)
		return len(paths.Islands) + len(paths.Bands), true
	}
}

// differs returns what was told of the paper and is not in the picture, and what is
// in the picture and was not told. Islands of few samples are left out.
func (c census) differs(paths Connectivity, cell float64) (told, seen []string) {
	const few = 60
	sample := 1 / float64(c.n*c.n)
	alike := func(a, b float64) bool { return math.Abs(a-b) <= 0.3*max(a, b)+few*sample/2 }
	compare := func(name string, parts []Part, areas []float64) {
		for _, p := range parts {
			a := p.AreaMM2 / cell
			if a >= few*sample && !slices.ContainsFunc(areas, func(b float64) bool { return alike(a, b) }) {
				told = append(told, fmt.Sprintf("%s of %.9f mm2 at %v", name, p.AreaMM2, p.At))
			}
		}
		for _, a := range areas {
			if a >= few*sample && !slices.ContainsFunc(parts, func(p Part) bool { return alike(a, p.AreaMM2/cell) }) {
				seen = append(seen, fmt.Sprintf("%s of %.9f mm2", name, a*cell))
			}
		}
	}
	compare("an island", paths.Islands, c.islands)
	compare("a band", paths.Bands, c.bands)
	return told, seen
}
