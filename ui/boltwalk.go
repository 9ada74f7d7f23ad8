package ui

import (
	"slices"

	"tsugime/repeat/cloth"
	"tsugime/repeat/geom"
	"tsugime/ui/board"
)

// A walk is how far across placements may walk by a way of registering, as one
// standard deviation each.
type walk struct {
	way    cloth.Way
	across []geom.Length
	now    bool // the order is laid so
}

// end is how far the last placement walks.
func (w walk) end() geom.Length {
	if len(w.across) == 0 {
		return 0
	}
	return w.across[len(w.across)-1]
}

// walks are what is drawn beside the cloth: laid as it is, by stars alone and by
// an edge line. A folded cloth can't be laid in another way.
func walks(r cloth.Run) []walk {
	ways := []cloth.Way{cloth.StarToStar, cloth.EdgeLine}
	if r.Bolt.Folded {
		ways = nil
	}
	if !slices.Contains(ways, r.Register.Way) {
		ways = append(ways, r.Register.Way)
	}
	var all []walk
	for _, way := range ways {
		if across := r.WalksAcross(way); len(across) > 0 {
			all = append(all, walk{way, across, way == r.Register.Way})
		}
	}
	return all
}

// exaggerated is by how much walks are drawn too large: the roundest factor with
// which the widest of them fits into room.
func exaggerated(all []walk, room geom.Length) float64 {
	widest := geom.Length(1)
	for _, w := range all {
		widest = max(widest, slices.Max(w.across))
	}
	factor := 0.1
	for _, f := range []float64{0.2, 0.5, 1, 2, 3, 5, 10, 20, 50, 100, 200, 500} {
		if widest.Times(f) <= room {
			factor = f
		}
	}
	return factor
}

// walkRoom is how much of the way from a column to the next a walk may take to
// each side.
func (l laid) walkRoom() geom.Length { return l.gap / 5 }

// markWalks draws beside each piece how far its placements may walk across: solid
// as the order is laid, dashed by the other ways.
func (s *boltStation) markWalks(sc *board.Scene, l laid) {
	r := s.w.work.Run
	all := walks(r)
	if len(all) == 0 {
		return
	}
	factor := exaggerated(all, l.walkRoom())
	for i, c := range l.columns {
		x := c.box.Max.X + l.gap*3/10
		drawn := false
		for _, p := range c.pieces {
			if p.back {
				continue
			}
			drawn = true
			for _, w := range all {
				s.markWalk(sc, p, w, x, factor)
			}
		}
		if drawn && i == 0 {
			sc.Labels = append(sc.Labels, board.Label{
				At: geom.Point{X: x, Y: c.box.Max.Y}, Align: board.Below, Colour: worn().vat, Size: 11,
				Text: say("walk") + " × " + times(factor), Room: l.gap,
			})
		}
		sc.Extent = sc.Extent.Union(geom.BoxOf(c.box.Min, geom.Point{X: x + l.walkRoom(), Y: c.box.Max.Y}))
	}
}

// markWalk draws one walk beside a piece about the line at x.
func (s *boltStation) markWalk(sc *board.Scene, p piece, w walk, x geom.Length, factor float64) {
	r := s.w.work.Run
	st := r.Stretches[p.stretch]
	var left, right []geom.Point
	for n := st.First; n < st.First+st.Count; n++ {
		at := r.Placements[n].Y + r.Step/2
		if at < p.from || at >= p.to {
			continue
		}
		off := w.across[n].Times(factor)
		left = append(left, geom.Point{X: x - off, Y: at + p.move.Y})
		right = append(right, geom.Point{X: x + off, Y: at + p.move.Y})
	}
	if len(left) == 0 {
		return
	}
	shape, colour, width := board.Dashes, worn().faint, float32(1)
	if w.now {
		shape, colour, width = board.Line, worn().vat, 1.5
		band := slices.Clone(right)
		slices.Reverse(band)
		sc.Marks = append(sc.Marks, board.Mark{Shape: board.Hatch, Points: append(slices.Clone(left), band...), Colour: worn().rule})
	}
	sc.Marks = append(sc.Marks,
		board.Mark{Shape: shape, Points: left, Colour: colour, Width: width},
		board.Mark{Shape: shape, Points: right, Colour: colour, Width: width})
}
