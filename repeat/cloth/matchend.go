package cloth

import (
	"fmt"
	"slices"

	"tsugime/repeat/geom"
)

// solution turns an answer into a laying.
func (q *matcher) solution(a answer) Solution {
	n := len(q.panels)
	s := Solution{
		Order: a.packed.order, Slides: make([]geom.Length, n),
		Used: a.used, LowerBound: a.bound, Exact: a.exact,
	}
	s.Laying = q.Laying
	s.Laying.Panels = slices.Clone(q.panels)
	shifts := q.shifts(a.state.across)
	for i := range s.Laying.Panels {
		p := &s.Laying.Panels[i]
		p.Y, p.Turned, p.Shift = a.packed.y[i], a.packed.turn[i] == 1, shifts[i]
		s.Slides[i] = q.slid(a, i)
	}
	return s
}

// slid returns by how much what is seen of panel i is moved along, as drawn: as
// little as its place asks for.
func (q *matcher) slid(a answer, i int) geom.Length {
	room, st := q.pack.slides[i][a.packed.turn[i]], a.state
	windows := st.windows[i]
	if st.group[i] == known {
		windows = []berth{{st.rest[i], 0}}
	}
	y := a.packed.y[i]
	best := min(max(0, room.From), room.To)
	if !q.within(windows, q.mod(y+best)) {
		least := far
		for _, w := range windows {
			for _, to := range []geom.Length{w.from, w.from + w.wide} {
				k := q.mod(to - y)
				for _, k := range []geom.Length{k, k - q.period} {
					if k >= room.From && k <= room.To && k.Abs() < least {
						best, least = k, k.Abs()
					}
				}
			}
		}
	}
	return best * sign(a.packed.turn[i] == 1)
}

// place returns where a panel's own place lies on the cloth in an answer.
func (q *matcher) place(a answer, shifts []geom.Length, i int, own geom.Point) geom.Point {
	p := q.panels[i]
	p.Y, p.Turned, p.Shift = a.packed.y[i], a.packed.turn[i] == 1, shifts[i]
	own.Y += q.slid(a, i)
	return p.OnCloth(own)
}

// off returns how far the pattern is from goal g in an answer.
func (q *matcher) off(g goal, a answer) geom.Point {
	shifts := q.shifts(a.state.across)
	switch {
	case g.target != nil:
		return q.Lattice.Into(q.place(a, shifts, g.target.Panel, g.target.At).Sub(g.target.Motif))
	case g.seam == nil:
		return geom.Point{}
	}
	m := g.seam
	j := joining{
		at: q.place(a, shifts, m.First, m.At), on: q.place(a, shifts, m.Second, m.On),
		firstTurn: m.AtTurned != (a.packed.turn[m.First] == 1),
		onTurn:    m.OnTurned != (a.packed.turn[m.Second] == 1),
	}
	return q.Lattice.Into(j.way().Sub(geom.Point{Y: g.along}))
}

// missAcross returns how far the second panel's place would have to move across
// before a goal that no shift reaches could be reached.
func (q *matcher) missAcross(g goal) geom.Length {
	best := far
	if g.target != nil {
		return q.missTarget(g)
	}
	s := q.start()
	for _, ti := range q.turns(s, g.seam.First) {
		for _, tj := range q.turns(s, g.seam.Second) {
			if g.seam.First == g.seam.Second && ti != tj {
				continue
			}
			next := s.clone()
			next.turn[g.seam.First], next.turn[g.seam.Second] = ti, tj
			f := q.facing(g, next)
			// at + shifts + second's way is a column.
			miss := q.column(f.at)
			if rest := q.pastSlack(miss, f.slack); rest.Abs() < best.Abs() {
				best = rest
			}
		}
	}
	return best
}

func (q *matcher) missTarget(g goal) geom.Length {
	best := far
	for _, t := range q.turns(q.start(), g.target.Panel) {
		at := q.from(g.target.Panel, t, g.target.At).Sub(g.target.Motif)
		if rest := q.pastSlack(q.column(at.X), q.slack(g.target.Panel)); rest.Abs() < best.Abs() {
			best = rest
		}
	}
	return best
}

// column returns the way from the nearest column of the lattice to x.
func (q *matcher) column(x geom.Length) geom.Length {
	spacing := geom.Length(q.Lattice.A.Cross(q.Lattice.B)).Abs() / q.period
	x %= spacing
	if x < 0 {
		x += spacing
	}
	if 2*x > spacing {
		x -= spacing
	}
	return x
}

func (q *matcher) pastSlack(miss, slack geom.Length) geom.Length {
	if miss < 0 {
		return min(0, miss+slack)
	}
	return max(0, miss-slack)
}

// check returns an error where the question can't be answered.
func (m Matching) check() error {
	n := len(m.Laying.Panels)
	if err := m.Lattice.Check(); err != nil {
		return err
	}
	if n == 0 || n > maxMatched {
		return fmt.Errorf("garment: %d panels can't be matched; give 1 to %d", n, maxMatched)
	}
	var edges []geom.Length
	for _, p := range m.Laying.Panels {
		if p.Length <= 0 || p.Length > maxBolt || p.Width <= 0 || p.X < 0 || p.X+p.Width > maxWidth {
			return fmt.Errorf("garment: %s of %s by %s mm can't be laid; give it a length and a width on the cloth", p.Name, p.Width, p.Length)
		}
		if p.ShiftLeast > p.ShiftMost || p.ShiftLeast < -maxWidth || p.ShiftMost > maxWidth {
			return fmt.Errorf("garment: %s can't be shifted from %s to %s mm; give the smaller one first", p.Name, p.ShiftLeast, p.ShiftMost)
		}
		edges = append(edges, p.X, p.X+p.Width)
	}
	slices.Sort(edges)
	if lanes := len(slices.Compact(edges)) - 1; lanes > maxLanes {
		return fmt.Errorf("garment: the panels lie in %d lanes across the cloth; lay them in at most %d", lanes, maxLanes)
	}
	return m.checkGoals(n)
}

// checkGoals returns an error where a goal speaks of what isn't there.
func (m Matching) checkGoals(n int) error {
	for _, s := range [][]Span{m.Seen, m.Slides} {
		if s != nil && len(s) != n {
			return fmt.Errorf("garment: %d stretches are given for %d panels; give one for each", len(s), n)
		}
	}
	for _, s := range m.Slides {
		if s.From > 0 || s.To < 0 || s.From < -maxBolt || s.To > maxBolt {
			return fmt.Errorf("garment: a panel's seen part may move from %s to %s mm; keep nought between", s.From, s.To)
		}
	}
	for _, a := range m.Aims {
		if a.Seam < 0 || a.Seam >= len(m.Laying.Seams) {
			return fmt.Errorf("garment: there is no seam %d to match; give 0 to %d", a.Seam, len(m.Laying.Seams)-1)
		}
		if !(a.Share >= 0 && a.Share <= 1) || a.Distance < 0 || a.Distance > maxWidth || a.Across < 0 || a.Across > 4*maxWidth {
			return fmt.Errorf("garment: seam %s can't be staggered by %g of a repeat or kept %s mm apart; give a share of 0 to 1 and a distance",
				m.Laying.Seams[a.Seam].Name, a.Share, a.Distance)
		}
	}
	for _, t := range m.Targets {
		if t.Panel < 0 || t.Panel >= n || t.Within < 0 || t.Within > maxWidth {
			return fmt.Errorf("garment: target %s can't be aimed at within %s mm on panel %d; name a panel and a distance", t.Name, t.Within, t.Panel)
		}
	}
	for _, a := range m.Avoid {
		if a.To < a.From || a.From.Abs() > 2*maxBolt || a.To.Abs() > 2*maxBolt {
			return fmt.Errorf("garment: nothing lies from %s to %s mm; give a stretch of the cloth", a.From, a.To)
		}
	}
	if m.Tolerance < 0 || m.Limit < 0 {
		return fmt.Errorf("garment: a tolerance of %s mm and a limit of %s mm can't be kept; give none below 0", m.Tolerance, m.Limit)
	}
	return nil
}
