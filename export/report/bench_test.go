package report

import (
	"path/filepath"
	"strconv"
	"testing"

	"tsugime/repeat/stencil"
)

// BenchmarkJobFolder writes the whole folder of a fine ground: 0.4 mm holes, 98
// on a square centimetre, about 63,500 of them.
func BenchmarkJobFolder(b *testing.B) {
	w := built(b, dotOrder(b, 1.0102, 0.4))
	b.ReportMetric(float64(len(w.Sheet.CutOuts)), "holes")
	folder, n := b.TempDir(), 0
	for b.Loop() {
		n++
		if _, err := JobFolder(b.Context(), w, filepath.Join(folder, strconv.Itoa(n)), Options{}, nil); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkRegisterOfASplit lays the second sheet of a large unit off in all ways.
func BenchmarkRegisterOfASplit(b *testing.B) {
	w := built(b, splitOrder(b, 8, stencil.Whole))
	b.ReportMetric(float64(len(w.Sheet.Unit.Motifs)), "motifs")
	for b.Loop() {
		if _, err := Register(w, Options{}); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkPicture draws each proof picture of the same ground.
func BenchmarkPicture(b *testing.B) {
	w := built(b, dotOrder(b, 1.0102, 0.4))
	for _, of := range Pictures(w) {
		b.Run(of, func(b *testing.B) {
			for b.Loop() {
				if _, err := Picture(w, of, pictureWidth); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
