package ui

import (
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/test"

	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
	"tsugime/ui/session"
)

// The pointer moves over the draft while a petal is drawn on a ground of 60,000 dots:
// snapping, preview and scene, without painting.
func BenchmarkHoverWhileDrawing(b *testing.B) {
	a := test.NewTempApp(b)
	o, err := ReadStarter("small-dot")
	if err != nil {
		b.Fatal(err)
	}
	const n = 245
	o.Unit = pattern.Unit{Lattice: pattern.Straight(geom.MM(356), o.Sheet.Step)}
	for i := range n * n {
		o.Unit.Motifs = append(o.Unit.Motifs, pattern.Motif{ID: pattern.ID(i + 1), Shape: geom.DiscShape(geom.Point{}, geom.MM(0.4)),
			At: geom.Point{X: o.Unit.Lattice.A.X * geom.Length(i%n) / n, Y: o.Unit.Lattice.B.Y * geom.Length(i/n) / n}})
	}
	o.NextID = n*n + 1
	w := New(a, o, "", session.In(b.TempDir(), 0))
	w.win.Resize(fyne.NewSize(1440, 900))
	w.board.Near(geom.PtMM(30, 30), 20)
	w.typed(fyne.KeyD, 0)
	w.typed(fyne.KeyA, 0)
	click(w.board, geom.PtMM(25, 30))
	click(w.board, geom.PtMM(30, 26))
	for i := 0; b.Loop(); i++ {
		at := fyne.NewPos(float32(400+i*7%400), float32(300+i*11%300))
		w.board.MouseMoved(&desktop.MouseEvent{PointEvent: fyne.PointEvent{Position: at}})
	}
}
