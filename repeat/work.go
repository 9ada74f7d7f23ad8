package repeat

import (
	"context"
	"fmt"
	"slices"

	"tsugime/repeat/check"
	"tsugime/repeat/cloth"
	"tsugime/repeat/document"
	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
	"tsugime/repeat/stencil"
)

// A Work is everything that follows from an order. It is a value: an edit makes
// a new one.
type Work struct {
	Order    document.Order
	Design   pattern.Unit // with every copy that the plane group makes
	Scale    stencil.Scale
	Under    pattern.Proof // of the joined units
	Ground   check.Ground  // that the unit was laid as; zero where it was drawn by hand
	Sheet    stencil.Sheet // at finished size
	Run      cloth.Run
	Dressed  cloth.Dressed
	Reverse  *cloth.Reverse // what the back takes, where both sides are printed
	Fold     *cloth.Folding // what meets at the folds of poured dye, where the cloth is folded
	Findings []check.Finding
	unlaid   error // why no garment is laid; nil where one is
}

// Build carries an order along the line: cut-outs on a sheet, placements along
// the bolt, panels of the garment, findings. It stops early only when ctx is
// done; what is wrong with the design is a finding, not an error.
func Build(ctx context.Context, o document.Order) (Work, error) { return Rebuild(ctx, Work{}, o) }

// Rebuild returns what Build returns for the order, sooner where prev is the work
// of an order that an edit parts from o: what the edit leaves as it is on the
// sheet, and of the question how panels are to lie, is taken from there. prev stays as it is.
func Rebuild(ctx context.Context, prev Work, o document.Order) (Work, error) {
	return RebuildTelling(ctx, prev, o, nil)
}

// RebuildTelling is Rebuild that tells first what is known soonest: once the webs, the
// islands and the flaws of the plain pattern are measured, first is given the findings
// as they are with those, while the joint, the cloth and the garment are still prev's.
// It isn't called where stencil.CutAgainTelling doesn't tell.
func RebuildTelling(ctx context.Context, prev Work, o document.Order, first func([]check.Finding)) (Work, error) {
	if err := o.Check(); err != nil {
		return Work{}, err
	}
	w := Work{Order: o, Design: o.Design(), Ground: groundOf(o), Scale: stencil.Scale{
		ClothAcross: o.Cloth.Bolt.ChangeAcross, ClothAlong: o.Cloth.Bolt.ChangeAlong,
		PaperAcross: o.Sheet.Paper.GrowthAcross, PaperAlong: o.Sheet.Paper.GrowthAlong,
	}}
	var err error
	width, _ := o.Cloth.Bolt.FinishedSize()
	if w.Sheet, err = stencil.CutAgainTelling(ctx, prev.Sheet, w.Design, o.Sheet, width, func(s stencil.Sheet) {
		if first == nil {
			return
		}
		soon := prev
		soon.Design, soon.Ground, soon.Sheet = w.Design, w.Ground, s
		first(soon.judged(o.Limits))
	}); err != nil {
		return Work{}, fmt.Errorf("stencil: %w", err)
	}
	if w.Under, err = prev.Under.Again(ctx, prev.Design, w.Design); err != nil {
		return Work{}, fmt.Errorf("pattern: %w", err)
	}
	_, along := w.Scale.Board()
	if w.Run, err = cloth.Lay(o.Cloth.Bolt, o.Board, w.register(), o.Sheet.Step.Times(along)); err != nil {
		return Work{}, fmt.Errorf("cloth: %w", err)
	}
	w.Dressed, w.unlaid = cloth.DressAgain(prev.Dressed, o.Cloth.Bolt, w.Run, o.Unit.Lattice, o.Garment, o.Limits.SeamPhase)
	if err = w.sides(); err != nil {
		return Work{}, fmt.Errorf("cloth: %w", err)
	}
	w.Findings = w.judged(o.Limits)
	return w, ctx.Err()
}

// judged returns every finding of the work.
func (w Work) judged(l document.Limits) []check.Finding {
	return check.All(check.Measures{
		Unit: w.Design, Under: w.Under, Ground: w.Ground, Sheet: w.Sheet, Run: w.Run, Dressed: w.Dressed, Reverse: w.Reverse, Fold: w.Fold, Unlaid: w.unlaid,
	}, check.Limits(l))
}

// groundOf returns how the order's ground met the step, as long as its unit stands
// on the lattice that it was laid on.
func groundOf(o document.Order) check.Ground {
	l, err := o.Ground.Laying(o.Sheet.Step)
	if o.Ground.Ground == "" || err != nil || l.Lattice != o.Unit.Lattice {
		return check.Ground{}
	}
	return check.Ground{Recipe: o.Ground, Laying: l}
}

// sides measures what the back takes and what meets at folds. A unit without
// motifs has neither.
func (w *Work) sides() error {
	bolt := w.Order.Cloth.Bolt
	if len(w.Design.Motifs) == 0 {
		return nil
	}
	if bolt.Sides == cloth.BothSides {
		width, _ := bolt.FinishedSize()
		r, err := cloth.ReverseOf(w.Design, width, w.Sheet.Stars.Leading(), w.Order.Limits.Misfit)
		if err != nil {
			return err
		}
		w.Reverse = &r
	}
	if !bolt.Folded {
		return nil
	}
	boxes := make([]geom.Box, len(w.Sheet.CutOuts))
	for i, c := range w.Sheet.CutOuts {
		boxes[i] = c.Shape.Bounds()
	}
	f, err := cloth.FoldingOf(w.Design, w.Order.Sheet.Step, boxes)
	if err != nil {
		return err
	}
	w.Fold = &f
	return nil
}

// Printed returns the plain pattern as all placements leave it on the cloth: of
// one sheet what it cuts, of a split the design.
func (w Work) Printed() pattern.Unit {
	if w.Sheet.Second != nil && w.Sheet.Cover.Sound() {
		return w.Design
	}
	u := w.Sheet.Unit
	if w.Sheet.Second != nil {
		u.Motifs = slices.Concat(u.Motifs, w.Sheet.Second.Unit.Motifs)
	}
	return u
}

// register is how the sheet's own stars let it be laid. Every sheet of a set has
// the feed stars of the first, so later ones are laid on the same baseline.
func (w Work) register() cloth.Register {
	r := w.Order.Register
	return cloth.Register{
		Way: r.Way, StarError: r.StarError, StarErrorAcross: r.StarErrorAcross,
		PitchError: r.PitchError, Growth: r.Growth,
		Baseline: w.Sheet.Stars.Baseline, Width: w.Order.Sheet.Field.Width,
		Sheets:    max(r.Sheets, len(w.Sheet.Set())),
		Tolerance: w.Order.Limits.Joint, Misfit: w.Order.Limits.Misfit,
		Longest: w.longestBaseline(),
	}
}

// longestBaseline is how far apart the outer stars could be: within paper and
// cloth, each with a star's width of them beside it.
func (w Work) longestBaseline() geom.Length {
	width, _ := w.Order.Cloth.Bolt.FinishedSize()
	return max(0, min(width, w.Order.Sheet.Paper.Width)-3*w.Order.Sheet.Stars.Diameter)
}

// CutSheet returns the sheet as it must be cut into dry paper.
func (w Work) CutSheet() stencil.Sheet { return w.Sheet.AtCutSize(w.Scale) }
