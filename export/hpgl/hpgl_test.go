package hpgl_test

import (
	"bytes"
	"io"
	"math"
	"math/rand/v2"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"tsugime/export"
	"tsugime/export/exporttest"
	"tsugime/export/hpgl"
	"tsugime/repeat/geom"
	"tsugime/repeat/repeattest"
)

func write(tb testing.TB, d export.Drawing) []byte {
	tb.Helper()
	var b bytes.Buffer
	if err := (hpgl.Format{}).Write(&b, d); err != nil {
		tb.Fatal(err)
	}
	return b.Bytes()
}

// cut is the first layer of a drawing alone.
func cut(d export.Drawing) export.Drawing {
	d.Layers = d.Layers[:1]
	return d
}

func TestTinyDrawingIsWrittenLikeThis(t *testing.T) {
	repeattest.Golden(t, "tiny.hpgl", write(t, cut(exporttest.Tiny())))
}

func TestSameDrawingGivesSameBytes(t *testing.T) {
	d := exporttest.Tiny()
	if a, b := write(t, d), write(t, d); !bytes.Equal(a, b) {
		t.Error("two files of one drawing differ")
	}
}

// A mark is what the reader below finds: a circle, or a run of places, in mm with y
// down.
type mark struct {
	pen    int
	circle bool
	x, y   float64 // of a circle
	r      float64
	run    [][2]float64
}

// read follows a file command by command, as slowly and plainly as can be.
func read(t *testing.T, file []byte, heightMM float64) []mark {
	t.Helper()
	var marks []mark
	pen, down := -1, false
	var x, y float64
	for _, command := range strings.Split(string(file), ";") {
		command = strings.TrimSpace(command)
		if command == "" {
			continue
		}
		var numbers []float64
		for _, n := range strings.Split(command[2:], ",") {
			if n == "" {
				continue
			}
			v, err := strconv.Atoi(n)
			if err != nil {
				t.Fatalf("%q holds %q, no whole number", command, n)
			}
			numbers = append(numbers, float64(v)/40)
		}
		switch command[:2] {
		case "IN":
		case "SP":
			pen = int(numbers[0] * 40)
		case "PU", "PD":
			begins := command[:2] == "PD" && !down
			if down = command[:2] == "PD"; begins {
				marks = append(marks, mark{pen: pen, run: [][2]float64{{x, heightMM - y}}})
			}
			for i := 0; i+1 < len(numbers); i += 2 {
				if x, y = numbers[i], numbers[i+1]; down {
					m := &marks[len(marks)-1]
					m.run = append(m.run, [2]float64{x, heightMM - y})
				}
			}
		case "CI":
			marks = append(marks, mark{pen: pen, circle: true, x: x, y: heightMM - y, r: numbers[0]})
		default:
			t.Fatalf("%q is no command of the five", command)
		}
	}
	return marks
}

func area(run [][2]float64) (sum float64) {
	for i, p := range run {
		q := run[(i+1)%len(run)]
		sum += (p[0]*q[1] - p[1]*q[0]) / 2
	}
	return sum
}

// Five closed rims and a circle. Each place is off by half a unit each way at most,
// so an area by that along its rim, and usually much less: seen here 0.3 mm² of 543.
func TestTheFileHoldsTheRimsOfTheDrawing(t *testing.T) {
	d := cut(exporttest.Tiny())
	marks := read(t, write(t, d), 60)
	circles, total := 0, 0.0
	lowX, highX, lowY, highY := math.Inf(1), math.Inf(-1), math.Inf(1), math.Inf(-1)
	for _, m := range marks {
		if m.circle {
			circles++
			total += math.Pi * m.r * m.r
			m.run = [][2]float64{{m.x - m.r, m.y - m.r}, {m.x + m.r, m.y + m.r}}
		} else {
			total += area(m.run)
			if m.run[0] != m.run[len(m.run)-1] {
				t.Errorf("a rim that starts at %v ends at %v", m.run[0], m.run[len(m.run)-1])
			}
		}
		for _, p := range m.run {
			lowX, highX = math.Min(lowX, p[0]), math.Max(highX, p[0])
			lowY, highY = math.Min(lowY, p[1]), math.Max(highY, p[1])
		}
	}
	if len(marks) != 5 || circles != 1 {
		t.Errorf("%d marks, %d of them circles; want 5 and 1", len(marks), circles)
	}
	if math.Abs(total-exporttest.FilledMM2) > 0.8 {
		t.Errorf("area %.3f mm², want %.3f", total, exporttest.FilledMM2)
	}
	b := d.Bounds()
	for _, c := range [][2]float64{{lowX, b.Min.X.MM()}, {highX, b.Max.X.MM()}, {lowY, b.Min.Y.MM()}, {highY, b.Max.Y.MM()}} {
		if math.Abs(c[0]-c[1]) > 0.025 {
			t.Errorf("an edge at %.4f mm, want %.4f", c[0], c[1])
		}
	}
}

// Half a unit each way is 0.0177 mm.
func TestHolesComeBackWhereTheyAre(t *testing.T) {
	d := exporttest.Field(3000)
	marks := read(t, write(t, d), d.Height.MM())
	discs := d.Layers[0].Discs
	if len(marks) != len(discs) {
		t.Fatalf("%d circles, want %d", len(marks), len(discs))
	}
	rnd := rand.New(rand.NewPCG(1, 100))
	for range 100 {
		i := rnd.IntN(len(discs))
		m, want := marks[i], discs[i]
		if off := math.Hypot(m.x-want.Centre.X.MM(), m.y-want.Centre.Y.MM()); !m.circle || off > 0.025 {
			t.Errorf("hole %d is off by %.4f mm", i, off)
		}
		if math.Abs(m.r-want.RadiusMM()) > 0.0125+1e-9 {
			t.Errorf("hole %d has a radius of %.4f mm, want %.4f", i, m.r, want.RadiusMM())
		}
	}
}

// Around a disc drawn as an outline every place stands within half a unit of the
// rim, and the middle of each piece within that and the chord.
func TestCurvesAreKeptWithinTheChord(t *testing.T) {
	for _, r := range []float64{0.3, 1, 7.5, 90} {
		circle := geom.Outline{{Start: geom.PtMM(100+r, 100), Segments: []geom.Segment{
			{Kind: geom.Arc, End: geom.PtMM(100-r, 100), Bulge: 1}, {Kind: geom.Arc, End: geom.PtMM(100+r, 100), Bulge: 1},
		}}}
		d := export.Drawing{Width: geom.MM(200), Height: geom.MM(200), Layers: []export.Layer{
			{Name: "cut", Pen: export.Pen{Filled: true}, Outlines: []geom.Outline{circle}},
		}}
		for _, m := range read(t, write(t, d), 200) {
			for i := 1; i < len(m.run); i++ {
				p, q := m.run[i-1], m.run[i]
				for _, at := range [][2]float64{q, {(p[0] + q[0]) / 2, (p[1] + q[1]) / 2}} {
					if off := math.Abs(math.Hypot(at[0]-100, at[1]-100) - r); off > 0.0177+0.0101 {
						t.Fatalf("radius %v: a place %.4f mm off the rim", r, off)
					}
				}
			}
		}
	}
}

func TestEachLayerHasAPenOfItsOwn(t *testing.T) {
	d := exporttest.Tiny()
	d.Layers = append(d.Layers[:1:1], append([]export.Layer{{Name: "nothing"}}, d.Layers[1:]...)...)
	pens := map[int]int{}
	for _, m := range read(t, write(t, d), 60) {
		pens[m.pen]++
	}
	if pens[1] != 5 || pens[2] != 2 || len(pens) != 3 {
		t.Errorf("marks by pen: %v; want 5 of the first, 2 of the second, letters of the third", pens)
	}
}

// hp2xx tells the size in mm of what it reads, how many commands it did not know and
// how many surprised it.
func TestAnotherReaderFindsTheSizeAndKnowsEveryCommand(t *testing.T) {
	for _, d := range []export.Drawing{cut(exporttest.Tiny()), exporttest.Tiny(), exporttest.Field(3000)} {
		path := repeattest.Put(t, "drawing.hpgl", write(t, d))
		picture := filepath.Join(t.TempDir(), "out.svg")
		log := filepath.Join(t.TempDir(), "log")
		repeattest.Tool(t, "hp2xx", "hp2xx", "-l", log, "-t", "-m", "svg", "-f", picture, path)
		told, err := os.ReadFile(log)
		if err != nil {
			t.Fatal(err)
		}
		said := string(told)
		size := regexp.MustCompile(`Width\s*x\s*height:\s*([\d.]+)\s*x\s*([\d.]+)\s*mm`).FindStringSubmatch(said)
		if size == nil {
			t.Fatalf("it tells no size: %s", said)
		}
		w, _ := strconv.ParseFloat(size[1], 64)
		h, _ := strconv.ParseFloat(size[2], 64)
		b := d.Bounds()
		if math.Abs(w-b.Width().MM()) > 0.06 || math.Abs(h-b.Height().MM()) > 0.06 {
			t.Errorf("%s: %v × %v mm, want %.3f × %.3f", d.Title, w, h, b.Width().MM(), b.Height().MM())
		}
		counts := regexp.MustCompile(`(ignored|event\(s\)):\s*(\d+)`).FindAllStringSubmatch(said, -1)
		if len(counts) != 2 {
			t.Errorf("%s: it counts %v", d.Title, counts)
		}
		for _, c := range counts {
			if c[2] != "0" {
				t.Errorf("%s: %s", d.Title, c[0])
			}
		}
		if data, err := os.ReadFile(picture); err != nil || len(data) < 1000 {
			t.Errorf("%s: it draws %d bytes, %v", d.Title, len(data), err)
		}
	}
}

func TestMarksOutOfReachAreRefused(t *testing.T) {
	d := export.Drawing{Width: geom.MM(10), Height: geom.MM(10), Layers: []export.Layer{{
		Name: "a", Pen: export.Pen{Filled: true}, Discs: []geom.Disc{{Centre: geom.PtMM(300_000, 0), Diameter: geom.MM(1)}},
	}}}
	if err := (hpgl.Format{}).Write(io.Discard, d); err == nil || !strings.Contains(err.Error(), "reaches") {
		t.Errorf("a hole 300 m away: %v", err)
	}
	if err := (hpgl.Format{}).Write(io.Discard, export.Drawing{}); err == nil {
		t.Error("a drawing without size was written")
	}
}

func TestAFullDiskIsTold(t *testing.T) {
	d := exporttest.Field(3000)
	exporttest.TellsAFullDisk(t, len(write(t, d)), func(f *exporttest.FullDisk) error { return hpgl.Format{}.Write(f, d) })
}

// A whole field: 63,500 holes.
func BenchmarkWriteField(b *testing.B) {
	d := exporttest.Field(63_500)
	for b.Loop() {
		if err := (hpgl.Format{}).Write(io.Discard, d); err != nil {
			b.Fatal(err)
		}
	}
}
