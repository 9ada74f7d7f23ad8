package geom

// A faces tells how often rings go around each face of the arrangement.
type faces struct {
	g     *edges
	loop  []int32 // the face on the inner side (x to y) of each half
	cover []layer // of each loop
}

// newFaces walks around every face and carries the cover from face to face.
// base returns the cover just above a vertex and a bit to its right; it is asked
// once for each connected part.
func newFaces(g *edges, base func(v Point) layer) *faces {
	f := &faces{g: g, loop: make([]int32, 2*len(g.all))}
	for h := range f.loop {
		f.loop[h] = -1
	}
	loops := int32(0)
	for h := range f.loop {
		if f.loop[h] >= 0 {
			continue
		}
		for k := half(h); f.loop[k] < 0; k = g.before(k ^ 1) {
			f.loop[k] = loops
		}
		loops++
	}
	f.cover = make([]layer, loops)
	seen := make([]bool, loops)
	for h := range f.loop {
		if !seen[f.loop[h]] {
			f.spread(half(h), seen, base)
		}
	}
	return f
}

// spread sets the cover of every loop in the part that h belongs to.
func (f *faces) spread(h half, seen []bool, base func(v Point) layer) {
	v := f.g.origin(h)
	first := f.g.above(v)
	f.cover[f.loop[first]] = base(f.g.at[v])
	seen[f.loop[first]] = true
	for stack := []half{first}; len(stack) > 0; {
		from := stack[len(stack)-1]
		stack = stack[:len(stack)-1]
		for k := from; ; {
			other := f.loop[k^1]
			if !seen[other] {
				seen[other] = true
				f.cover[other] = f.cover[f.loop[k]] - f.g.turns(k)
				stack = append(stack, k^1)
			}
			if k = f.g.before(k ^ 1); k == from {
				break
			}
		}
	}
}

// boundaries traces the lines between what is inside by its cover and what is
// not, the inside on the inner side.
func (f *faces) boundaries(inside func(cover layer) bool) []Boundary {
	rim := make([]bool, len(f.loop))
	for h := range rim {
		rim[h] = inside(f.cover[f.loop[h]]) && !inside(f.cover[f.loop[h^1]])
	}
	done := make([]bool, len(rim))
	var all []Boundary
	for h := range rim {
		if rim[h] && !done[h] {
			all = append(all, f.trace(half(h), rim, done))
		}
	}
	return all
}

// trace follows one boundary from h on. Where boundaries touch in a vertex it
// turns over the paper: paper that meets in a point only does not hold together.
func (f *faces) trace(h half, rim, done []bool) Boundary {
	g := f.g
	start := g.at[g.origin(h)]
	at := start
	var points Ring
	for k := h; ; {
		done[k] = true
		points = append(points, at)
		points = g.appendRun(points, k, at)
		at = at.Add(g.way(k))
		for k = g.after(k ^ 1); !rim[k]; {
			k = g.after(k)
		}
		if k == h {
			return Boundary{points, at.Sub(start)}
		}
	}
}

// appendRun appends the points between the ends of h, which starts at at.
func (g *edges) appendRun(points Ring, h half, at Point) Ring {
	r, with, ok := g.run(h)
	if !ok {
		return points
	}
	if with {
		move := at.Sub(r.at(r.from))
		for i := r.from + 1; i < r.to; i++ {
			points = append(points, r.at(i).Add(move))
		}
		return points
	}
	move := at.Sub(r.at(r.to))
	for i := r.to - 1; i > r.from; i-- {
		points = append(points, r.at(i).Add(move))
	}
	return points
}
