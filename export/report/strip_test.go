package report

import (
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"math"
	"slices"
	"strings"
	"testing"

	"tsugime/export"
	"tsugime/repeat"
	"tsugime/repeat/cloth"
	"tsugime/repeat/document"
	"tsugime/repeat/geom"
)

// A readWord is a word as pdftotext places it, in millimetres of its page.
type readWord struct {
	page           int
	text           string
	x0, y0, x1, y1 float64
}

// readWords reads the words of a file back with their boxes.
func readWords(t *testing.T, path string) []readWord {
	t.Helper()
	d := xml.NewDecoder(strings.NewReader(string(read(t, "pdftotext", "-bbox", path, "-"))))
	d.Strict = false
	page := -1
	var all []readWord
	for {
		token, err := d.Token()
		if errors.Is(err, io.EOF) {
			return all
		}
		if err != nil {
			t.Fatal(err)
		}
		e, begins := token.(xml.StartElement)
		switch {
		case begins && e.Name.Local == "page":
			page++
		case begins && e.Name.Local == "word":
			var v [4]float64
			for i, name := range []string{"xMin", "yMin", "xMax", "yMax"} {
				v[i] = numbers(t, attribute(e, name))[0] * 25.4 / 72
			}
			var text string
			if err := d.DecodeElement(&text, &e); err != nil {
				t.Fatal(err)
			}
			all = append(all, readWord{page, text, v[0], v[1], v[2], v[3]})
		}
	}
}

// A joinedMark is a mark of the strip that was pasted together from what another
// reader found on the pages: how far from the board's end, on which face, and on
// which piece it was seen.
type joinedMark struct {
	at    float64
	below bool
	piece int
}

// pasted reads a written strip back and joins its pieces by their crosses, as the
// sheet says: each cross on that of the piece before.
func pasted(t *testing.T, path string) (marks []joinedMark, length float64) {
	t.Helper()
	origin, cross, piece := 0.0, math.NaN(), 0 // where the piece's page lies on the board; the cross at the end of the last
	for _, page := range strokes(t, path) {
		var frames []stroke
		for _, s := range page {
			if _, h := s.size(); s.closed && math.Abs(h-stripHigh.MM()) < 0.001 {
				frames = append(frames, s)
			}
		}
		slices.SortFunc(frames, func(a, b stroke) int { return int(1000 * (slices.Min(a.ys) - slices.Min(b.ys))) })
		for _, frame := range frames {
			top, left, right := slices.Min(frame.ys), slices.Min(frame.xs), slices.Max(frame.xs)
			inside := func(s stroke) bool {
				return slices.Min(s.ys) > top-0.01 && slices.Max(s.ys) < top+stripHigh.MM()+0.01
			}
			var crosses []float64
			for _, s := range page {
				if w, h := s.size(); inside(s) && h == 0 && math.Abs(w-4) < 0.001 && slices.Min(s.ys) < top+stripHigh.MM()/2 {
					crosses = append(crosses, (slices.Min(s.xs)+slices.Max(s.xs))/2)
				}
			}
			slices.Sort(crosses)
			switch {
			case piece == 0:
				origin = -left
			case len(crosses) > 0 && !math.IsNaN(cross):
				origin = cross - crosses[0]
			default:
				t.Fatalf("piece %d has no cross to be laid by", piece+1)
			}
			for _, s := range page {
				if w, h := s.size(); inside(s) && w == 0 && math.Abs(h-markLong.MM()) < 0.001 {
					marks = append(marks, joinedMark{origin + s.xs[0], slices.Max(s.ys) > top+stripHigh.MM()/2+1, piece})
				}
			}
			if len(crosses) > 0 {
				cross = origin + crosses[len(crosses)-1]
			}
			length = origin + right
			piece++
		}
	}
	return marks, length
}

// atHand works the marks out by hand: one step after the other along face A and
// back along face B, ended by the mark where the cloth ends.
func atHand(w repeat.Work) (above, below []float64) {
	board, y := w.Run.Board.Length.MM(), w.Run.Board.Start.MM()
	step := w.Order.Sheet.Step.MM() / (1 + w.Order.Cloth.Bolt.ChangeAlong)
	end := w.Run.Bolt.Length.MM() - w.Run.Board.End.MM()
	for ; y < end+1e-6; y += step {
		if y <= board {
			above = append(above, y)
		} else {
			below = append(below, 2*board-y)
		}
	}
	return above, append(below, 2*board-end)
}

func TestAJoinedStripHasEveryMarkToATenthOfAMillimetre(t *testing.T) {
	w := built(t, dotOrder(t, 6, 2))
	above, below := atHand(w)
	for name, make := range map[string]func(repeat.Work, Options) (export.Book, error){"strip": Strip, "strip-whole": StripWhole} {
		for _, opt := range []Options{{}, {Page: "letter", Units: inSun, Language: "ja"}, {Page: "A3"}} {
			b, err := make(w, opt)
			if err != nil {
				t.Fatal(err)
			}
			marks, length := pasted(t, written(t, name+".pdf", b))
			if math.Abs(length-w.Run.Board.Length.MM()) > 0.1 {
				t.Errorf("%s %+v: the strip is %.3f mm long, the board %s", name, opt, length, w.Run.Board.Length)
			}
			for i, want := range [2][]float64{above, below} {
				for _, at := range want {
					if !slices.ContainsFunc(marks, func(m joinedMark) bool { return m.below == (i == 1) && math.Abs(m.at-at) < 0.1 }) {
						t.Errorf("%s %+v: no mark at %.3f mm, face %d", name, opt, at, i)
					}
				}
			}
			for _, m := range marks {
				want := above
				if m.below {
					want = below
				}
				if !slices.ContainsFunc(want, func(at float64) bool { return math.Abs(m.at-at) < 0.1 }) {
					t.Errorf("%s %+v: a mark at %.3f mm, below %t, is none of the board's", name, opt, m.at, m.below)
				}
			}
		}
	}
}

// Each number stands by its own mark, with the distance that the mark has.
func TestNumbersOfAStripStandByTheirMarks(t *testing.T) {
	w := built(t, dotOrder(t, 6, 2))
	b, err := Strip(w, Options{})
	if err != nil {
		t.Fatal(err)
	}
	path := written(t, "strip.pdf", b)
	words := readWords(t, path)
	pages := strokes(t, path)
	near := func(page int, x, y float64) bool { // by a mark
		return slices.ContainsFunc(pages[page], func(s stroke) bool {
			w, h := s.size()
			return w == 0 && math.Abs(h-markLong.MM()) < 0.001 && math.Abs(s.xs[0]-x) < 1.6 && y > slices.Min(s.ys)-3 && y < slices.Max(s.ys)+3
		})
	}
	step := w.Run.Step.MM()
	for _, n := range []int{1, 2, 17, 34} {
		number, figure := fmt.Sprint(n), fmt.Sprintf("%.1f", float64(n-1)*step)
		if !slices.ContainsFunc(words, func(a readWord) bool {
			return a.text == number && near(a.page, a.x0, a.y0) && slices.ContainsFunc(words, func(b readWord) bool {
				return b.text == figure && b.page == a.page && math.Abs(b.x0-a.x0) < 2 && math.Abs(b.y0-a.y0) < 8
			})
		}) {
			t.Errorf("%s mm is not said by mark %s", figure, number)
		}
	}
	said := map[string]bool{}
	for _, word := range words {
		said[word.text] = true
	}
	for _, n := range []int{40, 60, 69} {
		if want := fmt.Sprintf("%.1f", 2*w.Run.Board.Length.MM()-float64(n-1)*step); !said[want] {
			t.Errorf("face B: no %s mm for placement %d", want, n)
		}
	}
}

// A board that is laid several times gets a scale for each; one for poured dye none.
func TestEveryLayingOfABoardHasItsScale(t *testing.T) {
	o := dotOrder(t, 20, 2)
	o.Board.Cloths, o.Board.Layings = 2, 2
	w := built(t, o)
	all := scales(w, figuresIn(inMM, "en"))
	if len(all) != 2 {
		t.Fatalf("%d scales for two goes", len(all))
	}
	n := 0
	for _, s := range all {
		for _, m := range s.marks {
			if !m.End && !m.Part {
				n++
			}
		}
	}
	if want := 2 * len(w.Run.Placements); n != want {
		t.Errorf("%d marks for %d placements", n, want)
	}
	o.Cloth.Bolt.Folded = true
	o.Board.Cloths, o.Board.Layings = 1, 1
	w = built(t, o)
	if _, err := Strip(w, Options{}); !errors.Is(err, errNoBoard) {
		t.Errorf("poured dye: %v, want %v", err, errNoBoard)
	}
	for _, name := range Names(w) {
		if strings.HasPrefix(name, ofMarks) {
			t.Errorf("the folder of poured dye holds %s", name)
		}
	}
}

// hardOrder has what a dyer's card must find room for.
func hardOrder(t *testing.T) document.Order {
	o := dotOrder(t, 4, 1.5)
	o.Cloth.Bolt.Sides, o.Board.Sequence = cloth.BothSides, cloth.EveryOther
	o.Board.Cloths, o.Board.Layings = 4, 2
	o.Register.Growth = cloth.Growth{Start: 0, End: -0.002, Half: 20}
	o.Register.PitchError = geom.MM(0.01)
	return o
}

func TestTheDyersCardIsOnePage(t *testing.T) {
	for name, o := range map[string]document.Order{"dots": dotOrder(t, 4, 1.5), "hard": hardOrder(t), "split": splitOrder(t, 1, "tie-places")} {
		w := built(t, o)
		for _, page := range export.Pages() {
			for _, lang := range []string{"en", "ja"} {
				b, err := DyersCard(w, Options{Page: page.Name, Language: lang})
				if err != nil {
					t.Fatal(err)
				}
				if len(b.Pages) != 1 {
					t.Errorf("%s on %s in %s: %d pages", name, page.Name, lang, len(b.Pages))
				}
			}
		}
	}
}

func TestTheDyersCardSaysWhatWasWorkedOut(t *testing.T) {
	w := built(t, hardOrder(t))
	b, err := DyersCard(w, Options{Units: inMM})
	if err != nil {
		t.Fatal(err)
	}
	path := written(t, "dyer.pdf", b)
	said := strings.Join(strings.Fields(string(read(t, "pdftotext", "-layout", path, "-"))), " ")
	run := w.Run
	for _, want := range []string{
		fmt.Sprintf("%.2f mm", run.Step.MM()), fmt.Sprintf("%d whole", len(run.Placements)), fmt.Sprintf("%d times in all", run.Count()),
		"every other placement first", "4 cloths, laid on the board in 2 goes", "Both sides", "0.15 % across and 0.25 % along",
		fmt.Sprintf("worst joint is expected to be off by %.2f mm", run.Drift.WorstJoint.MM()),
		"lacquer", "Dye powder", "Lime", "Solvent", "trained person",
	} {
		wantWords(t, said, want)
	}
	for _, g := range cloth.Gains(run)[:mostGains] {
		wantWords(t, said, fmt.Sprintf("%s %.2f %.2f", g.Text(), g.JointAfter.MM(), g.EndAfter.MM()))
	}
	if strings.Contains(said, "Blades") {
		t.Error("the dyer is told of blades")
	}
}

// The piece of cloth on the card is at true size: as many white discs as the
// pattern has there, each of its own size.
func TestTheClothOnTheCardIsAtTrueSize(t *testing.T) {
	w := built(t, dotOrder(t, 4, 1.5))
	view := trueSize(w, geom.BoxOf(geom.Point{}, geom.PtMM(80, 58)), geom.MM(2), geom.MM(9))
	if view.Window.Width() != geom.MM(91) || view.Window.Height() != geom.MM(58) {
		t.Errorf("the window is %s by %s mm", view.Window.Width(), view.Window.Height())
	}
	discs := view.Of.Layers[1].Discs
	want := 80.0 * 58 / w.Printed().Lattice.CellMM2() * float64(len(w.Printed().Motifs))
	// Those that the rim cuts are counted too: at most one row around.
	if n := float64(len(discs)); n < want || n > want+2*(80+58)/2 {
		t.Errorf("%d discs, want %.0f and those of the rim", len(discs), want)
	}
	for _, d := range discs {
		if d.Diameter != geom.MM(1.5) {
			t.Fatalf("a disc of %s mm, want 1.5", d.Diameter)
		}
	}
}
