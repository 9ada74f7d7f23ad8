package report

import (
	"math"
	"strings"
	"testing"

	"tsugime/export"
	"tsugime/repeat"
	"tsugime/repeat/document"
	"tsugime/repeat/geom"
)

// corrected are the books that a printer's error is corrected in.
var corrected = []string{"transfer.pdf", "binding.pdf", "strip.pdf"}

// TestAPrinterThatIsOffPrintsTrueOnceCorrected has mutool measure the 100 mm scales
// of every paged sheet and then prints them as such a printer does: what measured
// 99.7 and 100.2 mm measures 100 mm on both sides.
func TestAPrinterThatIsOffPrintsTrueOnceCorrected(t *testing.T) {
	const short, long = 99.7, 100.2
	w := built(t, dotOrder(t, 6, 2))
	for _, page := range []string{"A4", "A3", "letter"} {
		opt := Options{Page: page, PrintedAcross: geom.MM(short), PrintedAlong: geom.MM(long)}
		for name, b := range books(t, w, opt) {
			paged := name == "transfer.pdf" || name == "binding.pdf" || name == "strip.pdf"
			level, upright := 0, 0
			for i, p := range strokes(t, written(t, name, b)) {
				across, along := short/100.0, long/100.0
				if d := b.Pages[i].Drawing; d.Width > d.Height {
					across, along = along, across
				}
				if !paged {
					across, along = 1, 1
				}
				for _, s := range p {
					wide, tall := s.size()
					if math.Abs(wide*across-100) < 0.002 && (tall == 0 || s.closed) {
						level++
					}
					if math.Abs(tall*along-100) < 0.002 && (wide == 0 || s.closed) {
						upright++
					}
				}
			}
			least := len(b.Pages) - 1 // the binding's table has none
			if paged && (level < least || upright < least && name != "strip.pdf") {
				t.Errorf("%s on %s: %d level and %d upright scales of 100 mm as printed on %d pages", name, page, level, upright, len(b.Pages))
			}
		}
	}
}

// A corrected page says for what, keeps its size and its ink on the paper, and its
// holes keep their distances once it is printed.
func TestACorrectedPageSaysSoAndKeepsItsSize(t *testing.T) {
	o, err := document.SetPrinted(dotOrder(t, 8, 2), document.LeastPrinted, document.LeastPrinted)
	if err != nil {
		t.Fatal(err)
	}
	w := built(t, o)
	for _, name := range corrected {
		b, err := bookNamed(name, w, Options{})
		if err != nil {
			t.Fatal(err)
		}
		path := written(t, name, b)
		words := string(read(t, "pdftotext", path, "-"))
		if !strings.Contains(strings.Join(strings.Fields(words), " "), "98.00 × 98.00 mm") {
			t.Errorf("%s doesn't say what it is corrected for", name)
		}
		plain, err := bookNamed(name, built(t, dotOrder(t, 8, 2)), Options{})
		if err != nil {
			t.Fatal(err)
		}
		if len(plain.Pages) != len(b.Pages) {
			t.Errorf("%s has %d pages, %d without a correction", name, len(b.Pages), len(plain.Pages))
		}
		for i, p := range strokes(t, path) {
			d := b.Pages[i].Drawing
			for _, s := range p {
				for k := range s.xs {
					if s.xs[k] < 3 || s.ys[k] < 3 || s.xs[k] > d.Width.MM()-3 || s.ys[k] > d.Height.MM()-3 {
						if len(b.Pages[i].Views) == 0 {
							t.Fatalf("%s page %d: ink at %.2f, %.2f", name, i+1, s.xs[k], s.ys[k])
						}
					}
				}
			}
		}
	}
}

// What is off by more than two in a hundred was fitted to the page.
func TestAPrinterThatFitsToThePageIsRefused(t *testing.T) {
	o := dotOrder(t, 20, 2)
	for _, l := range []geom.Length{geom.MM(97.9), geom.MM(102.1), -1, 1} {
		if _, err := document.SetPrinted(o, l, 0); err == nil || !strings.Contains(err.Error(), "printed_across_mm") {
			t.Errorf("%s mm across: %v", l, err)
		}
		if err := (Options{PrintedAlong: l}).Check(built(t, o)); err == nil || !strings.Contains(err.Error(), "along") {
			t.Errorf("%s mm along: %v", l, err)
		}
	}
}

// The holes of a transfer stand where the model has them: mirrored about the middle
// of the paper, as outlines, or as crosses.
func TestTheTransferIsDrawnAsItIsAskedFor(t *testing.T) {
	w := built(t, dotOrder(t, 8, 2))
	sheet := sheetsOf(w)[0]
	for _, marks := range document.MarkNames {
		for _, mirrored := range []bool{false, true} {
			b, err := TransferWhole(w, 1, Options{Marks: marks, Mirrored: mirrored})
			if err != nil {
				t.Fatal(err)
			}
			places := map[geom.Point]int{}
			filled := false
			for _, l := range b.Pages[0].Views[0].Of.Layers {
				if !strings.HasPrefix(l.Name, "cut-") {
					continue
				}
				filled = filled || l.Pen.Filled
				for _, d := range l.Discs {
					places[d.Centre] += 2
				}
				for _, line := range l.Lines {
					places[geom.BoxOf(line.Points...).Centre()]++
				}
			}
			if filled != (marks == document.FilledMarks) || len(places) != len(sheet.CutOuts) {
				t.Errorf("%s, mirrored %v: %d marks for %d holes, filled %v", marks, mirrored, len(places), len(sheet.CutOuts), filled)
			}
			for _, c := range sheet.CutOuts {
				at := c.Shape.Disc.Centre
				if mirrored {
					at.X = sheet.Paper.Width() - at.X
				}
				if places[at] != 2 {
					t.Fatalf("%s, mirrored %v: %d strokes at %v", marks, mirrored, places[at], at)
				}
			}
		}
	}
}

// Mirrored twice is as it was, words too.
func TestMirroredTwiceIsAsItWas(t *testing.T) {
	for name, w := range map[string]repeat.Work{"dots": built(t, dotOrder(t, 8, 2)), "rings": built(t, splitOrder(t, 1, "tie-places"))} {
		s := sheetsOf(w)[0]
		k := look{mirrored: true, width: s.Paper.Width()}
		d := CutDrawings(w, Options{})[0]
		again := k.of(k.of(d))
		for i, l := range d.Layers {
			a := again.Layers[i]
			for j := range l.Discs {
				if l.Discs[j] != a.Discs[j] {
					t.Fatalf("%s: disc %v became %v", name, l.Discs[j], a.Discs[j])
				}
			}
			for j := range l.Texts {
				if l.Texts[j] != a.Texts[j] {
					t.Fatalf("%s: text %v became %v", name, l.Texts[j], a.Texts[j])
				}
			}
			if len(l.Outlines) != len(a.Outlines) {
				t.Fatalf("%s: %d outlines became %d", name, len(l.Outlines), len(a.Outlines))
			}
			for j := range l.Outlines {
				if x, y := (geom.Shape{Outline: l.Outlines[j]}).Bounds(), (geom.Shape{Outline: a.Outlines[j]}).Bounds(); x != y {
					t.Fatalf("%s: outline in %v became one in %v", name, x, y)
				}
			}
		}
	}
	if (correction{}).stretch(geom.PtMM(210, 297)) != (export.Stretch{}) {
		t.Error("what was not measured is corrected")
	}
}
