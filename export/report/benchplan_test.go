package report

import (
	"bytes"
	"fmt"
	"math"
	"math/rand/v2"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"tsugime/export"
	"tsugime/repeat"
	"tsugime/repeat/bench"
	"tsugime/repeat/geom"
	"tsugime/repeat/repeattest"
	"tsugime/repeat/stencil"
)

// workshop is a rack with a tool of each kind, some too coarse, and a limit.
func workshop(t testing.TB) bench.Rack {
	t.Helper()
	heart, err := geom.ParsePathData("M0 0C1 -2 3 -1 3 1C2 2 1 1.5 0 0Z")
	if err != nil {
		t.Fatal(err)
	}
	return bench.Rack{
		Tools: []bench.Tool{
			{Kind: bench.Awl, Number: "7", Size: geom.MM(2.06)}, {Kind: bench.Awl, Number: "星", Size: geom.MM(1)},
			{Kind: bench.Knife, Number: "k 1/2", Size: geom.MM(1)}, {Kind: bench.Punch, Number: "h", Outline: heart},
		},
		Limits: []bench.Limit{{Method: bench.Tsukibori, Pile: 4}},
	}
}

// Every layer of a cut drawing holds what one method and tool cuts, in the order of
// the plan, and all of them together the sheet.
func TestLayersAreMethodsAndToolsInTheOrderOfTheWork(t *testing.T) {
	opt := Options{Rack: workshop(t)}
	for _, o := range []struct {
		name string
		w    repeat.Work
		want []string // layers that must be there
	}{
		{"dots", built(t, dotOrder(t, 6, 2)), []string{"cut-kiribori-7"}},
		{"split", built(t, splitOrder(t, 1, stencil.TiePlaces)), []string{"cut-kiribori-7", "cut-tsukibori-k_1_2"}},
	} {
		planned := o.w.Bench(opt.Rack, opt.Rates)
		for n, s := range sheetsOf(o.w) {
			plan, choices := planned.Sheets[n].Plan, planned.Sheets[n].Assignment.Choices
			groups := cutGroups(s, planned.Sheets[n])
			marks := 0
			for _, g := range groups {
				marks += len(g.layer.Discs) + len(g.layer.Outlines)
				var discs []geom.Disc
				for _, i := range g.passes {
					for _, c := range plan.Passes[i].Order {
						if choices[c].Method != g.method || choices[c].Tool != g.tool {
							t.Fatalf("%s: %s holds a cut-out of another tool", o.name, g.layer.Name)
						}
						if s.CutOuts[c].Shape.Round() {
							discs = append(discs, s.CutOuts[c].Shape.Disc)
						}
					}
				}
				for i, d := range discs {
					if g.layer.Discs[i] != d {
						t.Fatalf("%s: hole %d of %s is not the plan's", o.name, i, g.layer.Name)
					}
				}
			}
			if marks != len(s.CutOuts) {
				t.Errorf("%s, sheet %d: %d marks in layers, %d cut-outs", o.name, n+1, marks, len(s.CutOuts))
			}
			if n == 0 {
				d := CutDrawings(o.w, opt)[0]
				for _, name := range o.want {
					if layerNamed(d, name) == nil {
						t.Errorf("%s: no layer %s", o.name, name)
					}
					if said := allTexts(d); !strings.Contains(said, name+": ") {
						t.Errorf("%s: the legend lacks %s: %s", o.name, name, said)
					}
				}
			}
		}
	}
}

func layerNamed(d export.Drawing, name string) *export.Layer {
	for i := range d.Layers {
		if d.Layers[i].Name == name {
			return &d.Layers[i]
		}
	}
	return nil
}

func allTexts(d export.Drawing) string {
	var b strings.Builder
	for _, l := range d.Layers {
		for _, text := range l.Texts {
			b.WriteString(text.Text + "\n")
		}
	}
	return b.String()
}

// Tools whose numbers differ only in what a layer's name can't hold keep layers of
// their own.
func TestNoTwoLayersShareAName(t *testing.T) {
	rack := bench.Rack{Tools: []bench.Tool{
		{Kind: bench.Awl, Number: "錐1", Size: geom.MM(1)}, {Kind: bench.Awl, Number: "針1", Size: geom.MM(2)}, {Kind: bench.Awl, Number: "N1", Size: geom.MM(3)}, {Kind: bench.Awl, Number: "n1", Size: geom.MM(4)},
	}}
	taken := map[string]bool{}
	var names []string
	for i := range rack.Tools {
		names = append(names, groupName(rack, bench.Pass{Method: bench.Kiribori, Tool: i}, taken))
	}
	if got, want := strings.Join(names, " "), "cut-kiribori-_1 cut-kiribori-_1-2 cut-kiribori-N1 cut-kiribori-n1-2"; got != want {
		t.Errorf("names %s, want %s", got, want)
	}
}

// The file for a plotter, read by hp2xx and by eye: every hole and star once, and
// nothing that is not cut.
func TestAPlotterGetsEveryHoleAndNothingElse(t *testing.T) {
	w := built(t, dotOrder(t, 6, 2))
	folder := t.TempDir()
	if _, err := JobFolder(t.Context(), w, folder, Options{Only: []string{"cut-only"}}, nil); err != nil {
		t.Fatal(err)
	}
	path := filepath.Join(folder, "cut-only.hpgl")
	data, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	s := sheetsOf(w)[0]
	circles := regexp.MustCompile(`PU(-?\d+),(-?\d+);\nCI(\d+)`).FindAllStringSubmatch(string(data), -1)
	if want := len(s.CutOuts) + len(s.Stars.Stars); len(circles) != want || bytes.Contains(data, []byte("PD")) {
		t.Errorf("%d circles, want %d and no other line", len(circles), want)
	}
	at := map[[2]int]bool{}
	for _, c := range circles {
		x, _ := strconv.Atoi(c[1])
		y, _ := strconv.Atoi(c[2])
		at[[2]int{x, y}] = true
	}
	rnd := rand.New(rand.NewPCG(3, 3))
	for range 100 {
		p := s.CutOuts[rnd.IntN(len(s.CutOuts))].Shape.Disc.Centre
		x, y := p.X.MM()*40, (s.Paper.Height()-p.Y).MM()*40
		found := false
		for dx := -1; dx <= 1; dx++ {
			for dy := -1; dy <= 1; dy++ {
				k := [2]int{int(math.Round(x)) + dx, int(math.Round(y)) + dy}
				found = found || at[k] && math.Hypot(float64(k[0])-x, float64(k[1])-y) <= 1
			}
		}
		if !found {
			t.Errorf("no hole within 0.025 mm of %s, %s", p.X, p.Y)
		}
	}
	log := filepath.Join(t.TempDir(), "log")
	repeattest.Tool(t, "hp2xx", "hp2xx", "-l", log, "-t", "-m", "svg", "-f", filepath.Join(t.TempDir(), "o.svg"), path)
	told, err := os.ReadFile(log)
	if err != nil || !regexp.MustCompile(`ignored:\s*0\n`).Match(told) {
		t.Errorf("hp2xx says %s, %v", told, err)
	}
}

// With a blade that trails and goes on, every rim becomes a way that is longer by
// what closed forms say.
func TestABladesWaysReplaceTheRims(t *testing.T) {
	w := built(t, dotOrder(t, 6, 2))
	opt := Options{Blade: bench.Blade{Offset: geom.MM(0.25), Overcut: geom.MM(0.5)}}
	plain, ways := CutOnly(w, Options{})[0], CutOnly(w, opt)[0]
	for i, l := range ways.Layers {
		of := plain.Layers[i]
		if len(l.Discs)+len(l.Outlines) > 0 || len(l.Lines) != len(of.Discs)+len(of.Outlines) {
			t.Fatalf("%s: %d ways for %d rims", l.Name, len(l.Lines), len(of.Discs))
		}
		for k, line := range l.Lines {
			d, length := of.Discs[k], 0.0
			for j := 1; j < len(line.Points); j++ {
				length += line.Points[j].Sub(line.Points[j-1]).Norm() / 1e6
			}
			r := math.Hypot(d.RadiusMM(), 0.25)
			if want := 2*math.Pi*r + 0.5*r/d.RadiusMM(); math.Abs(length-want) > 0.15 {
				t.Fatalf("%s: a way of %.3f mm around a hole of %s mm, want %.3f", l.Name, length, d.Diameter, want)
			}
		}
	}
}

// The printed plan, read by pdftotext, has the figures that the plan has.
func TestTheBenchPlanSaysWhatWasPlanned(t *testing.T) {
	opt := Options{Rack: workshop(t), Rates: bench.Learn([]bench.Job{{Method: bench.Kiribori, Count: 1000, Hours: 3}})}
	for _, w := range []repeat.Work{built(t, dotOrder(t, 6, 2)), built(t, splitOrder(t, 1, stencil.TiePlaces))} {
		b, err := BenchPlan(w, opt)
		if err != nil {
			t.Fatal(err)
		}
		words := strings.Join(strings.Fields(string(read(t, "pdftotext", "-layout", written(t, "bench.pdf", b), "-"))), " ")
		plan := w.Bench(opt.Rack, opt.Rates)
		for _, s := range plan.Sheets {
			for i, p := range s.Plan.Passes {
				wantWords(t, words, fmt.Sprintf("%d %s %s", i+1, stageWords[p.Stage], p.Method))
				wantWords(t, words, fmt.Sprintf("%d %.2f %d %.2f %.2f", p.Count, p.LengthMM/1000, p.Times, p.TravelMM/1000, p.Hours))
			}
			wantWords(t, words, fmt.Sprintf("%d cut-outs, %d register holes; pile of %d.", s.Plan.CutOuts, s.Plan.StarHoles, s.Plan.Pile))
		}
		wantWords(t, words, fmt.Sprintf("%.1f hours, %.1f days of 8 hours", plan.Hours(), plan.Days()))
		wantWords(t, words, "kiribori 0.180 0.0 1 finished job, which scatter by 0 %")
		wantWords(t, words, "No. 7, 2.06 mm 2.00 +0.06 3.0")
	}
}

// Words stay apart with a rack, in both languages and units.
func TestABenchPlanWithARackHasItsWordsApart(t *testing.T) {
	w := built(t, splitOrder(t, 1, stencil.TiePlaces))
	w.Order.Title = "輪"
	for _, page := range export.Pages() {
		for _, units := range []string{inMM, inSun} {
			for _, language := range []string{"en", "ja"} {
				opt := Options{Rack: workshop(t), Page: page.Name, Units: units, Language: language}
				b, err := BenchPlan(w, opt)
				if err != nil {
					t.Fatal(err)
				}
				for i, p := range b.Pages {
					where := fmt.Sprintf("page %d on %s in %s, %s", i+1, page.Name, units, language)
					checkTexts(t, where, p)
					for _, text := range pageTexts(p) {
						if language == "ja" {
							checkJapanese(t, where, strings.ReplaceAll(strings.ReplaceAll(text.Text.Text, "k 1/2", ""), "h", ""))
						}
					}
				}
			}
		}
	}
}
