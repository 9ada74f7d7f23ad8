package report

import (
	"strings"

	"tsugime/export"
	"tsugime/repeat/cloth"
	"tsugime/repeat/geom"
)

// The measures of a strip: the scale runs along its middle, where it is folded
// over the board's edge, face A above it and face B below.
const (
	stripHigh  = 35 * geom.Millimetre
	markLong   = 12 * geom.Millimetre // from the middle
	stripInset = 15 * geom.Millimetre // from the page's edge to a strip's end
	labelRoom  = 20 * geom.Millimetre // that the words of a mark take
)

var (
	stripFigure = style{geom.MM(2.3), false}
	stripNumber = style{geom.MM(4.2), true}
)

// A strip is a piece of a scale on a page.
type strip struct {
	l     *leaf
	run   cloth.Run
	f     figures
	s     scale
	piece span
	o     geom.Point // where the piece's beginning lies on the page, on the fold
}

// x returns where a place of the scale lies on the page, and whether this piece
// shows it.
func (p strip) x(at geom.Length) (geom.Length, bool) {
	return p.o.X + at - p.piece.from, at >= p.piece.from && at <= p.piece.to
}

// outward is -1 for face A, above the fold, and 1 for face B.
func outward(face cloth.Face) geom.Length {
	if face == cloth.FaceB {
		return 1
	}
	return -1
}

// draw sets the whole piece.
func (p strip) draw() {
	left, right := p.o.X, p.o.X+p.piece.to-p.piece.from
	p.l.frame(hairline, geom.BoxOf(geom.Point{X: left, Y: p.o.Y - stripHigh/2}, geom.Point{X: right, Y: p.o.Y + stripHigh/2}))
	p.hatch()
	p.l.line(rule, geom.Point{X: left, Y: p.o.Y}, geom.Point{X: right, Y: p.o.Y})
	p.ticks()
	shown := map[cloth.Face]geom.Length{}
	for _, m := range p.s.marks {
		p.mark(m, shown)
	}
	p.panels()
	p.faces()
}

// ticks draws the scale: centimetres, or kujira bu; longer at every fifth,
// numbered at every tenth: 100 mm, or a kujira sun.
func (p strip) ticks() {
	at := func(i geom.Length) geom.Length { return i * geom.Centimetre }
	if p.f.cloth.unit == geom.KujiraSun {
		at = func(i geom.Length) geom.Length { return i * 250 * geom.Millimetre / 66 } // art. 4 of the act of 1891
	}
	for i := p.piece.from / at(1); at(i) <= p.piece.to; i++ {
		x, here := p.x(at(i))
		if !here {
			continue
		}
		long := geom.MM(1.2)
		switch {
		case i%10 == 0:
			long = geom.MM(2.8)
		case i%5 == 0:
			long = geom.MM(2)
		}
		p.l.line(hairline, geom.Point{X: x, Y: p.o.Y - long}, geom.Point{X: x, Y: p.o.Y + long})
		if i%10 == 0 {
			p.figure(at(i), x)
		}
	}
}

// figure numbers a whole of the scale where no mark and no end is in the way.
func (p strip) figure(at, x geom.Length) {
	text := p.f.cloth.unit.Number(at, 0)
	room := span{at, at + stripFigure.width(text) + geom.MM(2)}
	for _, m := range p.s.marks {
		if m.At >= room.from-geom.MM(1) && m.At <= room.to && m.Face != cloth.FaceB {
			return
		}
	}
	if room.to < p.piece.to {
		p.l.text(captions, stripFigure, geom.Point{X: x + geom.MM(0.8), Y: p.o.Y - geom.MM(1.9)}, export.Start, text)
	}
}

// mark draws a placement's mark on its face, with its number and its distance from
// the board's end beside it, on the side to which the placement goes. Marks that
// stand too near for words have none.
func (p strip) mark(m cloth.Mark, shown map[cloth.Face]geom.Length) {
	x, here := p.x(m.At)
	if !here {
		return
	}
	down := outward(m.Face)
	p.l.line(accentLine, geom.Point{X: x, Y: p.o.Y}, geom.Point{X: x, Y: p.o.Y + down*markLong})
	if before, ok := shown[m.Face]; ok && m.At-before < 2*labelRoom {
		return
	}
	shown[m.Face] = m.At
	anchor, off := export.Start, geom.MM(1)
	if m.Face == cloth.FaceB {
		anchor, off = export.End, -off
	}
	name, figureText := markName(m, p.run, p.f), p.f.cloth.with(m.At)
	wide := max(stripNumber.width(name), stripFigure.width(figureText)) + geom.MM(1)
	if off > 0 && x+wide > p.o.X+p.piece.to-p.piece.from || off < 0 && x-wide < p.o.X {
		anchor, off = export.Start+export.End-anchor, -off // no room on that side
	}
	number, figure := geom.MM(8.2), geom.MM(4.9)
	if down > 0 {
		number, figure = geom.MM(11.2), geom.MM(6.4)
	}
	pen := words
	if m.Turn || m.Part || m.End {
		pen = accentWord
	}
	p.l.text(pen, stripNumber, geom.Point{X: x + off, Y: p.o.Y + down*number}, anchor, name)
	p.l.text(captions, stripFigure, geom.Point{X: x + off, Y: p.o.Y + down*figure}, anchor, figureText)
}

// hatch draws the turn, where the cloth can't be printed well.
func (p strip) hatch() {
	from, to := max(p.s.turn.from, p.piece.from), min(p.s.turn.to, p.piece.to)
	if from >= to {
		return
	}
	a, _ := p.x(from)
	b, _ := p.x(to)
	box := geom.BoxOf(geom.Point{X: a, Y: p.o.Y - stripHigh/2}, geom.Point{X: b, Y: p.o.Y + stripHigh/2})
	for c := box.Min.X - stripHigh; c < box.Max.X; c += 2 * geom.Millimetre {
		p1, p2, ok := clipped(geom.Point{X: c, Y: box.Max.Y}, geom.Point{X: c + stripHigh, Y: box.Min.Y}, box)
		if ok {
			p.l.line(hairline, p1, p2)
		}
	}
}

// panels marks where the panels of the garment begin, at the strip's outer edges.
func (p strip) panels() {
	var taken []geom.Box
	for _, e := range p.s.panels {
		x, here := p.x(e.at)
		if !here {
			continue
		}
		down := outward(e.face)
		outer := p.o.Y + down*stripHigh/2
		p.l.line(rule, geom.Point{X: x, Y: outer}, geom.Point{X: x, Y: outer - down*geom.MM(3.6)})
		text := export.Text{At: geom.Point{X: x + geom.MM(1), Y: outer + geom.MM(2.9)}, Height: stripFigure.height, Text: e.name}
		if down > 0 {
			text.At.Y, text.At.X, text.Anchor = outer-geom.MM(1.3), x-geom.MM(1), export.End
		}
		box := textBox(text)
		if box.Min.X < p.o.X || box.Max.X > p.o.X+p.piece.to-p.piece.from {
			text.At.X, text.Anchor = 2*x-text.At.X, export.Start+export.End-text.Anchor
			box = textBox(text)
		}
		free := box.Min.X >= p.o.X && box.Max.X <= p.o.X+p.piece.to-p.piece.from
		for _, b := range taken {
			free = free && !b.Meets(box)
		}
		if free {
			p.l.texts(words, []export.Text{text})
			taken = append(taken, box)
		}
	}
}

// faces names the two halves at the beginning of a piece.
func (p strip) faces() {
	for _, face := range []cloth.Face{cloth.FaceA, cloth.FaceB} {
		down := outward(face)
		at := geom.Point{X: p.o.X - geom.MM(2), Y: p.o.Y + down*geom.MM(9) + geom.MM(1.5)}
		p.l.text(captions, strongStyle, at, export.End, strings.ToUpper(string(face)))
	}
}
