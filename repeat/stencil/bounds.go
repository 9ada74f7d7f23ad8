package stencil

import (
	"fmt"
	"math"

	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

// Limits of a design. A drawing beyond them is a slip of the hand or of another
// program, and would take for ever to measure.
const (
	// MaxReach bounds how far a motif and its arcs may reach from the origin.
	MaxReach = pattern.MaxPitch
	// MaxLaps bounds over how many cells of the lattice one motif may lie.
	MaxLaps = 4000
	// MaxPieces bounds how many segments one motif may have: some hundred times the
	// richest figure that is cut by hand. Twice as many take up to four times as long.
	MaxPieces = 50_000
)

// inBounds returns an error for the first motif that can't be measured: an arc
// without a circle, or a size out of bounds.
func inBounds(u pattern.Unit) error {
	pitch := u.Lattice.Pitch()
	for _, m := range u.Motifs {
		why := ""
		switch {
		case math.IsNaN(m.TurnDeg) || math.IsInf(m.TurnDeg, 0):
			why = "is turned by no number of degrees; turn it anew"
		case !inReach(m.At):
			why = tooFar
		case m.Shape.Round():
			why = unfitDisc(m.Shape.Disc)
		default:
			why = unfitOutline(m.Shape.Outline)
		}
		if why == "" {
			wide, high := m.Shape.Disc.Diameter, m.Shape.Disc.Diameter
			if !m.Shape.Round() {
				box := m.Placed().Bounds()
				wide, high = box.Width(), box.Height()
			}
			if n := u.Lattice.Count(wide+pitch, high+pitch); n > MaxLaps {
				why = fmt.Sprintf("lies over %.0f cells of the lattice; draw it smaller or the unit larger, so that it is %d at most", n, MaxLaps)
			}
		}
		if why != "" {
			return fmt.Errorf("motif %d at %s, %s mm %s", m.ID, m.At.X, m.At.Y, why)
		}
	}
	return nil
}

var tooFar = fmt.Sprintf("reaches more than %s mm away; move it nearer or draw it smaller", MaxReach)

func inReach(p geom.Point) bool {
	return -MaxReach <= p.X && p.X <= MaxReach && -MaxReach <= p.Y && p.Y <= MaxReach
}

func unfitDisc(d geom.Disc) string {
	switch {
	case !inReach(d.Centre):
		return tooFar
	case d.Diameter < 0 || d.Diameter > MaxReach:
		return fmt.Sprintf("is a disc %s mm across; give it 0 to %s mm", d.Diameter, MaxReach)
	}
	return ""
}

func unfitOutline(o geom.Outline) string {
	pieces := 0
	for _, c := range o {
		if pieces += len(c.Segments); pieces > MaxPieces {
			return fmt.Sprintf("is drawn in more than %d pieces; draw it plainer, or as several motifs", MaxPieces)
		}
		at := c.Start
		if !inReach(at) {
			return tooFar
		}
		for _, s := range c.Segments {
			if !inReach(s.End) || s.Kind == geom.Cubic && !(inReach(s.C1) && inReach(s.C2)) {
				return tooFar
			}
			if s.Kind == geom.Arc {
				// An arc over a half circle reaches as far as it is high.
				if high := math.Abs(s.Bulge) * s.End.Sub(at).Norm() / 2; !(high <= float64(MaxReach)) || math.IsInf(s.Bulge, 0) {
					return fmt.Sprintf("has an arc from %s, %s to %s, %s mm with a bulge of %g, which is no circle; draw the arc anew",
						at.X, at.Y, s.End.X, s.End.Y, s.Bulge)
				}
			}
			at = s.End
		}
	}
	return ""
}
