package stencil

import (
	"fmt"
	"reflect"
	"sync"

	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

// A plainPart is what is measured on the plain pattern before all else: webs, open
// area and islands of every sheet, and the flaws of the design.
type plainPart struct {
	sheets []Sheet
	paper  []*paperKept
	hung   []bool // how the paper of a sheet hangs is told already
	flaws  []Flaw
}

// plain measures the units of the sheets, side by side.
func (a *again) plain(design pattern.Unit, units []pattern.Unit, spec Spec) (plainPart, error) {
	n := len(units)
	p := plainPart{sheets: make([]Sheet, n), paper: make([]*paperKept, n), hung: make([]bool, n)}
	errs := make([]error, n)
	var together sync.WaitGroup
	for i, u := range units {
		together.Go(func() { p.sheets[i], p.paper[i], p.hung[i], errs[i] = a.measured(u, spec) })
	}
	together.Go(func() { p.flaws = Flaws(design) })
	together.Wait()
	for _, err := range errs {
		if err != nil {
			return plainPart{}, err
		}
	}
	return p, nil
}

// tell gives first the sheet that was before with what was measured anew: where one
// sheet does the work alone and nothing but the design was changed.
func (a *again) tell(first func(Sheet), p plainPart) {
	if first == nil || a == nil || len(p.sheets) > 1 || a.sheet.Second != nil || !reflect.DeepEqual(a.sheet.Spec, p.sheets[0].Spec) {
		return
	}
	s, now := a.sheet, p.sheets[0]
	across := s.Webs.AcrossJoint
	s.Unit, s.StepError, s.Webs, s.Paths, s.OpenPct, s.Flaws = now.Unit, now.StepError, now.Webs, now.Paths, now.OpenPct, p.flaws
	s.Webs.AcrossJoint = across
	s.kept = nil
	first(s)
}

// measured returns a sheet that cuts u with the webs, the open area and the islands
// of the plain pattern.
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
	return s, nil
}
