package main

import (
	"encoding/csv"
	"encoding/json"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"tsugime/repeat/repeattest"
)

// A readSheet is what poppler reads off a sheet, its gaps closed.
type readSheet struct{ name, words string }

func sheetOf(t *testing.T, folder, name string) readSheet {
	t.Helper()
	said := repeattest.Tool(t, "poppler-utils", "pdftotext", "-layout", filepath.Join(folder, name), "-")
	return readSheet{name, strings.Join(strings.Fields(said), " ")}
}

// says fails unless the sheet has a sentence whose numbers, each marked # in it, are
// the values to the last decimal that is shown; * stands for a few words or
// none.
func (s readSheet) says(t *testing.T, sentence string, values ...float64) {
	t.Helper()
	pattern := strings.NewReplacer(`#`, `([-+−]?\d+(?:\.\d+)?)`, ` \* `, ` (?:.{0,70}? )?`).Replace(regexp.QuoteMeta(sentence))
	for _, found := range regexp.MustCompile(pattern).FindAllStringSubmatch(s.words, -1) {
		fits := len(found) == len(values)+1
		for i := range values {
			fits = fits && shows(found[i+1], values[i])
		}
		if fits {
			return
		}
	}
	t.Errorf("%s doesn't say %q of %v; it says\n%s", s.name, sentence, values, s.words)
}

// shows reports whether a number as written is v, rounded to its decimals. What is
// read as JSON is rounded too, to six digits at least.
func shows(written string, v float64) bool {
	got, err := strconv.ParseFloat(strings.Replace(written, "−", "-", 1), 64)
	_, decimals, _ := strings.Cut(written, ".")
	return err == nil && math.Abs(got-v) <= 0.5*math.Pow10(-len(decimals))+1e-5*math.Abs(v)
}

func ask(t *testing.T, doc any, args ...string) {
	t.Helper()
	text, msg, code := call(t, "", append(args, "--json")...)
	if code != exitFine && code != exitFindings {
		t.Fatalf("%v: exit %d, %s", args, code, msg)
	}
	if err := json.Unmarshal([]byte(text), doc); err != nil {
		t.Fatal(err)
	}
}

// TestEveryFigureOfTheSheetsIsThatOfTheJSON asks for the measures of an order and
// reads its printed sheets by another program.
func TestEveryFigureOfTheSheetsIsThatOfTheJSON(t *testing.T) {
	split := filepath.Join(t.TempDir(), "split.tsugime")
	if _, msg, code := call(t, rings, "hold", "-", "-o", split, "--by", "split"); code != exitFine {
		t.Fatal(msg)
	}
	for _, name := range []string{order(t, "small-dot"), order(t, "leaf"), split} {
		folder := filepath.Join(t.TempDir(), "job")
		if _, msg, code := call(t, "", "sheets", name, "-o", folder, "--only", "bench,register,dyer,proof,placements", "-q"); code != exitFine {
			t.Fatal(msg)
		}
		benchFigures(t, name, sheetOf(t, folder, "bench.pdf"))
		boltFigures(t, name, sheetOf(t, folder, "register.pdf"), sheetOf(t, folder, "dyer.pdf"))
		sheetFigures(t, name, sheetOf(t, folder, "register.pdf"))
		placementFigures(t, name, filepath.Join(folder, "placements.csv"))
		var garment struct {
			Used float64 `json:"cloth_used_mm"`
		}
		ask(t, &garment, "garment", name)
		sheetOf(t, folder, "proof.pdf").says(t, "# m of cloth are sewn up", garment.Used/1000)
	}
}

func benchFigures(t *testing.T, name string, sheet readSheet) {
	t.Helper()
	var doc struct {
		Hours, Days float64
		DayHours    float64 `json:"day_hours"`
		Sheets      []struct {
			CutOuts  float64 `json:"cut_outs"`
			Stars    float64
			Pile     float64
			Saleable float64
			Hours    float64
			Lines    float64 `json:"lines_mm"`
			Travel   float64 `json:"travel_mm"`
			Passes   []struct {
				Method       string
				Count, Times float64
				Hours        float64
				LinesMM      float64 `json:"lines_mm"`
				TravelMM     float64 `json:"travel_mm"`
			}
		}
	}
	ask(t, &doc, "bench", name)
	first := doc.Sheets[0]
	sheet.says(t, "pile of # sheets, # sheets for sale; # hours, # days of # hours", first.Pile, first.Saleable, doc.Hours, doc.Days, doc.DayHours)
	for _, s := range doc.Sheets {
		for i, p := range s.Passes {
			sheet.says(t, fmt.Sprintf("%d * %s * # # # # #", i+1, p.Method), p.Count, p.LinesMM/1000, p.Times, p.TravelMM/1000, p.Hours)
		}
		sheet.says(t, "together # # # #", s.CutOuts+s.Stars, s.Lines/1000, s.Travel/1000, s.Hours)
		sheet.says(t, "# cut-outs, # register holes; pile of #.", s.CutOuts, s.Stars, s.Pile)
	}
}

func boltFigures(t *testing.T, name string, register, dyer readSheet) {
	t.Helper()
	var doc struct {
		Count, Needed float64
		Step          float64 `json:"step_mm"`
		Remainder     float64 `json:"remainder_mm"`
		Drift         struct {
			X     float64 `json:"end_x_mm"`
			Y     float64 `json:"end_y_mm"`
			Joint float64 `json:"worst_joint_mm"`
		}
		Partial *struct {
			N       float64
			Printed float64 `json:"printed_mm"`
			Masked  float64 `json:"masked_mm"`
		}
		Stretches []struct {
			A    float64 `json:"on_face_a"`
			B    float64 `json:"on_face_b"`
			Turn float64 `json:"in_turn"`
		}
		Gains []struct {
			Remedy string
			Joint  float64 `json:"joint_after_mm"`
			End    float64 `json:"end_after_mm"`
		}
	}
	ask(t, &doc, "bolt", name)
	var a, b, turn float64
	for _, s := range doc.Stretches {
		a, b, turn = a+s.A, b+s.B, turn+s.Turn
	}
	register.says(t, "# whole, # to cover the bolt", doc.Count, doc.Needed)
	register.says(t, "cloth left, mm * # # # # # #", doc.Count, a, b, turn, doc.Step, doc.Remainder)
	register.says(t, "At the end: # mm across, # mm along.", doc.Drift.X, doc.Drift.Y)
	register.says(t, "gap or lap by # mm", doc.Drift.Joint)
	dyer.says(t, "step on the board * # mm", doc.Step)
	dyer.says(t, "off by # mm, and the end walks # mm across and # mm along", doc.Drift.Joint, doc.Drift.X, doc.Drift.Y)
	if doc.Partial != nil {
		dyer.says(t, "Placement # is laid in part: # mm are printed; cover # mm of the sheet.", doc.Partial.N+1, doc.Partial.Printed, doc.Partial.Masked)
	}
	for _, g := range doc.Gains {
		if words := map[string]string{"careful-stars": "lay each star half as far off", "marked-line": "lay to a marked line"}[g.Remedy]; words != "" {
			dyer.says(t, words+" # #", g.Joint, g.End)
		}
	}
}

// sheetFigures holds counts, stars and their measures to those of the check. Stars are
// printed from the paper's corner, so the ways between them are compared.
func sheetFigures(t *testing.T, name string, register readSheet) {
	t.Helper()
	var doc struct {
		Measures struct {
			CutOuts float64 `json:"cut_outs"`
			Open    float64 `json:"open_area_pct"`
			Hold    struct {
				Sheets []struct {
					CutOuts float64 `json:"cut_outs"`
					Open    float64 `json:"open_area_pct"`
				}
			}
			Stars []struct {
				Kind string
				X    float64 `json:"x_mm"`
				Y    float64 `json:"y_mm"`
				D    float64 `json:"d_mm"`
			}
			Baseline float64 `json:"star_baseline_mm"`
			Misfit   float64 `json:"star_turned_misfit_mm"`
		}
	}
	ask(t, &doc, "check", name)
	m := doc.Measures
	for _, s := range m.Hold.Sheets {
		register.says(t, "#, open area # %", s.CutOuts, s.Open)
	}
	register.says(t, "#, open area # %", m.CutOuts, m.Open)
	register.says(t, "Baseline # mm. Laid turned or flipped, the stars miss by # mm at least", m.Baseline, m.Misfit)
	rows := regexp.MustCompile(`\b[LT]\d (\d+\.\d+) (\d+\.\d+) (\d+\.\d+)`).FindAllStringSubmatch(register.words, -1)
	for i, row := range rows {
		star, first := m.Stars[i], m.Stars[0]
		for k, want := range []float64{star.X - first.X, star.Y - first.Y} {
			from, _ := strconv.ParseFloat(rows[0][k+1], 64)
			at, _ := strconv.ParseFloat(row[k+1], 64)
			if math.Abs(at-from-want) > 0.0101 {
				t.Errorf("%s: star %s is %.2f mm from the first, want %.4f", register.name, row[0], at-from, want)
			}
		}
		if !shows(row[3], star.D) || star.Kind != "feed" {
			t.Errorf("%s: star %s, want a feed star of %v mm", register.name, row[0], star.D)
		}
	}
	if len(rows) < 4 {
		t.Errorf("%s lists %d stars", register.name, len(rows))
	}
}

func placementFigures(t *testing.T, name, table string) {
	t.Helper()
	var doc struct {
		Placements []struct {
			N    int
			Y    float64 `json:"y_mm"`
			Face string
			X    float64 `json:"walk_x_mm"`
			Walk float64 `json:"walk_y_mm"`
		}
	}
	ask(t, &doc, "bolt", name)
	file, err := os.Open(table)
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	rows, err := csv.NewReader(file).ReadAll()
	if err != nil || len(rows) != len(doc.Placements)+1 {
		t.Fatalf("%d rows, %v; want %d", len(rows), err, len(doc.Placements)+1)
	}
	for i, p := range doc.Placements {
		row := rows[i+1]
		for k, want := range map[int]float64{0: float64(p.N + 1), 1: p.Y, 3: p.X, 4: p.Walk} {
			if got, err := strconv.ParseFloat(row[k], 64); err != nil || math.Abs(got-want) > 0.000051 {
				t.Errorf("row %v, want %+v", row, p)
			}
		}
		if row[2] != p.Face {
			t.Errorf("row %v, want face %s", row, p.Face)
		}
	}
}
