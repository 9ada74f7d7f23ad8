package geom

import (
	"cmp"
	"math"
	"slices"
)

// A Face is one connected piece of what a region leaves, by how it is held.
type Face struct {
	// Along is zero for an island, which is held by nothing. For a band it is
	// the one way in which the band goes on for ever, first by Less.
	Along Point
	// At is a place on its rim.
	At Point
	// Box is around the rim of an island; empty for a band.
	Box Box
	// RimMM is the length of the line around an island, in millimetres.
	RimMM float64
	// AreaMM2 is the area in square millimetres, of a band that of one period.
	AreaMM2 float64
}

// Island reports whether f is held by nothing around it.
func (f Face) Island() bool { return f.Along == Point{} }

// Loose returns the faces of what r leaves that don't go on for ever in every
// direction: its islands, the largest first, then its bands. In the plane and on
// the cloth what reaches the outside is not loose.
//
// It is exact, by the homology class of each boundary. A closed boundary with
// what is left inside it encloses one island, and each island has one such. The
// boundaries that run around the torus are all in line, and between two of them
// that face each other lies one band. (Theorem on curves that don't cross: on a
// torus two essential ones are parallel; D. Rolfsen, Knots and Links, 2.A.)
func (r Region) Loose() []Face {
	var islands []int
	for i, b := range r.Boundaries {
		if b.Area2() < 0 {
			islands = append(islands, i)
		}
	}
	strip, banded := r.newStrip()
	if len(islands) == 0 && !banded {
		return nil
	}
	areas := make([]float64, len(r.Boundaries)) // of the island that each rims
	for _, i := range islands {
		areas[i] = -r.Boundaries[i].Area2() / 2
	}
	r.takeHoles(islands, areas, strip)
	const mm2 = float64(Millimetre * Millimetre)
	var faces []Face
	for _, i := range islands {
		rim := r.Boundaries[i]
		faces = append(faces, Face{At: rim.Points[0], Box: rim.Bounds(), RimMM: rim.lengthMM(), AreaMM2: areas[i] / mm2})
	}
	slices.SortStableFunc(faces, func(f, g Face) int { return cmp.Compare(g.AreaMM2, f.AreaMM2) })
	if !banded {
		return faces
	}
	for _, b := range strip.bands {
		if b.upper.Points != nil {
			faces = append(faces, Face{Along: r.along(), At: b.upper.Points[0], AreaMM2: b.area / mm2})
		}
	}
	return faces
}

// takeHoles subtracts each cut-out from the island or band that it lies in.
func (r Region) takeHoles(islands []int, areas []float64, strip *strip) {
	boxes := make([]Box, len(islands))
	for k, i := range islands {
		boxes[k] = r.Boundaries[i].Bounds()
	}
	g := boxGrid(r.t, boxes)
	for _, b := range r.Boundaries {
		hole := b.Area2()
		if hole <= 0 {
			continue
		}
		inner, least := -1, math.Inf(1)
		g.near(b.Points[0], func(k int32, shift Point) {
			rim := r.Boundaries[islands[k]]
			size := -rim.Area2()
			if size < least && boxes[k].HoldsBox(b.Bounds().Moved(shift)) && encloses(rim.Points, b, shift) {
				inner, least = islands[k], size
			}
		})
		switch {
		case inner >= 0:
			areas[inner] -= hole / 2
		case strip != nil:
			strip.takeHole(b.Points[0].Add(b.next(0)), hole/2)
		}
	}
}

// encloses reports whether the ring winds around the line b moved by shift. They
// may touch in vertices, so it looks at the middle of b's first piece, on a grid
// twice as fine.
func encloses(ring Ring, b Boundary, shift Point) bool {
	middle := b.Points[0].Add(b.next(0)).Add(shift.Times(2))
	n := 0
	for i, d := range ring {
		c := ring[(i+len(ring)-1)%len(ring)]
		n += crossing(c.Times(2), d.Times(2), middle)
	}
	return n != 0
}
