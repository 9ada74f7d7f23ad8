package document_test

import (
	"strings"
	"testing"

	"tsugime/repeat/bench"
	"tsugime/repeat/document"
	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

func TestAMethodIsNamedForMotifsAndTakenBack(t *testing.T) {
	o := full(t)
	named, err := document.SetMethod(o, bench.Shimabori, 1)
	if err != nil || named.Methods[1] != bench.Shimabori || named.Methods[3] != bench.Kiribori || o.Methods[1] != bench.Hikibori {
		t.Errorf("named: %v, %v; before: %v", named.Methods, err, o.Methods)
	}
	free, err := document.SetMethod(named, "", 1, 3)
	if err != nil || len(free.Methods) != 0 {
		t.Errorf("taken back: %v, %v", free.Methods, err)
	}
	if strings.Contains(written(t, free), "method") {
		t.Error("an order without named methods writes some")
	}
	for _, c := range []struct {
		m  bench.Method
		id pattern.ID
	}{{"drill", 1}, {bench.Kiribori, 99}} {
		if _, err := document.SetMethod(o, c.m, c.id); err == nil {
			t.Errorf("%q for motif %d is taken", c.m, c.id)
		}
	}
}

func TestAMethodGoesWithItsMotif(t *testing.T) {
	o := full(t)
	o.Unit.Lattice = pattern.Straight(geom.MM(20), geom.MM(20))
	o, err := document.SetGroup(o, pattern.P2)
	if err != nil {
		t.Fatal(err)
	}
	out, err := document.WriteOut(o)
	if err != nil || len(out.Unit.Motifs) != 4 {
		t.Fatalf("%d motifs written out, %v; want 4", len(out.Unit.Motifs), err)
	}
	count := map[bench.Method]int{}
	for _, m := range out.Unit.Motifs {
		count[out.Methods[m.ID]]++
	}
	if count[bench.Hikibori] != 2 || count[bench.Kiribori] != 2 {
		t.Errorf("methods of the motifs written out: %v; want each twice", count)
	}
	if gone, err := document.DeleteMotifs(o, 1); err != nil || len(gone.Methods) != 1 {
		t.Errorf("after its motif was deleted: %v, %v", gone.Methods, err)
	}
}

func TestAnOrdersPunchesAreAwlsOfARack(t *testing.T) {
	tools := full(t).OwnTools()
	if len(tools) != 2 || tools[1].Kind != bench.Awl || tools[1].Number != "punch 3" || tools[1].Size != geom.MM(3) {
		t.Errorf("%+v", tools)
	}
}
