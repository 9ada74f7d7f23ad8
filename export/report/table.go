package report

import (
	"tsugime/export"
	"tsugime/repeat/geom"
)

// A table is rows under column heads. Figures are set at the right of their
// column with equal decimals, so their points stand under each other.
type table struct {
	columns []column
	rows    [][]string
	// foot is how many of the last rows stand below a line of their own.
	foot int
	// tick draws a box to tick in the first column of the rows above the foot.
	tick bool
}

type column struct {
	head  string
	align export.Anchor // Start for words, End for figures
}

// The measures of a table.
const (
	columnGap = 7 * geom.Millimetre
	rowHeight = 5600 * geom.Micrometre
)

// table sets t as wide as its words ask for; where the page is too narrow the
// letters of the whole table shrink together, to half at most.
func (f *flow) table(t table) {
	body, head, rowHeight := f.styled(bodyStyle), f.styled(captionStyle), f.gap(rowHeight)
	gap := columnGap
	widths := t.widths(body, head)
	if all := sum(widths) + gap*geom.Length(len(widths)-1); all > f.width() {
		k := max(0.5, float64(f.width())/float64(all))
		body.height, head.height, gap = body.height.Times(k), head.height.Times(k), gap.Times(k)
		widths = t.widths(body, head)
	}
	f.room(rowHeight * geom.Length(min(len(t.rows), 8)+1))
	f.tableHead(t, widths, gap, head)
	end := flowLeft + sum(widths) + gap*geom.Length(len(widths)-1)
	for i, row := range t.rows {
		if f.left() < rowHeight {
			f.turn()
			f.tableHead(t, widths, gap, head)
		}
		if i > 0 && i == len(t.rows)-t.foot {
			f.leaf().line(hairline, geom.Point{X: flowLeft, Y: f.y}, geom.Point{X: end, Y: f.y})
		}
		f.tableRow(t, row, widths, gap, words, body, f.y+rowHeight.Times(0.72))
		if t.tick && i < len(t.rows)-t.foot {
			o := geom.Point{X: flowLeft, Y: f.y + geom.MM(1.2)}
			f.leaf().frame(rule, geom.BoxOf(o, o.Add(geom.PtMM(3.2, 3.2))))
		}
		f.y += rowHeight
	}
	f.leaf().line(hairline, geom.Point{X: flowLeft, Y: f.y}, geom.Point{X: end, Y: f.y})
	f.y += f.gap(geom.MM(3))
}

func (f *flow) tableHead(t table, widths []geom.Length, gap geom.Length, s style) {
	rowHeight := f.gap(rowHeight)
	heads := make([]string, len(t.columns))
	for i, c := range t.columns {
		heads[i] = c.head
	}
	f.tableRow(t, heads, widths, gap, captions, s, f.y+rowHeight.Times(0.66))
	f.y += rowHeight
	end := flowLeft + sum(widths) + gap*geom.Length(len(widths)-1)
	f.leaf().line(rule, geom.Point{X: flowLeft, Y: f.y}, geom.Point{X: end, Y: f.y})
}

func (f *flow) tableRow(t table, row []string, widths []geom.Length, gap geom.Length, p pen, s style, y geom.Length) {
	x := flowLeft
	for i, cell := range row {
		at := geom.Point{X: x, Y: y}
		if t.columns[i].align == export.End {
			at.X += widths[i]
		}
		f.leaf().text(p, s, at, t.columns[i].align, cell)
		x += widths[i] + gap
	}
}

// widths returns how wide each column's widest word is.
func (t table) widths(body, head style) []geom.Length {
	widths := make([]geom.Length, len(t.columns))
	for i, c := range t.columns {
		widths[i] = head.width(c.head)
		for _, row := range t.rows {
			widths[i] = max(widths[i], body.width(row[i]))
		}
	}
	return widths
}

func sum(lengths []geom.Length) geom.Length {
	var s geom.Length
	for _, l := range lengths {
		s += l
	}
	return s
}
