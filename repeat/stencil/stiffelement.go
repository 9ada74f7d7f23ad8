package stencil

import "math"

// An element is the stiffness of a four-node element: forces on its nodes, x and
// y of each, for displacements of them. The nodes go round from the first corner
// along a.
type element [8][8]float64

// nodeU and nodeV are where an element's nodes are, in sides of it.
var (
	nodeU = [4]int{0, 1, 1, 0}
	nodeV = [4]int{0, 0, 1, 1}
)

// planeStress returns the stiffness of a thin plate of unit modulus: stresses
// across, along and in shear for strains (the textbook matrix).
func planeStress(poisson float64) [3][3]float64 {
	c := 1 / (1 - poisson*poisson)
	return [3][3]float64{{c, c * poisson, 0}, {c * poisson, c, 0}, {0, 0, c * (1 - poisson) / 2}}
}

// solidElement returns the element of a parallelogram with sides a and b,
// bilinear and integrated in 2 × 2 Gauss points, which is exact for it.
func solidElement(a, b place, d [3][3]float64) element {
	det := a.cross(b)
	var k element
	g := 0.5 / math.Sqrt(3)
	for _, u := range [2]float64{0.5 - g, 0.5 + g} {
		for _, v := range [2]float64{0.5 - g, 0.5 + g} {
			s := strains(a, b, u, v)
			for i := range 8 {
				for j := range 8 {
					for p := range 3 {
						for q := range 3 {
							k[i][j] += s[p][i] * d[p][q] * s[q][j] * det / 4
						}
					}
				}
			}
		}
	}
	return k
}

// strains returns the strains at u, v in an element for displacements of its
// nodes.
func strains(a, b place, u, v float64) (s [3][8]float64) {
	det := a.cross(b)
	for n := range 4 {
		// The shape function of a node is f·g; du and dv are its slopes.
		f, df := 1-u, -1.0
		if nodeU[n] == 1 {
			f, df = u, 1
		}
		g, dg := 1-v, -1.0
		if nodeV[n] == 1 {
			g, dg = v, 1
		}
		du, dv := df*g, f*dg
		dx, dy := (du*b.y-dv*a.y)/det, (dv*a.x-du*b.x)/det
		s[0][2*n], s[1][2*n+1] = dx, dy
		s[2][2*n], s[2][2*n+1] = dy, dx
	}
	return s
}

// uniform returns the displacements of an element's nodes under each of the unit
// strains: across, along and shear.
func uniform(a, b place) (cases [3][8]float64) {
	for n := range 4 {
		p := a.times(float64(nodeU[n])).add(b.times(float64(nodeV[n])))
		cases[0][2*n] = p.x
		cases[1][2*n+1] = p.y
		cases[2][2*n], cases[2][2*n+1] = p.y/2, p.x/2
	}
	return cases
}

// times returns the forces for displacements.
func (k *element) times(u *[8]float64) (f [8]float64) {
	for i := range 8 {
		for j := range 8 {
			f[i] += k[i][j] * u[j]
		}
	}
	return f
}

// childWeights tells how a child of an element hangs on it: the child's node r
// moves as the sum of the parent's nodes n weighed with w[r][n]. Children go
// round like nodes.
func childWeights(child int) (w [4][4]float64) {
	for r := range 4 {
		u := float64(nodeU[child]+nodeU[r]) / 2
		v := float64(nodeV[child]+nodeV[r]) / 2
		w[r] = [4]float64{(1 - u) * (1 - v), u * (1 - v), u * v, (1 - u) * v}
	}
	return w
}

// inParent returns the child's stiffness as its parent feels it: WᵀkW.
func (k *element) inParent(w *[4][4]float64) (p element) {
	var kw element
	for i := range 8 {
		for r := range 4 {
			for n := range 4 {
				kw[i][2*n] += k[i][2*r] * w[r][n]
				kw[i][2*n+1] += k[i][2*r+1] * w[r][n]
			}
		}
	}
	for r := range 4 {
		for m := range 4 {
			if w[r][m] == 0 {
				continue
			}
			for j := range 8 {
				p[2*m][j] += w[r][m] * kw[2*r][j]
				p[2*m+1][j] += w[r][m] * kw[2*r+1][j]
			}
		}
	}
	return p
}

// add adds s times o to k.
func (k *element) add(o *element, s float64) {
	for i := range 8 {
		for j := range 8 {
			k[i][j] += s * o[i][j]
		}
	}
}
