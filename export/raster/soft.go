package raster

// soft adds layings of the ground through the soft footprint.
func (g *Ground) soft(p *Plane, v View, lays []Lay) {
	// Half a pixel more on every side.
	w, h := 2*p.W+2, 2*p.H+2
	if p.half == nil {
		p.half = &Plane{W: w, H: h, sum: make([]float32, w*h)}
	}
	half := p.half
	half.clear()
	margin := 0.5 / v.PxPerMM
	g.PaintAll(half, View{X: v.X - margin, Y: v.Y - margin, PxPerMM: 2 * v.PxPerMM}, lays...)
	inBands(0, p.H, func(y0, y1 int) {
		row := make([]float32, w)
		for y := y0; y < y1; y++ {
			a, b := half.sum[2*y*w:][:w], half.sum[(2*y+1)*w:][:w]
			c, d := half.sum[(2*y+2)*w:][:w], half.sum[(2*y+3)*w:][:w]
			for x := range row {
				row[x] = open(a[x]) + 3*(open(b[x])+open(c[x])) + open(d[x])
			}
			sum := p.sum[y*p.W:][:p.W]
			for x := range sum {
				r := row[2*x : 2*x+4 : 2*x+4]
				sum[x] += (r[0] + 3*(r[1]+r[2]) + r[3]) / 64
			}
		}
		p.settle(0, y0, p.W, y1)
	})
}

// open returns how much is open where sums of what lies over one another can exceed all.
func open(sum float32) float32 { return min(sum, 1) }
