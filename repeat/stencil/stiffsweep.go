package stencil

// around returns where the displacements of the nine neighbours of node x, y are.
func (g *stiffGrid) around(x, y int) [9]int {
	left, right, up, down := x-1, x+1, y-1, y+1
	if left < 0 {
		left = g.nx - 1
	}
	if right == g.nx {
		right = 0
	}
	if up < 0 {
		up = g.ny - 1
	}
	if down == g.ny {
		down = 0
	}
	a, b, c := 2*up*g.nx, 2*y*g.nx, 2*down*g.nx
	left, x, right = 2*left, 2*x, 2*right
	return [9]int{a + left, a + x, a + right, b + left, b + x, b + right, c + left, c + x, c + right}
}

// forces returns the forces that displacements make on a node.
func (b *block) forces(at *[9]int, u []float64) (fx, fy float64) {
	for k, j := range at {
		p, q := u[j], u[j+1]
		fx += b[4*k]*p + b[4*k+1]*q
		fy += b[4*k+2]*p + b[4*k+3]*q
	}
	return fx, fy
}

// apply sets f to the forces that u makes.
func (g *stiffGrid) apply(u, f []float64) {
	for y := range g.ny {
		for x := range g.nx {
			i := y*g.nx + x
			row := g.row[i]
			if row < 0 {
				f[2*i], f[2*i+1] = 0, 0
				continue
			}
			at := g.around(x, y)
			f[2*i], f[2*i+1] = g.blocks[row].forces(&at, u)
		}
	}
}

// rest sets r to the forces that u leaves unbalanced.
func (g *stiffGrid) rest(u, f, r []float64) {
	g.apply(u, r)
	for i := range r {
		r[i] = f[i] - r[i]
	}
}

// forwards balances the nodes one after the other (block Gauss–Seidel).
func (g *stiffGrid) forwards(u, f []float64) {
	for y := range g.ny {
		for x := range g.nx {
			g.balance(x, y, u, f)
		}
	}
}

// backwards balances them the other way round.
func (g *stiffGrid) backwards(u, f []float64) {
	for y := g.ny - 1; y >= 0; y-- {
		for x := g.nx - 1; x >= 0; x-- {
			g.balance(x, y, u, f)
		}
	}
}

// balance moves one node to where its forces are in balance.
func (g *stiffGrid) balance(x, y int, u, f []float64) {
	i := y*g.nx + x
	row := g.row[i]
	if row < 0 {
		return
	}
	at := g.around(x, y)
	fx, fy := g.blocks[row].forces(&at, u)
	fx, fy = f[2*i]-fx, f[2*i+1]-fy
	d := &g.inverse[row]
	u[2*i] += d[0]*fx + d[1]*fy
	u[2*i+1] += d[2]*fx + d[3]*fy
}
