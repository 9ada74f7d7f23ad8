package stencil

import (
	"cmp"
	"fmt"
	"runtime"
	"slices"
	"sync"

	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

// A Cover tells how two sheets cover a design between them, for one cell. What
// is thinner than geom.Touch is rounding and left out, so a sound split misses
// nothing and opens nothing more, exactly zero.
type Cover struct {
	MissingMM2 float64 // of the design that neither sheet cuts
	ExtraMM2   float64 // that a sheet cuts outside the design
	// Missing and Extra are the places, the largest first.
	Missing, Extra []Patch
}

// Sound reports whether the sheets cover the design and nothing else.
func (c Cover) Sound() bool { return len(c.Missing) == 0 && len(c.Extra) == 0 }

// A Patch is a connected piece of a difference between a design and its sheets.
type Patch struct {
	At      geom.Point // on its rim
	AreaMM2 float64
}

// Covered compares a design with what two sheets cut of it, as straight pieces
// (geom.Chord). The three must have one lattice.
func Covered(design, first, second pattern.Unit) (Cover, error) {
	sheets := pattern.Unit{Lattice: design.Lattice, Motifs: slices.Concat(first.Motifs, second.Motifs)}
	var c Cover
	var missing, extra error
	var together sync.WaitGroup
	together.Go(func() { c.Missing, missing = beyond(design, sheets) })
	c.Extra, extra = beyond(sheets, design)
	together.Wait()
	if missing != nil {
		return c, fmt.Errorf("what the sheets miss: %w", missing)
	}
	if extra != nil {
		return c, fmt.Errorf("what the sheets open beside the design: %w", extra)
	}
	for _, p := range c.Missing {
		c.MissingMM2 += p.AreaMM2
	}
	for _, p := range c.Extra {
		c.ExtraMM2 += p.AreaMM2
	}
	return c, nil
}

// beyond returns what u cuts and v does not. Motifs that v has too, just so, need
// no look, and those that v's parts of the same ID cover by themselves none at
// what stands around.
func beyond(u, v pattern.Unit) ([]Patch, error) {
	have := make(map[pattern.ID][]pattern.Motif, len(v.Motifs))
	for _, m := range v.Motifs {
		have[m.ID] = append(have[m.ID], m)
	}
	open := make([]bool, len(u.Motifs))
	errs := make([]error, len(u.Motifs))
	var together sync.WaitGroup
	workers := runtime.GOMAXPROCS(0)
	for w := range workers {
		together.Go(func() {
			for i := w; i < len(u.Motifs); i += workers {
				open[i], errs[i] = uncovered(u.Motifs[i], have[u.Motifs[i].ID])
			}
		})
	}
	together.Wait()
	if err := cmp.Or(errs...); err != nil {
		return nil, err
	}
	var own [][]geom.Ring
	var boxes []geom.Box
	for i, m := range u.Motifs {
		if open[i] {
			shape := m.Placed()
			own, boxes = append(own, shape.Rings(geom.Chord)), append(boxes, shape.Bounds())
		}
	}
	if len(own) == 0 {
		return nil, nil
	}
	var other [][]geom.Ring
	near := make([]bool, len(v.Motifs))
	meetBoxes(v, boxes, func(i, _ int, _ geom.Point) { near[i] = true })
	for i, is := range near {
		if is {
			other = append(other, v.Motifs[i].Placed().Rings(geom.Chord))
		}
	}
	r, err := geom.Without(own, other, u.Lattice.A, u.Lattice.B)
	if err != nil {
		return nil, err
	}
	return patches(r), nil
}

// uncovered reports whether the parts leave anything of a motif.
func uncovered(m pattern.Motif, parts []pattern.Motif) (bool, error) {
	if len(parts) == 0 {
		return true, nil
	}
	shapes := make([][]geom.Ring, len(parts))
	for i, p := range parts {
		if sameMotif(m, p) {
			return false, nil
		}
		shapes[i] = p.Placed().Rings(geom.Chord)
	}
	left, err := geom.Without([][]geom.Ring{m.Placed().Rings(geom.Chord)}, shapes)
	return len(patches(left)) > 0, err
}

// sameMotif reports whether two motifs cut the same hole in the same place.
func sameMotif(a, b pattern.Motif) bool {
	if a.At != b.At || a.TurnDeg != b.TurnDeg || a.Mirrored != b.Mirrored ||
		a.Shape.Disc != b.Shape.Disc || len(a.Shape.Outline) != len(b.Shape.Outline) {
		return false
	}
	for i, c := range a.Shape.Outline {
		d := b.Shape.Outline[i]
		if c.Start != d.Start || !slices.Equal(c.Segments, d.Segments) {
			return false
		}
	}
	return true
}

// patches returns the pieces of a region that are thicker than geom.Touch, the
// largest first. What goes on around the torus is one piece.
func patches(r geom.Region) []Patch {
	if r.Full() {
		return []Patch{{AreaMM2: r.AreaMM2()}}
	}
	var found []Patch
	for i, b := range r.Boundaries {
		if !b.Closed() {
			return []Patch{{b.Points[0], r.AreaMM2()}}
		}
		area, rim := b.Points.AreaMM2(), lineMM(b)
		if area <= 0 {
			continue
		}
		for k, hole := range r.Boundaries {
			if k != i && hole.Area2() < 0 && b.Bounds().HoldsBox(hole.Bounds()) && b.Points.Winding(middleOf(hole)) != 0 {
				area, rim = area+hole.Points.AreaMM2(), rim+lineMM(hole)
			}
		}
		if area > rim/2*geom.Touch.MM() {
			found = append(found, Patch{b.Points[0], area})
		}
	}
	slices.SortStableFunc(found, func(p, q Patch) int { return cmp.Compare(q.AreaMM2, p.AreaMM2) })
	return found
}
