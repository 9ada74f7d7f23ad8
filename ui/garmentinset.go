package ui

import (
	"tsugime/repeat/cloth"
	"tsugime/repeat/geom"
	"tsugime/ui/board"
)

// What the loupe shows of a seam: about so many holes, within bounds.
const (
	insetHoles = 26
	insetLeast = 16 * geom.Millimetre
	insetMost  = 150 * geom.Millimetre
)

// side is how much of a seam the loupe shows.
func (b *seamBench) side() geom.Length {
	return min(max(b.s.w.pitch()*insetHoles, insetLeast), insetMost)
}

// inset returns both sides of the chosen seam, joined as they are sewn; nil for no
// seam.
func (b *seamBench) inset() *board.Inset {
	c, ok := b.seam()
	if !ok || !b.s.w.Ready() {
		return nil
	}
	m := stretches(c)[min(b.stretch, len(c.Also))]
	sc := board.Scene{Desk: worn().table, Plain: true}
	g := &printing{of: b.s.chance}
	halves := b.halves(m)
	for i, half := range halves {
		if p, ok := b.s.piece(b.pieces(m)[i]); ok {
			b.lay(&sc, g, p, half)
		}
	}
	sc.Grounds = g.grounds()
	b.markOff(&sc, m, halves)
	sc.Casing = worn().casing()
	return &board.Inset{Scene: sc, Side: b.side(), Lines: b.insetWords(c, m)}
}

// insetWords tell how the pattern meets at a stretch of a seam: by the order, and on
// the bolt that is laid by chance at the place under the loupe.
func (b *seamBench) insetWords(c cloth.Seam, m cloth.Meeting) []string {
	sign := "≠ "
	if c.Matched && b.stretch == 0 {
		sign = "= "
	}
	lines := []string{say(c.Name), sign + b.offWords(geom.Point{X: m.PhaseAcross, Y: m.PhaseAlong})}
	if b.s.chance.scattered() {
		lines = append(lines, say("this bolt")+": "+b.offWords(b.byChance(m)))
	}
	signs := [2]string{"◧ ", "◨ "}
	if halves := b.halves(m); halves[0].room.Min.X == halves[1].room.Min.X {
		signs = [2]string{"▲ ", "▼ "}
	}
	for i, name := range b.pieces(m) {
		lines = append(lines, signs[i]+say(name))
	}
	return lines
}

func (b *seamBench) offWords(off geom.Point) string {
	u := b.s.w.unit()
	return say("along") + " " + u.Format(off.Y, 2) + ",  " + say("across") + " " + u.Format(off.X, 2)
}

// byChance returns how the pattern meets under the loupe on the bolt that is laid by
// chance, modulo the lattice.
func (b *seamBench) byChance(m cloth.Meeting) geom.Point {
	off := geom.Point{X: m.PhaseAcross, Y: m.PhaseAlong}
	for i, name := range b.pieces(m) {
		p, ok := b.s.piece(name)
		if !ok {
			continue
		}
		at := along(m.Lines[i], b.down)
		by := b.s.chance.shift(p.ToCloth(at))
		if p.Turned != (i == 1 && opposed(m.Lines[0], m.Lines[1])) {
			by = by.Neg()
		}
		if i == 0 {
			by = by.Neg()
		}
		off = off.Add(by)
	}
	_, _, rest := b.s.w.Order().Unit.Lattice.Nearest(off)
	return rest
}

// A half is one side of a seam in the loupe, whose middle is the place of the seam:
// how its view lies there, and what of the picture it fills.
type half struct {
	view lie // the piece's view in the picture
	room geom.Box
}

// halves returns how the two sides lie. Seen from the seam they are joined as they
// are sewn: the second is turned half round where its line runs the other way. Where
// both lie on the same side, as an over-collar on its collar, the first fills the
// upper half, the second the lower.
func (b *seamBench) halves(m cloth.Meeting) [2]half {
	var halves [2]half
	names := b.pieces(m)
	var sides [2]geom.Point // from the line into the piece
	for i, l := range m.Lines {
		at := along(l, b.down)
		h := lie{move: at.Neg()}
		if i == 1 && opposed(m.Lines[0], l) {
			h = lie{turned: true, move: at}
		}
		halves[i].view = h
		if p, ok := b.s.piece(names[i]); ok {
			sides[i] = h.put(p.Area.Centre()).Sub(h.put(at))
		}
	}
	s := b.side()
	way := m.Lines[0].To.Sub(m.Lines[0].From)
	upright := way.Y.Abs() > way.X.Abs()
	into := func(p geom.Point) geom.Length {
		if upright {
			return p.X
		}
		return p.Y
	}
	same := (into(sides[0]) > 0) == (into(sides[1]) > 0)
	for i := range halves {
		from, to := geom.Point{X: -s, Y: -s}, geom.Point{X: s, Y: s}
		across := into(sides[i])
		if same {
			across = geom.Length(2*i - 1)
		}
		switch {
		case upright != same && across > 0:
			from.X = 0
		case upright != same:
			to.X = 0
		case across > 0:
			from.Y = 0
		default:
			to.Y = 0
		}
		halves[i].room = geom.BoxOf(from, to)
	}
	return halves
}

// opposed reports whether two lines run against each other.
func opposed(a, b cloth.SeamLine) bool {
	u, v := a.To.Sub(a.From), b.To.Sub(b.From)
	return float64(u.X)*float64(v.X)+float64(u.Y)*float64(v.Y) < 0
}

// pieces names the pieces on both sides of a stretch: those whose edges hold its
// lines.
func (b *seamBench) pieces(m cloth.Meeting) [2]string {
	var names [2]string
	for i, l := range m.Lines {
		at := along(l, b.down)
		for _, p := range b.s.w.work.Dressed.Pieces() {
			on := at.X == p.Area.Min.X || at.X == p.Area.Max.X || at.Y == p.Area.Min.Y || at.Y == p.Area.Max.Y
			if p.View == l.View && on && p.Area.Holds(at) && p.Window().Grown(geom.Micrometre).Holds([2]geom.Point{m.At, m.On}[i]) {
				names[i] = p.Name
			}
		}
	}
	return names
}

// lay shows one side of the seam.
func (b *seamBench) lay(sc *board.Scene, g *printing, p cloth.Piece, h half) {
	box := h.view.box(p.Area).Intersect(h.room)
	if box.Empty() {
		return
	}
	sc.Areas = append(sc.Areas, board.Area{Box: box, Shut: dyed(b.s.w.Order().Cloth.Dye), Open: worn().undyed})
	on := lieOf(p, geom.Point{})
	if h.view.turned {
		on = lie{turned: !on.turned, move: h.view.move.Sub(on.move)}
	} else {
		on.move = on.move.Add(h.view.move)
	}
	g.onto(on, box)
	for _, j := range b.s.w.work.JointsOn(p, b.s.chance.prints) {
		line := make([]geom.Point, len(j.Line))
		for i, at := range j.Line {
			line[i] = h.view.put(at)
		}
		for _, piece := range box.Cut(line) {
			sc.Marks = append(sc.Marks, jointMark(piece, j.Ends))
		}
	}
	g.markTurn(sc, on, box)
}

// markOff draws where the two sides meet, and by how much the pattern on the second side is off what
// the first side's would be: a bar along it and one across.
func (b *seamBench) markOff(sc *board.Scene, m cloth.Meeting, halves [2]half) {
	s := b.side()
	seam := []geom.Point{{Y: -s}, {Y: s}}
	if halves[0].room.Min.X == halves[1].room.Min.X {
		seam = []geom.Point{{X: -s}, {X: s}}
	}
	sc.Marks = append(sc.Marks, board.Mark{Shape: board.Line, Points: seam, Colour: worn().onCloth, Width: 1.5})
	foot := geom.Point{Y: s/2 - s/8}
	for _, bar := range []geom.Point{{Y: m.PhaseAlong}, {X: m.PhaseAcross}} {
		if bar != (geom.Point{}) {
			sc.Marks = append(sc.Marks, board.Mark{Shape: board.Bar, Points: []geom.Point{foot, foot.Add(bar)}, Colour: worn().onCloth, Width: 2.5})
		}
	}
}
