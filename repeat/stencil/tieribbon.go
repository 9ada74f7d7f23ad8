package stencil

import (
	"math"

	"tsugime/repeat/geom"
)

// labelOutside finds the body or the ribbons beyond the lines that lie in no
// island.
func (m *paperMap) labelOutside(outside []int) {
	var along geom.Point
	var essential []side
	for _, i := range outside {
		b := m.lines[i]
		if b.Closed() {
			continue
		}
		along = forwards(b.Wrap)
		for k, p := range b.Points {
			a, e := placeOf(p), placeOf(lineEnd(b, k))
			home := m.home(a)
			essential = append(essential, side{a: home, b: e.add(home.sub(a)), drawn: a.sub(home), cut: int32(i)})
		}
	}
	if essential == nil {
		if len(outside) > 0 {
			m.pieces = append(m.pieces, paperPiece{kind: body, rim: outside[0]})
		}
		for _, i := range outside {
			m.beyond[i] = pieceCopy{piece: len(m.pieces) - 1}
		}
		return
	}
	m.labelRibbons(outside, along, m.sideGrid(essential))
}

// forwards returns the one of two opposite ways that Less puts last.
func forwards(way geom.Point) geom.Point {
	if way.Less(geom.Point{}) {
		return way.Neg()
	}
	return way
}

// lean tilts the ways on which ribbons are looked for a little from square, so
// that they don't run through corners.
const lean = 0.0123456789

// labelRibbons finds the ribbons between lines that run around the torus, and
// the ribbon that each other line lies in: each ribbon is named by the line that
// its paper lies on the left of along.
func (m *paperMap) labelRibbons(outside []int, along geom.Point, essential *sideGrid) {
	u := placeOf(along).times(1 / along.Norm())
	up := place{u.y, -u.x}.add(u.times(lean))
	up = up.times(1 / up.norm())
	for _, i := range outside {
		// With the cut-out to the right of the line, paper is to the left.
		if b := m.lines[i]; !b.Closed() && forwards(b.Wrap) == b.Wrap {
			m.beyond[i] = pieceCopy{piece: len(m.pieces)}
			m.pieces = append(m.pieces, paperPiece{kind: ribbon, along: along, rim: i})
		}
	}
	reach := m.a.norm() + m.b.norm()
	for _, i := range outside {
		if m.beyond[i].piece != none {
			continue
		}
		// The way down from paper to the first line around the torus ends at the
		// line that names the ribbon.
		from := extreme(m.lines[i], up.times(-1))
		h, met := m.firstOf(essential, from, up.times(-1), 0.5, reach)
		if !met {
			continue
		}
		s := &essential.sides[h.side]
		c := m.beyond[s.cut]
		m.beyond[i] = pieceCopy{c.piece, c.shift.Add(h.by.sub(s.drawn).point())}
	}
}

// extreme returns the point of a line that lies farthest along way.
func extreme(b geom.Boundary, way place) place {
	best, most := place{}, math.Inf(-1)
	for _, p := range b.Points {
		if far := placeOf(p.Sub(b.Points[0])).dot(way); far > most {
			best, most = placeOf(p), far
		}
	}
	return best
}

// A meet is where a way first comes to a side.
type meet struct {
	at   float64 // nanometres along the way
	side int32
	by   place // the side's shift from home
	ink  bool  // the way enters a cut-out there
}

// firstOf returns the first side that the way from a place meets beyond after
// and within reach.
func (m *paperMap) firstOf(g *sideGrid, from, way place, after, reach float64) (meet, bool) {
	if g == nil {
		return meet{}, false
	}
	step := 2 * math.Max(m.tallA/float64(g.nu), m.tallB/float64(g.nv))
	best, found := meet{at: reach}, false
	for done := 0.0; done < best.at; done += step {
		p, q := from.add(way.times(done)), from.add(way.times(math.Min(done+step, best.at)))
		lo := place{math.Min(p.x, q.x), math.Min(p.y, q.y)}
		hi := place{math.Max(p.x, q.x), math.Max(p.y, q.y)}
		g.visit(g.over(lo, hi), func(i int32, by place) bool {
			s := &g.sides[i]
			a, d := s.a.add(by).sub(from), s.b.sub(s.a)
			turn := way.cross(d)
			if turn == 0 {
				return true
			}
			t, k := a.cross(d)/turn, a.cross(way)/turn
			if k >= 0 && k <= 1 && t > after && (t < best.at || t == best.at && found && i < best.side) {
				best, found = meet{t, i, by, d.cross(way) > 0}, true
			}
			return true
		})
	}
	return best, found
}
