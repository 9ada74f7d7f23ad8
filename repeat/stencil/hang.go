package stencil

import (
	"context"
	"fmt"
	"sync"

	"tsugime/repeat/pattern"
)

// manyCuts is from how many cut-outs in a unit its stiffness is not measured: its
// webs are finer than the elements of LiveMesh.
const manyCuts = 1000

// hang measures how the paper between the cut-outs hangs: tongues, ribbons and
// stiffness. The webs are known. Of paper without a thickness no ribbon is told,
// and no stiffness where two elements at least don't lie across the narrowest web.
func (s *Sheet) hang(cuts []pattern.CutOut) error {
	l := s.Unit.Lattice
	var errs [2]error
	var together sync.WaitGroup
	together.Go(func() { s.Tongues, errs[0] = Tongues(cuts, l.A, l.B) })
	together.Go(func() {
		if s.Spec.Paper.Thickness > 0 {
			spec := RibbonSpec{Thickness: s.Spec.Paper.Thickness, Width: s.Spec.Field.Width, Height: s.Spec.Step}
			s.Ribbons, errs[1] = Ribbons(cuts, l, spec)
		}
	})
	if s.resolved(len(cuts)) {
		// It takes a tenth of a second, so that there is nothing to end early. A
		// sheet that this mesh can't settle has none.
		var err error
		s.Stiff, err = Stiffen(context.Background(), cuts, l, LiveMesh)
		s.StiffFound = err == nil
	}
	together.Wait()
	for i, measure := range []string{"tongues", "ribbons"} {
		if errs[i] != nil {
			return fmt.Errorf("%s: %w", measure, errs[i])
		}
	}
	return nil
}

// resolved reports whether LiveMesh lays two elements across the narrowest web.
func (s *Sheet) resolved(cuts int) bool {
	if cuts == 0 || cuts >= manyCuts || !s.Webs.Found {
		return false
	}
	m := meshedCell(s.Unit.Lattice, LiveMesh)
	size := max(m.a.norm()/float64(m.nx), m.b.norm()/float64(m.ny))
	return s.Webs.Narrowest.Width.MM() >= 2*size
}

// hangsAlike reports whether hang measures the same under both specs.
func (s Spec) hangsAlike(o Spec) bool {
	return s.Paper.Thickness == o.Paper.Thickness && s.Field.Width == o.Field.Width && s.Step == o.Step
}
