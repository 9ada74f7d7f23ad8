package pattern

import "math"

// A waveLattice is all whole sums of some waves: those of rows (p, q) and (0, r),
// Hermite's normal form. The zero waveLattice holds the zero wave alone.
type waveLattice struct{ p, q, r int }

// with returns the lattice that also holds wave (m, n).
func (l waveLattice) with(m, n int) waveLattice {
	if l.holds(m, n) {
		return l
	}
	for m != 0 {
		k := l.p / m
		l.p, l.q, m, n = m, n, l.p-k*m, l.q-k*n
	}
	if l.p < 0 {
		l.p, l.q = -l.p, -l.q
	}
	if n != 0 {
		l.r = commonDivisor(l.r, max(n, -n))
	}
	if l.r > 0 {
		l.q = modulo(l.q, l.r)
	}
	return l
}

// holds reports whether (m, n) is a sum of l's waves.
func (l waveLattice) holds(m, n int) bool {
	if l.p != 0 {
		if m%l.p != 0 {
			return false
		}
		n -= m / l.p * l.q
	} else if m != 0 {
		return false
	}
	return n == 0 || l.r != 0 && n%l.r == 0
}

// nearest returns wave (m, n) less the wave of l nearest to it, in the frame of the
// unit: how it beats with the ground.
func (l waveLattice) nearest(f frame, m, n int) (int, int) {
	bases := l.short(f)
	for range 64 {
		best, at := f.waveLength2(m, n), [2]int{m, n}
		for _, b := range bases {
			for _, sign := range [2]int{1, -1} {
				// The steps in line that shorten the way most, then one at a time.
				c := [2]int{m + sign*b[0], n + sign*b[1]}
				if d := f.waveLength2(c[0], c[1]); d < best*(1-1e-12) {
					best, at = d, c
				}
			}
		}
		if at == [2]int{m, n} {
			break
		}
		m, n = at[0], at[1]
	}
	return m, n
}

// short returns the shortest waves of l: two that span it and their sum and
// difference (Lagrange–Gauss reduction); one or none where l is thinner.
func (l waveLattice) short(f frame) [][2]int {
	a, b := [2]int{l.p, l.q}, [2]int{0, l.r}
	switch {
	case l.p == 0 && l.r == 0:
		return nil
	case l.p == 0:
		return [][2]int{b}
	case l.r == 0:
		return [][2]int{a}
	}
	for range 200 {
		if f.waveLength2(a[0], a[1]) > f.waveLength2(b[0], b[1]) {
			a, b = b, a
		}
		ax, ay := f.wave(a[0], a[1])
		bx, by := f.wave(b[0], b[1])
		k := int(math.Round((ax*bx + ay*by) / (ax*ax + ay*ay)))
		c := [2]int{b[0] - k*a[0], b[1] - k*a[1]}
		if k == 0 || f.waveLength2(c[0], c[1]) >= f.waveLength2(b[0], b[1]) {
			break
		}
		b = c
	}
	return [][2]int{a, b, {a[0] + b[0], a[1] + b[1]}, {a[0] - b[0], a[1] - b[1]}}
}

// wave returns the cycles a nanometre of wave (m, n) of the cell.
func (f frame) wave(m, n int) (x, y float64) {
	d := f.det()
	return (float64(m)*f.by - float64(n)*f.ay) / d, (float64(n)*f.ax - float64(m)*f.bx) / d
}

func (f frame) waveLength2(m, n int) float64 {
	x, y := f.wave(m, n)
	return x*x + y*y
}
