package pattern

import (
	"iter"
	"math"

	"tsugime/repeat/geom"
)

// An ID tells the motifs of a unit apart. It is never used again after its motif
// is deleted.
type ID int

// A Motif is one drawn shape of the unit. Shape is drawn around its own origin;
// it is mirrored left to right, then turned, then moved to At.
type Motif struct {
	ID       ID
	Shape    geom.Shape
	At       geom.Point
	TurnDeg  float64 // clockwise on the sheet
	Mirrored bool
}

// Placed returns the motif's shape where it stands.
func (m Motif) Placed() geom.Shape {
	if m.TurnDeg == 0 && !m.Mirrored || m.Shape.Round() && m.Shape.Disc.Centre == (geom.Point{}) {
		return m.Shape.Moved(m.At)
	}
	return m.Shape.Placed(m.Placing())
}

// Placing returns the map from the motif's own frame to the unit's.
func (m Motif) Placing() geom.Affine {
	place := geom.Identity
	if m.Mirrored {
		place = geom.Scale(-1, 1)
	}
	return place.Then(geom.Rotate(m.TurnDeg)).Then(geom.Translate(m.At))
}

// A CutOut is a hole through the paper and the motif it comes from.
type CutOut struct {
	Shape geom.Shape
	Motif ID
}

// A Unit is the smallest drawing that repeats. Motifs may reach beyond the cell
// and over one another.
type Unit struct {
	Lattice Lattice
	Motifs  []Motif
}

// CutOuts returns the holes of one cell: each motif once, its place brought into
// the cell.
func (u Unit) CutOuts() []CutOut {
	cuts := make([]CutOut, len(u.Motifs))
	for i, m := range u.Motifs {
		m.At = u.Lattice.Into(m.At)
		cuts[i] = CutOut{m.Placed(), m.ID}
	}
	return cuts
}

// In goes through every hole of the plain pattern whose box meets the window,
// each once, motif by motif.
func (u Unit) In(window geom.Box) iter.Seq[CutOut] {
	return func(yield func(CutOut) bool) {
		for _, m := range u.Motifs {
			shape := m.Placed()
			box := shape.Bounds()
			// The copy moved by p meets the window where p lies in the window
			// grown by the box turned about the origin.
			reach := geom.BoxOf(window.Min.Sub(box.Max), window.Max.Sub(box.Min))
			for _, p := range u.Lattice.Places(reach) {
				if !yield(CutOut{shape.Moved(p), m.ID}) {
					return
				}
			}
		}
	}
}

// PerCM2 returns how many cut-outs stand on a square centimetre.
func (u Unit) PerCM2() float64 { return float64(len(u.Motifs)) * 100 / u.Lattice.CellMM2() }

// PerSquareSun returns how many cut-outs stand on a square kane sun, the measure
// by which the fineness of a dot ground is named: (1000/33 mm)².
func (u Unit) PerSquareSun() float64 { return u.PerCM2() * squareSun / 100 }

// squareSun is a square kane sun in square millimetres.
const squareSun = 1000.0 / 33 * 1000 / 33

// Reach returns a distance that no motif's rim is farther from its place than:
// to the farthest corner of the box around it.
func (u Unit) Reach() geom.Length {
	var reach geom.Length
	for _, m := range u.Motifs {
		b := m.Placed().Bounds().Moved(m.At.Neg())
		far := geom.Point{X: max(b.Min.X.Abs(), b.Max.X.Abs()), Y: max(b.Min.Y.Abs(), b.Max.Y.Abs())}
		reach = max(reach, geom.Length(math.Ceil(far.Norm())))
	}
	return reach
}
