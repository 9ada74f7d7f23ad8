package stencil

import (
	"context"
	"math"
	"sync"
)

// homogenise returns the stiffness of a cell with the given shares of paper: the
// mean stresses under each unit strain, the nodes being free to move in balance.
// The three loads are solved at the same time; none depends on another.
func (m cellMesh) homogenise(ctx context.Context, share []float64, poisson float64) (c [3][3]float64, err error) {
	a, b := m.a.times(1/float64(m.nx)), m.b.times(1/float64(m.ny))
	solid := solidElement(a, b, planeStress(poisson))
	grids := gridsOf(fineElements(m.nx, m.ny, share, solid))
	strain := uniform(a, b)
	var moved [3][]float64
	var failed [3]error
	var group sync.WaitGroup
	for k := range strain {
		group.Go(func() {
			force := solid.times(&strain[k])
			moved[k], failed[k] = newStiffSolver(grids).solve(ctx, m.loads(share, &force))
		})
	}
	group.Wait()
	for _, err := range failed {
		if err != nil {
			return c, err
		}
	}
	for i, s := range share {
		if s > 0 {
			m.addEnergy(&c, i, s, &solid, &strain, &moved)
		}
	}
	area := m.a.cross(m.b)
	for k := range c {
		for l := range c {
			c[k][l] /= area
		}
	}
	return c, nil
}

// nodes returns the nodes of an element.
func (m cellMesh) nodes(element int) (nodes [4]int) {
	x, y := element%m.nx, element/m.nx
	for n := range 4 {
		nodes[n] = (y+nodeV[n])%m.ny*m.nx + (x+nodeU[n])%m.nx
	}
	return nodes
}

// loads returns the forces that a uniform strain leaves unbalanced, force being
// those of one element.
func (m cellMesh) loads(share []float64, force *[8]float64) []float64 {
	f := make([]float64, 2*len(share))
	for i, s := range share {
		if s == 0 {
			continue
		}
		for n, node := range m.nodes(i) {
			f[2*node] -= s * force[2*n]
			f[2*node+1] -= s * force[2*n+1]
		}
	}
	return f
}

// addEnergy adds an element's energies, of each strain with each.
func (m cellMesh) addEnergy(c *[3][3]float64, i int, share float64, solid *element, strain *[3][8]float64, moved *[3][]float64) {
	var u, f [3][8]float64
	nodes := m.nodes(i)
	for k := range 3 {
		for n, node := range nodes {
			u[k][2*n] = strain[k][2*n] + moved[k][2*node]
			u[k][2*n+1] = strain[k][2*n+1] + moved[k][2*node+1]
		}
		f[k] = solid.times(&u[k])
	}
	for k := range 3 {
		for l := range 3 {
			for j := range 8 {
				c[k][l] += share * u[k][j] * f[l][j]
			}
		}
	}
}

// slack is the share of the paper's stiffness below which a sheet carries
// nothing: above what settled, squared, leaves of it.
const slack = 1e-7

// stiffnessOf reads moduli off a stiffness.
func stiffnessOf(c [3][3]float64, poisson float64) Stiffness {
	s := Stiffness{C: c}
	var narrows, skews float64
	s.Across.Modulus, narrows, skews = alone(c, 0, 1, 2)
	s.Across.Poisson, s.Across.Skew = -narrows, skews
	s.Along.Modulus, narrows, skews = alone(c, 1, 0, 2)
	s.Along.Poisson, s.Along.Skew = -narrows, skews
	shear, _, _ := alone(c, 2, 0, 1)
	s.Shear = shear * 2 * (1 + poisson)
	least, most := math.Inf(1), 0.0
	for deg := range 180 {
		e, _, _ := alone(stiffnessTurned(c, float64(deg)), 0, 1, 2)
		if e < least-slack {
			least, s.SoftDeg = e, float64(deg)
		}
		most = max(most, e)
	}
	if most > 0 {
		s.Isotropy = least / most
	}
	return s
}

// alone returns the stress for a unit of strain i while the stresses j and k are
// none, and the strains j and k that follow. Strains that meet no stiffness stay
// 0, and so does everything where i itself meets none: it is the Schur complement
// of c with a generalised inverse.
func alone(c [3][3]float64, i, j, k int) (stress, ej, ek float64) {
	det := c[j][j]*c[k][k] - c[j][k]*c[k][j]
	switch {
	case det > slack*max(c[j][j], c[k][k]): // the lesser eigenvalue is about det by the greater
		ej = -(c[k][k]*c[j][i] - c[j][k]*c[k][i]) / det
		ek = -(c[j][j]*c[k][i] - c[k][j]*c[j][i]) / det
	case c[j][j]+c[k][k] > slack:
		// One way of straining carries: along (c[j][j], c[k][j]) or the other row.
		x, y := c[j][j], c[k][j]
		if c[k][k] > c[j][j] {
			x, y = c[j][k], c[k][k]
		}
		n := x*x + y*y
		t := -(x*c[j][i] + y*c[k][i]) / (n * (c[j][j] + c[k][k]))
		ej, ek = t*x, t*y
	}
	stress = c[i][i] + c[i][j]*ej + c[i][k]*ek
	if stress < slack {
		return 0, 0, 0
	}
	return stress, ej, ek
}

// stiffnessTurned returns it seen in axes turned by so many degrees: TcTᵀ
// (R. M. Jones, Mechanics of Composite Materials, transformation of stresses).
func stiffnessTurned(c [3][3]float64, deg float64) (r [3][3]float64) {
	sin, cos := math.Sincos(deg * math.Pi / 180)
	t := [3][3]float64{
		{cos * cos, sin * sin, 2 * sin * cos},
		{sin * sin, cos * cos, -2 * sin * cos},
		{-sin * cos, sin * cos, cos*cos - sin*sin},
	}
	for i := range 3 {
		for j := range 3 {
			for k := range 3 {
				for l := range 3 {
					r[i][j] += t[i][k] * c[k][l] * t[j][l]
				}
			}
		}
	}
	return r
}
