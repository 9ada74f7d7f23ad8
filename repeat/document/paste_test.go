package document_test

import (
	"bytes"
	"reflect"
	"testing"

	"tsugime/repeat/bench"
	"tsugime/repeat/document"
	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

// What is taken out of one order, written and read, lies in another as it lay in the first.
func TestMotifsAreHandedFromOrderToOrder(t *testing.T) {
	from := grouped(t, pattern.P1, pattern.Straight(geom.MM(10), geom.MM(10)))
	from, err := document.AddMotifs(from,
		pattern.Motif{Shape: geom.DiscShape(geom.Point{}, geom.MM(0.7)), At: geom.PtMM(1, 2), TurnDeg: 15},
		pattern.Motif{Shape: geom.DiscShape(geom.Point{}, geom.MM(0.9)), At: geom.PtMM(7, 5), Mirrored: true})
	if err != nil {
		t.Fatal(err)
	}
	n := len(from.Unit.Motifs)
	ids := []pattern.ID{from.Unit.Motifs[n-2].ID, from.Unit.Motifs[n-1].ID}
	from.Methods = bench.Overrides{ids[1]: bench.Methods()[0]}
	taken, err := document.Taken(from, ids...)
	if err != nil || len(taken.Unit.Motifs) != 2 {
		t.Fatalf("%d motifs were taken: %v", len(taken.Unit.Motifs), err)
	}
	var file bytes.Buffer
	if err := document.Write(&file, taken); err != nil {
		t.Fatal(err)
	}
	read, err := document.Read(&file)
	if err != nil {
		t.Fatal(err)
	}
	to := grouped(t, pattern.P1, pattern.Straight(geom.MM(12), geom.MM(9)))
	by := geom.PtMM(0.5, -0.25)
	next, err := document.Paste(to, read, by)
	if err != nil {
		t.Fatal(err)
	}
	for i, id := range ids {
		want, _ := from.Motif(id)
		got := next.Unit.Motifs[len(to.Unit.Motifs)+i]
		if got.ID != to.NextID+pattern.ID(i) {
			t.Errorf("pasted as motif %d, want %d", got.ID, to.NextID+pattern.ID(i))
		}
		want.ID, want.At = got.ID, want.At.Add(by)
		if !reflect.DeepEqual(got, want) {
			t.Errorf("pasted %+v, want %+v", got, want)
		}
	}
	if next.Methods[to.NextID+1] != bench.Methods()[0] || len(next.Methods) != len(to.Methods)+1 {
		t.Errorf("the methods are %v", next.Methods)
	}
	if !reflect.DeepEqual(next.Unit.Lattice, to.Unit.Lattice) || len(to.Methods) != 0 {
		t.Error("more than the motifs came along, or the order before was changed")
	}
	if _, err := document.Taken(from, 9999); err == nil {
		t.Error("a motif that there is not is taken")
	}
}
