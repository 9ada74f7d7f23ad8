package report

import (
	"fmt"

	"tsugime/export"
	"tsugime/repeat/geom"
)

// A marking is a set of pages that show one drawing at true scale, with a first
// page that says how they go together.
type marking struct {
	f     figures
	title string // of the order
	kind  string // Transfer, Binding
	facts string // one line: step, size
	of    *export.Drawing
	field geom.Box // of the pattern, in the drawing
	pages paging
	first func(l *leaf, room geom.Box) // what the first page says besides the map
	fixed correction
}

// book returns the first page and the marking pages in reading order.
func (m marking) book() export.Book {
	b := export.Book{Title: m.title, Subject: m.kind}
	b.Pages = append(b.Pages, export.Page{Drawing: m.firstPage()})
	for i := range m.pages.count() {
		b.Pages = append(b.Pages, export.Page{
			Drawing: m.page(i),
			Views:   []export.View{{Of: m.of, Window: m.pages.window(i), At: m.pages.at()}},
		})
	}
	return m.fixed.on(b)
}

// page draws what stands around and on the window of page i.
func (m marking) page(i int) export.Drawing {
	l := newLeaf(m.pages.page.Width, m.pages.page.Height)
	c, r := i%m.pages.cols(), i/m.pages.cols()
	number := m.f.say("%d of %d", i+1, m.pages.count())
	m.head(l, number, m.f.say("row %d column %d", r+1, c+1))
	window := geom.BoxOf(m.pages.at(), m.pages.at().Add(m.pages.windowSize))
	l.frame(hairline, window)
	m.crosses(l, i)
	m.neighbours(l, window, c, r)
	checkCorner(l, m.f, m.fixed)
	feedArrow(l, m.f, geom.Point{X: edge + geom.MM(2), Y: bandTop + geom.MM(3)})
	m.smallMap(l, i)
	return l.drawing(m.title)
}

// head sets title, kind and the page's number above a rule.
func (m marking) head(l *leaf, number, place string) {
	right := l.width - edge
	l.text(words, numberStyle, geom.Point{X: right, Y: edge + geom.MM(4.6)}, export.End, number)
	l.text(captions, captionStyle, geom.Point{X: right, Y: edge + geom.MM(9.6)}, export.End, place)
	room := right - edge - max(numberStyle.width(number), captionStyle.width(place)) - geom.MM(6)
	title, s := fit(m.title, numberStyle, room)
	l.text(words, s, geom.Point{X: edge, Y: edge + geom.MM(4.6)}, export.Start, title)
	facts, s := fit(m.kind+" · "+m.facts, captionStyle, room)
	l.text(captions, s, geom.Point{X: edge, Y: edge + geom.MM(9.6)}, export.Start, facts)
	l.line(hairline, geom.Point{X: edge, Y: edge + geom.MM(12.5)}, geom.Point{X: right, Y: edge + geom.MM(12.5)})
}

// crosses draws the page's crosses, and in the band the letters and numbers by
// which they are told apart.
func (m marking) crosses(l *leaf, i int) {
	p := m.pages
	window := p.window(i)
	move := p.at().Sub(window.Min)
	xs, ys := p.nodes(i)
	arm := min(p.lap/2-geom.MM(0.5), crossArm)
	top, bottom := p.at().Y, p.at().Y+p.windowSize.Y
	left, right := p.at().X, p.at().X+p.windowSize.X
	for _, nx := range xs {
		x := p.nodesX[nx] + move.X
		for _, ny := range ys {
			y := p.nodesY[ny] + move.Y
			l.line(accentLine, geom.Point{X: x - arm, Y: y}, geom.Point{X: x + arm, Y: y})
			l.line(accentLine, geom.Point{X: x, Y: y - arm}, geom.Point{X: x, Y: y + arm})
		}
		l.line(accentLine, geom.Point{X: x, Y: top - geom.MM(2)}, geom.Point{X: x, Y: top})
		l.line(accentLine, geom.Point{X: x, Y: bottom}, geom.Point{X: x, Y: bottom + geom.MM(2)})
		l.text(accentWord, captionStyle, geom.Point{X: x, Y: top - geom.MM(3)}, export.Middle, columnName(nx))
		l.text(accentWord, captionStyle, geom.Point{X: x, Y: bottom + geom.MM(5)}, export.Middle, columnName(nx))
	}
	for _, ny := range ys {
		y, name := p.nodesY[ny]+move.Y, fmt.Sprint(ny+1)
		l.line(accentLine, geom.Point{X: left - geom.MM(2), Y: y}, geom.Point{X: left, Y: y})
		l.line(accentLine, geom.Point{X: right, Y: y}, geom.Point{X: right + geom.MM(2), Y: y})
		l.text(accentWord, captionStyle, geom.Point{X: left - geom.MM(3), Y: y + geom.MM(1)}, export.End, name)
		l.text(accentWord, captionStyle, geom.Point{X: right + geom.MM(3), Y: y + geom.MM(1)}, export.Start, name)
	}
}

// neighbours says at each edge which page goes on there.
func (m marking) neighbours(l *leaf, window geom.Box, c, r int) {
	cols, rows := m.pages.cols(), m.pages.rows()
	mid := window.Centre()
	join := func(c, r int) string { return m.f.say("joins page %d", r*cols+c+1) }
	if r > 0 {
		l.text(captions, captionStyle, geom.Point{X: mid.X, Y: window.Min.Y - geom.MM(3)}, export.Middle, join(c, r-1))
	}
	if r < rows-1 {
		l.text(captions, captionStyle, geom.Point{X: mid.X, Y: window.Max.Y + geom.MM(5)}, export.Middle, join(c, r+1))
	}
	if c > 0 {
		l.turned(captions, captionStyle, geom.Point{X: window.Min.X - geom.MM(2.5), Y: mid.Y}, export.Middle, join(c-1, r))
	}
	if c < cols-1 {
		l.turned(captions, captionStyle, geom.Point{X: window.Max.X + geom.MM(4.6), Y: mid.Y}, export.Middle, join(c+1, r))
	}
}

// checkCorner draws two sides of the check square, in the corner of the bands
// where they cover nothing.
func checkCorner(l *leaf, f figures, fixed correction) {
	o := geom.Point{X: edge + geom.MM(2), Y: l.height - edge - geom.MM(2)}
	scaleBar(l, o, geom.Point{X: 1})
	scaleBar(l, o, geom.Point{Y: -1})
	x := o.X + checkLength + geom.MM(6)
	l.text(words, strongStyle, geom.Point{X: x, Y: o.Y - geom.MM(8.4)}, export.Start, f.say("Print at 100 %,"))
	l.text(words, strongStyle, geom.Point{X: x, Y: o.Y - geom.MM(3.6)}, export.Start, f.say("then measure:"))
	l.text(captions, captionStyle, geom.Point{X: x, Y: o.Y + geom.MM(1)}, export.Start, f.checkText())
	note, s := fit(fixed.note(f), captionStyle, l.width-edge-x)
	l.text(accentWord, s, geom.Point{X: x, Y: o.Y - geom.MM(13.2)}, export.Start, note)
}

// scaleBar draws 100 mm from o in a direction, with a tick every 10 mm on the
// side of the page's edge.
func scaleBar(l *leaf, o geom.Point, way geom.Point) {
	at := func(along geom.Length) geom.Point {
		return geom.Point{X: o.X + way.X*along, Y: o.Y + way.Y*along}
	}
	l.line(rule, o, at(checkLength))
	for i := range geom.Length(11) {
		tick := geom.MM(1.2)
		if i%5 == 0 {
			tick = geom.MM(2)
		}
		a := at(i * checkLength / 10)
		l.line(rule, a, a.Add(geom.Point{X: way.Y * tick, Y: way.X * tick}))
	}
}

// feedArrow shows which way the stencil is fed: down the sheet.
func feedArrow(l *leaf, f figures, from geom.Point) {
	l.arrow(rule, from, from.Add(geom.Point{Y: geom.MM(24)}))
	l.turned(captions, captionStyle, geom.Point{X: from.X + geom.MM(4.2), Y: from.Y + geom.MM(12)}, export.Middle, f.say("feed"))
}
