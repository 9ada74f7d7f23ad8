package report

import (
	"tsugime/export"
	"tsugime/repeat/geom"
)

// A flow sets headings, paragraphs, tables and figures down a page and goes on
// to the next where one is full. No block but a paragraph is parted.
type flow struct {
	f                  figures
	title, kind, facts string
	size               export.PageSize
	leaves             []*leaf
	close              float64     // by which letters, rows and gaps are set closer; 0 for not at all
	y                  geom.Length // where the next block begins
}

// The frame of a page of words.
const (
	flowLeft   = 18 * geom.Millimetre
	flowTop    = 40 * geom.Millimetre
	flowBottom = 20 * geom.Millimetre
)

func newFlow(f figures, title, kind, facts string, size export.PageSize) *flow {
	fl := &flow{f: f, title: title, kind: kind, facts: facts, size: size}
	fl.turn()
	return fl
}

// turn begins a page: title and kind above a rule.
func (f *flow) turn() {
	l := newLeaf(f.size.Width, f.size.Height)
	f.leaves, f.y = append(f.leaves, l), flowTop
	kindWidth := headStyle.width(f.kind)
	right := l.width - flowLeft
	title, s := fit(f.title, titleStyle, f.width()-kindWidth-geom.MM(8))
	l.text(words, s, geom.Point{X: flowLeft, Y: geom.MM(20)}, export.Start, title)
	l.text(accentWord, headStyle, geom.Point{X: right, Y: geom.MM(20)}, export.End, f.kind)
	facts, s := fit(f.facts, bodyStyle, f.width())
	l.text(captions, s, geom.Point{X: flowLeft, Y: geom.MM(27)}, export.Start, facts)
	l.line(rule, geom.Point{X: flowLeft, Y: geom.MM(31.5)}, geom.Point{X: right, Y: geom.MM(31.5)})
}

func (f *flow) leaf() *leaf        { return f.leaves[len(f.leaves)-1] }
func (f *flow) width() geom.Length { return f.size.Width - 2*flowLeft }
func (f *flow) left() geom.Length  { return f.size.Height - flowBottom - f.y }

// room turns the page where less than a height is left.
func (f *flow) room(height geom.Length) {
	if f.left() < height && f.y > flowTop {
		f.turn()
	}
}

// heading sets a heading; it stays with at least 30 mm of what follows, or half of
// that where the page is set close.
func (f *flow) heading(text string) {
	follows := geom.MM(38)
	if f.close > 0 {
		follows = geom.MM(23)
	}
	f.room(follows)
	if f.y > flowTop {
		f.y += f.gap(geom.MM(5))
	}
	f.y += headStyle.height
	f.leaf().text(words, headStyle, geom.Point{X: flowLeft, Y: f.y}, export.Start, text)
	f.y += f.gap(geom.MM(3))
}

// gap and styled return what they are given, closer.
func (f *flow) gap(l geom.Length) geom.Length { return l.Times(1 - f.close) }

func (f *flow) styled(s style) style { return style{s.height.Times(1 - f.close), s.bold} }

func (f *flow) paragraph(text string) { f.set(captions, captionStyle, flowLeft, text) }

// point sets a sentence behind a short mark.
func (f *flow) point(text string) { f.pointIn(bodyStyle, text) }

// pointIn sets a sentence in a style of its own behind a short mark.
func (f *flow) pointIn(s style, text string) {
	f.room(2 * s.leading())
	y := f.y + s.height.Times(0.66)
	f.leaf().line(accentLine, geom.Point{X: flowLeft, Y: y}, geom.Point{X: flowLeft + geom.MM(2.5), Y: y})
	f.set(words, s, flowLeft+geom.MM(5), text)
}

func (f *flow) set(p pen, s style, x geom.Length, text string) {
	s = f.styled(s)
	for _, line := range wrap(text, s, f.size.Width-flowLeft-x) {
		f.room(s.leading())
		f.leaf().text(p, s, geom.Point{X: x, Y: f.y + s.height}, export.Start, line)
		f.y += s.leading()
	}
	f.y += f.gap(geom.MM(1.5))
}

// figure leaves a height free and has it drawn.
func (f *flow) figure(height geom.Length, draw func(l *leaf, room geom.Box)) {
	f.room(height)
	o := geom.Point{X: flowLeft, Y: f.y}
	draw(f.leaf(), geom.BoxOf(o, o.Add(geom.Point{X: f.width(), Y: height})))
	f.y += height + geom.MM(2)
}

// pages returns what was set, each page with its number at the foot.
func (f *flow) pages() []export.Page {
	var pages []export.Page
	for i, l := range f.leaves {
		y := l.height - geom.MM(11)
		if len(f.leaves) > 1 {
			l.text(captions, captionStyle, geom.Point{X: l.width - flowLeft, Y: y}, export.End,
				f.f.say("%s, page %d of %d", f.kind, i+1, len(f.leaves)))
		}
		pages = append(pages, export.Page{Drawing: l.drawing(f.title)})
	}
	return pages
}
