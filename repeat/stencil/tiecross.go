package stencil

import (
	"math"

	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

// A tieWay is a way across a cut-out from one piece of paper to another, where
// a tie may go. All places are whole nanometres, so that a design and its copy
// have the same crossings to the bit.
type tieWay struct {
	p, q geom.Point // on the rim of the piece itself and on that of the other
	to   pieceCopy  // the other
	cost float64    // mm2 of cut-out that a tie takes, by its middle line, and the preference
	// turn is the bearing of p from the middle of an island, in degrees, and for
	// a ribbon how far along it p lies, 360 for a period.
	turn  float64
	laid  *Tie // that was laid along it
	bad   bool // no tie fits, or one is there
	tight bool // a tie fits, but other ties leave it no room
}

func (c tieWay) middle() geom.Point { return c.p.Add(half(c.q.Sub(c.p))) }

// back returns the way across as the other piece sees it, k being the one that c
// belongs to. The turn is set when it is taken in.
func (c tieWay) back(k int) tieWay {
	s := c.to.shift.Neg()
	return tieWay{p: c.q.Add(s), q: c.p.Add(s), to: pieceCopy{k, s}, cost: c.cost}
}

// A foot is the nearest place on a rim.
type foot struct {
	p   geom.Point
	to  pieceCopy
	far float64
}

// nearest returns the foot of p on the rims whose paper is accepted, looking
// within radius first and then farther.
func (m *paperMap) nearest(p geom.Point, radius float64, accept func(pieceCopy) bool) (foot, bool) {
	at := placeOf(p)
	most := m.a.norm() + m.b.norm()
	for radius = math.Max(radius, 1); ; radius *= 2 {
		best, found := foot{far: radius}, false
		g := m.sides
		g.visit(g.within(at, radius), func(i int32, by place) bool {
			s := &g.sides[i]
			a, d := s.a.add(by).sub(at), s.b.sub(s.a)
			t := math.Min(math.Max(-a.dot(d)/d.dot(d), 0), 1)
			way := a.add(d.times(t))
			far := way.norm()
			if far > best.far || far == best.far && (!found || !way.less(placeOf(best.p.Sub(p)))) {
				return true
			}
			if c := m.at(i, by); accept(c) {
				best, found = foot{p.Add(way.point()), c, far}, true
			}
			return true
		})
		if found || radius > most {
			return best, found
		}
	}
}

// crossings returns the ways across from piece k: from places along its rim to
// the nearest other paper, and where these are shorter than their neighbours'
// the locally shortest.
func (m *paperMap) crossings(k int, width geom.Length, finer int) []tieWay {
	var all []tieWay
	for i, b := range m.lines {
		c := m.beyond[i]
		if c.piece != k || m.pieces[k].kind == island && i != m.pieces[k].rim || m.pieces[k].kind == ribbon && b.Closed() {
			continue
		}
		all = append(all, m.crossingsFrom(k, m.samples(b, c.shift, width, finer), width)...)
	}
	return all
}

// crossingsFrom returns the crossings from places in order along a rim of piece k.
func (m *paperMap) crossingsFrom(k int, places []rimPlace, width geom.Length) []tieWay {
	own := m.same(pieceCopy{piece: k})
	others := func(c pieceCopy) bool { return c != own }
	itself := func(c pieceCopy) bool { return c == own }
	found := make([]tieWay, 0, len(places))
	far := make([]float64, 0, len(places))
	radius := m.tallA / float64(m.sides.nu)
	for _, p := range places {
		f, ok := m.nearest(p.at, radius, others)
		if !ok {
			return nil
		}
		radius = 1.1*f.far + 1
		found, far = append(found, tieWay{p: p.at, q: f.p, to: f.to}), append(far, f.far)
	}
	n := len(found)
	for i := range found {
		c := &found[i]
		if far[i] <= far[(i+n-1)%n] && far[i] <= far[(i+1)%n] {
			for range 4 { // each time the way gets shorter, by more than straight pieces are off
				p, ok := m.nearest(c.q, far[i]+1, itself)
				if !ok || p.far >= far[i]-float64(geom.Touch) {
					break
				}
				q, ok := m.nearest(p.p, p.far+1, others)
				if !ok {
					break
				}
				c.p, c.q, c.to, far[i] = p.p, q.p, q.to, q.far
			}
		}
		c.cost = far[i] / float64(geom.Millimetre) * width.MM()
		if places[i].corner && c.p == places[i].at {
			c.cost *= atCorner
		}
	}
	return found
}

// Preferences, as shares of a way across's cost; our recommendation, no source. They
// choose among places that cost the same, and hardly outweigh length.
const (
	atCorner      = 0.98 // one of its ends is at a corner of the rim or at the end of a line
	throughMiddle = 0.98 // its line runs through the middle of the island
	alongAxis     = 0.98 // it runs along or square to the motif as it is drawn
)

// preferred makes crossings in the lines of an island's symmetry cheaper: those
// whose line runs through its middle, and along an axis of the motif's own frame.
func (m *paperMap) preferred(found []tieWay, centre geom.Point, width geom.Length, turnDeg float64) {
	for i := range found {
		c := &found[i]
		way, to := placeOf(c.q.Sub(c.p)), placeOf(centre.Sub(c.p))
		l := way.norm()
		if l < float64(geom.Touch) {
			continue
		}
		if math.Abs(way.cross(to))/l < float64(width)/8 {
			c.cost *= throughMiddle
		}
		bearing := math.Atan2(way.y, way.x)*180/math.Pi - turnDeg
		if math.Abs(math.Remainder(bearing, 90)) < 1 {
			c.cost *= alongAxis
		}
	}
}

// centreOf returns the middle of a closed line's rim, by length.
func centreOf(b geom.Boundary) geom.Point {
	var sum place
	var all float64
	for i, p := range b.Points {
		q := lineEnd(b, i)
		l := q.Sub(p).Norm()
		sum = sum.add(placeOf(p.Sub(b.Points[0]).Add(q.Sub(b.Points[0]))).times(l / 2))
		all += l
	}
	return b.Points[0].Add(sum.times(1 / all).point())
}

// owner returns the motif whose cut-out holds the first of the places that lies
// in one, and the way by which that cut-out was moved.
func (m *paperMap) owner(places ...geom.Point) (id pattern.ID, shift geom.Point, ok bool) {
	for _, p := range places {
		at := placeOf(p)
		home := m.home(at)
		best := int32(math.MaxInt32)
		for _, c := range m.inks.met[m.inks.part(home)] {
			by := m.inks.shift(int(c.tu), int(c.tv)).add(at.sub(home))
			cover, q := m.inks.covers[c.i], at.sub(by).point()
			turns := 0
			if c.i < best && cover.box.Holds(q) {
				for _, r := range cover.rings {
					turns += r.Winding(q)
				}
			}
			if turns != 0 {
				best, id, shift, ok = c.i, m.cuts[c.i].Motif, by.point(), true
			}
		}
		if ok {
			return id, shift, true
		}
	}
	return 0, geom.Point{}, false
}
