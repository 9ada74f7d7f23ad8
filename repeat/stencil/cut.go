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
	return cutAfter(ctx, nil, design, spec, cloth, nil)
}

func cutAfter(ctx context.Context, prev *again, design pattern.Unit, spec Spec, cloth geom.Length, first func(Sheet)) (Sheet, error) {
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
	// The joint takes longest: it begins first. Beside it the plain pattern is measured,
	// and then how the sheets hang.
	var joint Joint
	errs := make([]error, len(set.units)+1)
	var together sync.WaitGroup
	defer together.Wait()
	together.Go(func() {
		var err error
		if joint, err = prev.joint(ctx, design, spec); err != nil {
			errs[len(set.units)] = fmt.Errorf("joint line: %w", err)
		}
	})
	plain, err := prev.plain(design, set.units, spec)
	if err != nil {
		return Sheet{}, err
	}
	prev.tell(first, plain)
	sheets := plain.sheets
	for i := range sheets {
		if !plain.hung[i] {
			together.Go(func() { errs[i] = sheets[i].hang(sheets[i].Unit.CutOuts()) })
		}
	}
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
	one := sheets[0]
	one.Printed, one.Flaws = one.CutOuts, plain.flaws
	if len(sheets) > 1 {
		one.Second, one.Cover = &sheets[1], set.cover
		one.Printed = slices.Concat(one.CutOuts, sheets[1].CutOuts)
		if set.cover.Sound() {
			one.Printed = whole
		}
	}
	one.kept = &kept{design, cloth, one, plain.paper[0]}
	return one, ctx.Err()
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
