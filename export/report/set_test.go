package report

import (
	"bytes"
	"encoding/json"
	"fmt"
	"image/png"
	"math"
	"math/rand/v2"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"tsugime/repeat"
	"tsugime/repeat/geom"
	"tsugime/repeat/repeattest"
	"tsugime/repeat/stencil"
)

func TestOnlyASplitHasTheFilesOfASet(t *testing.T) {
	one, two := built(t, dotOrder(t, 8, 2)), built(t, splitOrder(t, 1, stencil.TiePlaces))
	for _, name := range []string{"cut-second.svg", "cut-second.dxf", "cut-second.pdf", "transfer-second.pdf", "transfer-second-whole.pdf", "sheet-second.png", "set.png"} {
		if slices.Contains(Names(one), name) || !slices.Contains(Names(two), name) {
			t.Errorf("%s: one sheet has it: %v, two have it: %v", name, slices.Contains(Names(one), name), slices.Contains(Names(two), name))
		}
		if err := (Options{Only: []string{name}}).Check(one); err == nil {
			t.Errorf("%s was promised of one sheet", name)
		}
	}
	for _, of := range []string{"sheet-second", "set"} {
		if _, err := Picture(one, of, 400); err == nil {
			t.Errorf("a picture of the %s was drawn of one sheet", of)
		}
	}
	if _, err := Transfer(one, 2, Options{}); err == nil {
		t.Error("marking sheets of a second sheet were made of one")
	}
	folder := t.TempDir()
	if _, err := JobFolder(t.Context(), two, folder, Options{}, nil); err != nil {
		t.Fatal(err)
	}
	if got := listed(t, folder); !slices.Equal(got, sorted(Names(two))) {
		t.Errorf("the folder holds %v, want %v", got, sorted(Names(two)))
	}
	for _, name := range Names(two) {
		if strings.HasSuffix(name, ".pdf") {
			said := repeattest.Tool(t, "qpdf", "qpdf", "--check", filepath.Join(folder, name))
			if !strings.Contains(said, "No syntax or stream encoding errors found") {
				t.Errorf("%s: %s", name, said)
			}
		}
	}
}

// cutFiles writes the cut drawings of both sheets and returns their folder.
func cutFiles(t *testing.T, w repeat.Work) string {
	t.Helper()
	folder := t.TempDir()
	only := []string{"cut.svg", "cut.dxf", "cut-second.svg", "cut-second.dxf"}
	if _, err := JobFolder(t.Context(), w, folder, Options{Only: only}, nil); err != nil {
		t.Fatal(err)
	}
	return folder
}

// areaMM2 adds up what a sheet cuts; its cut-outs don't overlap.
func areaMM2(s stencil.Sheet) (outlines, discs float64) {
	for _, c := range s.CutOuts {
		if c.Shape.Round() {
			discs += c.Shape.AreaMM2()
		} else {
			outlines += c.Shape.AreaMM2()
		}
	}
	return outlines, discs
}

// TestAnotherReaderFindsBothSheets has ezdxf read the cut drawings: layers,
// counts, the box, the area, and the places of holes taken by chance.
func TestAnotherReaderFindsBothSheets(t *testing.T) {
	for _, cut := range stencil.SecondCuts() {
		w := built(t, splitOrder(t, 1, cut))
		folder := cutFiles(t, w)
		said := repeattest.Tool(t, "python3", "/usr/bin/python3", filepath.Join("..", "dxf", "testdata", "read.py"),
			filepath.Join(folder, "cut.dxf"), filepath.Join(folder, "cut-second.dxf"))
		var read []struct {
			Audit   []string
			Marks   map[string]map[string]int
			Circles [][3]float64
			Texts   []struct{ Text string }
			Closed  float64
			Box     [4]float64
		}
		if err := json.Unmarshal([]byte(said), &read); err != nil {
			t.Fatal(err)
		}
		paper := w.CutSheet().Paper
		for i, s := range w.CutSheet().Set() {
			r, where := read[i], fmt.Sprintf("%s, sheet %d", cut, i+1)
			if len(r.Audit) > 0 {
				t.Errorf("%s: the audit says %q", where, r.Audit)
			}
			contours, round := 0, 0
			for _, c := range s.CutOuts {
				if contours += len(c.Shape.Outline); c.Shape.Round() {
					round++
				}
			}
			got := 0
			for layer, marks := range r.Marks {
				if strings.HasPrefix(layer, "cut-") {
					got += marks["LWPOLYLINE"]
				}
			}
			if got != contours {
				t.Errorf("%s: %d contours, want %d", where, got, contours)
			}
			if got := r.Marks["stars"]["CIRCLE"]; got != 8 || len(r.Circles) != round+8 {
				t.Errorf("%s: %d stars of %d circles; want 6 feed and 2 match stars of %d", where, got, len(r.Circles), round+8)
			}
			// The paper's edge is a closed line too, and so is its box.
			outlines, _ := areaMM2(s)
			sheet := paper.Width().MM() * paper.Height().MM()
			if got := math.Abs(r.Closed) - sheet; math.Abs(math.Abs(got)-outlines) > 1e-3*outlines {
				t.Errorf("%s: outlines of %.3f mm², want %.3f", where, got, outlines)
			}
			if got, want := r.Box[2]-r.Box[0], paper.Width().MM(); math.Abs(got-want) > 1e-6 {
				t.Errorf("%s: %.6f mm wide, want the paper's %.6f", where, got, want)
			}
			checkHoles(t, where, r.Circles, s, paper)
			var words []string
			for _, text := range r.Texts {
				words = append(words, text.Text)
			}
			said := strings.Join(words, "|")
			own, other := fmt.Sprintf("M%d", i+1), fmt.Sprintf("M%d", 2-i)
			if !slices.Contains(words, "M") || !slices.Contains(words, own) || slices.Contains(words, other) ||
				!strings.Contains(said, []string{"first", "second"}[i]+" sheet of two") {
				t.Errorf("%s says %s; want M, %s and which sheet it is", where, said, own)
			}
		}
	}
}

// checkHoles looks for match stars and for round holes taken by chance; a drawing
// of this format has y up from the paper's lower edge.
func checkHoles(t *testing.T, where string, circles [][3]float64, s stencil.Sheet, paper geom.Box) {
	t.Helper()
	has := func(at geom.Point, diameter geom.Length) bool {
		p := at.Sub(paper.Min)
		return slices.ContainsFunc(circles, func(c [3]float64) bool {
			return math.Hypot(c[0]-p.X.MM(), c[1]-(paper.Height()-p.Y).MM()) < 1e-5 && math.Abs(2*c[2]-diameter.MM()) < 1e-5
		})
	}
	number := 1
	if s.Second == nil {
		number = 2
	}
	for _, m := range s.Stars.Match {
		if has(m.At, m.Diameter) != m.On(number) {
			t.Errorf("%s: match star of %d is there: %v", where, m.Sheet, !m.On(number))
		}
	}
	rnd := rand.New(rand.NewPCG(5, 9))
	for range 40 {
		c := s.CutOuts[rnd.IntN(len(s.CutOuts))].Shape
		if c.Round() && !has(c.Disc.Centre, c.Disc.Diameter) {
			t.Errorf("%s: no hole at %v", where, c.Disc.Centre)
		}
	}
}

// TestTheInkOfBothSheetsIsWhatTheyCut has rsvg draw the cut drawings, dark for
// what is cut, and weighs the dark in a window without words.
func TestTheInkOfBothSheetsIsWhatTheyCut(t *testing.T) {
	w := built(t, splitOrder(t, 1, stencil.TiePlaces))
	folder := cutFiles(t, w)
	const perMM = 8
	for i, name := range []string{"cut", "cut-second"} {
		picture := filepath.Join(folder, name+".png")
		dpi := fmt.Sprint(perMM * 25.4)
		repeattest.Tool(t, "librsvg2-bin", "rsvg-convert", "-b", "white", "--dpi-x", dpi, "--dpi-y", dpi, "-o", picture, filepath.Join(folder, name+".svg"))
		data, err := os.ReadFile(picture)
		if err != nil {
			t.Fatal(err)
		}
		img, err := png.Decode(bytes.NewReader(data))
		if err != nil {
			t.Fatal(err)
		}
		s := sheetsOf(w)[i]
		window := patternField(s.Sheet).Grown(-20 * geom.Millimetre)
		dark := 0.0
		for y := int(window.Min.Y.MM() * perMM); y < int(window.Max.Y.MM()*perMM); y++ {
			for x := int(window.Min.X.MM() * perMM); x < int(window.Max.X.MM()*perMM); x++ {
				r, _, _, _ := img.At(x, y).RGBA()
				dark += (255 - float64(r>>8)) / (255 - 0x1a)
			}
		}
		size := float64(int(window.Max.X.MM()*perMM)-int(window.Min.X.MM()*perMM)) * float64(int(window.Max.Y.MM()*perMM)-int(window.Min.Y.MM()*perMM))
		// Twenty cells across and fourteen along leave 5 % to the window's edge.
		if got := 100 * dark / size; math.Abs(got/s.OpenPct-1) > 0.06 {
			t.Errorf("%s: %.3f %% is dark, want %.3f", name, got, s.OpenPct)
		}
	}
}

// TestEveryTieIsOutlinedOnTheTransferAndNotOnTheCut: an outline for each tie of
// each motif, whose middle lies in no hole of the tied sheet.
func TestEveryTieIsOutlinedOnTheTransferAndNotOnTheCut(t *testing.T) {
	w := built(t, splitOrder(t, 1, stencil.Whole))
	perMotif := map[int]int{}
	for _, tie := range w.Order.Sheet.Hold.Ties {
		perMotif[int(tie.Motif)]++
	}
	s := sheetsOf(w)[0]
	want := 0
	for _, c := range s.CutOuts {
		want += perMotif[int(c.Motif)]
	}
	strips := tieStrips(w, s)
	if len(strips) != want || want < 100 {
		t.Fatalf("%d outlines, want %d", len(strips), want)
	}
	for _, strip := range strips {
		middle := geom.BoxOf(strip...).Centre()
		for _, c := range s.CutOuts {
			if c.Shape.Bounds().Holds(middle) && c.Shape.Contains(middle) {
				t.Fatalf("the tie about %v is cut", middle)
			}
		}
	}
	layers := func(n int) string {
		b, err := Transfer(w, n, Options{})
		if err != nil {
			t.Fatal(err)
		}
		var names []string
		for _, l := range b.Pages[1].Views[0].Of.Layers {
			names = append(names, l.Name)
		}
		return strings.Join(names, " ")
	}
	if !strings.Contains(layers(1), "ties") || !strings.Contains(layers(2), "ties") {
		t.Errorf("layers %s; and %s: want ties on both", layers(1), layers(2))
	}
	for _, d := range CutDrawings(w, Options{}) {
		for _, l := range d.Layers {
			if l.Name == "ties" {
				t.Error("a cut drawing outlines ties")
			}
		}
	}
}

// TestASlipOfTheSecondSheetGrowsWithTheWay reads the register sheet back: nothing
// shows in place, more the farther the second sheet is off.
func TestASlipOfTheSecondSheetGrowsWithTheWay(t *testing.T) {
	w := built(t, splitOrder(t, 1, stencil.TiePlaces))
	all, err := slips(w)
	if err != nil {
		t.Fatal(err)
	}
	if all[0].uncovered != 0 || all[0].beside != 0 {
		t.Errorf("in place %+v shows; want nothing", all[0])
	}
	for i := 2; i < len(all); i++ {
		if all[i].uncovered <= all[i-1].uncovered || all[i].beside <= all[i-1].beside {
			t.Errorf("slips %+v don't grow", all)
		}
	}
	b, err := Register(w, Options{Units: inMM})
	if err != nil {
		t.Fatal(err)
	}
	words := strings.Join(strings.Fields(string(read(t, "pdftotext", "-layout", written(t, "register.pdf", b), "-"))), " ")
	for _, s := range all[1:] {
		off := max(s.by.X.Abs(), s.by.Y.Abs()).MM()
		wantWords(t, words, fmt.Sprintf("%.2f %s %.4f %.4f", off, s.way(), s.uncovered, s.beside))
	}
	cut := w.CutSheet()
	for i, m := range cut.Stars.Match {
		d := m.At.Sub(cut.Paper.Min)
		wantWords(t, words, fmt.Sprintf("%s %s %.2f %.2f", []string{"M", "M1", "M2"}[i], []string{"both sheets", "the first", "the second"}[i], d.X.MM(), d.Y.MM()))
	}
	wantWords(t, words, fmt.Sprintf("%d × 2 = %d", len(w.Run.Placements), 2*len(w.Run.Placements)))
	wantWords(t, words, "common practice, no source")
}
