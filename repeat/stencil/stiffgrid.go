package stencil

// A stiffGrid is one coarseness of a mesh: nx by ny nodes on the torus, each tied
// to its nine neighbours (itself among them) by 2 × 2 blocks. Nodes amid whole
// paper share one row of blocks.
type stiffGrid struct {
	nx, ny  int
	row     []int32 // by node: which row; −1 where nothing holds the node
	blocks  []block
	inverse [][4]float64 // of each row's own block
}

// A block is a node's row: for each neighbour, left to right and row by row,
// xx, xy, yx, yy.
type block [36]float64

// An elements is what a grid is assembled from.
type elements struct {
	nx, ny int
	state  []int8 // by element
	mixed  []element
	which  []int32 // by element: its place in mixed
	solid  element
}

// States of an element.
const (
	void int8 = iota
	whole
	partly
)

// fineElements returns the elements of a mesh whose shares of paper are given.
func fineElements(nx, ny int, share []float64, solid element) elements {
	e := elements{nx: nx, ny: ny, solid: solid, state: make([]int8, len(share)), which: make([]int32, len(share))}
	for i, s := range share {
		switch {
		case s == 1:
			e.state[i] = whole
		case s > 0:
			var k element
			k.add(&solid, s)
			e.put(i, k)
		}
	}
	return e
}

func (e *elements) put(i int, k element) {
	e.state[i], e.which[i] = partly, int32(len(e.mixed))
	e.mixed = append(e.mixed, k)
}

func (e *elements) at(i int) *element {
	if e.state[i] == whole {
		return &e.solid
	}
	return &e.mixed[e.which[i]]
}

// coarser takes the elements four at a time, as if the nodes in between moved
// with their parents' (Galerkin).
func (e elements) coarser() elements {
	c := elements{nx: e.nx / 2, ny: e.ny / 2}
	c.state, c.which = make([]int8, c.nx*c.ny), make([]int32, c.nx*c.ny)
	var w [4][4][4]float64
	var solid [4]element
	for child := range 4 {
		w[child] = childWeights(child)
		solid[child] = e.solid.inParent(&w[child])
		c.solid.add(&solid[child], 1)
	}
	for y := range c.ny {
		for x := range c.nx {
			i := y*c.nx + x
			var sum element
			wholes, voids := 0, 0
			for child := range 4 {
				j := (2*y+nodeV[child])*e.nx + 2*x + nodeU[child]
				switch e.state[j] {
				case void:
					voids++
				case whole:
					wholes++
					sum.add(&solid[child], 1)
				default:
					k := e.mixed[e.which[j]].inParent(&w[child])
					sum.add(&k, 1)
				}
			}
			switch {
			case wholes == 4:
				c.state[i] = whole
			case voids < 4:
				c.put(i, sum)
			}
		}
	}
	return c
}

// grid assembles the elements around each node.
func (e *elements) grid() *stiffGrid {
	g := &stiffGrid{nx: e.nx, ny: e.ny, row: make([]int32, e.nx*e.ny)}
	shared := int32(-1)
	for y := range e.ny {
		for x := range e.nx {
			// Element r of a node is the one in which it is node r.
			var around [4]int
			wholes, voids := 0, 0
			for r := range 4 {
				around[r] = modulo(y-nodeV[r], e.ny)*e.nx + modulo(x-nodeU[r], e.nx)
				switch e.state[around[r]] {
				case void:
					voids++
				case whole:
					wholes++
				}
			}
			i := y*e.nx + x
			switch {
			case voids == 4:
				g.row[i] = -1
			case wholes == 4 && shared >= 0:
				g.row[i] = shared
			default:
				g.row[i] = int32(len(g.blocks))
				g.blocks = append(g.blocks, e.block(around))
				if wholes == 4 {
					shared = g.row[i]
				}
			}
		}
	}
	g.invert()
	return g
}

// block adds up the four elements around a node.
func (e *elements) block(around [4]int) (b block) {
	for r, i := range around {
		if e.state[i] == void {
			continue
		}
		k := e.at(i)
		for n := range 4 {
			at := 4 * ((nodeV[n]-nodeV[r]+1)*3 + nodeU[n] - nodeU[r] + 1)
			b[at] += k[2*r][2*n]
			b[at+1] += k[2*r][2*n+1]
			b[at+2] += k[2*r+1][2*n]
			b[at+3] += k[2*r+1][2*n+1]
		}
	}
	return b
}

// invert inverts the nodes' own blocks.
func (g *stiffGrid) invert() {
	g.inverse = make([][4]float64, len(g.blocks))
	for i := range g.blocks {
		a, b, c, d := g.blocks[i][16], g.blocks[i][17], g.blocks[i][18], g.blocks[i][19]
		det := a*d - b*c
		g.inverse[i] = [4]float64{d / det, -b / det, -c / det, a / det}
	}
}
