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
//
// Each motif is compared with its own parts, those of its ID, first. What they
// don't account for by themselves is compared with all that stands around.
func Covered(design, first, second pattern.Unit) (Cover, error) {
	sheets := pattern.Unit{Lattice: design.Lattice, Motifs: slices.Concat(first.Motifs, second.Motifs)}
	open, beside, err := compareAll(design, sheets)
	if err != nil {
		return Cover{}, fmt.Errorf("a motif beside its parts: %w", err)
	}
	var c Cover
	if c.Missing, err = beyond(design, sheets, open); err != nil {
		return c, fmt.Errorf("what the sheets miss: %w", err)
	}
	if c.Extra, err = beyond(sheets, design, beside); err != nil {
		return c, fmt.Errorf("what the sheets open beside the design: %w", err)
	}
	for _, p := range c.Missing {
		c.MissingMM2 += p.AreaMM2
	}
	for _, p := range c.Extra {
		c.ExtraMM2 += p.AreaMM2
	}
	return c, nil
}

// compareAll compares each motif of the design with its own parts, on all
// processors: it returns which motifs they leave open, and which parts open
// something beside their motif.
func compareAll(design, sheets pattern.Unit) (open, beside []bool, err error) {
	parts := make(map[pattern.ID][]int, len(design.Motifs))
	for i, m := range sheets.Motifs {
		parts[m.ID] = append(parts[m.ID], i)
	}
	open, beside = make([]bool, len(design.Motifs)), make([]bool, len(sheets.Motifs))
	seen := make(map[pattern.ID]bool, len(design.Motifs))
	for _, m := range design.Motifs {
		seen[m.ID] = true
	}
	for i, m := range sheets.Motifs {
		beside[i] = !seen[m.ID]
	}
	errs := make([]error, len(design.Motifs))
	var together sync.WaitGroup
	workers := runtime.GOMAXPROCS(0)
	for w := range workers {
		together.Go(func() {
			for i := w; i < len(design.Motifs); i += workers {
				numbers := parts[design.Motifs[i].ID]
				own := make([]pattern.Motif, len(numbers))
				for k, n := range numbers {
					own[k] = sheets.Motifs[n]
				}
				c := compared(design.Motifs[i], own)
				var more []bool
				if open[i], errs[i] = c.missing(); errs[i] == nil {
					more, errs[i] = c.extra()
				}
				for k, is := range more {
					beside[numbers[k]] = is
				}
			}
		})
	}
	together.Wait()
	return open, beside, cmp.Or(errs...)
}

// beyond returns what of the motifs of u that are looked at v does not cut.
func beyond(u, v pattern.Unit, look []bool) ([]Patch, error) {
	var own [][]geom.Ring
	var boxes []geom.Box
	for i, m := range u.Motifs {
		if look[i] {
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
