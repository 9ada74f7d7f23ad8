package report

import (
	"bytes"
	"encoding/xml"
	"errors"
	"io"
	"math"
	"os/exec"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"tsugime/export"
	"tsugime/export/pdf"
	"tsugime/repeat"
	"tsugime/repeat/stencil"
)

// readers are the programs that read the sheets back, and what installs them.
var readers = map[string]string{
	"mutool": "apt-get install mupdf-tools", "pdftotext": "apt-get install poppler-utils", "pdfimages": "apt-get install poppler-utils", "pdftoppm": "apt-get install poppler-utils",
}

// read runs a reader and returns what it prints.
func read(t testing.TB, name string, args ...string) []byte {
	t.Helper()
	if _, err := exec.LookPath(name); err != nil {
		t.Fatalf("%s is missing; install it: %s", name, readers[name])
	}
	cmd := exec.Command(name, args...)
	var errs bytes.Buffer
	cmd.Stderr = &errs
	out, err := cmd.Output()
	if err != nil {
		t.Fatalf("%s %v: %v\n%s", name, args, err, errs.String())
	}
	return out
}

// written writes a book to a file of its own.
func written(t testing.TB, name string, b export.Book) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), name)
	err := export.Save(path, false, func(out io.Writer) error { return pdf.WriteBook(out, b) })
	if err != nil {
		t.Fatal(err)
	}
	return path
}

// A stroke is an open or closed run of straight pieces as mutool reads it, in
// millimetres of the page.
type stroke struct {
	xs, ys []float64
	closed bool
}

// strokes returns the straight strokes of every page.
func strokes(t testing.TB, path string) [][]stroke {
	t.Helper()
	d := xml.NewDecoder(bytes.NewReader(read(t, "mutool", "trace", path)))
	var pages [][]stroke
	var m [6]float64
	var now *stroke
	for {
		token, err := d.Token()
		if errors.Is(err, io.EOF) {
			return pages
		}
		if err != nil {
			t.Fatalf("mutool trace: %v", err)
		}
		e, begins := token.(xml.StartElement)
		end, _ := token.(xml.EndElement)
		switch {
		case begins && e.Name.Local == "page":
			pages = append(pages, nil)
		case begins && e.Name.Local == "stroke_path":
			copy(m[:], numbers(t, attribute(e, "transform")))
			now = &stroke{}
		case begins && now != nil && (e.Name.Local == "moveto" || e.Name.Local == "lineto"):
			p := numbers(t, attribute(e, "x")+" "+attribute(e, "y"))
			const mm = 25.4 / 72
			now.xs = append(now.xs, (m[0]*p[0]+m[2]*p[1]+m[4])*mm)
			now.ys = append(now.ys, (m[1]*p[0]+m[3]*p[1]+m[5])*mm)
		case begins && now != nil && e.Name.Local == "closepath":
			now.closed = true
		case end.Name.Local == "stroke_path":
			pages[len(pages)-1] = append(pages[len(pages)-1], *now)
			now = nil
		}
	}
}

func attribute(e xml.StartElement, name string) string {
	for _, a := range e.Attr {
		if a.Name.Local == name {
			return a.Value
		}
	}
	return ""
}

func numbers(t testing.TB, text string) []float64 {
	t.Helper()
	var all []float64
	for _, f := range strings.Fields(text) {
		v, err := strconv.ParseFloat(f, 64)
		if err != nil {
			t.Fatalf("mutool trace: %q is no number", f)
		}
		all = append(all, v)
	}
	return all
}

// size returns the width and height of a stroke's box.
func (s stroke) size() (w, h float64) {
	x0, x1, y0, y1 := math.Inf(1), math.Inf(-1), math.Inf(1), math.Inf(-1)
	for i, x := range s.xs {
		x0, x1, y0, y1 = math.Min(x0, x), math.Max(x1, x), math.Min(y0, s.ys[i]), math.Max(y1, s.ys[i])
	}
	return x1 - x0, y1 - y0
}

// TestCheckSquaresMeasure100MM reads the written sheets with another reader: the
// first page of the marking sheets has the square, each other page one side of
// it across and one along.
func TestCheckSquaresMeasure100MM(t *testing.T) {
	near := func(v float64) bool { return math.Abs(v-100) < 0.001 }
	works := map[string]repeat.Work{"dots": built(t, dotOrder(t, 6, 2)), "split": built(t, splitOrder(t, 1, stencil.TiePlaces))}
	for _, c := range [][2]string{{"dots", "A4"}, {"dots", "letter"}, {"dots", "B4"}, {"split", "A4"}} {
		page := c[1]
		for name, b := range books(t, works[c[0]], Options{Page: page}) {
			if slices.Contains([]string{"register.pdf", "dyer.pdf", "bench.pdf", "proof.pdf"}, name) || strings.HasPrefix(name, ofMarks) {
				continue
			}
			for i, p := range strokes(t, written(t, name, b)) {
				across, along, square := 0, 0, 0
				for _, s := range p {
					w, h := s.size()
					switch {
					case near(w) && near(h) && s.closed:
						square++
					case near(w) && h == 0 && len(s.xs) == 2:
						across++
					case near(h) && w == 0 && len(s.xs) == 2:
						along++
					}
				}
				first := i == 0 && !strings.HasSuffix(name, "-whole.pdf")
				table := i == 1 && name == "binding.pdf"
				want := [3]int{1, 1, 0}
				if first {
					want = [3]int{0, 0, 1}
				} else if table {
					want = [3]int{}
				}
				if name == "reinforcement.pdf" && len(b.Pages[i].Views) == 0 { // a first page, or tables
					want = [3]int{0, 0, min(square, 1)}
				}
				if got := [3]int{across, along, square}; got != want {
					t.Errorf("%s page %d on %s: sides across, along and squares of 100 mm: %v, want %v", name, i+1, page, got, want)
				}
			}
		}
	}
}

func TestRegisterSheetSaysWhatWasMeasured(t *testing.T) {
	for _, units := range []string{inMM, inSun} {
		w := built(t, dotOrder(t, 6, 2))
		b, err := Register(w, Options{Units: units})
		if err != nil {
			t.Fatal(err)
		}
		words := strings.Join(strings.Fields(string(read(t, "pdftotext", "-layout", written(t, "register.pdf", b), "-"))), " ")
		perMM, places, fine := 1.0, 2, 1.0
		if units == inSun {
			perMM, places, fine = 33.0/1000, 4, 33.0/100
		}
		number := func(mm float64) string { return strconv.FormatFloat(mm*perMM, 'f', places, 64) }
		small := func(mm float64) string { return strconv.FormatFloat(mm*fine, 'f', max(2, places-1), 64) }
		cut := w.CutSheet()
		for i, star := range cut.Stars.Stars {
			d := star.At.Sub(cut.Paper.Min)
			row := starNames(cut.Stars)[i] + " " + number(d.X.MM()) + " " + number(d.Y.MM()) + " " + small(star.Diameter.MM()) + " " + small(star.Clear.MM())
			wantWords(t, words, row)
		}
		q := cut.Stars.Square
		wantWords(t, words, "top width "+number(q.Top.MM())+" bottom width "+number(q.Bottom.MM()))
		wantWords(t, words, "left height "+number(q.Left.MM())+" right height "+number(q.Right.MM()))
		wantWords(t, words, "down "+number(q.Down.MM()))
		wantWords(t, words, "up "+number(q.Up.MM()))
		wantWords(t, words, "Baseline "+number(cut.Stars.Baseline.MM()))
		// 181.8182 mm finished, 1 % of shrinking and 0.25 % of growth: by hand.
		finished := w.Order.Sheet.Step.MM()
		wantWords(t, words, "step, along "+number(finished)+" "+number(finished/0.99)+" "+number(finished/0.99/1.0025)+" 1.00758")
		wantWords(t, words, "field, across "+number(356)+" "+number(356)+" "+number(356/1.0015)+" 0.99850")
		wantWords(t, words, strconv.Itoa(len(w.Run.Placements))+" whole, "+strconv.Itoa(w.Run.Needed)+" to cover the bolt")
		for _, hazard := range []string{"Blades", "lacquer", "Solvent", "Tannin", "Dye powder", "Lime", "trained person", "rules of your workshop"} {
			wantWords(t, words, hazard)
		}
	}
}

func wantWords(t *testing.T, all, want string) {
	t.Helper()
	if !strings.Contains(all, want) {
		t.Errorf("the sheet doesn't say %q; it says\n%s", want, all)
	}
}
