package repeat_test

import (
	"bytes"
	"context"
	"math/rand/v2"
	"testing"

	"tsugime/assets"
	"tsugime/repeat"
	"tsugime/repeat/document"
	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

func starter(tb testing.TB, name string) document.Order {
	tb.Helper()
	data, ok := assets.Starter(name)
	if !ok {
		tb.Fatalf("there is no starter %s", name)
	}
	o, err := document.Read(bytes.NewReader(data))
	if err != nil {
		tb.Fatal(err)
	}
	return o
}

// The whole line for a ground of 63,500 holes: what a person waits for after an
// edit.
func BenchmarkBuildOf63500Holes(b *testing.B) {
	o := starter(b, "fine-dot")
	for b.Loop() {
		if _, err := repeat.Build(context.Background(), o); err != nil {
			b.Fatal(err)
		}
	}
}

// The same count drawn as one unit that fills the sheet, each dot off its place
// by chance: nothing repeats but the whole.
func BenchmarkBuildOfOneUnitOf63500Dots(b *testing.B) {
	o, rnd := starter(b, "fine-dot"), rand.New(rand.NewPCG(1, 1))
	o.Unit = pattern.Unit{Lattice: pattern.Straight(geom.MM(352*1.01), geom.MM(180*1.01))}
	o.Sheet.Step = geom.MM(180 * 1.01)
	for i := range 352 * 180 {
		at := geom.PtMM(float64(i%352)*1.01+0.2*rnd.Float64(), float64(i/352)*1.01+0.2*rnd.Float64())
		o.Unit.Motifs = append(o.Unit.Motifs, pattern.Motif{
			ID: pattern.ID(i + 1), Shape: geom.DiscShape(geom.Point{}, geom.MM(0.45)), At: at,
		})
	}
	o.NextID = pattern.ID(len(o.Unit.Motifs) + 1)
	for b.Loop() {
		if _, err := repeat.Build(context.Background(), o); err != nil {
			b.Fatal(err)
		}
	}
}
