package stencil

import (
	"context"
	"fmt"
	"math"

	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

// Meshes for Stiffen: the first is quick enough to follow a hand that draws, the
// second is for reports.
const (
	LiveMesh   = 128
	ReportMesh = 256
	MinMesh    = 16
	MaxMesh    = 1024
)

// PaperPoisson is the Poisson's ratio that Stiffen takes for the uncut paper: our
// recommendation, no source. It moves no modulus: how stiff a plane sheet with
// holes is does not depend on it (Cherkaev, Lurie and Milton, Invariant
// properties of the stress in plane elasticity, 1992).
const PaperPoisson = 0.3

// A Stiffness tells how the paper around cut-outs carries a pull, against the
// same paper uncut: 1 is as stiff, 0 carries nothing. X runs across the sheet, y
// along it.
type Stiffness struct {
	Across, Along Pull
	// Shear is the shear modulus G*/G of the sheet's own axes.
	Shear float64
	// Isotropy is the least modulus of any direction as a share of the greatest:
	// 1 where the sheet gives alike in every direction, 0 where it carries
	// nothing in one.
	Isotropy float64
	// SoftDeg is the direction of the least modulus, from across towards along,
	// 0 to 180.
	SoftDeg float64
	// C is the stiffness itself: the stresses across, along and in shear for a
	// unit stretch across, along and a unit shear angle, as shares of the
	// paper's own E.
	C [3][3]float64
	// Columns and Rows tell how many elements stood for a cell.
	Columns, Rows int
}

// A Pull is what a pull in one direction does, the sheet being free to narrow and
// to skew.
type Pull struct {
	Modulus float64 // E*/E
	Poisson float64 // by how much it narrows for a unit of stretch; 0 where Modulus is 0
	Skew    float64 // shear angle in radians for a unit of stretch; 0 where Modulus is 0
}

// Stiffen returns how stiff the paper around the cut-outs is, which repeat by l,
// as one sheet seen from afar: thin (plane stress), flat and elastic. A cell is
// laid with about mesh times mesh four-node elements along the shortest vectors of
// l, each as stiff as the share of paper in it; the share is exact (periodic
// homogenisation by finite elements; Bendsøe and Sigmund, Topology Optimization,
// 2003, describe the method). Where few
// elements lie across the narrowest web, a finer mesh tells how far off they are.
//
// Paper that no way leads through in some direction carries nothing in it and
// gives 0. It returns an error for a lattice that Check refuses, a mesh out of
// bounds, outlines that can't be united, or where ctx ends.
func Stiffen(ctx context.Context, cuts []pattern.CutOut, l pattern.Lattice, mesh int) (Stiffness, error) {
	if err := l.Check(); err != nil {
		return Stiffness{}, fmt.Errorf("stiffness: %w", err)
	}
	if mesh < MinMesh || mesh > MaxMesh {
		return Stiffness{}, fmt.Errorf("stiffness: a mesh of %d; give one of %d to %d", mesh, MinMesh, MaxMesh)
	}
	m := meshedCell(l, mesh)
	share, err := m.paper(cuts)
	if err != nil {
		return Stiffness{}, fmt.Errorf("stiffness: %w", err)
	}
	c, err := m.homogenise(ctx, share, PaperPoisson)
	if err != nil {
		return Stiffness{}, fmt.Errorf("stiffness: %w", err)
	}
	s := stiffnessOf(c, PaperPoisson)
	s.Columns, s.Rows = m.nx, m.ny
	return s, nil
}

// A cellMesh is a cell of a lattice cut into nx by ny equal parallelograms; a and
// b are its sides in millimetres, b to the left of a, x to y being a left turn.
type cellMesh struct {
	a, b   place
	nx, ny int
}

// coarsenings is how often the elements of a mesh can be taken four at a time.
const coarsenings = 4

// meshedCell lays elements whose sides are as equal as the cell allows along the
// shortest vectors of l: about mesh² in all, so that a long cell costs no more.
func meshedCell(l pattern.Lattice, mesh int) cellMesh {
	f := frameAround(nil, []geom.Point{l.A, l.B})
	m := cellMesh{a: f.a.times(1 / float64(geom.Millimetre)), b: f.b.times(1 / float64(geom.Millimetre))}
	aspect := math.Sqrt(m.a.norm() / m.b.norm())
	const step = 1 << coarsenings
	count := func(n float64) int { return max(step, int(math.Round(n/step))*step) }
	m.nx = count(min(float64(mesh)*aspect, float64(mesh*mesh/step)))
	m.ny = count(min(float64(mesh)/aspect, float64(mesh*mesh/step)))
	return m
}
