package bench

import (
	"cmp"
	"math"
	"slices"

	"tsugime/repeat/geom"
)

// nearest is how many neighbours of a place are looked at.
const nearest = 8

// neighbours returns the nearest other places of every place, the nearest first.
// Where many places are one, those along order come first.
func neighbours(at []geom.Point, order []int) [][]int32 {
	g := placesGrid(at, order)
	k := min(nearest, len(at)-1)
	all := make([]int32, len(at)*k)
	near := make([][]int32, len(at))
	var found []candidate
	for i := range at {
		found = g.around(at, i, k, found[:0])
		near[i] = all[i*k : (i+1)*k]
		for j := range near[i] {
			near[i][j] = found[j].place
		}
	}
	return near
}

type candidate struct {
	place int32
	far   float64
}

// A placeGrid holds places in square cells, about two in each.
type placeGrid struct {
	min    geom.Point
	cell   float64
	nx, ny int
	start  []int32
	places []int32
}

func placesGrid(at []geom.Point, order []int) placeGrid {
	box := geom.BoxOf(at...)
	w, h := float64(box.Width())+1, float64(box.Height())+1
	g := placeGrid{min: box.Min, cell: math.Max(math.Sqrt(w*h*2/float64(len(at))), math.Max(w, h)/float64(len(at)))}
	g.nx, g.ny = int(w/g.cell)+1, int(h/g.cell)+1
	g.start = make([]int32, g.nx*g.ny+1)
	for _, p := range at {
		g.start[g.of(p)+1]++
	}
	for c := 1; c < len(g.start); c++ {
		g.start[c] += g.start[c-1]
	}
	next := slices.Clone(g.start)
	g.places = make([]int32, len(at))
	for _, i := range order {
		c := g.of(at[i])
		g.places[next[c]] = int32(i)
		next[c]++
	}
	return g
}

func (g placeGrid) at(p geom.Point) (x, y int) {
	return int(float64(p.X-g.min.X) / g.cell), int(float64(p.Y-g.min.Y) / g.cell)
}

func (g placeGrid) of(p geom.Point) int {
	x, y := g.at(p)
	return y*g.nx + x
}

// around returns the k nearest other places, looking at rings of cells until none
// farther out can be nearer.
func (g placeGrid) around(at []geom.Point, i, k int, found []candidate) []candidate {
	cx, cy := g.at(at[i])
	for ring := 0; ring <= max(g.nx, g.ny); ring++ {
		// What lies in farther rings is at least ring−1 cells away.
		if len(found) == k && found[k-1].far <= g.cell*float64(ring-1) {
			break
		}
		for y := max(cy-ring, 0); y <= min(cy+ring, g.ny-1); y++ {
			step := 1
			if y != cy-ring && y != cy+ring {
				step = max(2*ring, 1)
			}
			for x := cx - ring; x <= cx+ring; x += step {
				if x >= 0 && x < g.nx {
					found = g.cellInto(at, i, k, y*g.nx+x, found)
				}
			}
		}
	}
	return found
}

func (g placeGrid) cellInto(at []geom.Point, i, k, c int, found []candidate) []candidate {
	for _, j := range g.places[g.start[c]:g.start[c+1]] {
		if int(j) == i {
			continue
		}
		d := at[j].Sub(at[i]).Norm()
		if len(found) == k && d >= found[k-1].far {
			continue
		}
		if len(found) == k {
			found = found[:k-1]
		}
		n, _ := slices.BinarySearchFunc(found, d, func(c candidate, d float64) int {
			return cmp.Or(cmp.Compare(c.far, d), -1)
		})
		found = slices.Insert(found, n, candidate{j, d})
	}
	return found
}
