package stencil

import (
	"context"
	"math/rand/v2"
	"reflect"
	"slices"
	"testing"

	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

// sameSheet compares whole sheets: what is told, not how it is kept.
func sameSheet(t *testing.T, step string, got, want Sheet) bool {
	t.Helper()
	if g, w := got.Webs.Widths(), want.Webs.Widths(); !slices.Equal(g, w) {
		t.Errorf("%s: %d widths, want %d, or not the same", step, len(g), len(w))
		return false
	}
	if (got.Second == nil) != (want.Second == nil) || got.Second != nil && !sameSheet(t, step+", second", *got.Second, *want.Second) {
		return false
	}
	for _, s := range []*Sheet{&got, &want} {
		s.kept, s.Second = nil, nil
		s.Webs.widths, s.Webs.grid, s.Webs.reach = nil, nil, 0
	}
	g, w := reflect.ValueOf(got), reflect.ValueOf(want)
	same := true
	for i := range g.NumField() {
		if f := g.Type().Field(i); f.IsExported() && !reflect.DeepEqual(g.Field(i).Interface(), w.Field(i).Interface()) {
			t.Errorf("%s: %s differs:\n%.300v\nwant\n%.300v", step, f.Name, g.Field(i).Interface(), w.Field(i).Interface())
			same = false
		}
	}
	return same
}

// randomEdit moves, resizes, adds, deletes or redraws a few motifs of u.
func randomEdit(rnd *rand.Rand, u pattern.Unit, nextID *pattern.ID, outlines bool) pattern.Unit {
	u.Motifs = slices.Clone(u.Motifs)
	anywhere := func() geom.Point {
		return u.Lattice.A.Times(rnd.IntN(3)).Add(geom.Point{
			X: geom.Length(rnd.Int64N(int64(u.Lattice.A.X.Abs()+u.Lattice.B.X.Abs()) + 1)),
			Y: geom.Length(rnd.Int64N(int64(u.Lattice.A.Y.Abs()+u.Lattice.B.Y.Abs()) + 1)),
		})
	}
	for range 1 + rnd.IntN(3) {
		i := rnd.IntN(len(u.Motifs))
		m := &u.Motifs[i]
		switch rnd.IntN(8) {
		case 0:
			m.At = anywhere()
		case 1, 2:
			m.At = m.At.Add(geom.Point{X: geom.Length(rnd.IntN(200_000) - 100_000), Y: geom.Length(rnd.IntN(200_000) - 100_000)})
		case 3, 4:
			if m.Shape.Round() {
				m.Shape.Disc.Diameter = geom.MM(0.3 + 0.3*rnd.Float64())
			}
		case 5:
			u.Motifs = append(u.Motifs, pattern.Motif{ID: *nextID, Shape: geom.DiscShape(geom.Point{}, geom.MM(0.2+0.3*rnd.Float64())), At: anywhere()})
			*nextID++
		case 6:
			u.Motifs = slices.Delete(u.Motifs, i, i+1)
		case 7:
			if outlines {
				m.Shape = leaf(0.3 + 0.2*rnd.Float64())
			} else {
				m.Shape = geom.DiscShape(geom.PtMM(0.1*rnd.Float64(), 0), geom.MM(0.4))
				m.TurnDeg = 360 * rnd.Float64()
			}
		}
	}
	return u
}

// leaf is an outline of two cubics.
func leaf(size float64) geom.Shape {
	s := geom.MM(size)
	return geom.Shape{Outline: geom.Outline{{Start: geom.Point{}, Segments: []geom.Segment{
		{Kind: geom.Cubic, End: geom.Point{X: s}, C1: geom.Point{X: s / 3, Y: s / 3}, C2: geom.Point{X: s * 2 / 3, Y: s / 3}},
		{Kind: geom.Cubic, End: geom.Point{}, C1: geom.Point{X: s * 2 / 3, Y: -s / 3}, C2: geom.Point{X: s / 3, Y: -s / 3}},
	}}}}
}

// againSpec is a sheet of a narrow field.
func againSpec(u pattern.Unit, step geom.Length) Spec {
	return Spec{
		Step: step, Field: Field{Left: geom.MM(1), Width: geom.MM(36)}, WebLimit: geom.MM(0.2),
		Paper: Paper{Width: geom.MM(60), Height: geom.MM(80), Thickness: geom.MM(0.2)},
		Stars: StarSpec{PerEnd: 2, Diameter: geom.MM(0.8), Hidden: geom.MM(4)},
	}
}

// skewed shears the lattice by a share of A along B, every motif staying where it is
// but for those that would come upon others.
func skewed(u pattern.Unit, share float64) pattern.Unit {
	u.Motifs = slices.DeleteFunc(u.Motifs, func(m pattern.Motif) bool { return m.At.Y > u.Lattice.B.Y-geom.Millimetre })
	u.Lattice.B = u.Lattice.B.Add(geom.Point{X: u.Lattice.A.X.Times(share)})
	return u
}

// What is cut again after random edits is what Cut makes of the design, on straight
// and skew tori, and the sheet before is still what it was.
func TestWhatIsCutAgainIsWhatIsCut(t *testing.T) {
	for seed := range uint64(14) {
		rnd := rand.New(rand.NewPCG(seed, 9))
		u := skewed(scattered(seed, 42, 40, 0.85, 0.35), []float64{0, 0, 0.5, 0.13}[seed%4])
		spec, nextID := againSpec(u, geom.MM(40)), u.Motifs[len(u.Motifs)-1].ID+1
		if seed%5 == 4 {
			spec.WebLimit = geom.MM(0.9)
		}
		first, err := Cut(t.Context(), u, spec, geom.MM(38))
		if err != nil {
			t.Fatal(err)
		}
		sheet, before, kept := first, u, false
		for step := range 8 {
			next := randomEdit(rnd, u, &nextID, seed%7 == 6)
			if step == 4 {
				next = before // back to an order long before
			}
			got, err := CutAgain(t.Context(), sheet, next, spec, geom.MM(38))
			want, wrong := Cut(t.Context(), next, spec, geom.MM(38))
			if (err == nil) != (wrong == nil) {
				t.Fatalf("seed %d, edit %d: %v, want %v", seed, step, err, wrong)
			}
			if !sameSheet(t, "again", got, want) {
				t.Fatalf("seed %d, edit %d of %d motifs", seed, step, len(next.Motifs))
			}
			u, sheet, kept = next, got, kept || got.kept.paper != nil
		}
		if seed%7 != 6 && !kept {
			t.Errorf("seed %d: nothing was kept between %d edits of %d motifs", seed, 8, len(u.Motifs))
		}
		if again, err := Cut(t.Context(), before, spec, geom.MM(38)); err != nil || !sameSheet(t, "the first", first, again) {
			t.Fatalf("seed %d: %v", seed, err)
		}
	}
}

// Along a line drawn by hand, which stays, and about the stars the changes come close
// to what is taken from before.
func TestEditsByTheJointAndTheStarsAreSeen(t *testing.T) {
	for seed := range uint64(4) {
		rnd := rand.New(rand.NewPCG(seed, 2))
		u := scattered(seed, 42, 40, 0.85, 0.35)
		spec := againSpec(u, geom.MM(40))
		spec.Joint.Line = []geom.Point{geom.PtMM(1, 0.3), geom.PtMM(20, 1.1), geom.PtMM(37, 0.3)}
		sheet, err := Cut(t.Context(), u, spec, geom.MM(38))
		if err != nil {
			t.Fatal(err)
		}
		for edit := range 40 {
			y, x := geom.PtMM(0, 6*rnd.Float64()-3), geom.MM(40*rnd.Float64())
			if edit%2 == 0 { // the stars stand at the left and right, the joint above all
				y, x = geom.PtMM(0, 50*rnd.Float64()-10), geom.MM(16*rnd.Float64()-2)
			}
			next := u
			next.Motifs = slices.Clone(u.Motifs)
			m := &next.Motifs[rnd.IntN(len(next.Motifs))]
			m.At = geom.Point{X: x, Y: y.Y}
			got, err := CutAgain(t.Context(), sheet, next, spec, geom.MM(38))
			if err != nil {
				t.Fatal(err)
			}
			want, err := Cut(t.Context(), next, spec, geom.MM(38))
			if err != nil || !sameSheet(t, "again", got, want) {
				t.Fatalf("seed %d, edit %d: motif %d to %v, %v", seed, edit, m.ID, m.At, err)
			}
			if edit%3 > 0 {
				u, sheet = next, got
			}
		}
	}
}

// The measures of the plain pattern alone, over thousands of edits.
func TestWhatIsMeasuredAgainIsWhatIsMeasured(t *testing.T) {
	kept, edits := 0, 0
	for seed := range uint64(20) {
		rnd := rand.New(rand.NewPCG(seed, 5))
		u := skewed(scattered(seed, 42, 44, 0.9, 0.3), []float64{0, 0.5, 0.31, -0.07}[seed%4])
		if seed%4 == 3 { // on a raster, where many widths are equal
			for i := range u.Motifs {
				u.Motifs[i].At = geom.PtMM(float64(i%42)+0.5, float64(i/42%44)+0.5)
			}
			u.Motifs = u.Motifs[:min(len(u.Motifs), 42*44)]
		}
		limit, nextID := geom.MM([]float64{0.15, 0.4, 0.9}[seed/4%3]), u.Motifs[len(u.Motifs)-1].ID+1
		p := paperOf(u, limit)
		if p == nil {
			t.Fatalf("seed %d: %d motifs are not kept", seed, len(u.Motifs))
		}
		for step := range 150 {
			next := randomEdit(rnd, u, &nextID, false)
			e, ok := editOf(u.Motifs, next.Motifs)
			if !ok {
				t.Fatal("the motifs are not in the order of their IDs")
			}
			after := p.edited(e, next.Lattice, limit)
			edits++
			if after == nil {
				continue // measured in full: the edit is not made
			}
			kept++
			want, err := measured(next, Spec{Step: geom.MM(36), WebLimit: limit})
			if err == nil {
				err = want.hang(next.CutOuts())
			}
			if err != nil {
				t.Fatal(err)
			}
			got := want
			got.Webs, got.OpenPct, got.Paths = after.report, openPct(after.cut.discsMM2(), next.Lattice.CellMM2()), Connectivity{}
			if !sameSheet(t, "measured again", got, want) {
				t.Fatalf("seed %d, edit %d of %d motifs", seed, step, len(next.Motifs))
			}
			if step%3 > 0 { // else the next edit starts from the same
				u, p = next, after
			}
		}
	}
	if t.Logf("%d of %d edits measured again", kept, edits); kept < edits/4 {
		t.Errorf("only %d of %d edits are measured again", kept, edits)
	}
}

// fullDots is a unit of 63,360 dots that fills a sheet, each off its place by chance.
func fullDots() (pattern.Unit, Spec) {
	rnd := rand.New(rand.NewPCG(1, 1))
	u := pattern.Unit{Lattice: pattern.Straight(geom.MM(352*1.01), geom.MM(180*1.01))}
	for i := range 352 * 180 {
		at := geom.PtMM(float64(i%352)*1.01+0.2*rnd.Float64(), float64(i/352)*1.01+0.2*rnd.Float64())
		u.Motifs = append(u.Motifs, pattern.Motif{ID: pattern.ID(i + 1), Shape: geom.DiscShape(geom.Point{}, geom.MM(0.45)), At: at})
	}
	return u, fullSheet(geom.MM(180 * 1.01))
}

func fullSheet(step geom.Length) Spec {
	s := againSpec(pattern.Unit{}, step)
	s.Field = Field{Left: geom.MM(4), Width: geom.MM(352)}
	return s
}

// fewDots is a unit of nine dots.
func fewDots() (pattern.Unit, Spec) {
	u := pattern.Unit{Lattice: pattern.Straight(geom.MM(3), geom.MM(3))}
	for i := range 9 {
		at := geom.PtMM(float64(i%3)+0.02*float64(i), float64(i/3)+0.03*float64(i))
		u.Motifs = append(u.Motifs, pattern.Motif{ID: pattern.ID(i + 1), Shape: geom.DiscShape(geom.Point{}, geom.MM(0.45)), At: at})
	}
	return u, fullSheet(geom.MM(180))
}

// leaves is a unit of two thousand outlines that fills a sheet.
func leaves() (pattern.Unit, Spec) {
	u := pattern.Unit{Lattice: pattern.Straight(geom.MM(360), geom.MM(180))}
	for i := range 2000 {
		u.Motifs = append(u.Motifs, pattern.Motif{ID: pattern.ID(i + 1), Shape: leaf(3 + 0.5*float64(i%3)), At: geom.PtMM(0.3+5.76*float64(i%62), 2+5.5*float64(i/62))})
	}
	return u, fullSheet(geom.MM(180))
}

// What a person waits for after one motif in the middle was moved, beside what the
// first cut takes, and of it the measures of the plain pattern.
func BenchmarkOneMotifMoved(b *testing.B) {
	for _, c := range []struct {
		name string
		made func() (pattern.Unit, Spec)
	}{{"63360 dots", fullDots}, {"9 dots", fewDots}, {"2000 leaves", leaves}} {
		u, spec := c.made()
		moved := u
		moved.Motifs = slices.Clone(u.Motifs)
		moved.Motifs[len(u.Motifs)/2].At.X += geom.MM(0.05)
		cut := func(b *testing.B, prev Sheet, u pattern.Unit) Sheet {
			s, err := CutAgain(context.Background(), prev, u, spec, geom.MM(360))
			if err != nil {
				b.Fatal(err)
			}
			return s
		}
		first := cut(b, Sheet{}, u)
		sheet := cut(b, first, moved)
		b.Run(c.name+"/cut", func(b *testing.B) {
			for b.Loop() {
				cut(b, Sheet{}, u)
			}
		})
		b.Run(c.name+"/again", func(b *testing.B) {
			for b.Loop() {
				cut(b, sheet, u)
			}
		})
		if p := sheet.kept.paper; p != nil {
			b.Run(c.name+"/measures", func(b *testing.B) {
				e, _ := editOf(moved.Motifs, u.Motifs)
				for b.Loop() {
					p.edited(e, u.Lattice, spec.WebLimit)
				}
			})
		}
	}
}

// A unit that a plane group multiplied is cut again too: an edit of a motif changes
// its copies with it.
func TestAMultipliedUnitIsCutAgain(t *testing.T) {
	drawn := scattered(8, 21, 40, 0.85, 0.3)
	drawn.Lattice = pattern.Straight(geom.MM(42), geom.MM(40))
	multiplied := func(motifs []pattern.Motif) pattern.Unit {
		all, err := pattern.P2.Multiply(drawn.Lattice, motifs)
		if err != nil {
			t.Fatal(err)
		}
		return pattern.Unit{Lattice: drawn.Lattice, Motifs: all}
	}
	drawn.Motifs = slices.DeleteFunc(drawn.Motifs, func(m pattern.Motif) bool {
		return m.At.X < geom.MM(0.5) || m.At.X > geom.MM(20.5)
	})
	spec, rnd := againSpec(drawn, geom.MM(40)), rand.New(rand.NewPCG(4, 4))
	sheet, kept := Sheet{}, 0
	for edit := range 12 {
		drawn.Motifs = slices.Clone(drawn.Motifs)
		m := &drawn.Motifs[rnd.IntN(len(drawn.Motifs))]
		m.At = m.At.Add(geom.Point{X: geom.MM(0.1 * rnd.Float64()), Y: geom.MM(0.1 * rnd.Float64())})
		u := multiplied(drawn.Motifs)
		got, err := CutAgain(t.Context(), sheet, u, spec, geom.MM(38))
		if err != nil {
			t.Fatal(err)
		}
		want, err := Cut(t.Context(), u, spec, geom.MM(38))
		if err != nil || !sameSheet(t, "multiplied", got, want) {
			t.Fatalf("edit %d: %v", edit, err)
		}
		if sheet = got; got.kept.paper != nil {
			kept++
		}
	}
	if kept < 6 {
		t.Errorf("%d of 12 edits are measured again", kept)
	}
}

// With another wish for the sheet, what doesn't follow from it stays right.
func TestAnotherWishForTheSheetIsCutAgain(t *testing.T) {
	u := scattered(3, 36, 40, 0.9, 0.35)
	spec := againSpec(u, geom.MM(40))
	sheet, err := Cut(context.Background(), u, spec, geom.MM(38))
	if err != nil {
		t.Fatal(err)
	}
	for name, wish := range map[string]func(s *Spec){
		"limit":  func(s *Spec) { s.WebLimit = geom.MM(0.3) },
		"stars":  func(s *Spec) { s.Stars.PerEnd = 3 },
		"field":  func(s *Spec) { s.Field.Width = geom.MM(30) },
		"step":   func(s *Spec) { s.Step = geom.MM(80) },
		"share":  func(s *Spec) { s.Joint.Share = 0.5 },
		"growth": func(s *Spec) { s.Paper.GrowthAlong = 0.01 },
		"split":  func(s *Spec) { s.Hold = Hold{Way: Split, Second: Second{Cut: Whole, Motifs: []pattern.ID{5, 6}}} },
		"none":   func(*Spec) {},
	} {
		next := spec
		wish(&next)
		want, err := Cut(t.Context(), u, next, geom.MM(38))
		got, wrong := CutAgain(t.Context(), sheet, u, next, geom.MM(38))
		if err != nil || wrong != nil {
			t.Fatalf("%s: %v, %v", name, err, wrong)
		}
		if sameSheet(t, name, got, want) {
			back, err := CutAgain(t.Context(), got, u, spec, geom.MM(38))
			if err != nil || !sameSheet(t, name+" and back", back, sheet) {
				t.Error(err)
			}
		}
	}
}
