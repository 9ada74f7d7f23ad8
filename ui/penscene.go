package ui

import (
	"strings"

	"tsugime/export/raster"
	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
	"tsugime/repeat/pen"
	"tsugime/ui/board"
)

// drawn are the lines as they would be with a click now, with their own copies, and
// the outline they would bound: none while they enclose nothing.
func (d *penHand) drawn() ([]pen.Stroke, geom.Shape) {
	if d.wantsCentre() || !d.over && !d.begun {
		return nil, geom.Shape{}
	}
	if d.panel.draws.whole() {
		return d.drawnWhole()
	}
	if !d.begun {
		return nil, geom.Shape{}
	}
	s := d.stroke
	if g, ok := d.coming(); ok {
		if next, err := s.Add(g); err == nil {
			s = next
		}
	}
	return d.wreath.Whole(s), geom.Shape{Outline: d.cover(s)}
}

// coming is the piece that a click now would draw.
func (d *penHand) coming() (geom.Segment, bool) {
	if !d.over {
		return geom.Segment{}, false
	}
	if d.pulling && d.panel.draws == curves {
		return pen.CurveTo(d.stroke.End(), d.out, pen.Opposite(d.from, d.at.At), d.from), true
	}
	g, err := d.piece(d.at.At)
	return g, err == nil
}

// cover is what a line bounds when it is closed, with its own copies.
func (d *penHand) cover(s pen.Stroke) geom.Outline {
	whole, err := d.closed(s)
	if err != nil {
		return nil
	}
	o, _, err := pen.Outline(whole...)
	if err != nil {
		return nil
	}
	return o
}

// drawnWhole is the whole shape as it would be with a click, or the end of a pull, now.
func (d *penHand) drawnWhole() ([]pen.Stroke, geom.Shape) {
	f, err := d.panel.figure()
	if err != nil {
		return nil, geom.Shape{}
	}
	at := d.at.At
	var shape geom.Shape
	if d.pulling {
		shape, at, _, err = f.pulled(d.from, d.at.At)
	} else {
		shape, err = f.shape()
	}
	if err != nil {
		return nil, geom.Shape{}
	}
	whole := d.wreathed(shape.Moved(at))
	o, _, err := pen.Outline(whole...)
	if err != nil {
		return nil, geom.Shape{}
	}
	return whole, geom.Shape{Outline: o}
}

// multiplied returns a shape as a motif with what the order's plane group makes of it.
func (s *draft) multiplied(shape geom.Shape) []pattern.Motif {
	o := s.w.Order()
	m := []pattern.Motif{{ID: 1, Shape: shape}}
	all, err := o.Group.Multiply(o.Unit.Lattice, m)
	if err != nil {
		return m
	}
	return all
}

func (d *penHand) laid() []board.Laid {
	at := []raster.Lay{{}}
	laid := []board.Laid{{Ground: d.s.painted(), Lays: at}}
	if _, shape := d.drawn(); len(shape.Outline) > 0 && d.s.over(shape.Outline) <= mostShownOver {
		laid = append(laid, board.Laid{Ground: groundOf(d.w.Order().Unit.Lattice, d.s.multiplied(shape)), Lays: at})
	}
	return laid
}

// show marks the line with its nodes and handles, its copies, and what holds the
// place under the pointer.
func (d *penHand) show(sc *board.Scene) {
	strokes, _ := d.drawn()
	d.s.markStrokes(sc, strokes, d.w.board.Seen())
	d.showWreath(sc)
	if d.begun {
		sc.Marks = append(sc.Marks, board.Mark{Shape: board.Peg, Points: d.stroke.Nodes(), Colour: worn().indigo},
			board.Mark{Shape: board.Ring, Points: []geom.Point{d.stroke.Start}, Colour: worn().indigo, Width: 1.5})
		sc.Marks = append(sc.Marks, handleMarks(d.stroke)...)
		if d.out != d.stroke.End() {
			sc.Marks = append(sc.Marks, handleMark(d.stroke.End(), d.out)...)
		}
	}
	if d.bends {
		sc.Marks = append(sc.Marks, board.Mark{Shape: board.Bead, Points: []geom.Point{d.middle}, Colour: worn().indigo})
	}
	if d.pulling && d.pulls() && !d.wantsCentre() {
		if d.panel.draws == curves {
			sc.Marks = append(sc.Marks, handleMark(d.from, pen.Opposite(d.from, d.at.At))...)
		}
		sc.Marks = append(sc.Marks, handleMark(d.from, d.at.At)...)
	}
	if d.over {
		d.s.markPlace(sc, d.at, d.way())
	}
}

// showWreath marks the motif's own centre and mirror lines.
func (d *penHand) showWreath(sc *board.Scene) {
	if d.wreath.Plain() || !d.centred {
		return
	}
	c := d.wreath.Centre
	seen := d.w.board.Seen()
	for _, along := range d.wreath.Axes() {
		if piece, ok := across(c, along, seen); ok {
			sc.Marks = append(sc.Marks, board.Mark{Shape: board.Dashes, Points: piece[:], Colour: worn().indigo, Width: 1})
		}
	}
	sc.Marks = append(sc.Marks, board.Mark{Shape: board.Star, Points: []geom.Point{c}, Colour: worn().indigo, Width: 1.5})
}

// markStrokes draws lines strongly where they are drawn, and lightly where the plane
// group and the lattice repeat them.
func (s *draft) markStrokes(sc *board.Scene, strokes []pen.Stroke, seen geom.Box) {
	chord := max(s.w.reach()/(4*snapPx), geom.Grid)
	var o geom.Outline
	for _, k := range strokes {
		o = append(o, geom.Contour{Start: k.Start, Segments: k.Segments})
		sc.Marks = append(sc.Marks, board.Mark{Shape: board.Line, Points: k.Points(chord), Colour: worn().indigo, Width: 2.2})
	}
	if len(o) == 0 || s.over(o) > mostOver {
		return
	}
	l, n := s.w.Order().Unit.Lattice, 0
	for _, m := range s.multiplied(geom.Shape{Outline: o}) {
		placed := m.Placed().Outline
		for _, shift := range l.Places(reachOf(placed.Bounds(), seen)) {
			if m.ID == 1 && shift == (geom.Point{}) || n >= mostMarks {
				continue
			}
			n++
			for _, c := range placed.Moved(shift) {
				k := pen.Stroke{Start: c.Start, Segments: c.Segments}
				sc.Marks = append(sc.Marks, board.Mark{Shape: board.Line, Points: k.Points(2 * chord), Colour: worn().indigo, Width: 0.9})
			}
		}
	}
}

// reachOf returns by which ways a box can be moved so that it meets a window.
func reachOf(box, window geom.Box) geom.Box {
	return geom.BoxOf(window.Min.Sub(box.Max), window.Max.Sub(box.Min))
}

// handleMarks are the handles of a stroke, each on its line.
func handleMarks(s pen.Stroke) []board.Mark {
	var marks []board.Mark
	for _, h := range s.Handles() {
		marks = append(marks, handleMark(s.Node(h.Node), h.At)...)
	}
	return marks
}

func handleMark(node, at geom.Point) []board.Mark {
	return []board.Mark{
		{Shape: board.Line, Points: []geom.Point{node, at}, Colour: worn().indigo, Width: 1},
		{Shape: board.Ring, Points: []geom.Point{at}, Colour: worn().indigo, Width: 1.5},
	}
}

// markPlace marks the place under the pointer, with the way to it and what holds it.
func (s *draft) markPlace(sc *board.Scene, at pen.Snapped, way string) {
	shape := board.Cross
	if len(at.Names) > 0 {
		shape = board.Ring
	}
	sc.Marks = append(sc.Marks, board.Mark{Shape: shape, Points: []geom.Point{at.At}, Colour: worn().indigo, Width: 1.5})
	words := way
	if by := held(at); by != "" {
		words = strings.TrimPrefix(way+"  ·  "+by, "  ·  ")
	}
	if words != "" {
		reach := s.w.reach()
		sc.Labels = append(sc.Labels, board.Label{At: at.At.Add(geom.Point{X: 2 * reach, Y: -3 * reach}), Text: words, Colour: worn().ink, Shield: worn().shield, Size: 12})
	}
}
