package dxf

import (
	"bytes"
	"encoding/json"
	"io"
	"math"
	"strings"
	"testing"

	"tsugime/export"
	"tsugime/export/exporttest"
	"tsugime/repeat/geom"
	"tsugime/repeat/repeattest"
)

func write(tb testing.TB, d export.Drawing) []byte {
	tb.Helper()
	var b bytes.Buffer
	if err := (Format{}).Write(&b, d); err != nil {
		tb.Fatal(err)
	}
	return b.Bytes()
}

// A reading is what ezdxf finds in a file.
type reading struct {
	Version string
	Units   int
	Audit   []string
	Layers  map[string]struct {
		Colour, Weight int
		Line           string
	}
	Lines   map[string][]float64
	Marks   map[string]map[string]int
	Circles [][3]float64
	Texts   []struct {
		Text         string
		Height, Turn float64
		Align        int
		At           [2]float64
	}
	Closed  float64
	Box     [4]float64
	Colours [][3]uint8
}

// read has the drawings read in one go, since the reader is slow to start.
func read(t *testing.T, drawings ...export.Drawing) []reading {
	t.Helper()
	args := []string{"testdata/read.py"}
	for _, d := range drawings {
		args = append(args, repeattest.Put(t, "drawing.dxf", write(t, d)))
	}
	said := repeattest.Tool(t, "python3", "/usr/bin/python3", args...)
	var r []reading
	if err := json.Unmarshal([]byte(said), &r); err != nil {
		t.Fatalf("%v in %s", err, said)
	}
	return r
}

func near(got, want, off float64) bool { return math.Abs(got-want) <= off }

func TestTinyDrawingIsWrittenLikeThis(t *testing.T) {
	repeattest.Golden(t, "tiny.dxf", write(t, exporttest.Tiny()))
}

func TestSameDrawingGivesSameBytes(t *testing.T) {
	d := exporttest.Tiny()
	if a, b := write(t, d), write(t, d); !bytes.Equal(a, b) {
		t.Error("two files of one drawing differ")
	}
}

func TestAnotherReaderFindsTheWholeDrawing(t *testing.T) {
	r := read(t, exporttest.Tiny())[0]
	if r.Version != "AC1015" || r.Units != 4 {
		t.Errorf("version %s, units %d; want AC1015, 4 (mm)", r.Version, r.Units)
	}
	if len(r.Audit) > 0 {
		t.Errorf("the audit says %q", r.Audit)
	}
	want := map[string]map[string]int{
		"cut":        {"CIRCLE": 1, "LWPOLYLINE": 4},
		"joint-line": {"LWPOLYLINE": 2},
		"words":      {"TEXT": 2},
	}
	for layer, marks := range want {
		if _, declared := r.Layers[layer]; !declared {
			t.Errorf("layer %s is not declared", layer)
		}
		for kind, n := range marks {
			if got := r.Marks[layer][kind]; got != n {
				t.Errorf("layer %s has %d %s, want %d", layer, got, kind, n)
			}
		}
	}
	if len(r.Marks) != len(want) {
		t.Errorf("marks on %d layers, want %d", len(r.Marks), len(want))
	}
	checkPens(t, r)
	checkColours(t, r)
	if got := r.Texts[0].Height; !near(got, 4*capital, 1e-6) {
		t.Errorf("letters are %v mm high, want %v", got, 4*capital)
	}
}

func checkPens(t *testing.T, r reading) {
	t.Helper()
	l := r.Layers["joint-line"]
	if l.Colour != 1 || l.Weight != 25 || l.Line != "Dash-joint-line" {
		t.Errorf("the joint line is %+v, want colour 1 (red), weight 25, its own dash", l)
	}
	if got := r.Lines[l.Line]; len(got) != 2 || got[0] != 2 || got[1] != -1 {
		t.Errorf("its dash is %v, want 2 and a gap of 1", got)
	}
	if c := r.Layers["cut"].Colour; c != 7 {
		t.Errorf("black is colour %d, want 7", c)
	}
	if c := r.Layers["words"].Colour; c != 8 {
		t.Errorf("grey is colour %d, want 8", c)
	}
}

// The seventh is white on the reader's dark screen and black in ours, on paper.
func checkColours(t *testing.T, r reading) {
	t.Helper()
	for i, want := range r.Colours {
		c := basic[i+1]
		if got := [3]uint8{c.R, c.G, c.B}; got != want && i+1 != 7 {
			t.Errorf("colour %d is %v, want %v", i+1, got, want)
		}
	}
}

// Contours keep their turn, so a hole counts against its rim; the leaf's cubics
// lose at most their chord of a micrometre along 2 · 23 mm, the disc is apart.
func TestClosedLinesAreTheShapesOfTheDrawing(t *testing.T) {
	all, straight := exporttest.Tiny(), exporttest.Tiny()
	all.Layers, straight.Layers = all.Layers[:1], straight.Layers[:1]
	straight.Layers[0].Outlines = straight.Layers[0].Outlines[:2]
	r := read(t, all, straight)
	want := exporttest.FilledMM2 - 9*math.Pi/4
	if got := math.Abs(r[0].Closed); !near(got, want, 46e-3) {
		t.Errorf("closed lines hold %.6f mm², want %.6f", got, want)
	}
	if got, want := math.Abs(r[1].Closed), 316+math.Pi; !near(got, want, 1e-5) {
		t.Errorf("lines and arcs hold %.6f mm², want %.6f", got, want)
	}
	b := all.Bounds()
	box := [4]float64{b.Min.X.MM(), (all.Height - b.Max.Y).MM(), b.Max.X.MM(), (all.Height - b.Min.Y).MM()}
	for i := range box {
		if !near(r[0].Box[i], box[i], 2e-3) {
			t.Errorf("the shapes stand in %v, want %v", r[0].Box, box)
			break
		}
	}
}

func TestEveryDiscComesBackToTheNanometre(t *testing.T) {
	d := exporttest.Field(300)
	d.Layers[0].Discs[7].Diameter = 450_001
	r := read(t, d)[0]
	discs := d.Layers[0].Discs
	if len(r.Circles) != len(discs) {
		t.Fatalf("%d circles, want %d", len(r.Circles), len(discs))
	}
	for i, c := range r.Circles {
		w := discs[i]
		want := [3]float64{w.Centre.X.MM(), (d.Height - w.Centre.Y).MM(), w.RadiusMM()}
		for k := range want {
			if !near(c[k], want[k], 1e-9) {
				t.Fatalf("circle %d is %v, want %v", i, c, want)
			}
		}
	}
}

func TestWordsStandWhereTheLetteringDoes(t *testing.T) {
	d := exporttest.Tiny()
	d.Layers[2].Texts[1].Text = "型紙 50 %%d\x02"
	r := read(t, d)[0]
	first, second := r.Texts[0], r.Texts[1]
	if first.Text != "Step <60 mm> & “half”" || second.Text != "型紙 50 % %d□" {
		t.Errorf("texts %q and %q", first.Text, second.Text)
	}
	if first.Align != 1 || first.At != [2]float64{50, 15} || first.Turn != 0 {
		t.Errorf("the first stands at %v, anchor %d, turned %v; want 50, 15, the middle, 0", first.At, first.Align, first.Turn)
	}
	if second.Align != 2 || second.At != [2]float64{97, 20} || second.Turn != 90 {
		t.Errorf("the second stands at %v, anchor %d, turned %v; want 97, 20, the end, 90", second.At, second.Align, second.Turn)
	}
}

func TestTextHeightIsThatOfACapital(t *testing.T) {
	b := export.Lettering(export.Text{Text: "H", Height: geom.Metre}).Bounds()
	if got := b.Height().MM() / 1000; !near(got, capital, 0.005) {
		t.Errorf("a capital is %.4f of the em, want %.4f", got, capital)
	}
}

func TestHandlesAreUnique(t *testing.T) {
	lines := strings.Split(string(write(t, exporttest.Tiny())), "\n")
	seen := map[string]bool{}
	for i := 0; i+1 < len(lines); i += 2 {
		if lines[i] != "5" {
			continue
		}
		h := lines[i+1]
		if seen[h] && lines[i-1] != "$HANDSEED" {
			t.Errorf("line %d: handle %s comes twice", i+2, h)
		}
		seen[h] = true
	}
	if len(seen) < 25 {
		t.Errorf("%d handles, want one for each object", len(seen))
	}
}

func TestAFullDiskIsTold(t *testing.T) {
	d := exporttest.Field(3000)
	exporttest.TellsAFullDisk(t, len(write(t, d)), func(f *exporttest.FullDisk) error { return Format{}.Write(f, d) })
}

func TestADrawingThatCanNotBeReadIsRefused(t *testing.T) {
	if err := (Format{}).Write(io.Discard, export.Drawing{}); err == nil {
		t.Error("a drawing without size was written")
	}
}

// A whole field: 63,500 holes.
func BenchmarkWriteField(b *testing.B) {
	d := exporttest.Field(63_500)
	for b.Loop() {
		if err := (Format{}).Write(io.Discard, d); err != nil {
			b.Fatal(err)
		}
	}
}
