package main

import (
	"tsugime/repeat"
	"tsugime/repeat/cloth"
	"tsugime/repeat/geom"
)

func boltDocument(w repeat.Work, by chance) boltJSON {
	r := w.Run
	doc := boltJSON{
		Schema: schema, Count: len(r.Placements), Step: mm(r.Step), Remainder: mm(r.Remainder),
		Placements: []placementJSON{}, Needed: r.Needed, Printings: r.Count(),
		Order: string(w.Order.Board.Sequence), Sheets: max(r.Register.Sheets, 1),
		Usable:    [2]mm{mm(r.Bolt.Usable().From), mm(r.Bolt.Usable().To)},
		Stretches: []stretchJSON{}, Eye: []eyeJSON{}, Gains: []gainJSON{}, Marks: []markJSON{},
	}
	for _, l := range r.Placements {
		doc.Placements = append(doc.Placements, placementJSON{
			l.N, mm(l.Y), string(l.Face), mm(l.WalkX), mm(l.WalkY), l.LaidAs, l.Between, l.Mirrored, l.Stretch,
		})
	}
	d := r.Drift
	doc.Drift = driftJSON{string(d.Way), mm(d.EndX), mm(d.EndY), mm(d.WorstJoint), mm(d.ShareY), rounded(d.WithinPct), mm(d.Tolerance), rounded(d.SkewPct)}
	if p := r.Partial; p.Printed > 0 {
		doc.Partial = &partialJSON{p.N, mm(p.Y), mm(p.Printed), mm(p.Masked)}
	}
	for _, s := range r.Stretches {
		doc.Stretches = append(doc.Stretches, stretchDocument(r, s))
	}
	if sim := by.bolts; sim.Bolts > 0 {
		doc.Simulated = &simulatedJSON{
			sim.Bolts, sim.Seed, mm(sim.MeanX), mm(sim.MeanY), mm(sim.SpreadX), mm(sim.SpreadY), mm(sim.WorstJoint), rounded(sim.WithinPct),
		}
	}
	doc.helped(w)
	doc.sided(w, by)
	return doc
}

// helped fills in what is seen, what helps and where the marks are.
func (doc *boltJSON) helped(w repeat.Work) {
	r := w.Run
	for _, e := range eyes(w) {
		doc.Eye = append(doc.Eye, eyeJSON{mm(e.Distance), mm(e.Plain), mm(e.Crisp), string(e.Sees(r.Drift.WorstJoint))})
	}
	for _, g := range cloth.Gains(r) {
		doc.Gains = append(doc.Gains, gainJSON{
			string(g.Remedy), mm(g.JointBefore), mm(g.JointAfter), mm(g.EndBefore), mm(g.EndAfter), mm(g.Total()),
		})
	}
	for _, m := range cloth.Marks(r) {
		doc.Marks = append(doc.Marks, markJSON{m.Cloth, m.Stretch, m.N, string(m.Face), mm(m.At), mm(m.Y), m.Turn, m.Part, m.End})
	}
}

// sided fills in how prints fall on prints, and what folds and the turn do.
func (doc *boltJSON) sided(w repeat.Work, by chance) {
	r := w.Run
	doc.Set, doc.Back = overlayDocument(r.Set, by.set), overlayDocument(r.Back, by.back)
	if w.Reverse != nil {
		doc.Reverse = &reverseJSON{mirrorDocument(w.Reverse.Mirror), w.Reverse.NeedsTurning(w.Order.Limits.Misfit), [][2]int{}}
		for _, s := range w.Reverse.Stars {
			doc.Reverse.Stars = append(doc.Reverse.Stars, [2]int{s.Front, s.Back})
		}
	}
	c := cloth.ClearTurn(r, w.Dressed)
	doc.Clearing = clearingJSON{
		append([]string{}, c.Over...), c.Found, mm(c.Start), append([]string{}, c.Before...), mm(c.Gap), mm(c.Extra), mm(c.Lacks),
	}
	if w.Fold != nil {
		doc.Fold = &foldJSON{mirrorDocument(w.Fold.Mirror), w.Fold.Over, mm(w.Fold.Reach)}
	}
}

// eyes are from where the work is looked at: as the order says, and from one and
// two metres.
func eyes(w repeat.Work) []cloth.Eye {
	return []cloth.Eye{cloth.EyeAt(w.Order.Limits.Look), cloth.EyeAt(geom.Metre), cloth.EyeAt(2 * geom.Metre)}
}

func stretchDocument(r cloth.Run, s cloth.Stretch) stretchJSON {
	doc := stretchJSON{
		Go: s.Go, Cloth: s.Cloth, From: mm(s.Cover.From), To: mm(s.Cover.To), OnBoard: mm(s.On),
		First: s.First, Count: s.Count, Turns: [][2]mm{}, Overhang: mm(s.Overhang),
	}
	for n := s.First; n < s.First+s.Count; n++ {
		switch r.Face(s, n) {
		case cloth.FaceA:
			doc.FaceA++
		case cloth.FaceB:
			doc.FaceB++
		default:
			doc.InTurn++
		}
	}
	for _, t := range s.Turns {
		doc.Turns = append(doc.Turns, [2]mm{mm(t.From), mm(t.To)})
	}
	return doc
}

func overlayDocument(o cloth.Overlay, laid cloth.Overlaid) *overlayJSON {
	if o.Prints == 0 {
		return nil
	}
	return &overlayJSON{o.Prints, mm(o.Along), mm(o.Across), mm(o.Worst), rounded(o.WithinPct), mm(o.Tolerance), laid.Bolts, mm(laid.Worst), rounded(laid.WithinPct)}
}

func mirrorDocument(m cloth.Mirror) mirrorJSON {
	return mirrorJSON{string(m.Group), m.Found, mm(m.Off), mm(m.Glide)}
}
