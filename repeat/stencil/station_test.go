package stencil

import (
	"context"
	"math"
	"slices"
	"testing"

	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

// FuzzStation cuts orders that no person would draw: outlines that cross
// themselves, cover nothing, lie on one another, touch in a point, are a nanometre
// thin or larger than the unit, with ties and joint lines that make no sense. It
// never panics and never hangs; what it measures is in bounds, or the error says
// what is wrong.
func FuzzStation(f *testing.F) {
	for seed := range byte(24) {
		data := make([]byte, 160)
		x := uint32(seed) + 1
		for i := range data {
			x = x*1664525 + 1013904223 // from memory: a linear congruence of Numerical Recipes
			data[i] = byte(x >> 24)
		}
		f.Add(data)
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		u, spec := (&drawing{data}).order()
		s, err := Cut(context.Background(), u, spec, geom.MM(60))
		if err != nil {
			if len(err.Error()) < 20 {
				t.Errorf("the error says little: %v", err)
			}
			return
		}
		for i, sheet := range s.Set() {
			soundSheet(t, i, sheet)
		}
		h := spec.Hold
		if h.TieWidth > 0 {
			if _, _, err := ProposeTies(context.Background(), u, h); err != nil && len(err.Error()) < 20 {
				t.Errorf("the error says little: %v", err)
			}
		}
	})
}

// soundSheet checks what must hold of any sheet.
func soundSheet(t *testing.T, i int, s Sheet) {
	t.Helper()
	if !(s.OpenPct >= 0 && s.OpenPct <= 100) {
		t.Errorf("sheet %d: %g %% open", i, s.OpenPct)
	}
	w, widths := s.Webs, s.Webs.Widths()
	if !slices.IsSorted(widths) || len(widths) > 0 && (widths[0] < 0 || widths[0] != w.Narrowest.Width) {
		t.Errorf("sheet %d: webs %v, narrowest %v", i, widths, w.Narrowest)
	}
	for _, b := range w.Below {
		if b.Width >= w.Limit || (b.P.Distance(b.Q)-b.Width).Abs() > 2 {
			t.Errorf("sheet %d: web %+v below %s mm", i, b, w.Limit)
		}
	}
	for _, p := range slices.Concat(s.Paths.Islands, s.Paths.Bands) {
		if !(p.AreaMM2 >= 0) || math.IsInf(p.AreaMM2, 0) {
			t.Errorf("sheet %d: a part of %g mm2", i, p.AreaMM2)
		}
	}
	for _, p := range s.Paths.Bands {
		if !s.Unit.Lattice.Holds(p.Along) {
			t.Errorf("sheet %d: a band goes on by %v, which is no lattice vector", i, p.Along)
		}
	}
	if len(s.Joint.Line) < 2 || s.Joint.Length < 0 {
		t.Errorf("sheet %d: joint %+v", i, s.Joint)
	}
}

// A drawing reads a degenerate order from bytes; where they end it reads zeros.
type drawing struct{ data []byte }

func (d *drawing) byte() byte {
	if len(d.data) == 0 {
		return 0
	}
	b := d.data[0]
	d.data = d.data[1:]
	return b
}

// below returns a number from 0 to n − 1.
func (d *drawing) below(n int) int { return int(d.byte()) % n }

// coarse returns a place on a grid of 2 mm: edges coincide, corners meet.
func (d *drawing) coarse() geom.Point {
	return geom.PtMM(2*float64(d.below(16)-8), 2*float64(d.below(16)-8))
}

// fine returns a place anywhere within 16 mm of the origin.
func (d *drawing) fine() geom.Point {
	at := func() geom.Length { return geom.Length(int16(uint16(d.byte())<<8|uint16(d.byte()))) * 499 }
	return geom.Point{X: at(), Y: at()}
}

// place returns a place, a coarse one, or one a nanometre off it.
func (d *drawing) place() geom.Point {
	switch d.below(3) {
	case 0:
		return d.fine()
	case 1:
		return d.coarse().Add(geom.Point{X: geom.Length(d.below(3) - 1), Y: geom.Length(d.below(3) - 1)})
	}
	return d.coarse()
}

func (d *drawing) order() (pattern.Unit, Spec) {
	across, along := geom.MM(9+float64(d.below(12))), geom.MM(9+float64(d.below(12)))
	kinds := pattern.Kinds()
	u := pattern.Unit{Lattice: pattern.Laid(kinds[d.below(len(kinds))], across, along)}
	if d.below(8) == 0 {
		u.Lattice = pattern.Lattice{A: d.fine(), B: d.fine()}
		if u.Lattice.CellMM2() < 9 || u.Lattice.Pitch() < geom.MM(2) { // thousands of copies otherwise
			u.Lattice = pattern.Straight(across, along)
		}
	}
	left := mostCorners
	for i := range d.below(6) {
		m := pattern.Motif{
			ID: pattern.ID(i + 1), Shape: d.shape(), At: d.place(),
			TurnDeg: float64(d.below(8)) * 22.5, Mirrored: d.below(2) == 1,
		}
		if n := corners(u.Lattice, m); n <= left {
			u.Motifs, left = append(u.Motifs, m), left-n
		}
	}
	spec := Spec{
		Step: along * geom.Length(1+d.below(2)), Field: Field{Left: geom.MM(5), Width: geom.MM(6 + float64(d.below(8)))},
		WebLimit: []geom.Length{0, 1, geom.MM(0.1), geom.MM(0.4), geom.MM(3)}[d.below(5)],
		Paper:    Paper{Width: geom.MM(90), Height: geom.MM(90), Thickness: geom.MM(0.2), Pile: 4},
		Stars:    StarSpec{PerEnd: d.below(5), Diameter: geom.MM(0.8), Hidden: geom.MM(float64(d.below(10)))},
		Hold:     d.hold(),
	}
	if d.below(4) == 0 {
		for range 2 + d.below(6) {
			spec.Joint.Line = append(spec.Joint.Line, d.place())
		}
	}
	return u, spec
}

// mostCorners bounds the corners of a drawing, those of its copies over one cell
// counted too: some hundreds of them can lie in one place and cross.
const mostCorners = 1500

// corners returns how many corners the copies of a motif have over one cell, none
// where the motif is refused before anything is measured.
func corners(l pattern.Lattice, m pattern.Motif) int {
	if inBounds(pattern.Unit{Lattice: l, Motifs: []pattern.Motif{m}}) != nil {
		return 0
	}
	n := 0
	for _, r := range m.Placed().Rings(geom.Chord) {
		n += len(r)
	}
	b := m.Placed().Bounds()
	return int(float64(n) * (1 + b.Width().MM()*b.Height().MM()/l.CellMM2()))
}

func (d *drawing) hold() Hold {
	h := Hold{Way: HoldWays()[d.below(3)], TieWidth: geom.MM(0.2 * float64(d.below(6))), PerIsland: d.below(4)}
	h.Ties = d.ties()
	h.Second = Second{Cut: SecondCuts()[d.below(2)], Lap: geom.MM(0.1 * float64(d.below(5))), Ties: d.ties()}
	for range d.below(3) {
		h.Second.Motifs = append(h.Second.Motifs, pattern.ID(d.below(9)))
	}
	return h
}

// ties returns ties that may be nowhere near a cut-out, lie on one another, have no
// width or length, or be wider than the unit.
func (d *drawing) ties() []Tie {
	ties := make([]Tie, d.below(4))
	for i := range ties {
		widths := []geom.Length{geom.MM(0.3), 0, 1, geom.MM(1), geom.MM(40), -5}
		ties[i] = Tie{Motif: pattern.ID(d.below(9)), From: d.place(), To: d.place(), Width: widths[d.below(len(widths))]}
	}
	return ties
}

// shape returns a disc or an outline with something wrong.
func (d *drawing) shape() geom.Shape {
	switch d.below(10) {
	case 0:
		return geom.DiscShape(d.place(), []geom.Length{geom.MM(1), 0, 1, 2, geom.MM(6), geom.MM(45)}[d.below(6)])
	case 1: // a hollow figure and what lies in it
		return d.sound(geom.Outline{d.box(), d.box(), d.box()})
	case 2: // a sliver
		p, long := d.place(), geom.MM(float64(d.below(40)))
		return geom.Shape{Outline: geom.Outline{lines(p, p.Add(geom.Point{X: long}), p.Add(geom.Point{X: long, Y: 1}), p.Add(geom.Point{Y: 1}))}}
	case 3: // there and back
		p, q := d.place(), d.place()
		return d.sound(geom.Outline{lines(p, q, d.place(), q)})
	case 4: // hundreds of corners that cross
		ps := make([]geom.Point, 3+int(d.byte()))
		skip, size := 1+d.below(4), 1+float64(d.below(12))
		for i := range ps {
			sin, cos := math.Sincos(2 * math.Pi * float64(i*skip%len(ps)) / float64(len(ps)))
			ps[i] = geom.PtMM(size*cos, size*sin)
		}
		return d.sound(geom.Outline{lines(ps...)})
	case 5:
		return geom.Shape{Outline: geom.Outline{}}
	}
	o := make(geom.Outline, 1+d.below(3))
	for i := range o {
		o[i].Start = d.place()
		for range d.below(9) {
			o[i].Segments = append(o[i].Segments, d.segment())
		}
	}
	return d.sound(o)
}

func (d *drawing) segment() geom.Segment {
	bulges := []float64{1, -1, 0.4, -3, 0, math.NaN(), math.Inf(1), 1e9, 1e-12}
	s := geom.Segment{Kind: geom.Kind(d.below(3)), End: d.place()}
	switch s.Kind {
	case geom.Arc:
		s.Bulge = bulges[d.below(len(bulges))]
	case geom.Cubic:
		s.C1, s.C2 = d.place(), d.place()
	}
	return s
}

// box returns a rectangle on the coarse grid, run one way or the other.
func (d *drawing) box() geom.Contour {
	p, q := d.coarse(), d.coarse()
	return lines(p, geom.Point{X: q.X, Y: p.Y}, q, geom.Point{X: p.X, Y: q.Y})
}

// sound returns the outline mended or as it is.
func (d *drawing) sound(o geom.Outline) geom.Shape {
	if d.below(2) == 1 {
		if o, _ = o.Mended(); o == nil {
			o = geom.Outline{}
		}
	}
	return geom.Shape{Outline: o}
}

func lines(ps ...geom.Point) geom.Contour {
	c := geom.Contour{Start: ps[0]}
	for _, p := range ps[1:] {
		c.Segments = append(c.Segments, geom.Segment{End: p})
	}
	return c
}
