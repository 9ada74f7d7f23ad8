package ui

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"

	"tsugime/repeat/bench"
	"tsugime/repeat/document"
	"tsugime/repeat/geom"
)

// onTheBench shows the bench of a starter, planned.
func onTheBench(t *testing.T, starter string) (*Window, *benchPlan) {
	t.Helper()
	w := onBench(t, starter)
	w.sheetsStation().toBench(0)
	b := w.sheetsStation().plan
	awaitPlan(t, b)
	return w, b
}

// awaitPlan waits until what is shown has been planned.
func awaitPlan(t *testing.T, b *benchPlan) {
	t.Helper()
	settle(t, b.w)
	await(t, "the bench is planned", b.planner.fresh)
}

func TestTheWalkGoesThroughEveryCutOnce(t *testing.T) {
	w, b := onTheBench(t, "leaf")
	want := w.work.Bench(bench.Rack{}, bench.Rates{}).Sheets[0].Plan
	seen := map[workStep]bool{}
	for b.stepCut(1); !seen[b.walk]; b.stepCut(1) {
		seen[b.walk] = true
		if len(seen) > want.CutOuts+want.StarHoles {
			t.Fatal("the walk goes on past the last cut")
		}
	}
	if len(seen) != want.CutOuts+want.StarHoles || b.walk != (workStep{len(want.Passes) - 1, want.Passes[len(want.Passes)-1].Count - 1}) {
		t.Errorf("%d cuts were walked to %v, want %d", len(seen), b.walk, want.CutOuts+want.StarHoles)
	}
	for range len(seen) - 1 {
		b.stepCut(-1)
	}
	if b.walk != (workStep{}) {
		t.Errorf("back at %v, want the first cut", b.walk)
	}
	b.stepPass(-1)
	if b.walk.pass != len(want.Passes)-1 {
		t.Errorf("before the first pass comes %d, want the last", b.walk.pass)
	}
}

func TestKeysWalkOnlyWhileTheBenchIsShown(t *testing.T) {
	w, b := onTheBench(t, "small-dot")
	w.typed(fyne.KeyPageDown, 0)
	w.typed(fyne.KeyPageDown, 0)
	if b.walk != (workStep{1, 0}) || len(w.chosen) != 1 {
		t.Fatalf("two keys lead to %v with %d motifs chosen", b.walk, len(w.chosen))
	}
	if !strings.Contains(w.status.Text, "Pass 2 of") {
		t.Errorf("the line below says %q", w.status.Text)
	}
	w.sheetsStation().shows.SetSelected(thePages)
	w.typed(fyne.KeyPageDown, 0)
	if b.walk != (workStep{1, 0}) {
		t.Error("a key walks the bench that is not shown")
	}
}

func TestAClickedCutOutTellsItsMethodAndItCanBeNamed(t *testing.T) {
	w, b := onTheBench(t, "small-dot")
	start := written(t, w.Order())
	cut := b.sheet().Sheet.CutOuts[100]
	b.s.Tap(cut.Shape.Bounds().Centre(), 0, false)
	if k, ok := b.cutOut(); !ok || k != 100 || !strings.Contains(b.reason.Text, "round hole") {
		t.Fatalf("cut-out %d is chosen, %q", k, b.reason.Text)
	}
	choice := findSelect(b.form, "kiribori")
	choice.SetSelected("tsukibori")
	awaitPlan(t, b)
	if w.Order().Methods[w.chosen[0]] != bench.Tsukibori || b.sheet().Assignment.Choices[100].Method != bench.Tsukibori {
		t.Error("the named method is not planned")
	}
	if b.s.Tap(cut.Shape.Bounds().Centre(), 0, false); !strings.Contains(b.reason.Text, "named it") {
		t.Errorf("the reason is %q", b.reason.Text)
	}
	w.Undo()
	if written(t, w.Order()) != start {
		t.Error("undo does not bring the rule back")
	}
}

func TestWhatTheRackLacksIsFoundAndSnappedTo(t *testing.T) {
	w, b := onTheBench(t, "small-dot")
	lacked := func() (dots []benchFinding) {
		for _, f := range b.planner.plan.found {
			if f.missing != nil && f.motif != 0 {
				dots = append(dots, f)
			}
		}
		return dots
	}
	if len(lacked()) != 0 || len(w.findings()) != len(w.work.Findings)+len(b.planner.plan.found) {
		t.Error("without a rack a tool is missing, or what the bench found is not shown")
	}
	w.Edit("Empty the Order's Rack", func(o document.Order) (document.Order, error) { return document.SetRack(o, nil) })
	awaitPlan(t, b)
	size := b.sheet().Assignment.Choices[0].Size
	if !w.keepRack(bench.Rack{Tools: []bench.Tool{{Kind: bench.Awl, Number: "7", Size: size * 9 / 10, Condition: bench.Sharp}}}) {
		t.Fatal(w.status.Text)
	}
	awaitPlan(t, b)
	if len(lacked()) == 0 {
		t.Fatalf("nothing is missing: %+v", b.planner.plan.found)
	}
	f := lacked()[0]
	b.look(f.Finding)
	if k, ok := b.cutOut(); !ok || b.sheet().Sheet.CutOuts[k].Motif != f.motif {
		t.Error("a missing tool does not lead to what it would cut")
	}
	w.snapToRack()
	awaitPlan(t, b)
	if len(lacked()) != 0 {
		t.Errorf("snapped, tools are missing: %+v", lacked())
	}
	for _, s := range b.sheet().Assignment.Strained() {
		if s.Strain.By.Abs() > geom.Micrometre && s.Count > 10 {
			t.Errorf("snapped, the dots of %s are off by %s mm", s.Size, s.Strain.By)
		}
	}
}

func TestRatesAreLearntFromJobsThatAreBroughtIn(t *testing.T) {
	w, b := onTheBench(t, "small-dot")
	guessed := b.sheet().Plan.Hours
	name := filepath.Join(t.TempDir(), "jobs.csv")
	if err := os.WriteFile(name, []byte("method,count,hours\nkiribori,30000,60\nkiribori,10000,20\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	if !w.BringInJobs(name) || !w.setDay("6,5 h") {
		t.Fatal(w.status.Text)
	}
	awaitPlan(t, b)
	p := b.sheet().Plan
	// 60 hours for 30,000 holes are 0.12 minutes each.
	if want := float64(p.CutOuts+p.StarHoles) * 0.12 / 60; p.Hours == guessed || p.Hours < want-1e-6 || p.Hours > want+1e-6 || p.DayHours != 6.5 {
		t.Errorf("%.3f hours by days of %g, want %.3f", p.Hours, p.DayHours, want)
	}
	if !strings.Contains(b.rates.Text, "learnt from 2 jobs") {
		t.Errorf("the rates say %q", b.rates.Text)
	}
	if err := os.WriteFile(name, []byte("method,count,hours\ndrill,1,1\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	if w.BringInJobs(name) || !strings.Contains(w.status.Text, "line 2, method") {
		t.Errorf("a bad file says %q", w.status.Text)
	}
}

func TestThePileIsMendedToWhatTheMethodsAllow(t *testing.T) {
	w, b := onTheBench(t, "small-dot")
	w.Edit("Change Pile", func(o document.Order) (document.Order, error) {
		p := o.Sheet.Paper
		p.Pile = 20
		return document.SetPaper(o, p)
	})
	awaitPlan(t, b)
	w.bindFewer()
	awaitPlan(t, b)
	if got := w.Order().Sheet.Paper.Pile; got != 10 || slices.ContainsFunc(b.planner.plan.found, func(f benchFinding) bool { return f.Code == "bench-pile" }) {
		t.Errorf("the pile is %d, %d findings are left", got, len(b.planner.plan.found))
	}
}
