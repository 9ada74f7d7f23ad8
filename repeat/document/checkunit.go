package document

import (
	"fmt"
	"math"
	"slices"

	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

// Bounds of a unit.
const (
	maxMotifs = 2_000_000
	maxID     = 1 << 30
	minHole   = 10 * geom.Micrometre
	maxHole   = 1500 * geom.Millimetre
	// maxCutOuts is how many holes a sheet may be estimated to have: sixty times a
	// fine ground.
	maxCutOuts = 4_000_000
	// maxReadPieces is how many segments the outlines of a file may have together:
	// some hundred megabytes.
	maxReadPieces = 2_000_000
	// maxPieces is how many segments the outlines of a sheet may have together.
	maxPieces = 20_000_000
)

func checkUnit(o Order) *Fault {
	motifs := o.Unit.Motifs
	if n := len(motifs); n > maxMotifs {
		return faultf("unit.motifs", "%d motifs; split the order, it may have %d", n, maxMotifs)
	}
	if err := o.Unit.Lattice.Check(); err != nil {
		return faultf("unit.lattice", "%v", err)
	}
	if fault := checkIDs(motifs, o.NextID); fault != nil {
		return fault
	}
	for i, m := range motifs {
		if fault := checkMotif(m); fault != nil {
			fault.Path = fmt.Sprintf("unit.motifs[%d]%s", i, fault.Path)
			return fault
		}
	}
	return nil
}

// checkIDs refuses motifs that share an ID, and a next ID that is taken.
func checkIDs(motifs []pattern.Motif, next pattern.ID) *Fault {
	ids := make([]pattern.ID, len(motifs))
	for i, m := range motifs {
		if m.ID < 1 || m.ID > maxID {
			return faultf(fmt.Sprintf("unit.motifs[%d].id", i), "%d is out of bounds; give 1 to %d", m.ID, maxID)
		}
		ids[i] = m.ID
	}
	if !slices.IsSorted(ids) {
		slices.Sort(ids)
	}
	for i := 1; i < len(ids); i++ {
		if ids[i] == ids[i-1] {
			return faultf(fmt.Sprintf("unit.motifs[%d].id", lastWith(motifs, ids[i])),
				"another motif has the ID %d too; give each its own", ids[i])
		}
	}
	if next < 1 || next > maxID+1 {
		return faultf("unit.next_id", "%d is out of bounds; give 1 to %d", next, maxID+1)
	}
	if n := len(ids); n > 0 && next <= ids[n-1] {
		return faultf("unit.next_id", "%d is taken; give more than the largest motif ID, %d", next, ids[n-1])
	}
	return nil
}

func lastWith(motifs []pattern.Motif, id pattern.ID) int {
	for i := len(motifs) - 1; i > 0; i-- {
		if motifs[i].ID == id {
			return i
		}
	}
	return 0
}

// nextID returns the smallest ID above all that are used.
func nextID(motifs []pattern.Motif) pattern.ID {
	next := pattern.ID(1)
	for _, m := range motifs {
		next = max(next, m.ID+1)
	}
	return next
}

// checkMotif's faults are from the motif's own place: ".at_mm".
func checkMotif(m pattern.Motif) *Fault {
	if fault := reachable(".at_mm", m.At); fault != nil {
		return fault
	}
	if !(math.Abs(m.TurnDeg) <= 360) {
		return faultf(".turn_deg", "%g° is out of bounds; give −360 to 360", m.TurnDeg)
	}
	return checkShape(m.Shape)
}

// checkShape's faults are from the shape's own place too: ".disc.diameter_mm".
func checkShape(s geom.Shape) *Fault {
	if s.Round() {
		if c := s.Disc.Centre; c != (geom.Point{}) {
			return faultf(".disc", "it is drawn %s, %s mm off its place; draw it around its place and move that", c.X, c.Y)
		}
		return within(".disc.diameter_mm", s.Disc.Diameter, minHole, maxHole)
	}
	b := s.Outline.Bounds()
	if b.Empty() || b.Width() < minHole || b.Height() < minHole || max(b.Width(), b.Height()) > maxHole {
		return faultf(".outline.path", "it reaches %s mm across and %s mm along; draw it between %s and %s mm each way",
			b.Width(), b.Height(), minHole, maxHole)
	}
	return first(reachable(".outline.path", b.Min), reachable(".outline.path", b.Max))
}

// checkLoad estimates how many holes fall on one sheet before any is made.
func checkLoad(o Order) *Fault {
	var cuts, pieces float64
	for _, m := range o.Unit.Motifs {
		reach := m.Shape.Disc.Diameter
		if !m.Shape.Round() { // it may be turned, so by its diagonal
			box := m.Shape.Bounds()
			reach = box.Max.Distance(box.Min)
		}
		n := float64(len(o.Group.Ops())) * o.Unit.Lattice.Count(o.Sheet.Field.Width+reach, o.Sheet.Step+reach)
		cuts += n
		for _, c := range m.Shape.Outline {
			pieces += n * float64(len(c.Segments))
		}
	}
	if cuts > maxCutOuts {
		return faultf("unit.lattice", "the sheet would have about %.0f cut-outs; widen the lattice or narrow the field, it may have %d", cuts, maxCutOuts)
	}
	if pieces > maxPieces {
		return faultf("unit.motifs", "the outlines on the sheet would have about %.0f pieces; draw them plainer, they may have %d", pieces, maxPieces)
	}
	return nil
}
