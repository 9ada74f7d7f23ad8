package stencil

import (
	"context"
	"fmt"

	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

// Cut lays the unit on a sheet for a cloth of the given width and measures it.
// It stops early only when ctx is done. A unit without motifs makes an empty
// sheet, which is no error.
func Cut(ctx context.Context, u pattern.Unit, spec Spec, cloth geom.Length) (Sheet, error) {
	if err := u.Lattice.Check(); err != nil {
		return Sheet{}, err
	}
	s := Sheet{Spec: spec}
	_, _, s.StepError = u.Lattice.Nearest(geom.Point{Y: spec.Step})
	cuts := u.CutOuts()
	var err error
	if s.OpenPct, err = OpenAreaPct(cuts, u.Lattice.A, u.Lattice.B); err != nil {
		return Sheet{}, fmt.Errorf("open area: %w", err)
	}
	s.Webs = Webs(cuts, spec.WebLimit, u.Lattice.A, u.Lattice.B)
	if s.Paths, err = Connect(cuts, u.Lattice.A, u.Lattice.B); err != nil {
		return Sheet{}, fmt.Errorf("islands: %w", err)
	}
	if err := ctx.Err(); err != nil {
		return Sheet{}, err
	}
	if s.Joint, err = FindJoint(ctx, u, spec.Field, spec.Step); err != nil {
		return Sheet{}, fmt.Errorf("joint line: %w", err)
	}
	s.CutOuts = Between(u, spec.Field, s.Joint, spec.Step)
	s.Webs.AcrossJoint = AcrossJoint(s.CutOuts, geom.Point{Y: spec.Step})
	s.Stars = placeStars(u, spec, s.Joint, cloth)
	s.Paper = spec.paperBox(s.Joint)
	return s, ctx.Err()
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
	return b
}
