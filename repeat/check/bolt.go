package check

import (
	"fmt"

	"tsugime/repeat/cloth"
	"tsugime/repeat/geom"
)

// usable is the strip between the selvedges of the finished cloth.
func usable(b cloth.Bolt) cloth.Span {
	u := b.Usable()
	return cloth.Span{From: b.Finished(geom.Point{X: u.From}).X, To: b.Finished(geom.Point{X: u.To}).X}
}

// selvedges tells where the field reaches into cloth that can't be printed.
func selvedges(m Measures, _ Limits) []Finding {
	f, u := m.Sheet.Spec.Field, usable(m.Run.Bolt)
	width, _ := m.Run.Bolt.FinishedSize()
	into := max(u.From-f.Left, f.Right()-u.To)
	if into <= 0 || f.Left < 0 || f.Right() > width {
		return nil // nothing, or more than this: the field is off the cloth
	}
	at := f.Left
	if u.From <= f.Left {
		at = u.To
	}
	return []Finding{{
		Code: "field-selvedge", Severity: Warning, Domain: OnCloth, At: geom.Point{X: at},
		Text: fmt.Sprintf("The cut field reaches %s into a selvedge; %s to %s of the finished width can be printed.", mm(into), mm(u.From), mm(u.To)),
		Remedy: fmt.Sprintf("Lay the field from %s on, at most %s wide, or order a bolt %s wider.",
			mm(u.From), mm(u.Length()), mm(max(f.Width-u.Length(), 0))),
	}}
}

func boardFull(m Measures, _ Limits) []Finding {
	b := m.Run.Board
	room, over := 2*b.Length, m.Run.Overhang
	faces, each := "both faces of the board", geom.Length(2)
	if b.Faces == 1 {
		room, faces, each = b.Length, "one face of the board", 1
	}
	what := "The bolt of " + mm(m.Run.Bolt.Length)
	for _, s := range m.Run.Stretches {
		over = max(over, s.Overhang)
	}
	if over <= 0 {
		return nil
	}
	if b.Cloths > 1 || b.Layings > 1 {
		what = "What is laid on the board at one time, " + mm(room+over) + ","
	}
	return []Finding{{
		Code: "board-short", Severity: Warning, Domain: OnCloth, At: geom.Point{Y: min(room, m.Run.Bolt.Length)},
		Text:   fmt.Sprintf("%s is longer than %s, %s.", what, faces, mm(room)),
		Remedy: fmt.Sprintf("Use a board longer by %s, or print in %d layings.", mm((over+each-1)/each), layings(m.Run, room)),
	}}
}

// layings returns in how many goes a run must be laid where so much cloth has
// room at a time.
func layings(r cloth.Run, room geom.Length) int {
	if cloths := max(r.Board.Cloths, 1); cloths > 1 {
		each := max(int(room/r.Bolt.Length), 1)
		return (cloths + each - 1) / each
	}
	return int((r.Bolt.Length + room - 1) / room)
}

// backMisses tells where the back is expected to miss the front.
func backMisses(m Measures, l Limits) []Finding {
	b := m.Run.Back
	if b.Worst <= l.Misfit {
		return nil
	}
	return []Finding{{
		Code: "back-misfit", Severity: misfit(b.Worst, l), Domain: OnCloth,
		Text: fmt.Sprintf("Of %d placements on the back the worst is expected to miss the front by %s, more than %s; one misses by %s along and %s across.",
			b.Prints, mm(b.Worst), mm(l.Misfit), mm(b.Along), mm(b.Across)),
		Remedy: "Set the stars farther apart and lay them more carefully; prick them through to the back.",
	}}
}

// backSheet tells what the back is printed with.
func backSheet(m Measures, l Limits) []Finding {
	if m.Run.Bolt.Sides != cloth.BothSides || m.Reverse == nil || !m.Reverse.NeedsTurning(l.Misfit) {
		return nil
	}
	why := "it has no mirror along the bolt"
	switch r := m.Reverse; {
	case r.Mirror.Found && 2*r.Mirror.Off.Abs() > l.Misfit:
		why = fmt.Sprintf("its nearest mirror along the bolt lies %s beside the middle of the cloth", mm(r.Mirror.Off.Abs()))
	case r.Mirror.Found && r.Mirror.Glide != 0:
		why = fmt.Sprintf("its mirror along the bolt glides by %s", mm(r.Mirror.Glide))
	case r.Mirror.Found:
		why = fmt.Sprintf("only %d of its leading stars would fall on a mark", len(r.Stars))
	}
	return []Finding{{
		Code: "back-sheet", Severity: Note, Domain: OnCloth,
		Text:   "For the back to fall on the front the sheet must be laid face down: as it lies now the pattern doesn't fit, " + why + ".",
		Remedy: "Turn the sheet over about its long axis, each star on its own mark; with gauze on its face, cut a mirrored sheet.",
	}}
}

// foldJumps tells what meets at the folds of poured dye.
func foldJumps(m Measures, l Limits) []Finding {
	if !m.Run.Bolt.Folded || m.Fold == nil {
		return nil
	}
	f := m.Fold
	found := Finding{Code: "fold-mirror", Severity: Warning, Domain: OnCloth, At: geom.Point{Y: m.Run.Board.Start + m.Run.Step}}
	switch {
	case !f.Found:
		found.Text = fmt.Sprintf("At each fold the pattern goes on as its mirror image, and this one (%s) has no mirror across the bolt: every fold shows.", f.Group)
		found.Remedy = "Take a plane group with a mirror across, or keep the fold in a strip without cut-outs."
	case f.Glide != 0:
		found.Text = fmt.Sprintf("At each fold the pattern goes on as its mirror image; this one (%s) has only a glide there, so it jumps by %s across.", f.Group, mm(f.Glide))
		found.Remedy = "Take a plane group with a mirror across, or keep the fold in a strip without cut-outs."
	case 2*f.Off.Abs() > l.Joint:
		found.Text = fmt.Sprintf("The mirror nearest to a fold lies %s from it: the pattern jumps by %s along.", mm(f.Off.Abs()), mm(2*f.Off.Abs()))
		found.Remedy = fmt.Sprintf("Move the motifs by %s along, so that the mirror falls on the fold, and keep the step a whole number of half periods.", mm(-f.Off))
	default:
		return nil
	}
	return []Finding{found}
}

// foldCrossed tells where cut-outs lie over the fold, where their image is
// printed again.
func foldCrossed(m Measures, l Limits) []Finding {
	if !m.Run.Bolt.Folded || m.Fold == nil || m.Fold.Reach <= l.Joint {
		return nil
	}
	return []Finding{{
		Code: "fold-crossed", Severity: Warning, Domain: OnCloth, At: geom.Point{Y: m.Run.Board.Start + m.Run.Step},
		Text: fmt.Sprintf("%s over the folds, by up to %s: each falls on its neighbour's image or leaves its place there open.",
			plural(m.Fold.Over, "cut-out of the sheet reaches", "cut-outs of the sheet reach"), mm(m.Fold.Reach)),
		Remedy: "Draw the joint line straight along the fold through a strip of paper, and move the motifs so that a mirror lies in it.",
	}}
}
