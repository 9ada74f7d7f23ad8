package report

import (
	"errors"
	"fmt"

	"tsugime/export"
	"tsugime/export/pdf"
	"tsugime/repeat"
	"tsugime/repeat/geom"
)

var errNoBoard = errors.New("poured dye is not laid on a board; there is nothing to mark")

// The measures of a page of strips.
const (
	stripTop    = 33 * geom.Millimetre
	stripGap    = 4 * geom.Millimetre
	stripBottom = 24 * geom.Millimetre
)

// Strip returns the scale for the board's edge in pieces, several to a page, laid
// on the page's long side: printed at 100 %, cut along their frames and joined by
// their crosses, they are as long as the board, with the mark of every placement
// of both faces. An error says that the page can't be used or that the cloth is
// not laid on a board.
func Strip(w repeat.Work, opt Options) (export.Book, error) {
	size, f, err := opt.settled(w)
	if err != nil {
		return export.Book{}, err
	}
	if size.Height > size.Width {
		size = size.Turned()
	}
	return stripBook(w, size, f, opt.correction(w))
}

// StripWhole returns the scale on pages as long as a PDF allows, one piece to a
// page, for a printer that prints from a roll.
func StripWhole(w repeat.Work, opt Options) (export.Book, error) {
	f := opt.with(w).figures()
	longest := geom.Length(0)
	for _, s := range scales(w, f) {
		longest = max(longest, s.length)
	}
	size := export.PageSize{Name: "roll", Height: stripTop + stripHigh + stripBottom}
	size.Width = min(max(longest, 2*checkLength)+2*stripInset, pdf.MaxPage)
	return stripBook(w, size, f, correction{})
}

func stripBook(w repeat.Work, size export.PageSize, f figures, fixed correction) (export.Book, error) {
	all := scales(w, f)
	if len(all) == 0 {
		return export.Book{}, errNoBoard
	}
	lap := max(lapOf(w), leastLap)
	pieces, nodes := tiles(span{0, longest(all)}, size.Width-2*stripInset, lap)
	rows := int((size.Height - stripTop - stripBottom + stripGap) / (stripHigh + stripGap))
	b := export.Book{Title: f.title(w), Subject: f.say("Scale for the board")}
	perScale := len(pieces)
	total := (perScale*len(all) + rows - 1) / rows
	for page := range total {
		l := newLeaf(size.Width, size.Height)
		stripHead(l, w, f, page, total)
		for row := range rows {
			n := page*rows + row
			if n >= perScale*len(all) {
				break
			}
			y := stripTop + geom.Length(row)*(stripHigh+stripGap) + stripHigh/2
			p := strip{l: l, run: w.Run, f: f, s: all[n/perScale], piece: pieces[n%perScale], o: geom.Point{X: stripInset, Y: y}}
			p.draw()
			p.joins(n%perScale, nodes)
		}
		stripFoot(l, f, page == 0, fixed)
		b.Pages = append(b.Pages, export.Page{Drawing: l.drawing(b.Title)})
	}
	return fixed.on(b), nil
}

func longest(all []scale) geom.Length {
	long := geom.Length(0)
	for _, s := range all {
		long = max(long, s.length)
	}
	return long
}

// joins draws the crosses by which a piece is pasted on its neighbours, numbered
// from 1, and the piece's own number at its right end.
func (p strip) joins(i int, nodes []geom.Length) {
	for n := max(i, 1); n <= min(i+1, len(nodes)-2); n++ {
		x, here := p.x(nodes[n])
		if !here {
			continue
		}
		for _, side := range []geom.Length{-1, 1} {
			y := p.o.Y + side*(stripHigh/2-geom.MM(5))
			p.l.line(rule, geom.Point{X: x - geom.MM(2), Y: y}, geom.Point{X: x + geom.MM(2), Y: y})
			p.l.line(rule, geom.Point{X: x, Y: y - geom.MM(2)}, geom.Point{X: x, Y: y + geom.MM(2)})
		}
		p.l.text(captions, stripFigure, geom.Point{X: x, Y: p.o.Y - stripHigh/2 - geom.MM(1)}, export.Middle, p.numbered(n))
	}
	right := p.o.X + p.piece.to - p.piece.from
	p.l.text(captions, strongStyle, geom.Point{X: right + geom.MM(2), Y: p.o.Y + geom.MM(1.2)}, export.Start, p.numbered(i+1))
}

// numbered writes a piece's or a cross's number, before it that of the laying
// where the board is laid more than once.
func (p strip) numbered(n int) string {
	if p.s.of > 1 {
		return fmt.Sprintf("%d·%d", p.s.laying, n)
	}
	return fmt.Sprint(n)
}

// stripHead sets the title above a rule.
func stripHead(l *leaf, w repeat.Work, f figures, page, total int) {
	kind := f.say("Scale for the board")
	m := marking{f: f, title: f.title(w), kind: kind, facts: stripFacts(w, f)}
	m.head(l, f.say("%d of %d", page+1, total), "")
}

func stripFacts(w repeat.Work, f figures) string {
	run := w.Run
	return f.say("board %s, step on the board %s, %d placements", f.cloth.plain(run.Board.Length), f.cloth.with(run.Step), len(run.Placements))
}

// stripFoot says how the pieces are joined, on the first page, and has the check
// length on every one.
func stripFoot(l *leaf, f figures, first bool, fixed correction) {
	o := geom.Point{X: stripInset, Y: l.height - edge}
	scaleBar(l, o, geom.Point{X: 1})
	x := o.X + checkLength + geom.MM(6)
	width := l.width - stripInset - x
	text := f.say("Print at 100 %% and measure: %s.", unbroken(f.checkText()))
	if note := fixed.note(f); note != "" {
		text = f.sentences([]string{text, f.say("This page is %s.", note)})
	}
	if first {
		text = f.sentences([]string{text,
			f.say("Cut along the frames, lay cross on cross by their numbers, paste."),
			f.say("Fold along the middle over the board's edge, 0 at its near end: A lies on face A, B on face B, where the placements run back to the near end. Hatched: the turn.")})
	}
	width = min(width, 300*geom.Millimetre)
	lines := wrap(text, captionStyle, width)
	y := l.height - edge - captionStyle.leading()*geom.Length(len(lines)-1)
	for i, line := range lines {
		l.text(captions, captionStyle, geom.Point{X: x, Y: y + captionStyle.leading()*geom.Length(i)}, export.Start, line)
	}
}
