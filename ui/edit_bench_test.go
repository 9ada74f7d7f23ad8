package ui

import (
	"context"
	"testing"

	"tsugime/repeat"
	"tsugime/repeat/document"
	"tsugime/repeat/geom"
)

// What a person waits for after a dot of a ground of 63,500 holes was moved: until its
// findings are told, and until its pictures are ready.
func BenchmarkAfterAnEdit(b *testing.B) {
	o, err := ReadStarter("fine-dot")
	if err != nil {
		b.Fatal(err)
	}
	moved, err := document.MoveMotif(o, o.Unit.Motifs[0].ID, geom.PtMM(0.05, 0.05))
	if err != nil {
		b.Fatal(err)
	}
	orders := [2]document.Order{o, moved}
	work, err := repeat.Build(context.Background(), o)
	if err != nil {
		b.Fatal(err)
	}
	b.Run("findings", func(b *testing.B) {
		for n := 1; b.Loop(); n++ {
			if work, err = repeat.Rebuild(context.Background(), work, orders[n%2]); err != nil {
				b.Fatal(err)
			}
		}
	})
	b.Run("grounds", func(b *testing.B) {
		for b.Loop() {
			if _, err := groundsOf(b.Context(), work); err != nil {
				b.Fatal(err)
			}
		}
	})
}
