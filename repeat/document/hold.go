package document

import (
	"fmt"
	"slices"

	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
	"tsugime/repeat/stencil"
)

// Bounds of what holds the paper.
const (
	maxTies      = 100_000
	maxJointLine = 5_000 // points
	minTie       = 50 * geom.Micrometre
	maxTie       = 100 * geom.Millimetre
	maxPerIsland = 6
)

// SetHold sets how the paper is held together, all of it.
func SetHold(o Order, h stencil.Hold) (Order, error) {
	next := o
	h.Ties, h.Second.Ties = slices.Clone(h.Ties), slices.Clone(h.Second.Ties)
	h.Second.Motifs = slices.Clone(h.Second.Motifs)
	next.Sheet.Hold = h
	return o.checked(next)
}

// SetJoint sets how the joint line is chosen, or the line drawn by hand.
func SetJoint(o Order, j stencil.JointSpec) (Order, error) {
	next := o
	j.Line = slices.Clone(j.Line)
	next.Sheet.Joint = j
	return o.checked(next)
}

// Ties returns the ties of the first sheet, or of the second.
func (o Order) Ties(second bool) []stencil.Tie {
	if second {
		return o.Sheet.Hold.Second.Ties
	}
	return o.Sheet.Hold.Ties
}

// withTies returns o with other ties on one sheet, which must be the order's own.
func (o Order) withTies(second bool, ties []stencil.Tie) Order {
	if second {
		o.Sheet.Hold.Second.Ties = ties
	} else {
		o.Sheet.Hold.Ties = ties
	}
	return o
}

// AddTies adds ties to the first sheet, or to the second. An order that was held
// as drawn is held with ties from then on.
func AddTies(o Order, second bool, ties ...stencil.Tie) (Order, error) {
	for _, t := range ties {
		if err := o.reaches(t); err != nil {
			return o, err
		}
	}
	next := o.withTies(second, slices.Concat(o.Ties(second), ties))
	if next.Sheet.Hold.Way == stencil.AsDrawn {
		next.Sheet.Hold.Way = stencil.WithTies
	}
	return o.checked(next)
}

// mostTieCells is how many cells a tie may reach over, by its box: a longer one is a slip
// of the hand, and hundreds of its copies would lie over one another.
const mostTieCells = 200

// reaches refuses a tie that reaches over far more cells than any tie does.
func (o Order) reaches(t stencil.Tie) error {
	box := geom.BoxOf(t.From, t.To).Grown(t.Width / 2)
	if n := o.Unit.Lattice.Count(box.Width(), box.Height()); n > mostTieCells {
		return fmt.Errorf("tie: it reaches over %.0f cells; draw it across the cut-out that it holds", n)
	}
	return nil
}

// SetTie puts another tie in the place of number i of one sheet.
func SetTie(o Order, second bool, i int, tie stencil.Tie) (Order, error) {
	ties := slices.Clone(o.Ties(second))
	if i < 0 || i >= len(ties) {
		return o, noTie(i, len(ties))
	}
	if err := o.reaches(tie); err != nil {
		return o, err
	}
	ties[i] = tie
	return o.checked(o.withTies(second, ties))
}

// DeleteTies takes ties of one sheet away, by their numbers.
func DeleteTies(o Order, second bool, numbers ...int) (Order, error) {
	ties := o.Ties(second)
	for _, i := range numbers {
		if i < 0 || i >= len(ties) {
			return o, noTie(i, len(ties))
		}
	}
	kept := make([]stencil.Tie, 0, len(ties))
	for i, t := range ties {
		if !slices.Contains(numbers, i) {
			kept = append(kept, t)
		}
	}
	return o.checked(o.withTies(second, kept))
}

func noTie(i, n int) error {
	return fmt.Errorf("there is no tie %d; the sheet has %d", i+1, n)
}

// carryTies takes the ties of next along with the motifs that were moved, turned
// or mirrored since before, and drops what belonged to motifs that are gone.
func carryTies(before pattern.Unit, next Order) Order {
	h := next.Sheet.Hold
	if len(h.Ties)+len(h.Second.Ties)+len(h.Second.Motifs) == 0 {
		return next
	}
	was, is := byID(before.Motifs), byID(next.Design().Motifs)
	carry := func(ties []stencil.Tie) []stencil.Tie {
		var carried []stencil.Tie
		for _, t := range ties {
			if to, there := is[t.Motif]; there {
				from := was[t.Motif]
				t.From, t.To = withMotif(t.From, from, to), withMotif(t.To, from, to)
				carried = append(carried, t)
			}
		}
		return carried
	}
	h.Ties, h.Second.Ties = carry(h.Ties), carry(h.Second.Ties)
	h.Second.Motifs = slices.DeleteFunc(slices.Clone(h.Second.Motifs), func(id pattern.ID) bool {
		_, there := is[id]
		return !there
	})
	next.Sheet.Hold = h
	return next
}

func byID(motifs []pattern.Motif) map[pattern.ID]pattern.Motif {
	m := make(map[pattern.ID]pattern.Motif, len(motifs))
	for _, motif := range motifs {
		m[motif.ID] = motif
	}
	return m
}

// withMotif returns where a place that goes with a motif is after the motif went
// from one stand to another.
func withMotif(p geom.Point, from, to pattern.Motif) geom.Point {
	if from.TurnDeg == to.TurnDeg && from.Mirrored == to.Mirrored {
		return p.Add(to.At.Sub(from.At))
	}
	return from.Placing().Inverse().Then(to.Placing()).Apply(p)
}

func checkHold(o Order) *Fault {
	h := o.Sheet.Hold
	var ways, cuts []string
	for _, w := range stencil.HoldWays() {
		ways = append(ways, string(w))
	}
	for _, c := range stencil.SecondCuts() {
		cuts = append(cuts, string(c))
	}
	fault := first(
		oneOf("sheet.hold.way", string(h.Way), ways),
		within("sheet.hold.tie_width_mm", h.TieWidth, minTie, maxTie),
		count("sheet.hold.per_island", h.PerIsland, 1, maxPerIsland),
		oneOf("sheet.hold.second.cut", string(h.Second.Cut), cuts),
		within("sheet.hold.second.lap_mm", h.Second.Lap, 0, 10*geom.Millimetre),
		checkJoint(o.Sheet.Joint),
	)
	if fault != nil || len(h.Ties)+len(h.Second.Ties)+len(h.Second.Motifs) == 0 {
		return fault
	}
	design := o.Design()
	ids := make(map[pattern.ID]bool, len(design.Motifs))
	for _, m := range design.Motifs {
		ids[m.ID] = true
	}
	return first(
		checkTies("sheet.hold.ties", h.Ties, ids),
		checkTies("sheet.hold.second.ties", h.Second.Ties, ids),
		checkSecondMotifs(h.Second.Motifs, ids),
	)
}

func checkJoint(j stencil.JointSpec) *Fault {
	if !(j.Share >= 0.05 && j.Share <= 1) {
		return faultf("sheet.joint.share_pct", "%g %% is out of bounds; give 5 to 100 %%", j.Share*100)
	}
	switch n := len(j.Line); {
	case n == 1:
		return faultf("sheet.joint.line_mm", "one place is no line; give two or more, or none to let it be chosen")
	case n > maxJointLine:
		return faultf("sheet.joint.line_mm", "%d places; draw the line with %d at most", n, maxJointLine)
	}
	for i, p := range j.Line {
		if fault := reachable(fmt.Sprintf("sheet.joint.line_mm[%d]", i), p); fault != nil {
			return fault
		}
	}
	return nil
}

func checkTies(path string, ties []stencil.Tie, ids map[pattern.ID]bool) *Fault {
	if n := len(ties); n > maxTies {
		return faultf(path, "%d ties; the unit may have %d", n, maxTies)
	}
	for i, t := range ties {
		at := fmt.Sprintf("%s[%d]", path, i)
		fault := first(
			count(at+".motif", int(t.Motif), 1, maxID),
			within(at+".width_mm", t.Width, minTie, maxTie),
			reachable(at+".from_mm", t.From), reachable(at+".to_mm", t.To),
		)
		switch {
		case fault != nil:
			return fault
		case !ids[t.Motif]:
			return faultf(at+".motif", "there is no motif %d; name the motif that the tie crosses", t.Motif)
		case t.From.Distance(t.To) < minTie:
			return faultf(at+".to_mm", "the tie has no length; draw it from paper to paper, at least %s mm", minTie)
		}
	}
	return nil
}

func checkSecondMotifs(motifs []pattern.ID, ids map[pattern.ID]bool) *Fault {
	seen := make(map[pattern.ID]bool, len(motifs))
	for i, id := range motifs {
		at := fmt.Sprintf("sheet.hold.second.motifs[%d]", i)
		switch fault := count(at, int(id), 1, maxID); {
		case fault != nil:
			return fault
		case !ids[id]:
			return faultf(at, "there is no motif %d; name motifs of the unit", id)
		case seen[id]:
			return faultf(at, "motif %d is named twice; keep one of the two", id)
		}
		seen[id] = true
	}
	return nil
}
