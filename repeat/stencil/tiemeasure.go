package stencil

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

// A TieMeasure tells what one tie does, against the design without any tie.
type TieMeasure struct {
	Tie Tie
	// Crossed is how much cut-out its middle line crosses; an idle tie crosses none.
	Crossed geom.Length
	LostMM2 float64 // the cut area that its strip takes, overlaps of motifs once
	// FromPaper and ToPaper say whether its ends lie in paper.
	FromPaper, ToPaper bool
	// CrossesMotif says whether its strip takes anything of the motif it names.
	CrossesMotif bool
}

// Idle reports whether the tie crosses no cut-out, so that it holds nothing.
func (t TieMeasure) Idle() bool { return t.Crossed == 0 }

// Bridges reports whether the tie leads from paper to paper across a cut-out.
func (t TieMeasure) Bridges() bool { return t.FromPaper && t.ToPaper && !t.Idle() }

// A HeldPart is an island of the design and the ties that hold it.
type HeldPart struct {
	At      geom.Point // on its rim
	AreaMM2 float64
	Ties    []int // by number, from zero; a tie that has both ends on it counts twice
	// SpreadDeg is the smallest angle between two ties on its outer rim that stand
	// next to each other around its middle: 180 for two that stand opposite. It is
	// zero for fewer than two. Ties to islands within don't count.
	SpreadDeg float64
}

// Hinges reports whether fewer ties hold the part than an island should have.
func (p HeldPart) Hinges(perIsland int) bool { return len(p.Ties) < perIsland }

// A TieReport tells what the ties of one sheet do.
type TieReport struct {
	Ties    []TieMeasure
	Islands []HeldPart
}

// MeasureTies measures ties against the design they stand in. A tie that no longer
// makes sense after an edit is told like any other: nothing is dropped.
func MeasureTies(u pattern.Unit, ties []Tie) (TieReport, error) {
	strips, err := stripsOf(ties)
	if err != nil {
		return TieReport{}, err
	}
	report := TieReport{Ties: make([]TieMeasure, len(ties))}
	ends := make([]geom.Point, 0, 2*len(ties))
	for _, t := range ties {
		ends = append(ends, t.From, t.To)
	}
	in := inked(u, ends)
	taken, err := takenBy(u, strips)
	if err != nil {
		return report, err
	}
	for i, t := range ties {
		m := TieMeasure{Tie: t, FromPaper: !in[2*i], ToPaper: !in[2*i+1]}
		for _, p := range taken[i] {
			m.CrossesMotif = m.CrossesMotif || p.motif == t.Motif
		}
		m.Crossed = crossedOf(t, taken[i])
		if m.LostMM2, err = lostOf(taken[i]); err != nil {
			return report, fmt.Errorf("tie %d: %w", i+1, err)
		}
		report.Ties[i] = m
	}
	report.Islands, err = heldParts(u, report.Ties)
	return report, err
}

// A takenPart is what a tie takes of one cut-out.
type takenPart struct {
	motif pattern.ID
	rings []geom.Ring
}

// takenBy returns what each strip takes of the cut-outs, moved to where the strip
// is given.
func takenBy(u pattern.Unit, strips []geom.Strip) ([][]takenPart, error) {
	boxes := make([]geom.Box, len(strips))
	for k, s := range strips {
		boxes[k] = s.Ring().Bounds()
	}
	taken := make([][]takenPart, len(strips))
	var failed error
	meetBoxes(u, boxes, func(i, k int, shift geom.Point) {
		m, s := u.Motifs[i], strips[k]
		part, err := m.Placed().Moved(shift.Neg()).Within(s)
		if err != nil {
			failed = fmt.Errorf("tie %d across motif %d: %w", k+1, m.ID, err)
		}
		if part.Round() || len(part.Outline) > 0 {
			taken[k] = append(taken[k], takenPart{m.ID, part.Rings(geom.Chord)})
		}
	})
	return taken, failed
}

// lostOf returns the area of the parts together.
func lostOf(parts []takenPart) (float64, error) {
	shapes := make([][]geom.Ring, len(parts))
	for i, p := range parts {
		shapes[i] = p.rings
	}
	r, err := geom.Union(shapes)
	return r.AreaMM2(), err
}

// crossedOf returns how long the middle line of a tie runs in the parts.
func crossedOf(t Tie, parts []takenPart) geom.Length {
	way := placeOf(t.To.Sub(t.From))
	length := way.norm()
	way = way.times(1 / length)
	type step struct {
		at   float64
		part int
	}
	var steps []step
	for k, p := range parts {
		for _, r := range p.rings {
			for i, b := range r {
				a := placeOf(r[(i+len(r)-1)%len(r)].Sub(t.From))
				d := placeOf(b.Sub(t.From)).sub(a)
				if sa, sb := way.cross(a), way.cross(a.add(d)); (sa > 0) != (sb > 0) {
					steps = append(steps, step{way.dot(a.add(d.times(sa / (sa - sb)))), k})
				}
			}
		}
	}
	slices.SortFunc(steps, func(s, o step) int { return cmp.Or(cmp.Compare(s.at, o.at), cmp.Compare(s.part, o.part)) })
	// Within one part every other step leads out.
	open, in := 0, make([]bool, len(parts))
	var sum, since float64
	for _, s := range steps {
		if open > 0 {
			sum += s.at - since
		}
		if in[s.part] = !in[s.part]; in[s.part] {
			open++
		} else {
			open--
		}
		since = s.at
	}
	if sum < float64(geom.Touch) {
		return 0
	}
	return geom.Length(math.Round(min(sum, length)))
}

// heldParts returns the islands of the design and which ties hold each.
func heldParts(u pattern.Unit, ties []TieMeasure) ([]HeldPart, error) {
	m, err := mapPaper(u)
	if err != nil || m == nil {
		return nil, err
	}
	of := make([]int, len(m.pieces)) // the part of each piece
	turns := make([][]float64, len(m.pieces))
	var parts []HeldPart
	for k, p := range m.pieces {
		of[k] = none
		if p.kind == island && m.beyond[p.rim].piece == k {
			of[k] = len(parts)
			parts = append(parts, HeldPart{At: m.lines[p.rim].Points[0], AreaMM2: p.areaMM2})
		}
	}
	for i, t := range ties {
		if !t.Bridges() {
			continue
		}
		from, fromLine, okf := m.paperAt(t.Tie.From, t.Tie.To)
		to, toLine, okt := m.paperAt(t.Tie.To, t.Tie.From)
		if !okf || !okt || from == to {
			continue
		}
		for end, c := range [2]pieceCopy{from, to} {
			if k := of[c.piece]; k != none {
				at := [2]geom.Point{t.Tie.From, t.Tie.To}[end].Sub(c.shift)
				way := placeOf(at.Sub(centreOf(m.lines[m.pieces[c.piece].rim])))
				parts[k].Ties = append(parts[k].Ties, i)
				if [2]int{fromLine, toLine}[end] != m.pieces[c.piece].rim {
					continue
				}
				turns[k] = append(turns[k], math.Atan2(way.y, way.x)*180/math.Pi)
			}
		}
	}
	for k := range parts {
		parts[k].SpreadDeg = leastTurn(turns[k])
	}
	return parts, nil
}

// paperAt returns the piece of paper that a place in paper belongs to, looking
// towards another place, and the line where the cut-out begins on that way.
func (m *paperMap) paperAt(p, towards geom.Point) (c pieceCopy, line int, ok bool) {
	way := placeOf(towards.Sub(p))
	h, met := m.firstOf(m.sides, placeOf(p), way.times(1/way.norm()), 0, way.norm())
	if !met || !h.ink {
		return pieceCopy{}, none, false
	}
	return m.at(h.side, h.by), int(m.sides.sides[h.side].cut), true
}

// leastTurn returns the least angle between two bearings.
func leastTurn(turns []float64) float64 {
	least := 360.0
	for i, a := range turns {
		for _, b := range turns[:i] {
			least = math.Min(least, apartDeg(a, b))
		}
	}
	if least == 360 {
		return 0
	}
	return least
}
