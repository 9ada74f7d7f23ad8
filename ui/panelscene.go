package ui

import (
	"strconv"

	"tsugime/repeat/cloth"
	"tsugime/repeat/geom"
	"tsugime/ui/board"
)

// scene shows the finished cloth with the panels on it.
func (b *panelBench) scene() board.Scene {
	w := b.s.w
	sc := board.Scene{Desk: worn().table, Plain: true}
	g := &printing{of: b.s.chance}
	f := b.fold()
	for n := range f.lengths {
		on, box := f.on(n)
		sc.Extent = sc.Extent.Union(box)
		sc.Areas = append(sc.Areas, board.Area{Box: box, Shut: dyed(w.Order().Cloth.Dye), Open: worn().undyed})
		g.onto(on, box)
		sc.Labels = append(sc.Labels, board.Label{
			At: geom.Point{X: box.Centre().X, Y: box.Min.Y}, Align: board.Above, Colour: worn().ink, Bold: true, Size: 12,
			Text: say("from") + " " + geom.MUnit.Format(f.lengths[n].From, 2),
		})
		g.markTurn(&sc, on, box)
		b.markJoints(&sc, on, box)
		b.markTurnName(&sc, on, box)
	}
	sc.Grounds = g.grounds()
	b.markSpare(&sc, f)
	for i, p := range b.along() {
		b.markPanel(&sc, f, i, p)
	}
	if b.s.hides.Checked {
		b.markHidden(&sc, f)
	}
	b.markDrag(&sc, f)
	sc.Extent = geom.BoxOf(sc.Extent.Min.Sub(geom.Point{X: f.gap / 3, Y: f.gap * 2 / 3}), sc.Extent.Max.Add(geom.Point{X: f.gap / 3, Y: f.gap / 3}))
	return sc
}

// markJoints ticks where placements begin, beside the cloth, and numbers every fifth.
func (b *panelBench) markJoints(sc *board.Scene, on lie, box geom.Box) {
	width := b.s.w.work.Run.Bolt.Width
	for _, p := range b.s.chance.prints {
		y := on.put(geom.Point{Y: p.Y}).Y
		if y < box.Min.Y || y >= box.Max.Y {
			continue
		}
		sc.Marks = append(sc.Marks, board.Mark{Shape: board.Line, Points: []geom.Point{{X: box.Min.X - width/14, Y: y}, {X: box.Min.X, Y: y}}, Colour: worn().faint})
		if (p.N+1)%5 == 0 {
			sc.Labels = append(sc.Labels, board.Label{
				At: geom.Point{X: box.Min.X - width/10, Y: y}, Align: board.Before, Text: strconv.Itoa(p.N + 1), Colour: worn().faint, Size: 10, Room: width / 4,
			})
		}
	}
}

// markTurnName writes at the turn what it is.
func (b *panelBench) markTurnName(sc *board.Scene, on lie, box geom.Box) {
	run := b.s.w.work.Run
	for _, t := range run.Turns {
		mid := run.Bolt.Finished(geom.Point{Y: (t.From + t.To) / 2})
		if at := (geom.Point{X: box.Max.X, Y: on.put(mid).Y}); box.Holds(at) {
			sc.Labels = append(sc.Labels, board.Label{At: at.Add(geom.Point{X: run.Bolt.Width / 30}), Align: board.After, Text: say("turn"), Colour: worn().ink, Size: 11})
		}
	}
}

// markPanel frames a panel and writes its name, its place in the order, how long it
// is, whether it is turned and what is left before it.
func (b *panelBench) markPanel(sc *board.Scene, f panelFold, i int, p cloth.Panel) {
	box := f.put(boxOf(p))
	colour, width := worn().undyed, float32(2)
	if p.Name == b.chosen {
		colour, width = worn().onCloth, 4
	}
	sc.Marks = append(sc.Marks, board.Mark{Shape: board.Loop, Points: corners(box), Colour: colour, Width: width})
	text := strconv.Itoa(i+1) + " · " + say(p.Name)
	long := geom.MUnit.Format(p.Length, 2)
	if p.Turned {
		long += " · ↻ " + say("turned")
	}
	at, align := box.Centre(), board.Middle
	switch {
	case p.Lane[1] < 1: // half a cloth is too narrow for words
		at, align, text = geom.Point{X: box.Max.X + f.width*5/8, Y: box.Min.Y + box.Height()/4}, board.After, "◧ "+text
	case p.Lane[0] > 0:
		at, align, text = geom.Point{X: box.Max.X + f.width/8, Y: box.Max.Y - box.Height()/4}, board.After, "◨ "+text
	}
	label := func(row geom.Length, text string, bold bool) {
		on := at.Add(geom.Point{Y: row * f.width / 8})
		sc.Labels = append(sc.Labels, board.Label{At: on, Align: align, Text: text, Colour: worn().ink, Shield: worn().shield, Size: 11, Bold: bold, Room: f.width * 8 / 5})
	}
	label(-1, text, true)
	label(1, long, false)
	b.markGap(sc, f, p)
}

// markGap tells of cloth that is left before a panel.
func (b *panelBench) markGap(sc *board.Scene, f panelFold, p cloth.Panel) {
	from := b.s.w.work.Dressed.Start
	for _, q := range b.s.w.work.Dressed.Panels {
		if q.X < p.X+p.Width && p.X < q.X+q.Width && q.Y+q.Length <= p.Y {
			from = max(from, q.Y+q.Length)
		}
	}
	if from >= p.Y {
		return
	}
	left := f.put(geom.BoxOf(geom.Point{X: p.X, Y: from}, geom.Point{X: p.X + p.Width, Y: p.Y}))
	sc.Marks = append(sc.Marks, board.Mark{Shape: board.Hatch, Points: []geom.Point{left.Min, left.Max}, Colour: worn().undyed})
	if p.Lane[0] > 0 {
		return // told for its neighbour
	}
	sc.Labels = append(sc.Labels, board.Label{
		At: left.Centre(), Align: board.Middle, Text: say("gap") + " " + b.s.w.unit().Format(p.Y-from, 1), Colour: worn().ink, Shield: worn().shield, Size: 10, Room: f.width,
	})
}

// markSpare hatches the cloth that no panel takes before the first and after the last.
func (b *panelBench) markSpare(sc *board.Scene, f panelFold) {
	d := b.s.w.work.Dressed
	end := d.Start + d.Used
	for n, l := range f.lengths {
		on, box := f.on(n)
		for _, s := range []cloth.Span{{From: 0, To: d.Start}, {From: end, To: l.To}} {
			spare := on.box(geom.BoxOf(geom.Point{Y: max(s.From, l.From)}, geom.Point{X: f.width, Y: min(s.To, l.To)})).Intersect(box)
			if s.To <= s.From || max(s.From, l.From) >= min(s.To, l.To) || spare.Empty() {
				continue
			}
			sc.Marks = append(sc.Marks, board.Mark{Shape: board.Hatch, Points: []geom.Point{spare.Min, spare.Max}, Colour: worn().quiet})
			sc.Labels = append(sc.Labels, board.Label{
				At: spare.Centre(), Align: board.Middle, Colour: worn().ink, Shield: worn().shield, Size: 11, Room: f.width,
				Text: say("spare") + " " + geom.MUnit.Format(min(s.To, l.To)-max(s.From, l.From), 2),
			})
		}
	}
}

// markHidden hatches what the seams hide of every panel, and writes how wide the
// strips along both edges are.
func (b *panelBench) markHidden(sc *board.Scene, f panelFold) {
	u := b.s.w.unit()
	for _, s := range b.s.w.work.Dressed.SewnIn() {
		p, _ := b.panel(s.Panel)
		box := f.put(boxOf(p))
		for _, part := range s.Parts {
			h := f.put(boxOf(p)).Min.Add(part.Min.Sub(boxOf(p).Min))
			to := h.Add(part.Max.Sub(part.Min))
			sc.Marks = append(sc.Marks, board.Mark{Shape: board.Hatch, Points: []geom.Point{h, to}, Colour: worn().undyed})
			sc.Marks = append(sc.Marks, board.Mark{Shape: board.Loop, Points: corners(geom.BoxOf(h, to)), Colour: worn().undyed})
		}
		for i, strip := range []geom.Length{s.Left, s.Right} {
			at, align := geom.Point{X: box.Min.X, Y: box.Min.Y + box.Height()/5}, board.After
			if i == 1 {
				at, align = geom.Point{X: box.Max.X, Y: at.Y + f.width/4}, board.Before
			}
			sc.Labels = append(sc.Labels, board.Label{At: at, Align: align, Text: u.Format(strip, 1), Colour: worn().ink, Shield: worn().shield, Size: 10, Room: p.Width * 2 / 3})
		}
	}
}

// markDrag shows the panel that is dragged, and before which it would lie.
func (b *panelBench) markDrag(sc *board.Scene, f panelFold) {
	if b.drag == nil || b.drag.by == (geom.Point{}) {
		return
	}
	p, ok := b.panel(b.drag.name)
	if !ok {
		return
	}
	box := f.put(boxOf(p)).Moved(b.drag.by)
	sc.Marks = append(sc.Marks, board.Mark{Shape: board.Loop, Points: corners(box), Colour: worn().vat, Width: 3})
	end := b.s.w.work.Dressed.Start + b.s.w.work.Dressed.Used
	at := f.put(geom.BoxOf(geom.Point{Y: end - 1}, geom.Point{X: f.width, Y: end}))
	if name, any := b.before(); any {
		q, _ := b.panel(name)
		at = f.put(boxOf(q))
		at = geom.BoxOf(at.Min, geom.Point{X: at.Max.X, Y: at.Min.Y})
	}
	sc.Marks = append(sc.Marks,
		board.Mark{Shape: board.Line, Points: []geom.Point{at.Min, {X: at.Max.X, Y: at.Min.Y}}, Colour: worn().onCloth, Width: 4},
		board.Mark{Shape: board.Wedge, Points: []geom.Point{{X: at.Centre().X, Y: at.Min.Y}}, Colour: worn().onCloth, Width: 2})
}
