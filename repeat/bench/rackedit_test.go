package bench

import (
	"bytes"
	"math/rand/v2"
	"slices"
	"strconv"
	"strings"
	"testing"

	"tsugime/repeat/geom"
)

func TestWhatIsPutIntoARackCanBeReadBack(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 7))
	square, err := geom.ParsePathData("M0 0H2V1H0Z")
	if err != nil {
		t.Fatal(err)
	}
	var r Rack
	for i := range 300 {
		tool := Tool{
			Kind: Kinds()[rng.IntN(4)], Number: strconv.Itoa(rng.IntN(200)), Size: geom.MM(float64(rng.IntN(400)) / 100),
			Condition: Conditions()[rng.IntN(3)], Note: strings.Repeat("x", rng.IntN(4)),
		}
		if tool.Kind == Punch {
			tool.Size, tool.Outline = 0, square
		}
		n := len(r.Tools)
		if n > 0 && rng.IntN(3) == 0 {
			n = rng.IntN(n)
		}
		before := slices.Clone(r.Tools)
		next, err := r.Put(n, tool)
		if !slices.EqualFunc(before, r.Tools, func(a, b Tool) bool { return a.Number == b.Number && a.Kind == b.Kind && a.Size == b.Size }) {
			t.Fatal("an edit wrote into the rack it was given")
		}
		if err == nil {
			r = next
		} else if tool.Kind == Punch && !slices.ContainsFunc(r.Tools, func(o Tool) bool { return o.Number == tool.Number }) {
			t.Fatalf("a good punch is refused: %v", err)
		}
		if i%5 == 4 {
			r = r.Without(rng.IntN(len(r.Tools)))
		}
		var file bytes.Buffer
		if err := WriteRack(&file, r); err != nil {
			t.Fatal(err)
		}
		back, err := ReadRack(&file)
		if err != nil || len(back.Tools) != len(r.Tools) {
			t.Fatalf("%d tools were put in, %d read back: %v", len(r.Tools), len(back.Tools), err)
		}
	}
	if len(r.Tools) < 50 {
		t.Errorf("only %d tools were tried", len(r.Tools))
	}
}

func TestTheRackRefusesWhatItsFileWouldRefuse(t *testing.T) {
	r := Rack{Tools: []Tool{{Kind: Awl, Number: "7", Size: geom.MM(0.45)}}}
	for _, c := range []struct {
		n    int
		tool Tool
		says string
	}{
		{1, Tool{Kind: Awl, Number: "7", Size: geom.MM(1)}, `a tool "7" already`},
		{1, Tool{Kind: Awl, Size: geom.MM(1)}, "number:"},
		{1, Tool{Kind: Awl, Number: "8"}, "size_mm:"},
		{1, Tool{Kind: Punch, Number: "8"}, "outline_mm:"},
		{2, Tool{Kind: Awl, Number: "8", Size: geom.MM(1)}, "no tool 2"},
	} {
		if next, err := r.Put(c.n, c.tool); err == nil || !strings.Contains(err.Error(), c.says) || len(next.Tools) != 1 {
			t.Errorf("%+v: %v, want %q", c.tool, err, c.says)
		}
	}
	if next, err := r.Put(0, Tool{Kind: Awl, Number: "7", Size: geom.MM(0.5)}); err != nil || next.Tools[0].Size != geom.MM(0.5) {
		t.Errorf("a tool can't be changed under its own number: %v", err)
	}
	for _, l := range []Limit{{Method: "drill"}, {Method: Kiribori, Pile: 51}, {Method: Kiribori, Web: -1}} {
		if _, err := r.WithLimit(l); err == nil {
			t.Errorf("%+v is taken", l)
		}
	}
}

func TestLimitsOfOnesOwnComeAndGo(t *testing.T) {
	r, err := Rack{}.WithLimit(Limit{Method: Hikibori, Pile: 4})
	if err == nil {
		r, err = r.WithLimit(Limit{Method: Kiribori, Hole: geom.MM(0.3)})
	}
	if err != nil || len(r.Limits) != 2 || r.Limits[0].Method != Kiribori || r.Limit(Kiribori).Hole != geom.MM(0.3) {
		t.Fatalf("limits %+v: %v", r.Limits, err)
	}
	if r, err = r.WithLimit(Limit{Method: Kiribori}); err != nil || len(r.Limits) != 1 || r.Owns(Kiribori, HoleSize) {
		t.Errorf("limits %+v after one was taken away: %v", r.Limits, err)
	}
}

func TestARackIsSortedAsAnObviousSortDoes(t *testing.T) {
	rng := rand.New(rand.NewPCG(3, 4))
	var r Rack
	for i := range 500 {
		r.Tools = append(r.Tools, Tool{Kind: Kinds()[rng.IntN(4)], Number: strconv.Itoa(500 - i), Size: geom.Length(rng.IntN(20)) * geom.Millimetre, Condition: Sharp})
	}
	kind := map[Kind]int{Awl: 0, Punch: 1, Knife: 2, Pair: 3}
	order := r.Sorted(ByKind)
	for k := 1; k < len(order); k++ {
		a, b := r.Tools[order[k-1]], r.Tools[order[k]]
		if kind[a.Kind] > kind[b.Kind] || a.Kind == b.Kind && a.Across() > b.Across() || a.Kind == b.Kind && a.Across() == b.Across() && order[k-1] > order[k] {
			t.Fatalf("%+v stands before %+v", a, b)
		}
	}
	if byNumber := r.Sorted(ByNumber); byNumber[0] != 499 || byNumber[499] != 0 {
		t.Errorf("numbers go from %s to %s", r.Tools[byNumber[0]].Number, r.Tools[byNumber[499]].Number)
	}
	if got := r.FreeNumber(); got != "501" {
		t.Errorf("the free number is %s, want 501", got)
	}
}

func TestJobsAreReadAsTheyWereWritten(t *testing.T) {
	jobs := []Job{{"waves, \"fine\"", Kiribori, 30000, 0, 60.5}, {"", Shimabori, 3, 1234.567, 0.1}}
	var file bytes.Buffer
	if err := WriteJobs(&file, jobs); err != nil {
		t.Fatal(err)
	}
	back, err := ReadJobs(&file)
	if err != nil || !slices.Equal(back, jobs) {
		t.Errorf("%+v: %v", back, err)
	}
}
