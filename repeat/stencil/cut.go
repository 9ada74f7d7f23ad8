package stencil

import (
	"context"
	"fmt"
	"slices"
	"sync"

	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

// Cut lays the design on a sheet for a cloth of the given width and measures it:
// with its ties, or parted into two sheets, as spec.Hold says. The joint line is
// the design's own, so that ties don't shift it and the two sheets of a split
// share it. Cut stops early only when ctx is done. A design without motifs makes
// an empty sheet, which is no error.
func Cut(ctx context.Context, design pattern.Unit, spec Spec, cloth geom.Length) (Sheet, error) {
	return cutAfter(ctx, nil, design, spec, cloth)
}

func cutAfter(ctx context.Context, prev *again, design pattern.Unit, spec Spec, cloth geom.Length) (Sheet, error) {
	if err := design.Lattice.Check(); err != nil {
		return Sheet{}, err
	}
	if err := inBounds(design); err != nil {
		return Sheet{}, err
	}
	set, err := heldBy(design, spec.Hold)
	if err != nil {
		return Sheet{}, err
	}
	sheets, paper := make([]Sheet, len(set.units)), make([]*paperKept, len(set.units))
	var joint Joint
	var flaws []Flaw
	errs := make([]error, len(sheets)+1)
	// The sheets and the joint are measured side by side.
	var together sync.WaitGroup
	for i, u := range set.units {
		together.Go(func() { sheets[i], paper[i], errs[i] = prev.measured(u, spec) })
	}
	together.Go(func() { flaws = Flaws(design) })
	together.Go(func() {
		var err error
		if joint, err = prev.joint(ctx, design, spec); err != nil {
			errs[len(sheets)] = fmt.Errorf("joint line: %w", err)
		}
	})
	together.Wait()
	for _, err := range errs {
		if err != nil {
			return Sheet{}, err
		}
	}
	if err := ctx.Err(); err != nil {
		return Sheet{}, err
	}
	var stars StarSet
	together.Go(func() {
		if stars = prev.stars(design, spec, joint, cloth); len(sheets) > 1 {
			stars.Match = placeMatchStars(design, spec, stars, cloth)
		}
	})
	// What stands on the sheet is for the design to say, not for what ties leave of it.
	var whole []pattern.CutOut
	if spec.Hold.Way != AsDrawn {
		whole = Between(design, spec.Field, joint, spec.Step)
	}
	for i := range sheets {
		s := &sheets[i]
		s.Joint, s.Paper = joint, spec.paperBox(joint)
		if whole == nil {
			s.CutOuts, s.Webs.AcrossJoint = prev.laid(s.Unit, spec, joint)
		} else {
			s.CutOuts = partsOf(design, s.Unit, whole)
			s.Webs.AcrossJoint = AcrossJoint(s.CutOuts, geom.Point{Y: spec.Step})
		}
		s.Ties = set.ties[i]
	}
	together.Wait()
	for i := range sheets {
		sheets[i].Stars = stars
	}
	first := sheets[0]
	first.Printed, first.Flaws = first.CutOuts, flaws
	if len(sheets) > 1 {
		first.Second, first.Cover = &sheets[1], set.cover
		first.Printed = slices.Concat(first.CutOuts, sheets[1].CutOuts)
		if set.cover.Sound() {
			first.Printed = whole
		}
	}
	first.kept = &kept{design, cloth, first, paper[0]}
	return first, ctx.Err()
}

// A held is a design made ready to be cut: a unit for each sheet, and what its
// ties do.
type held struct {
	units []pattern.Unit
	ties  []TieReport
	cover Cover
}

// heldBy ties or parts a design.
func heldBy(design pattern.Unit, h Hold) (held, error) {
	switch h.Way {
	case WithTies:
		u, err := Tied(design, h.Ties)
		if err != nil {
			return held{}, err
		}
		r, err := MeasureTies(design, h.Ties)
		return held{units: []pattern.Unit{u}, ties: []TieReport{r}}, err
	case Split:
		return partedBy(design, h)
	}
	return held{units: []pattern.Unit{design}, ties: make([]TieReport, 1)}, nil
}

func partedBy(design pattern.Unit, h Hold) (held, error) {
	first, second, cover, err := Parted(design, h)
	if err != nil {
		return held{}, err
	}
	set := held{units: []pattern.Unit{first, second}, ties: make([]TieReport, 2), cover: cover}
	// Ties are measured against what their sheet cuts without any.
	if set.ties[0], err = MeasureTies(lessMotifs(design, h.Second.Motifs), h.Ties); err != nil {
		return held{}, err
	}
	untied := design
	if h.Second.Cut == TiePlaces && len(h.Second.Ties) > 0 {
		h := h
		h.Second.Ties = nil
		if _, untied, _, err = Parted(design, h); err != nil {
			return held{}, err
		}
	}
	if len(h.Second.Ties) > 0 {
		set.ties[1], err = MeasureTies(untied, h.Second.Ties)
	}
	return set, err
}

// lessMotifs returns the unit without some of its motifs.
func lessMotifs(u pattern.Unit, ids []pattern.ID) pattern.Unit {
	gone := make(map[pattern.ID]bool, len(ids))
	for _, id := range ids {
		gone[id] = true
	}
	u.Motifs = slices.DeleteFunc(slices.Clone(u.Motifs), func(m pattern.Motif) bool { return gone[m.ID] })
	return u
}

// measured returns a sheet that cuts u with what is measured on the plain pattern.
func measured(u pattern.Unit, spec Spec) (Sheet, error) {
	s := Sheet{Spec: spec, Unit: u}
	_, _, s.StepError = u.Lattice.Nearest(geom.Point{Y: spec.Step})
	cuts := u.CutOuts()
	var errs [2]error
	var together sync.WaitGroup
	together.Go(func() { s.Webs = Webs(cuts, spec.WebLimit, u.Lattice.A, u.Lattice.B) })
	together.Go(func() {
		s.OpenPct, errs[0] = OpenAreaPct(cuts, u.Lattice.A, u.Lattice.B)
		s.Paths, errs[1] = Connect(cuts, u.Lattice.A, u.Lattice.B)
	})
	together.Wait()
	for i, measure := range []string{"open area", "islands"} {
		if errs[i] != nil {
			return Sheet{}, fmt.Errorf("%s: %w", measure, errs[i])
		}
	}
	return s, s.hang(cuts)
}

// Bounds returns the box around every hole of the sheet, the stars with it.
func (s Sheet) Bounds() geom.Box {
	var b geom.Box
	for _, c := range s.CutOuts {
		b = b.Union(c.Shape.Bounds())
	}
	for _, star := range s.Stars.Stars {
		b = b.Union(geom.Disc{Centre: star.At, Diameter: star.Diameter}.Bounds())
	}
	for _, star := range s.Stars.Match {
		b = b.Union(geom.Disc{Centre: star.At, Diameter: star.Diameter}.Bounds())
	}
	return b
}
