package check

import (
	"strings"
	"testing"

	"tsugime/repeat/bench"
	"tsugime/repeat/geom"
)

func TestWhatTheBenchLacksOrCanNotDoIsFound(t *testing.T) {
	rack := bench.Rack{Tools: []bench.Tool{{Kind: bench.Awl, Number: "7", Size: geom.MM(0.45)}, {Kind: bench.Knife, Number: "k", Size: geom.MM(1)}}}
	limit := bench.Rack{}.Limit(bench.Kiribori)
	square, err := geom.ParsePathData("M0 0H3V2H0Z")
	if err != nil {
		t.Fatal(err)
	}
	a := bench.Assignment{Rack: rack, Missing: []bench.Missing{
		{Kind: bench.Awl, Size: geom.MM(0.5), Count: 400, Motif: 1, Nearest: 0, Strain: bench.Strain{Pct: -10}},
		{Kind: bench.Punch, Outline: square, Count: 80, Motif: 3, Nearest: 1},
		{Kind: bench.Awl, Size: geom.MM(1), Count: 1, Nearest: -1},
	}}
	p := bench.Plan{Exceeded: []bench.Excess{
		{Method: bench.Kiribori, What: bench.HoleSize, Got: geom.MM(0.3), Count: 2, Limit: limit, At: geom.PtMM(1, 2)},
		{Method: bench.Kiribori, What: bench.WebWidth, Got: geom.MM(0.2), Limit: limit},
		{Method: bench.Kiribori, What: bench.PileSize, Pile: 20, Limit: limit},
	}}
	found := Bench(a, p, " on the second sheet")
	want := []struct {
		code     string
		severity Severity
		says     string
	}{
		{"bench-hole", Warning, "2 cut-outs on the second sheet are smaller than the 0.4 mm that kiribori is trusted with; the smallest is 0.3 mm"},
		{"bench-web", Note, "0.2 mm"}, {"bench-pile", Note, "A pile of 20"},
		{"bench-tool", Warning, "an awl of 0.5 mm, for 400 cut-outs"},
		{"bench-tool", Note, "a punch of a shape of motif 3, 3 mm × 2 mm"},
		{"bench-tool", Warning, "an awl of 1 mm, for 1 register hole on the second sheet."},
	}
	if len(found) != len(want) {
		t.Fatalf("%d findings, want %d: %+v", len(found), len(want), found)
	}
	for i, w := range want {
		f := found[i]
		if f.Code != w.code || f.Severity != w.severity || !strings.Contains(f.Text, w.says) || f.Remedy == "" {
			t.Errorf("finding %d: %+v\nwant %s, %s, %q", i, f, w.code, w.severity, w.says)
		}
	}
	if r := found[3].Remedy; !strings.HasPrefix(r, "7 of 0.45 mm comes nearest, off by -10.0 %") {
		t.Errorf("the awl's remedy: %s", r)
	}
	if found := Bench(bench.Assignment{}, bench.Plan{}, ""); found != nil {
		t.Errorf("nothing to say, but %+v is found", found)
	}
}
