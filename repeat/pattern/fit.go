package pattern

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"tsugime/repeat/geom"
)

// A Strain is how much a fit changes the drawing, as fractions: 0.01 is one
// percent. X and Y are stretches across and along; Shear leans the columns; Turn,
// in radians clockwise on the sheet, bends nothing but takes rows off the level.
type Strain struct{ X, Y, Shear, Turn float64 }

// Size is the strain in one number: the root of the sum of the squares of the
// strain tensor's entries (the Frobenius norm), the shear being on two of them.
func (s Strain) Size() float64 {
	return math.Sqrt(s.X*s.X + s.Y*s.Y + s.Shear*s.Shear/2)
}

// Change is strain and turn in one number: the Frobenius norm of the map less that
// which leaves all as it is.
func (s Strain) Change() float64 {
	return math.Sqrt(s.X*s.X + s.Y*s.Y + s.Shear*s.Shear/2 + 2*s.Turn*s.Turn)
}

// A Fit is one way to make the step a lattice vector: m·A + n·B of the lattice
// becomes (0, Step), and where a width was asked for p·A + q·B becomes (Width, 0).
type Fit struct {
	M, N    int
	P, Q    int // zero where no width was asked for
	Lattice Lattice
	// Step and Width are exact on the nanometre grid, so they may differ from what
	// was asked for by up to fitSlack: 170 equal rows are a whole number of
	// nanometres each.
	Step, Width geom.Length
	Strain      Strain
	PerCM2      float64
}

// Pitch returns the distance between a place and its nearest copy after the fit.
func (f Fit) Pitch() geom.Length { return f.Lattice.Pitch() }

// PerSquareSun returns how many cut-outs stand on a square kane sun after the fit.
func (f Fit) PerSquareSun() float64 { return f.PerCM2 * squareSun / 100 }

// maxFits is how many candidates Fits returns at most.
const maxFits = 10

// fitSlack is how far the exact step and width may lie from those asked for. It
// is the least that lets rows and columns be whole nanometres, and over a bolt
// of 100 placements it adds up to 0.1 mm at most, all of it known.
const fitSlack = geom.Micrometre

// Fits returns up to ten ways to make u repeat exactly after step, and after
// width too where width is not zero, those that change it least first. Without a
// width the map leaves across as it is: y' = y·(1+Y), x' = x + y·Shear. With one
// it is the map that takes both lattice vectors to where they must be; what is
// level may tilt, and Shear tells lean and tilt together.
//
// A and B are whole nanometres with m·A + n·B = (0, Step), so each may be off the
// map by half of m or n nanometres.
func (u Unit) Fits(step, width geom.Length) ([]Fit, error) {
	if err := u.Lattice.Check(); err != nil {
		return nil, err
	}
	if step < MinPitch || step > MaxPitch {
		return nil, fmt.Errorf("step: %s mm can't be fitted; give a step between %s and %s mm", step, MinPitch, MaxPitch)
	}
	if width < 0 || width > MaxPitch {
		return nil, fmt.Errorf("width: %s mm can't be fitted; give a width between 0 and %s mm", width, MaxPitch)
	}
	along := u.Lattice.near(geom.Point{Y: step})
	across := []pair{{}}
	if width > 0 {
		across = u.Lattice.near(geom.Point{X: width})
	}
	var fits []Fit
	for _, s := range along {
		for _, w := range across {
			if f, ok := u.fit(s, w, step, width); ok {
				fits = append(fits, f)
			}
		}
	}
	slices.SortStableFunc(fits, func(a, b Fit) int { return cmp.Compare(a.Strain.Change(), b.Strain.Change()) })
	return fits[:min(len(fits), maxFits)], nil
}

// A pair is a lattice vector as a count of A and of B.
type pair struct{ m, n int }

// near returns the lattice vectors about t, the nearest first, without zero and
// without those that point the other way.
func (l Lattice) near(t geom.Point) []pair {
	r := l.Reduced()
	reach := geom.Length(math.Ceil(3 * r.B.Norm()))
	type found struct {
		pair
		off float64
	}
	var all []found
	for _, p := range r.Places(geom.BoxOf(t).Grown(reach)) {
		if p.Dot(t) <= 0 {
			continue
		}
		m, n, _ := l.Nearest(p)
		all = append(all, found{pair{m, n}, p.Sub(t).Norm()})
	}
	slices.SortStableFunc(all, func(a, b found) int { return cmp.Compare(a.off, b.off) })
	var pairs []pair
	for _, f := range all[:min(len(all), 2*maxFits)] {
		pairs = append(pairs, f.pair)
	}
	return pairs
}

// fit makes s the step and, unless it is zero, w the width.
func (u Unit) fit(s, w pair, step, width geom.Length) (Fit, bool) {
	g := gcd(s.m, s.n)
	// v is the primitive vector along the step; v and o make the lattice.
	x, y := bezout(s.m/g, s.n/g)
	v, o := u.Lattice.At(s.m/g, s.n/g), u.Lattice.At(-y, x)
	if v.Y <= 0 {
		return Fit{}, false
	}
	f := Fit{M: s.m, N: s.n, P: w.m, Q: w.n}
	var fv, fo geom.Point
	if w == (pair{}) {
		fv = geom.Point{Y: roundTo(step, g) / geom.Length(g)}
		ky, kx := float64(fv.Y)/float64(v.Y), -float64(v.X)/float64(v.Y)
		fo = geom.Point{X: o.X + o.Y.Times(kx), Y: o.Y.Times(ky)}
	} else {
		// w = alpha·v + beta·o, and beta·o' must be (width, −alpha·v').
		alpha, beta := w.m*x+w.n*y, (s.m*w.n-s.n*w.m)/g
		if beta == 0 {
			return Fit{}, false
		}
		part := max(beta/gcd(alpha, beta), -(beta / gcd(alpha, beta)))
		fv = geom.Point{Y: roundTo(roundTo(step, g)/geom.Length(g), part)}
		f.Width = roundTo(width, max(beta, -beta))
		fo = geom.Point{X: f.Width / geom.Length(beta), Y: -fv.Y * geom.Length(alpha) / geom.Length(beta)}
	}
	f.Step = fv.Y * geom.Length(g)
	// Back from v, o to A, B: A = x·v − (n/g)·o, B = y·v + (m/g)·o.
	f.Lattice = Lattice{fv.Times(x).Sub(fo.Times(s.n / g)), fv.Times(y).Add(fo.Times(s.m / g))}
	f = f.kept(u.Lattice.Kind())
	if f.Lattice.Check() != nil || (f.Step-step).Abs() > fitSlack || (f.Width-width).Abs() > fitSlack {
		return Fit{}, false
	}
	f.Strain = strainBetween(u.Lattice, f.Lattice)
	f.PerCM2 = Unit{f.Lattice, u.Motifs}.PerCM2()
	return f, true
}

// kept returns f with the lattice laid out as kind again, where rounding alone
// has broken it (a half-drop needs an even height).
func (f Fit) kept(kind Kind) Fit {
	if kind == FreeKind {
		return f
	}
	across, along := f.Lattice.spacingAs(kind)
	l := Laid(kind, across, along)
	da, db := l.A.Sub(f.Lattice.A), l.B.Sub(f.Lattice.B)
	step, width := l.At(f.M, f.N), l.At(f.P, f.Q)
	if max(da.X.Abs(), da.Y.Abs(), db.X.Abs(), db.Y.Abs()) > 2 || step.X != 0 || width.Y != 0 {
		return f
	}
	f.Lattice, f.Step, f.Width = l, step.Y, width.X
	return f
}

// strainBetween returns the strain of the map that takes the vectors of from to
// those of to: F·[A B] = [A' B'].
func strainBetween(from, to Lattice) Strain {
	det := float64(from.A.Cross(from.B))
	f := func(a, b geom.Length, c, d geom.Length) float64 {
		return (float64(float64(a)*float64(c)) - float64(float64(b)*float64(d))) / det
	}
	lean, tilt := f(to.B.X, to.A.X, from.A.X, from.B.X), f(to.A.Y, to.B.Y, from.B.Y, from.A.Y)
	return Strain{
		X:     f(to.A.X, to.B.X, from.B.Y, from.A.Y) - 1,
		Y:     f(to.B.Y, to.A.Y, from.A.X, from.B.X) - 1,
		Shear: lean + tilt, Turn: (tilt - lean) / 2,
	}
}

// Fitted returns u on the lattice of f: the places of the motifs move with it,
// the motifs keep their shape, so dots stay round.
func (u Unit) Fitted(f Fit) Unit {
	motifs := slices.Clone(u.Motifs)
	for i, m := range motifs {
		cu, cv := u.Lattice.coordinates(m.At)
		motifs[i].At = geom.Point{
			X: f.Lattice.A.X.Times(cu) + f.Lattice.B.X.Times(cv),
			Y: f.Lattice.A.Y.Times(cu) + f.Lattice.B.Y.Times(cv),
		}
	}
	return Unit{f.Lattice, motifs}
}

// roundTo returns the multiple of n nearest to l.
func roundTo(l geom.Length, n int) geom.Length {
	k := geom.Length(max(n, 1))
	return (l + k/2) / k * k
}

// gcd returns the greatest common divisor, positive; gcd(0, 0) is 1.
func gcd[N int | geom.Length](a, b N) N {
	for b != 0 {
		a, b = b, a%b
	}
	if a == 0 {
		return 1
	}
	return max(a, -a)
}

// bezout returns x, y with x·a + y·b = 1 for a, b without common divisor.
func bezout(a, b int) (x, y int) {
	x0, y0, x1, y1 := 1, 0, 0, 1
	for b != 0 {
		q := a / b
		a, b = b, a-q*b
		x0, x1 = x1, x0-q*x1
		y0, y1 = y1, y0-q*y1
	}
	if a < 0 {
		return -x0, -y0
	}
	return x0, y0
}
