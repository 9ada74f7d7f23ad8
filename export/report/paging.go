package report

import (
	"fmt"

	"tsugime/export"
	"tsugime/repeat"
	"tsugime/repeat/geom"
)

// A paging parts an area of a drawing into windows that lap over their
// neighbours, row by row from the top left.
type paging struct {
	page       export.PageSize // as it lies in the printer
	across     []span          // windows of the columns, in the drawing
	along      []span          // windows of the rows
	nodesX     []geom.Length   // where the crosses stand: the middles of the laps
	nodesY     []geom.Length   // and one half lap inside the outer edges
	lap        geom.Length
	windowSize geom.Point
}

// A span is a stretch of one axis.
type span struct{ from, to geom.Length }

// The band around the window of a marking page, in which its words stand:
// printers leave about 5 mm blank (common practice, no source).
const (
	edge       = 10 * geom.Millimetre // to the nearest ink
	bandLeft   = 25 * geom.Millimetre
	bandRight  = 18 * geom.Millimetre
	bandTop    = 33 * geom.Millimetre
	bandBottom = 34 * geom.Millimetre
)

// The lap must hold a cross; more than half of a window is waste of paper.
const (
	leastLap = 4 * geom.Millimetre
	usualLap = 10 * geom.Millimetre
)

// crossArm is how far a cross reaches from its middle, where the lap allows it.
const crossArm = 4 * geom.Millimetre

// lapOf returns the order's lap, or the usual one where it leaves it open.
func lapOf(w repeat.Work) geom.Length {
	if w.Order.Sheets.Lap == 0 {
		return usualLap
	}
	return w.Order.Sheets.Lap
}

// pagesFor parts an area into as few pages as the size allows, upright or on its
// long side; upright where both need the same.
func pagesFor(size export.PageSize, area geom.Box, lap geom.Length) (paging, error) {
	upright, err := pagesOn(size, area, lap)
	if err != nil {
		return paging{}, err
	}
	level, err := pagesOn(size.Turned(), area, lap)
	if err != nil {
		return paging{}, err
	}
	if level.count() < upright.count() {
		return level, nil
	}
	return upright, nil
}

func pagesOn(page export.PageSize, area geom.Box, lap geom.Length) (paging, error) {
	room := geom.Point{X: page.Width - bandLeft - bandRight, Y: page.Height - bandTop - bandBottom}
	if lap < leastLap || lap > min(room.X, room.Y)/2 {
		return paging{}, fmt.Errorf("lap: %s mm can't be pasted on %s; give between %s and %s mm",
			lap, page.Name, leastLap, min(room.X, room.Y)/2)
	}
	p := paging{page: page, lap: lap}
	p.across, p.nodesX = tiles(span{area.Min.X, area.Max.X}, room.X, lap)
	p.along, p.nodesY = tiles(span{area.Min.Y, area.Max.Y}, room.Y, lap)
	p.windowSize = geom.Point{X: p.across[0].to - p.across[0].from, Y: p.along[0].to - p.along[0].from}
	return p, nil
}

// tiles parts a stretch into the fewest equal windows of at most room that lap
// by lap (or more by the rounding to whole nanometres), and says where between
// them the crosses stand. A stretch shorter than a lap gets a window of one.
func tiles(all span, room, lap geom.Length) (windows []span, nodes []geom.Length) {
	length := max(all.to-all.from, lap)
	n := max(1, (length-lap+(room-lap)-1)/(room-lap))
	size := (length + (n-1)*lap + n - 1) / n
	nodes = []geom.Length{all.from + lap/2}
	for i := range n {
		from := all.from
		if n > 1 {
			from += (length - size) * i / (n - 1)
		}
		windows = append(windows, span{from, from + size})
		if i > 0 {
			nodes = append(nodes, (windows[i-1].to+from)/2)
		}
	}
	return windows, append(nodes, all.from+length-lap/2)
}

func (p paging) cols() int  { return len(p.across) }
func (p paging) rows() int  { return len(p.along) }
func (p paging) count() int { return p.cols() * p.rows() }

// window returns what page i shows of the drawing.
func (p paging) window(i int) geom.Box {
	x, y := p.across[i%p.cols()], p.along[i/p.cols()]
	return geom.BoxOf(geom.Point{X: x.from, Y: y.from}, geom.Point{X: x.to, Y: y.to})
}

// area returns what all pages together show.
func (p paging) area() geom.Box { return p.window(0).Union(p.window(p.count() - 1)) }

// at is where the window's top left corner lies on the page.
func (p paging) at() geom.Point { return geom.Point{X: bandLeft, Y: bandTop} }

// nodes returns the crosses of page i: the columns' and rows' numbers of those
// at its corners. Each lies in the windows of all pages that meet there.
func (p paging) nodes(i int) (xs, ys [2]int) {
	c, r := i%p.cols(), i/p.cols()
	return [2]int{c, c + 1}, [2]int{r, r + 1}
}

// columnName names a column of crosses: A to Z, then AA, AB …
func columnName(i int) string {
	name := string(rune('A' + i%26))
	for i = i/26 - 1; i >= 0; i = i/26 - 1 {
		name = string(rune('A'+i%26)) + name
	}
	return name
}
