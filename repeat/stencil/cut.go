package stencil

import (
	"context"
	"fmt"
	"sync"

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
	// The pattern and the joint are measured side by side.
	var errs [3]error
	var together sync.WaitGroup
	together.Go(func() { s.Webs = Webs(cuts, spec.WebLimit, u.Lattice.A, u.Lattice.B) })
	together.Go(func() {
		s.OpenPct, errs[0] = OpenAreaPct(cuts, u.Lattice.A, u.Lattice.B)
		s.Paths, errs[1] = Connect(cuts, u.Lattice.A, u.Lattice.B)
	})
	together.Go(func() { s.Joint, errs[2] = FindJoint(ctx, u, spec.Field, spec.Step, spec.Joint) })
	together.Wait()
	for i, measure := range []string{"open area", "islands", "joint line"} {
		if errs[i] != nil {
			return Sheet{}, fmt.Errorf("%s: %w", measure, errs[i])
		}
	}
	if err := ctx.Err(); err != nil {
		return Sheet{}, err
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
