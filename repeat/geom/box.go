package geom

// A Box is an upright rectangle, its edges included. The zero Box is empty:
// it holds nothing, not even the origin.
type Box struct {
	Min, Max Point
	full     bool
}

// BoxOf returns the smallest box around the points; with none it is empty.
func BoxOf(points ...Point) Box {
	if len(points) == 0 {
		return Box{}
	}
	b := Box{points[0], points[0], true}
	for _, p := range points[1:] {
		b.Min.X, b.Min.Y = min(b.Min.X, p.X), min(b.Min.Y, p.Y)
		b.Max.X, b.Max.Y = max(b.Max.X, p.X), max(b.Max.Y, p.Y)
	}
	return b
}

// Empty reports whether b holds nothing.
func (b Box) Empty() bool { return !b.full }

// With returns the smallest box around b and p.
func (b Box) With(p Point) Box {
	if !b.full {
		return Box{p, p, true}
	}
	return Box{
		Point{min(b.Min.X, p.X), min(b.Min.Y, p.Y)},
		Point{max(b.Max.X, p.X), max(b.Max.Y, p.Y)},
		true,
	}
}

// Union returns the smallest box around both.
func (b Box) Union(c Box) Box {
	if !c.full {
		return b
	}
	return b.With(c.Min).With(c.Max)
}

// Intersect returns what both boxes hold.
func (b Box) Intersect(c Box) Box {
	if !b.Meets(c) {
		return Box{}
	}
	return Box{
		Point{max(b.Min.X, c.Min.X), max(b.Min.Y, c.Min.Y)},
		Point{min(b.Max.X, c.Max.X), min(b.Max.Y, c.Max.Y)},
		true,
	}
}

// Meets reports whether the boxes share a point.
func (b Box) Meets(c Box) bool {
	return b.full && c.full &&
		b.Min.X <= c.Max.X && c.Min.X <= b.Max.X && b.Min.Y <= c.Max.Y && c.Min.Y <= b.Max.Y
}

// Holds reports whether p lies in b or on its edge.
func (b Box) Holds(p Point) bool { return b.Meets(BoxOf(p)) }

// HoldsBox reports whether c lies wholly in b. An empty c lies in every box.
func (b Box) HoldsBox(c Box) bool { return !c.full || b.Holds(c.Min) && b.Holds(c.Max) }

// Moved returns b moved by d.
func (b Box) Moved(d Point) Box {
	if !b.full {
		return b
	}
	return Box{b.Min.Add(d), b.Max.Add(d), true}
}

// Grown returns b with d added on each side; a negative d can leave it empty.
func (b Box) Grown(d Length) Box {
	if !b.full {
		return b
	}
	m := Point{d, d}
	g := Box{b.Min.Sub(m), b.Max.Add(m), true}
	if g.Min.X > g.Max.X || g.Min.Y > g.Max.Y {
		return Box{}
	}
	return g
}

// Width returns the extent across.
func (b Box) Width() Length { return b.Max.X - b.Min.X }

// Height returns the extent along.
func (b Box) Height() Length { return b.Max.Y - b.Min.Y }

// Centre returns the middle, rounded towards the top left.
func (b Box) Centre() Point {
	return Point{b.Min.X + b.Width()/2, b.Min.Y + b.Height()/2}
}
