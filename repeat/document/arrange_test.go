package document_test

import (
	"reflect"
	"testing"

	"tsugime/repeat/document"
	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

func TestACopyIsAMotifOfItsOwn(t *testing.T) {
	o := full(t)
	first := o.Unit.Motifs[0]
	next, err := document.Duplicate(o, geom.PtMM(1, 2), first.ID)
	if err != nil {
		t.Fatal(err)
	}
	m := next.Unit.Motifs[len(next.Unit.Motifs)-1]
	if m.ID != o.NextID || m.At != first.At.Add(geom.PtMM(1, 2)) || !reflect.DeepEqual(m.Shape, first.Shape) || m.TurnDeg != first.TurnDeg {
		t.Errorf("the copy is %+v", m)
	}
	if again, _ := next.Motif(first.ID); !reflect.DeepEqual(again, first) {
		t.Error("the original changed")
	}
	if _, err := document.Duplicate(o, geom.Point{}, 999_999); err == nil {
		t.Error("a motif that is not there was copied")
	}
}

func TestEachMotifGoesItsOwnWay(t *testing.T) {
	o, err := document.Duplicate(full(t), geom.PtMM(3, 0), full(t).Unit.Motifs[0].ID)
	if err != nil {
		t.Fatal(err)
	}
	a, b := o.Unit.Motifs[0], o.Unit.Motifs[len(o.Unit.Motifs)-1]
	next, err := document.MoveEach(o, map[pattern.ID]geom.Point{a.ID: geom.PtMM(1, 0), b.ID: geom.PtMM(0, 2)})
	if err != nil {
		t.Fatal(err)
	}
	for id, want := range map[pattern.ID]geom.Point{a.ID: a.At.Add(geom.PtMM(1, 0)), b.ID: b.At.Add(geom.PtMM(0, 2))} {
		if m, _ := next.Motif(id); m.At != want {
			t.Errorf("motif %d stands at %v, want %v", id, m.At, want)
		}
	}
}
