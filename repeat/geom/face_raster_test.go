package geom

import (
	"math"
	"slices"
)

// A rasterPart is a connected set of uncut cells on a torus.
type rasterPart struct {
	cells int
	loops [][2]int // the ways around the torus that it closes, at most two, independent
}

// rasterParts is the slow and obvious way to the faces: the cell of the lattice is
// cut into n × n parallelograms, each is cut or not by its middle, and cells are
// joined by a union-find that keeps how many periods lie between a cell and its
// root. Two ways to the same cell that differ are a loop around the torus.
func rasterParts(shapes [][]Ring, a, b Point, n int) (parts []rasterPart, left int) {
	cut := rasterCut(shapes, a, b, n)
	root := make([]int, n*n)
	way := make([][2]int, n*n) // periods from the root to the cell
	for i := range root {
		root[i] = i
	}
	loops := make(map[int][][2]int)
	var find func(i int) (int, [2]int)
	find = func(i int) (int, [2]int) {
		if root[i] == i {
			return i, [2]int{}
		}
		r, w := find(root[i])
		root[i], way[i] = r, [2]int{way[i][0] + w[0], way[i][1] + w[1]}
		return r, way[i]
	}
	join := func(i, j int, step [2]int) {
		if cut[i] || cut[j] {
			return
		}
		ri, wi := find(i)
		rj, wj := find(j)
		d := [2]int{wi[0] + step[0] - wj[0], wi[1] + step[1] - wj[1]}
		if ri == rj {
			if l := loops[ri]; d != [2]int{} && (len(l) == 0 || len(l) == 1 && l[0][0]*d[1] != l[0][1]*d[0]) {
				loops[ri] = append(l, d)
			}
			return
		}
		root[rj], way[rj] = ri, d
		for _, l := range loops[rj] {
			if k := loops[ri]; len(k) == 0 || len(k) == 1 && k[0][0]*l[1] != k[0][1]*l[0] {
				loops[ri] = append(k, l)
			}
		}
	}
	for y := range n {
		for x := range n {
			i := y*n + x
			join(i, y*n+(x+1)%n, [2]int{(x + 1) / n, 0})
			join(i, (y+1)%n*n+x, [2]int{0, (y + 1) / n})
		}
	}
	count := make(map[int]int)
	for i := range cut {
		if !cut[i] {
			r, _ := find(i)
			count[r]++
			left++
		}
	}
	for r, c := range count {
		parts = append(parts, rasterPart{c, loops[r]})
	}
	return parts, left
}

// rasterCut marks the cells whose middle lies in a shape, row by row.
func rasterCut(shapes [][]Ring, a, b Point, n int) []bool {
	ax, ay, bx, by := float64(a.X), float64(a.Y), float64(b.X), float64(b.Y)
	det := ax*by - ay*bx
	place := func(p Point) (u, v float64) {
		x, y := float64(p.X), float64(p.Y)
		return (x*by - y*bx) / det * float64(n), (ax*y - ay*x) / det * float64(n)
	}
	type hit struct {
		u    float64
		turn int
	}
	cut := make([]bool, n*n)
	for _, shape := range shapes {
		rows := make(map[int][]hit)
		for _, r := range shape {
			for i, q := range r {
				u0, v0 := place(r[(i+len(r)-1)%len(r)])
				u1, v1 := place(q)
				turn := 1
				if v0 > v1 {
					u0, v0, u1, v1, turn = u1, v1, u0, v0, -1
				}
				for y := int(math.Ceil(v0 - 0.5)); float64(y)+0.5 < v1; y++ {
					rows[y] = append(rows[y], hit{u0 + (float64(y)+0.5-v0)/(v1-v0)*(u1-u0), turn})
				}
			}
		}
		for y, hits := range rows {
			slices.SortFunc(hits, func(g, h hit) int {
				switch {
				case g.u < h.u:
					return -1
				case g.u > h.u:
					return 1
				}
				return 0
			})
			winding := 0
			for k, h := range hits {
				if winding += h.turn; winding == 0 {
					continue
				}
				for x := int(math.Ceil(h.u - 0.5)); float64(x)+0.5 < hits[k+1].u; x++ {
					cut[wrap(y, n)*n+wrap(x, n)] = true
				}
			}
		}
	}
	return cut
}
