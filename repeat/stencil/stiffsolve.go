package stencil

import (
	"context"
	"fmt"
	"math"
)

const (
	// settled is the share of the forces that may be left unbalanced. The error of
	// a stiffness goes with its square.
	settled = 1e-5
	// rounding is the share of a node's stiffness below which forces are none: the
	// cell's own size in float64, over all its nodes.
	rounding = 1e-12
	// patience bounds the steps of a solution.
	patience = 600
	// coarseSweeps solve the coarsest grid, which has a few hundred nodes.
	coarseSweeps = 12
)

// A stiffSolver solves one load: conjugate gradients, preconditioned by a cycle
// through ever coarser grids. Each goroutine has its own.
type stiffSolver struct {
	grids   []*stiffGrid
	u, f, r [][]float64 // by grid: displacements, forces, what is left of these
}

// gridsOf returns the grids of a mesh, the finest first.
func gridsOf(e elements) []*stiffGrid {
	grids := []*stiffGrid{e.grid()}
	for e.nx%2 == 0 && e.ny%2 == 0 && min(e.nx, e.ny) >= 8 {
		e = e.coarser()
		grids = append(grids, e.grid())
	}
	return grids
}

func newStiffSolver(grids []*stiffGrid) *stiffSolver {
	s := &stiffSolver{grids: grids}
	for _, g := range grids {
		n := 2 * g.nx * g.ny
		s.u = append(s.u, make([]float64, n))
		s.f = append(s.f, make([]float64, n))
		s.r = append(s.r, make([]float64, n))
	}
	return s
}

// solve returns displacements that balance the forces, which it uses up.
func (s *stiffSolver) solve(ctx context.Context, r []float64) ([]float64, error) {
	n := len(r)
	u, p, q := make([]float64, n), make([]float64, n), make([]float64, n)
	start := math.Sqrt(dot(r, r))
	if start <= rounding*s.grids[0].force() {
		return u, nil
	}
	rz := 0.0
	for step := range patience {
		left := math.Sqrt(dot(r, r))
		if left <= settled*start {
			return u, nil
		}
		if err := ctx.Err(); err != nil {
			return nil, err
		}
		copy(s.f[0], r)
		s.cycle(0)
		z := s.u[0]
		next := dot(r, z)
		if step == 0 {
			copy(p, z)
		} else {
			beta := next / rz
			for i := range p {
				p[i] = z[i] + beta*p[i]
			}
		}
		rz = next
		s.grids[0].apply(p, q)
		pq := dot(p, q)
		if !(pq > 0) || !(rz > 0) {
			return u, s.unsettled(left / start)
		}
		alpha := rz / pq
		for i := range u {
			u[i] += alpha * p[i]
			r[i] -= alpha * q[i]
		}
	}
	return nil, s.unsettled(math.Sqrt(dot(r, r)) / start)
}

// force returns about what all nodes of g bear where each moves by a millimetre.
func (g *stiffGrid) force() float64 {
	if len(g.blocks) == 0 {
		return 0
	}
	return g.blocks[0][16] * math.Sqrt(float64(g.nx*g.ny))
}

func (s *stiffSolver) unsettled(left float64) error {
	return fmt.Errorf("a mesh of %d by %d leaves %.1e of the forces unbalanced; take a finer one",
		s.grids[0].nx, s.grids[0].ny, left)
}

func dot(a, b []float64) (sum float64) {
	for i, x := range a {
		sum += x * b[i]
	}
	return sum
}

// cycle sets u[k] to about what balances f[k]: a sweep forwards, the rest on the
// next coarser grid, a sweep back. It is symmetric, as conjugate gradients ask.
func (s *stiffSolver) cycle(k int) {
	g, u, f := s.grids[k], s.u[k], s.f[k]
	clear(u)
	if k == len(s.grids)-1 {
		for range coarseSweeps {
			g.forwards(u, f)
			g.backwards(u, f)
		}
		return
	}
	g.forwards(u, f)
	g.rest(u, f, s.r[k])
	c := s.grids[k+1]
	g.restrict(s.r[k], c, s.f[k+1])
	s.cycle(k + 1)
	g.interpolate(c, s.u[k+1], u)
	g.backwards(u, f)
}

// parents goes through the coarse nodes that a fine one of the row hangs on, and
// the share of each: along one side it is one's own or the two beside it.
func parents(i, coarse int) (first, second int) {
	first = i / 2
	if i%2 == 0 {
		return first, first
	}
	return first, (first + 1) % coarse
}

// restrict sums the forces of g on the nodes of c that carry them.
func (g *stiffGrid) restrict(r []float64, c *stiffGrid, f []float64) {
	clear(f)
	for y := range g.ny {
		y0, y1 := parents(y, c.ny)
		for x := range g.nx {
			i := y*g.nx + x
			if g.row[i] < 0 {
				continue
			}
			x0, x1 := parents(x, c.nx)
			px, py := r[2*i]/4, r[2*i+1]/4
			for _, j := range [4]int{y0*c.nx + x0, y0*c.nx + x1, y1*c.nx + x0, y1*c.nx + x1} {
				f[2*j] += px
				f[2*j+1] += py
			}
		}
	}
}

// interpolate adds to u what the nodes of c moved.
func (g *stiffGrid) interpolate(c *stiffGrid, moved, u []float64) {
	for y := range g.ny {
		y0, y1 := parents(y, c.ny)
		for x := range g.nx {
			i := y*g.nx + x
			if g.row[i] < 0 {
				continue
			}
			x0, x1 := parents(x, c.nx)
			a, b, d, e := 2*(y0*c.nx+x0), 2*(y0*c.nx+x1), 2*(y1*c.nx+x0), 2*(y1*c.nx+x1)
			u[2*i] += (moved[a] + moved[b] + moved[d] + moved[e]) / 4
			u[2*i+1] += (moved[a+1] + moved[b+1] + moved[d+1] + moved[e+1]) / 4
		}
	}
}
