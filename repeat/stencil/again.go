package stencil

import (
	"context"
	"reflect"

	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

// CutAgain returns what Cut returns for the design, and takes from prev, a sheet
// that Cut or CutAgain made, what an edit leaves as it is: webs and contacts of
// cut-outs that it doesn't come near, the cut-outs of other motifs, stars and the
// joint line. Motifs are told apart by their IDs. What can't be shown to be the
// same is measured in full. prev stays as it is; the zero Sheet has nothing to
// take.
func CutAgain(ctx context.Context, prev Sheet, design pattern.Unit, spec Spec, cloth geom.Length) (Sheet, error) {
	return CutAgainTelling(ctx, prev, design, spec, cloth, nil)
}

// CutAgainTelling is CutAgain that tells first what is known soonest: once the webs,
// the islands, the open area and the flaws of the plain pattern are measured, first is
// given prev with those of the design. The joint, the cut-outs, the stars and how the
// paper hangs are still prev's there. It isn't called where the sheet is another, is
// one of two, or was never cut, nor where nothing has changed.
func CutAgainTelling(ctx context.Context, prev Sheet, design pattern.Unit, spec Spec, cloth geom.Length, first func(Sheet)) (Sheet, error) {
	a := prev.kept.before(design, spec, cloth)
	if a != nil && a.edit.none() && a.cloth == cloth && reflect.DeepEqual(a.sheet.Spec, spec) {
		same := a.sheet
		same.kept = prev.kept
		return same, ctx.Err()
	}
	return cutAfter(ctx, a, design, spec, cloth, first)
}

// A kept is what a sheet was cut from, and what it was then, for the next edit.
type kept struct {
	design pattern.Unit
	cloth  geom.Length
	sheet  Sheet
	paper  *paperKept // of discs drawn to hold as they are, once there was an edit
}

// An again is a sheet before an edit and what the edit changed. A nil one has
// nothing to give.
type again struct {
	kept
	edit      edit
	sameField bool // the joint and the cut-outs are sought in the same way
	asDrawn   bool // both sheets cut the design itself
	sameStars bool // the same is wanted of the stars
}

// before returns k as it is seen from the next design.
func (k *kept) before(design pattern.Unit, spec Spec, cloth geom.Length) *again {
	if k == nil || k.design.Lattice != design.Lattice {
		return nil
	}
	a := &again{kept: *k}
	var ok bool
	if a.edit, ok = editOf(k.design.Motifs, design.Motifs); !ok {
		return nil
	}
	old := k.sheet.Spec
	a.sameField = old.Field == spec.Field && old.Step == spec.Step
	a.asDrawn = old.Hold.asDrawn() && spec.Hold.asDrawn()
	a.sameStars = a.sameField && k.cloth == cloth && old.WebLimit == spec.WebLimit && reflect.DeepEqual(old.Stars, spec.Stars)
	return a
}

// asDrawn reports whether nothing is added to hold the paper.
func (h Hold) asDrawn() bool { return h.Way != WithTies && h.Way != Split }

// joint returns the joint line of the design.
func (a *again) joint(ctx context.Context, design pattern.Unit, spec Spec) (Joint, error) {
	if a != nil && a.edit.none() && a.sameField && reflect.DeepEqual(a.sheet.Spec.Joint, spec.Joint) {
		return a.sheet.Joint, nil
	}
	return FindJoint(ctx, design, spec.Field, spec.Step, spec.Joint)
}

// measured returns a sheet that cuts u with what is measured on the plain pattern,
// and whether that is all: whether how its paper hangs is known too.
func (a *again) measured(u pattern.Unit, spec Spec) (s Sheet, p *paperKept, hung bool, err error) {
	if a == nil || !a.asDrawn || !spec.Hold.asDrawn() {
		s, err = measured(u, spec)
		return s, nil, false, err
	}
	s = Sheet{Spec: spec, Unit: u}
	_, _, s.StepError = u.Lattice.Nearest(geom.Point{Y: spec.Step})
	old := &a.sheet
	if a.edit.none() && old.Spec.WebLimit == spec.WebLimit && old.Spec.hangsAlike(spec) {
		s.Webs, s.Paths, s.OpenPct = old.Webs, old.Paths, old.OpenPct
		s.Tongues, s.Ribbons, s.Stiff, s.StiffFound = old.Tongues, old.Ribbons, old.Stiff, old.StiffFound
		return s, a.paper, true, nil
	}
	if p = a.paper.edited(a.edit, u.Lattice, spec.WebLimit); p == nil {
		p = paperOf(u, spec.WebLimit)
	}
	if p == nil {
		s, err = measured(u, spec)
		return s, nil, false, err
	}
	s.Webs, s.OpenPct = p.report, openPct(p.cut.discsMM2(), u.Lattice.CellMM2())
	return s, p, true, nil
}
