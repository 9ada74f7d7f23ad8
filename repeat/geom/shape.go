package geom

// A Shape is what one cut-out covers: a disc, or an outline. Which of the two it
// is never changes unless a map bends the disc.
type Shape struct {
	Disc    Disc    // where Outline is nil
	Outline Outline // nil for a disc
}

// DiscShape returns the disc around c.
func DiscShape(c Point, diameter Length) Shape { return Shape{Disc: Disc{c, diameter}} }

// Round reports whether s is a disc.
func (s Shape) Round() bool { return s.Outline == nil }

// Bounds returns the box around s.
func (s Shape) Bounds() Box {
	if s.Round() {
		return s.Disc.Bounds()
	}
	return s.Outline.Bounds()
}

// AreaMM2 returns the area of s in square millimetres.
func (s Shape) AreaMM2() float64 {
	if s.Round() {
		return s.Disc.AreaMM2()
	}
	return s.Outline.AreaMM2()
}

// Moved returns s moved by d.
func (s Shape) Moved(d Point) Shape {
	if s.Round() {
		return DiscShape(s.Disc.Centre.Add(d), s.Disc.Diameter)
	}
	return Shape{Outline: s.Outline.Moved(d)}
}

// Placed returns s under a map that turns, mirrors and moves but keeps sizes.
func (s Shape) Placed(m Affine) Shape {
	if s.Round() {
		return DiscShape(m.Apply(s.Disc.Centre), s.Disc.Diameter)
	}
	return Shape{Outline: s.Outline.Mapped(m)}
}

// Stretched returns s with its place scaled by x across and y along. An outline
// is stretched too; a disc keeps its diameter, since the punch that cuts it
// does.
func (s Shape) Stretched(x, y float64) Shape { return s.Placed(Scale(x, y)) }

// Rings returns s as straight pieces no farther from its rim than chord.
func (s Shape) Rings(chord Length) []Ring {
	if s.Round() {
		return []Ring{s.Disc.Ring(chord)}
	}
	return s.Outline.Rings(chord)
}

// Contains reports whether p lies in s; for an outline within Chord of its rim
// the answer is that of its straight pieces.
func (s Shape) Contains(p Point) bool {
	if s.Round() {
		return s.Disc.Contains(p)
	}
	n := 0
	for _, r := range s.Outline.Rings(Chord) {
		n += r.Winding(p)
	}
	return n != 0
}
