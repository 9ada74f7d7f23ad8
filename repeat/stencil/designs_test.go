package stencil

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

// The kinds of motifs of random designs.
var motifKinds = []string{"disc", "slot", "star", "petal", "ring", "cubics", "crossed"}

// design returns a random unit of a few motifs, by chance on any lattice and over
// all four edges of the cell; some are larger than the unit.
func design(seed uint64) pattern.Unit {
	rnd := rand.New(rand.NewPCG(seed, 77))
	across, along := 8+rnd.Float64()*14, 8+rnd.Float64()*14
	kinds := pattern.Kinds()
	u := pattern.Unit{Lattice: pattern.Laid(kinds[rnd.IntN(len(kinds))], geom.MM(across), geom.MM(along))}
	if rnd.IntN(4) == 0 {
		u.Lattice = pattern.Lattice{A: geom.PtMM(across, rnd.Float64()*9-4), B: geom.PtMM(rnd.Float64()*9-4, along)}
	}
	big := rnd.IntN(5) == 0
	for i := range 1 + rnd.IntN(7) {
		size := 0.5 + rnd.Float64()*rnd.Float64()*5
		if big && i == 0 {
			size = 8 + rnd.Float64()*6
		}
		kind := rnd.IntN(len(motifKinds))
		u.Motifs = append(u.Motifs, pattern.Motif{
			ID: pattern.ID(i + 1), Shape: randomShape(rnd, motifKinds[kind], size),
			At: geom.PtMM(rnd.Float64()*across, rnd.Float64()*along), TurnDeg: rnd.Float64() * 360, Mirrored: rnd.IntN(2) == 0,
		})
	}
	return u
}

// randomShape returns a shape of a kind that reaches size millimetres from its
// origin at most.
func randomShape(rnd *rand.Rand, kind string, size float64) geom.Shape {
	polar := func(r, turn float64) geom.Point { return geom.PtMM(r*math.Cos(turn), r*math.Sin(turn)) }
	arc := func(end geom.Point, bulge float64) geom.Segment {
		return geom.Segment{Kind: geom.Arc, End: end, Bulge: bulge}
	}
	switch kind {
	case "disc":
		return disc(0, 0, 2*size)
	case "slot":
		r := size * (0.1 + 0.3*rnd.Float64())
		x := size - r
		return geom.Shape{Outline: geom.Outline{{Start: geom.PtMM(-x, -r), Segments: []geom.Segment{
			{End: geom.PtMM(x, -r)}, arc(geom.PtMM(x, r), 1), {End: geom.PtMM(-x, r)}, arc(geom.PtMM(-x, -r), 1)}}}}
	case "star":
		ps := make([]geom.Point, 2*(3+rnd.IntN(6)))
		in := size * (0.2 + 0.5*rnd.Float64())
		for i := range ps {
			ps[i] = polar([2]float64{size, in}[i%2], math.Pi*float64(2*i)/float64(len(ps)))
		}
		return geom.Shape{Outline: geom.Outline{lines(ps...)}}
	case "petal":
		b := 0.2 + 0.6*rnd.Float64()
		a, c := geom.PtMM(-size*0.8, 0), geom.PtMM(size*0.8, 0)
		return geom.Shape{Outline: geom.Outline{{Start: a, Segments: []geom.Segment{arc(c, b), arc(a, b)}}}}
	case "ring":
		in := size * (0.3 + 0.5*rnd.Float64())
		o := geom.PtMM
		return geom.Shape{Outline: geom.Outline{
			{Start: o(size, 0), Segments: []geom.Segment{arc(o(-size, 0), 1), arc(o(size, 0), 1)}},
			{Start: o(in, 0), Segments: []geom.Segment{arc(o(-in, 0), -1), arc(o(in, 0), -1)}}}}
	case "cubics":
		n := 3 + rnd.IntN(4)
		radius := make([]float64, n)
		for i := range radius {
			radius[i] = size * (0.4 + 0.4*rnd.Float64())
		}
		at := func(i int, side float64) geom.Point {
			sin, cos := math.Sincos(2 * math.Pi * float64(i) / float64(n))
			d := radius[i%n]
			k := side * d * 4 / 3 * math.Tan(math.Pi/float64(2*n))
			return geom.PtMM(d*cos-k*sin, d*sin+k*cos)
		}
		c := geom.Contour{Start: at(0, 0)}
		for i := range n {
			c.Segments = append(c.Segments, geom.Segment{Kind: geom.Cubic, C1: at(i, 1), C2: at(i+1, -1), End: at((i+1)%n, 0)})
		}
		return geom.Shape{Outline: geom.Outline{c}}
	}
	any := func() geom.Point { return polar(size*rnd.Float64(), 7*rnd.Float64()) }
	c := geom.Contour{Start: any()}
	for range 1 + rnd.IntN(3) {
		c.Segments = append(c.Segments, geom.Segment{Kind: geom.Cubic, C1: any(), C2: any(), End: any()}, geom.Segment{End: any()})
	}
	return geom.Shape{Outline: geom.Outline{c}}
}

// secondOpinions are the designs with paper or cut-out thinner than a sample of the finest
// picture: what GEOS, the geometry engine of libgeos-dev, has of islands and bands in
// one cell, in square millimetres. TestDesignsAgreeWithTheSecondOpinion keeps it.
var secondOpinions = map[uint64]struct {
	islands  []float64
	bandsMM2 float64
}{
	0:   {[]float64{0.000829, 0.037091, 0.205706}, 0.0000},
	8:   {[]float64{0.365367, 0.877042}, 0.0000},
	26:  {[]float64{0.005316}, 0.0000},
	89:  {[]float64{0.002177}, 172.6185},
	143: {[]float64{0.000056, 0.000126, 0.000716, 0.023426, 0.046014, 0.119620}, 0.0000},
	157: {[]float64{0.533152, 48.679802}, 0.0000},
	177: {[]float64{0.324793}, 0.0000},
}

// settle holds islands and bands against what the second opinion has of them.
func settle(t *testing.T, seed uint64, paths Connectivity) {
	t.Helper()
	want, ok := secondOpinions[seed]
	if !ok {
		t.Error("the finest picture does not settle it, and there is no second opinion")
		return
	}
	var islands []float64
	var bands float64
	for _, p := range paths.Islands {
		islands = append(islands, p.AreaMM2)
	}
	for _, p := range paths.Bands {
		bands += p.AreaMM2
	}
	slices.Sort(islands)
	alike := func(a, b float64) int {
		if math.Abs(a-b) <= 0.002+1e-3*b {
			return 0
		}
		return 1
	}
	if slices.CompareFunc(islands, want.islands, alike) != 0 || alike(bands, want.bandsMM2) != 0 {
		t.Errorf("islands %.6f and bands %.4f mm2; the second opinion has %+v", islands, bands, want)
	}
}

// Random designs on all kinds of lattices: webs, islands, bands and open area are
// those of slow ways that share no code with the fast ones.
func TestDesigns(t *testing.T) {
	const designs = 200
	webs, parts, unsure := 0, 0, 0
	for seed := range uint64(designs) {
		t.Run(fmt.Sprint(seed), func(t *testing.T) {
			u := design(seed)
			cuts, l := u.CutOuts(), u.Lattice
			webs += compareWebs(t, cuts, l)
			n, open := comparePaper(t, cuts, l)
			parts += n
			if open {
				unsure++
				settle(t, seed, mustConnect(t, cuts, l.A, l.B))
			}
		})
	}
	t.Logf("%d webs, %d islands and bands; the second opinion settled %d designs that the finest picture left open", webs, parts, unsure)
	if !t.Failed() && (webs < 300 || parts < 100 || unsure != len(secondOpinions)) {
		t.Errorf("%d webs and %d parts compared, %d designs left open of %d settled", webs, parts, unsure, len(secondOpinions))
	}
}

// compareWebs holds the webs below a limit against every corner and circle tried
// with every rim of every copy. Where rims run side by side the slow way tells many
// webs of one corridor.
func compareWebs(t *testing.T, cuts []pattern.CutOut, l pattern.Lattice) int {
	t.Helper()
	const limit = 1.2
	want := everyWeb(cuts, l, limit)
	var got []float64
	r := Webs(cuts, geom.MM(limit), l.A, l.B)
	for _, w := range r.Below {
		if w.Width.MM() > 2e-5 {
			got = append(got, w.Width.MM())
		}
	}
	within := func(v float64, all []float64, slack float64) bool {
		return slices.ContainsFunc(all, func(w float64) bool { return math.Abs(v-w) <= slack })
	}
	for _, v := range got {
		if !within(v, want, 1e-5) {
			t.Errorf("a web of %.6f mm, of which the slow way knows nothing: %.6f", v, want)
		}
	}
	for _, v := range want {
		if v < limit-geom.Touch.MM() && !within(v, got, geom.Touch.MM()+1e-5) {
			t.Errorf("no web of %.6f mm: %.6f", v, got)
		}
	}
	if len(want) > 0 && (len(got) == 0 || math.Abs(slices.Min(want)-slices.Min(got)) > 1e-5) {
		t.Errorf("narrowest of %.6f, want %.6f", got, slices.Min(want))
	}
	return len(want)
}

// everyWeb returns the width in millimetres of each web wider than 20 nm and
// narrower than limit, the slow way.
func everyWeb(cuts []pattern.CutOut, l pattern.Lattice, limit float64) []float64 {
	home, all := rimsOnTorus(cuts, l, limit)
	var widths []float64
	for i, a := range home {
		before, ok := home[(i+len(home)-1)%len(home)], a.r == 0
		for k := i; ok && before.b != a.a; k++ { // a ring's first piece comes after its last
			before = home[k]
		}
		for _, b := range all {
			g, ok := a.web(b, limit)
			if !ok || a.r == 0 && !g.leaves(a, before) || g.width < 2e-5 || slices.ContainsFunc(widths, func(w float64) bool { return w == g.width }) {
				continue
			}
			if g.free(all) && !inkAt(cuts, l, g.x, g.y) {
				widths = append(widths, g.width)
			}
		}
	}
	slices.Sort(widths)
	return widths
}

// A spaced is the shortest way from a rim to another, about its middle.
type spaced struct{ x, y, width float64 }

// web returns the way from a, which is a circle or the corner it begins with, to b.
func (s piece) web(o piece, limit float64) (spaced, bool) {
	if s == o || s.r == 0 && o.r > 0 {
		return spaced{}, false
	}
	qx, qy := o.nearest(s.a[0], s.a[1])
	if o.r > 0 { // circle to circle
		d := math.Hypot(o.a[0]-s.a[0], o.a[1]-s.a[1])
		if d == 0 {
			return spaced{}, false
		}
		qx, qy = o.a[0]-(o.a[0]-s.a[0])/d*o.r, o.a[1]-(o.a[1]-s.a[1])/d*o.r
		if d < o.r { // the centre lies in the other circle
			return spaced{}, false
		}
	}
	d := math.Hypot(qx-s.a[0], qy-s.a[1])
	w := d - s.r
	if w <= 0 || w >= limit {
		return spaced{}, false
	}
	px, py := s.a[0]+(qx-s.a[0])/d*s.r, s.a[1]+(qy-s.a[1])/d*s.r
	return spaced{(px + qx) / 2, (py + qy) / 2, w}, true
}

// leaves reports whether a way that begins where the piece a does leads away from a
// and from the piece before it: along both the way would only grow.
func (g spaced) leaves(a, before piece) bool {
	x, y := g.x-a.a[0], g.y-a.a[1]
	const square = 1e-12 // mm², for sides that run side by side
	return x*(a.b[0]-a.a[0])+y*(a.b[1]-a.a[1]) <= square && x*(before.a[0]-a.a[0])+y*(before.a[1]-a.a[1]) <= square
}

// free reports whether no rim comes into the circle over the way.
func (g spaced) free(all []piece) bool {
	for _, o := range all {
		ox, oy := o.nearest(g.x, g.y)
		if math.Hypot(ox-g.x, oy-g.y) < g.width/2-1.5e-6 {
			return false
		}
	}
	return true
}

// rimsOnTorus returns the rims of the cut-outs and those of all copies that come
// within far of their box, in millimetres.
func rimsOnTorus(cuts []pattern.CutOut, l pattern.Lattice, far float64) (home, all []piece) {
	boxes := boundsOf(cuts).Grown(geom.MM(far))
	for i, c := range cuts {
		own := c.Shape.Bounds()
		for _, shift := range l.Places(geom.BoxOf(boxes.Min.Sub(own.Max), boxes.Max.Sub(own.Min))) {
			s := c.Shape.Moved(shift)
			var ps []piece
			if s.Round() {
				ps = []piece{{a: [2]float64{s.Disc.Centre.X.MM(), s.Disc.Centre.Y.MM()}, r: s.Disc.RadiusMM(), cut: i}}
			}
			for _, r := range s.Outline.Rings(geom.Chord) {
				for k, p := range r {
					q := r[(k+1)%len(r)]
					ps = append(ps, piece{a: [2]float64{p.X.MM(), p.Y.MM()}, b: [2]float64{q.X.MM(), q.Y.MM()}, cut: i})
				}
			}
			all = append(all, ps...)
			if shift == (geom.Point{}) {
				home = append(home, ps...)
			}
		}
	}
	return home, all
}

// inkAt reports whether a cut-out or a copy covers a place.
func inkAt(cuts []pattern.CutOut, l pattern.Lattice, x, y float64) bool {
	p := geom.PtMM(x, y)
	for _, c := range cuts {
		b := c.Shape.Bounds()
		for _, shift := range l.Places(geom.BoxOf(p.Sub(b.Max), p.Sub(b.Min))) {
			if c.Shape.Contains(p.Sub(shift)) {
				return true
			}
		}
	}
	return false
}
