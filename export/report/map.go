package report

import (
	"fmt"
	"slices"

	"tsugime/export"
	"tsugime/repeat/geom"
)

// smallMap shows in the bottom right corner which of all pages this one is.
func (m marking) smallMap(l *leaf, here int) {
	room := geom.BoxOf(
		geom.Point{X: l.width - edge - geom.MM(22), Y: l.height - edge - geom.MM(13)},
		geom.Point{X: l.width - edge, Y: l.height - edge},
	)
	cells := m.cells(room)
	l.area(accentArea, corners(cells[here])...)
	for _, c := range cells {
		l.frame(hairline, c)
	}
}

// cells lays the pages side by side, as their crosses part them, into a room:
// in proportion, at its right and bottom edge.
func (m marking) cells(room geom.Box) []geom.Box {
	area := m.pages.area()
	k := min(float64(room.Width())/float64(area.Width()), float64(room.Height())/float64(area.Height()))
	o := room.Max.Sub(geom.Point{X: area.Width().Times(k), Y: area.Height().Times(k)})
	cuts := func(nodes []geom.Length, from, to geom.Length) []geom.Length {
		at := append([]geom.Length{from}, nodes[1:len(nodes)-1]...)
		return append(at, to)
	}
	xs := cuts(m.pages.nodesX, area.Min.X, area.Max.X)
	ys := cuts(m.pages.nodesY, area.Min.Y, area.Max.Y)
	put := func(x, y geom.Length) geom.Point {
		return o.Add(geom.Point{X: (x - area.Min.X).Times(k), Y: (y - area.Min.Y).Times(k)})
	}
	var cells []geom.Box
	for r := range m.pages.rows() {
		for c := range m.pages.cols() {
			cells = append(cells, geom.BoxOf(put(xs[c], ys[r]), put(xs[c+1], ys[r+1])))
		}
	}
	return cells
}

// firstPage holds the title, the map of the pages, the whole check square, and
// what there is to say. Upright they stand under each other, on the long side
// the square stands beside the rest.
func (m marking) firstPage() export.Drawing {
	const gap = 12 * geom.Millimetre
	l := newLeaf(m.pages.page.Width, m.pages.page.Height)
	body := m.bigHead(l)
	above, beside, square := body, body, body.Min
	if l.width < l.height {
		above.Max.Y -= checkLength + gap
		square.Y = m.bigMap(l, above) + gap
		beside.Min = square.Add(geom.Point{X: checkLength + geom.MM(8)})
	} else {
		above.Min.X += checkLength + geom.MM(8)
		above.Max.Y = body.Min.Y + body.Height()*2/5
		beside.Min = geom.Point{X: above.Min.X, Y: m.bigMap(l, above) + geom.MM(9)}
	}
	checkSquare(l, square, m.f, m.fixed)
	m.first(l, beside)
	return l.drawing(m.title)
}

// bigHead sets the title of a first page and returns what is left below.
func (m marking) bigHead(l *leaf) geom.Box {
	left, right := edge+geom.MM(4), l.width-edge-geom.MM(4)
	title, s := fit(m.title, titleStyle, right-left)
	l.text(words, s, geom.Point{X: left, Y: edge + geom.MM(9)}, export.Start, title)
	facts, s := fit(m.facts, bodyStyle, right-left)
	l.text(captions, s, geom.Point{X: left, Y: edge + geom.MM(15.5)}, export.Start, facts)
	y := edge + geom.MM(20)
	l.line(rule, geom.Point{X: left, Y: y}, geom.Point{X: right, Y: y})
	l.text(accentWord, headStyle, geom.Point{X: left, Y: y + geom.MM(7.5)}, export.Start, m.kind)
	return geom.BoxOf(geom.Point{X: left, Y: y + geom.MM(12)}, geom.Point{X: right, Y: l.height - edge - geom.MM(2)})
}

// bigMap draws the pages with their numbers over the outline of what they show,
// and returns where it ends.
func (m marking) bigMap(l *leaf, room geom.Box) geom.Length {
	area := m.pages.area()
	k := min(float64(room.Width())/float64(area.Width()), float64(room.Height())/float64(area.Height()), 1)
	room.Max = room.Min.Add(geom.Point{X: area.Width().Times(k), Y: area.Height().Times(k)})
	put := func(p geom.Point) geom.Point {
		d := p.Sub(area.Min)
		return room.Min.Add(geom.Point{X: d.X.Times(k), Y: d.Y.Times(k)})
	}
	field := m.field
	l.area(wash, corners(geom.BoxOf(put(field.Min), put(field.Max)))...)
	for _, layer := range m.of.Layers {
		if layer.Name == "paper-edge" || layer.Name == "joint-line" {
			for _, line := range layer.Lines {
				l.clippedLine(hairline, room, line, put)
			}
		}
	}
	cells := m.cells(room)
	s := style{min(geom.MM(8), cells[0].Height()/2, cells[0].Width()/3), true}
	for i, c := range cells {
		l.frame(rule, c)
		at := c.Centre().Add(geom.Point{Y: s.height.Times(0.35)})
		l.text(words, s, at, export.Middle, fmt.Sprint(i+1))
	}
	return room.Max.Y
}

// checkSquare draws the whole square with its measure inside.
func checkSquare(l *leaf, at geom.Point, f figures, fixed correction) {
	b := geom.BoxOf(at, at.Add(geom.Point{X: checkLength, Y: checkLength}))
	l.frame(rule, b)
	c := b.Centre()
	l.text(words, headStyle, geom.Point{X: c.X, Y: c.Y - geom.MM(2)}, export.Middle, f.checkText())
	l.text(captions, captionStyle, geom.Point{X: c.X, Y: c.Y + geom.MM(4)}, export.Middle, f.say("Measure both sides before you paste or cut."))
	l.text(captions, captionStyle, geom.Point{X: c.X, Y: c.Y + geom.MM(8.5)}, export.Middle, f.say("If they differ, print again at 100 %."))
	note, s := fit(fixed.note(f), captionStyle, checkLength-geom.MM(6))
	l.text(accentWord, s, geom.Point{X: c.X, Y: c.Y + geom.MM(15)}, export.Middle, note)
}

// steps sets numbered sentences under each other and returns where they end.
func (l *leaf) steps(at geom.Point, width geom.Length, sentences []string) geom.Length {
	indent := strongStyle.width("9") + geom.MM(3)
	for i, sentence := range sentences {
		at.Y += bodyStyle.height
		l.text(accentWord, strongStyle, at, export.Start, fmt.Sprint(i+1))
		used := l.lines(words, bodyStyle, geom.Point{X: at.X + indent, Y: at.Y}, width-indent, sentence)
		at.Y += used - bodyStyle.height + geom.MM(2)
	}
	return at.Y
}

// clippedLine draws those runs of a line whose points lie in the room.
func (l *leaf) clippedLine(p pen, room geom.Box, line export.Line, put func(geom.Point) geom.Point) {
	points := line.Points
	if line.Closed && len(points) > 0 {
		points = append(slices.Clone(points), points[0])
	}
	var run []geom.Point
	for _, q := range points {
		if at := put(q); room.Holds(at) {
			run = append(run, at)
			continue
		}
		if len(run) > 1 {
			l.line(p, run...)
		}
		run = nil
	}
	if len(run) > 1 {
		l.line(p, run...)
	}
}
