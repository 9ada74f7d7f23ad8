package outlinefile

import (
	"math"
	"slices"

	"tsugime/repeat/geom"
)

// A joint is a place where ends of lines meet.
type joint struct {
	at   geom.Point
	ends []int // 2·line for a start, 2·line + 1 for an end
}

// joints sorts the ends of lines by place: those within geom.Chain of the first there
// are one joint. of tells the joint of each end.
func joints(lines []line) (all []joint, of []int) {
	type cell struct{ x, y geom.Length }
	cells := map[cell][]int{}
	of = make([]int, 2*len(lines))
	down := func(v geom.Length) geom.Length { return geom.Length(math.Floor(float64(v) / float64(geom.Chain))) }
	for e := range of {
		p := lines[e/2].Start
		if e%2 == 1 {
			p = lines[e/2].end()
		}
		c := cell{down(p.X), down(p.Y)}
		found, least := -1, float64(geom.Chain)
		for dx := geom.Length(-1); dx <= 1; dx++ {
			for dy := geom.Length(-1); dy <= 1; dy++ {
				for _, j := range cells[cell{c.x + dx, c.y + dy}] {
					if far := all[j].at.Sub(p).Norm(); far <= least {
						found, least = j, far
					}
				}
			}
		}
		if found < 0 {
			found = len(all)
			all = append(all, joint{at: p})
			cells[c] = append(cells[c], found)
		}
		all[found].ends = append(all[found].ends, e)
		of[e] = found
	}
	return all, of
}

// A chainer walks from line to line.
type chainer struct {
	lines  []line
	joints []joint
	of     []int
	used   []bool
	free   []int // unused ends at each joint
}

// chained joins open lines whose ends meet to closed ones. Where more than two meet
// any way around serves: by even and odd all give the same inside. What stays open
// is noted with its place and the gap.
func chained(lines []line, log *logbook) []line {
	c := &chainer{lines: lines, used: make([]bool, len(lines))}
	c.joints, c.of = joints(lines)
	c.free = make([]int, len(c.joints))
	for j := range c.joints {
		c.free[j] = len(c.joints[j].ends)
	}
	loose := c.loose()
	var closed []line
	for i := range lines {
		if c.used[i] {
			continue
		}
		walk := c.walk(2 * i)
		if c.of[walk[0]] != c.of[walk[len(walk)-1]^1] {
			loose = append(loose, walk)
			continue
		}
		closed = append(closed, c.contour(walk))
	}
	c.note(loose, log)
	return closed
}

// take marks a line as used.
func (c *chainer) take(i int) {
	c.used[i] = true
	c.free[c.of[2*i]]--
	c.free[c.of[2*i+1]]--
}

// loose takes away the chains that hang from an end that meets no other, one after
// another, and returns them as walks that begin at that end.
func (c *chainer) loose() [][]int {
	var walks [][]int
	for j := range c.joints {
		if c.free[j] != 1 {
			continue
		}
		var walk []int
		for at := j; c.free[at] == 1; {
			e := c.next(at)
			c.take(e / 2)
			walk = append(walk, e)
			at = c.of[e^1]
		}
		walks = append(walks, walk)
	}
	return walks
}

// next returns an unused end at a joint, −1 where there is none.
func (c *chainer) next(at int) int {
	for _, e := range c.joints[at].ends {
		if !c.used[e/2] {
			return e
		}
	}
	return -1
}

// walk goes from an end along unused lines till it is back or can't go on. It returns
// the ends by which it entered each line.
func (c *chainer) walk(from int) []int {
	start := c.of[from]
	var walk []int
	for e := from; e >= 0; {
		c.take(e / 2)
		walk = append(walk, e)
		at := c.of[e^1]
		if at == start {
			break
		}
		e = c.next(at)
	}
	return walk
}

// contour returns the lines of a walk as one. Each begins where the one before ended.
func (c *chainer) contour(walk []int) line {
	first := c.lines[walk[0]/2]
	out := line{kind: first.kind, line: first.line}
	for i, e := range walk {
		l := c.lines[e/2]
		out.line = min(out.line, l.line)
		run := l.Contour
		if e%2 == 1 {
			run = reversed(run)
		}
		if i == 0 {
			out.Start = run.Start
		}
		out.Segments = append(out.Segments, slices.Clone(run.Segments)...)
	}
	if n := len(out.Segments); n > 0 {
		out.Segments[n-1].End = out.Start
	}
	if len(walk) > 1 {
		out.kind = "chain of lines"
	}
	return out
}

// reversed returns a contour, taken as open, run the other way.
func reversed(c geom.Contour) geom.Contour {
	n := len(c.Segments)
	back := geom.Contour{Start: c.Segments[n-1].End, Segments: make([]geom.Segment, n)}
	for i, s := range c.Segments {
		s.C1, s.C2, s.Bulge = s.C2, s.C1, -s.Bulge
		s.End = c.Start
		if i > 0 {
			s.End = c.Segments[i-1].End
		}
		back.Segments[n-1-i] = s
	}
	return back
}

// maxLoose is how many open lines are listed one by one.
const maxLoose = 50

// note lists open chains: where each ends, and how far the nearest other open end is.
func (c *chainer) note(loose [][]int, log *logbook) {
	var ends []geom.Point
	for _, walk := range loose {
		ends = append(ends, c.place(walk[0]), c.place(walk[len(walk)-1]^1))
	}
	for i, walk := range loose {
		first := c.lines[walk[0]/2]
		if i == maxLoose {
			log.add(first.line, "%d more lines are open too", len(loose)-maxLoose)
			return
		}
		p := ends[2*i]
		gap := math.Inf(1)
		for j, q := range ends {
			if j != 2*i {
				gap = min(gap, q.Sub(p).Norm())
			}
		}
		log.add(first.line, "%s: its line is open at %.3f, %.3f mm (y down) and was left out; the nearest open end is %.3f mm away: close it",
			first.kind, p.X.MM(), p.Y.MM(), gap/float64(geom.Millimetre))
	}
}

// place is where an end lies.
func (c *chainer) place(e int) geom.Point {
	if e%2 == 0 {
		return c.lines[e/2].Start
	}
	return c.lines[e/2].end()
}
