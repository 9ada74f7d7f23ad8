package report

import (
	"encoding/json"
	"encoding/xml"
	"errors"
	"fmt"
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
	"tsugime/repeat/geom"
	"tsugime/repeat/repeattest"
)

// A rim is one closed line around a hole as a reader of another make finds it, in
// millimetres from the paper's top left corner.
type rim struct {
	layer string // "" where the reader tells none
	run   [][2]float64
}

// measure returns the area within a rim, its length and its centre of area.
func (r rim) measure() (area, length float64, centre [2]float64) {
	o := r.run[0]
	for i, p := range r.run {
		q := r.run[(i+1)%len(r.run)]
		cross := ((p[0]-o[0])*(q[1]-o[1]) - (q[0]-o[0])*(p[1]-o[1])) / 2
		area += cross
		length += math.Hypot(q[0]-p[0], q[1]-p[1])
		for k := range centre {
			centre[k] += cross * (p[k] + q[k] - 2*o[k]) / 3
		}
	}
	for k := range centre {
		centre[k] = centre[k]/area + o[k]
	}
	return math.Abs(area), length, centre
}

// modelRims are the rims of a drawing as the model has them, to a micrometre.
func modelRims(d export.Drawing) []rim {
	var all []rim
	add := func(layer string, s geom.Shape) {
		for _, ring := range s.Rings(geom.Micrometre) {
			r := rim{layer: layer}
			for _, p := range ring {
				r.run = append(r.run, [2]float64{p.X.MM(), p.Y.MM()})
			}
			all = append(all, r)
		}
	}
	for _, l := range d.Layers {
		if !l.Pen.Filled {
			continue
		}
		for _, disc := range l.Discs {
			add(l.Name, geom.Shape{Disc: disc})
		}
		for _, o := range l.Outlines {
			add(l.Name, geom.Shape{Outline: o})
		}
	}
	return all
}

// A reader finds the rims of a file of the job folder again.
type reader struct {
	name, file string // file as for the first sheet
	rims       func(t *testing.T, path string, d export.Drawing) []rim
	layers     bool
	place      float64 // mm that a centre may be off each way
	rim        float64 // mm that a rim may be off: how finely the reader draws curves
}

// outsideReaders are the programs, none of them ours, that read every format. A
// plotter knows steps of 0.025 mm and nothing between, so a place there is off by
// half of one each way at most, and up to 0.02 mm as hp2xx draws it, whose chords
// around a circle don't come out even; all others must be within 0.01 mm.
func outsideReaders() []reader {
	return []reader{
		{"ezdxf", "cut-only.dxf", byEzdxf, true, 0.01, 0.002},
		{"dxf-parser", "cut-only.dxf", byDXFParser, true, 0.01, 0.002},
		{"rsvg", "cut-only.svg", byRsvg, false, 0.01, 0.002},
		{"resvg", "cut-only.svg", byResvg, true, 0.01, 0.002},
		{"mutool", "cut.pdf", byMutool, true, 0.01, 0.002},
		{"poppler", "cut.pdf", byPoppler, false, 0.01, 0.003},
		{"hp2xx", "cut-only.hpgl", byHp2xx, true, 0.02, 0.03},
	}
}

// TestEveryFileIsReadBackByOthers has each cut file of a ground and of both sheets of a
// split read by programs of others: count, area and layers of the rims, extents, and
// the places of 100 of them taken by chance.
func TestEveryFileIsReadBackByOthers(t *testing.T) {
	for name, w := range outsideWorks(t) {
		for n := range sheetsOf(w) {
			opt := Options{}.with(w)
			s := opt.sheets(w)[n]
			for _, r := range outsideReaders() {
				file, d := r.file, cutOnly(w, s, opt)
				if n == 1 {
					file = strings.Replace(file, ".", "-second.", 1)
				}
				if strings.HasSuffix(file, ".pdf") {
					d = cutDrawing(w, s, opt)
				}
				where := fmt.Sprintf("%s, %s by %s", name, file, r.name)
				checkRead(t, where, r, r.rims(t, formatted(t, w, file), d), modelRims(d))
			}
		}
	}
}

func checkRead(t *testing.T, where string, by reader, got, want []rim) {
	t.Helper()
	if len(got) != len(want) || len(want) < 100 {
		t.Fatalf("%s: %d rims, want %d", where, len(got), len(want))
	}
	type sum struct{ area, length float64 }
	sums := map[string][2]sum{}
	count := map[string]int{}
	var boxes [2][4]float64
	for i := range want {
		key := want[i].layer
		if by.layers && got[i].layer != key {
			t.Fatalf("%s: rim %d lies on %q, want %q", where, i, got[i].layer, key)
		}
		pair := sums[key]
		for k, r := range []rim{got[i], want[i]} {
			area, length, _ := r.measure()
			pair[k].area, pair[k].length = pair[k].area+area, pair[k].length+length
			boxes[k] = around(boxes[k], r, i == 0)
		}
		sums[key] = pair
		count[key]++
	}
	for layer, pair := range sums {
		if off := math.Abs(pair[0].area - pair[1].area); off > by.rim*pair[1].length {
			t.Errorf("%s: the %d rims of %s hold %.4f mm², want %.4f", where, count[layer], layer, pair[0].area, pair[1].area)
		}
	}
	for k := range boxes[0] {
		if math.Abs(boxes[0][k]-boxes[1][k]) > by.place+by.rim {
			t.Errorf("%s: stands in %.4f, want %.4f", where, boxes[0], boxes[1])
		}
	}
	chance := rand.New(rand.NewPCG(7, 100))
	for range 100 {
		i := chance.IntN(len(want))
		_, _, a := got[i].measure()
		_, _, b := want[i].measure()
		if off := math.Max(math.Abs(a[0]-b[0]), math.Abs(a[1]-b[1])); !(off <= by.place) || by.place <= 0.01 && math.Hypot(a[0]-b[0], a[1]-b[1]) > 0.01 {
			t.Fatalf("%s: hole %d is read at %.4f, want %.4f", where, i, a, b)
		}
	}
}

// around widens a box, begun by its first rim, to hold a rim.
func around(box [4]float64, r rim, first bool) [4]float64 {
	if first {
		box = [4]float64{math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)}
	}
	for _, p := range r.run {
		box = [4]float64{min(box[0], p[0]), min(box[1], p[1]), max(box[2], p[0]), max(box[3], p[1])}
	}
	return box
}

// dxfRims reads what both readers of DXF print; they have y up.
func dxfRims(t *testing.T, said string, d export.Drawing) []rim {
	t.Helper()
	var told struct {
		Audit   []string
		Version string
		Units   int
		Rims    []struct {
			Layer string
			Run   [][2]float64
		}
	}
	if err := json.Unmarshal([]byte(said), &told); err != nil {
		t.Fatal(err)
	}
	if len(told.Audit) > 0 || told.Version != "" && (told.Version != "AC1015" || told.Units != 4) {
		t.Errorf("audit %q, version %s in units %d", told.Audit, told.Version, told.Units)
	}
	var all []rim
	for _, r := range told.Rims {
		for i := range r.Run {
			r.Run[i][1] = d.Height.MM() - r.Run[i][1]
		}
		all = append(all, rim{r.Layer, r.Run})
	}
	return all
}

func byEzdxf(t *testing.T, path string, d export.Drawing) []rim {
	return dxfRims(t, repeattest.Tool(t, "python3", "/usr/bin/python3", "testdata/readdxf.py", path), d)
}

func byDXFParser(t *testing.T, path string, d export.Drawing) []rim {
	return dxfRims(t, repeattest.Node(t, "testdata/readdxf.cjs", path), d)
}

// byRsvg has librsvg write what it understood as plain paths. It counts 96 to the
// inch and puts places on a grid of 1/256 of that.
func byRsvg(t *testing.T, path string, _ export.Drawing) []rim {
	return svgRims(t, repeattest.Tool(t, "librsvg2-bin", "rsvg-convert", "-f", "svg", path), 25.4/96)
}

func byResvg(t *testing.T, path string, _ export.Drawing) []rim {
	return svgRims(t, repeattest.Node(t, "testdata/readsvg.cjs", path), 1)
}

// byPoppler has poppler write the page as plain paths, in points, which it may not
// shrink to whole ones; its words are symbols that are used.
func byPoppler(t *testing.T, path string, _ export.Drawing) []rim {
	return svgRims(t, repeattest.Tool(t, "poppler-utils", "pdftocairo", "-svg", "-noshrink", "-nocenter", path, "-"), 25.4/72)
}

// svgRims returns the filled paths of a file, a unit of which is so many mm. The name
// of the nearest group that has one is the layer.
func svgRims(t *testing.T, file string, unit float64) []rim {
	t.Helper()
	d := xml.NewDecoder(strings.NewReader(file))
	var all []rim
	groups, defined := []string{""}, 0
	for {
		token, err := d.Token()
		if errors.Is(err, io.EOF) {
			return all
		}
		if err != nil {
			t.Fatal(err)
		}
		switch e := token.(type) {
		case xml.StartElement:
			name := groups[len(groups)-1]
			if id := attribute(e, "id"); id != "" && e.Name.Local == "g" {
				name = id
			}
			groups = append(groups, name)
			if e.Name.Local == "defs" {
				defined++
			}
			paint := attribute(e, "style") + ";fill:" + attribute(e, "fill")
			if e.Name.Local == "path" && defined == 0 && !strings.Contains(paint, "fill:none") {
				if attribute(e, "transform") != "" {
					t.Fatalf("a path is moved by %s", attribute(e, "transform"))
				}
				all = append(all, pathRims(t, name, attribute(e, "d"), unit)...)
			}
		case xml.EndElement:
			groups = groups[:len(groups)-1]
			if e.Name.Local == "defs" {
				defined--
			}
		}
	}
}

func pathRims(t *testing.T, layer, data string, unit float64) []rim {
	t.Helper()
	o, err := geom.ParsePathData(data)
	if err != nil {
		t.Fatal(err)
	}
	var all []rim
	for _, ring := range o.Rings(geom.Micrometre) {
		if len(ring) < 3 { // cairo ends each path with a lone place
			continue
		}
		r := rim{layer: layer}
		for _, p := range ring {
			r.run = append(r.run, [2]float64{p.X.MM() * unit, p.Y.MM() * unit})
		}
		all = append(all, r)
	}
	return all
}

// byMutool has mupdf tell every path that it fills, and in which layer.
func byMutool(t *testing.T, path string, _ export.Drawing) []rim {
	t.Helper()
	d := xml.NewDecoder(strings.NewReader(repeattest.Tool(t, "mupdf-tools", "mutool", "trace", path)))
	var all []rim
	layer, data, m := "", "", [6]float64{}
	for {
		token, err := d.Token()
		if errors.Is(err, io.EOF) {
			return all
		}
		if err != nil {
			t.Fatal(err)
		}
		e, begins := token.(xml.StartElement)
		if end, ok := token.(xml.EndElement); ok && end.Name.Local == "fill_path" {
			for _, r := range pathRims(t, layer, data, 1) {
				for i, p := range r.run {
					r.run[i] = [2]float64{(m[0]*p[0] + m[2]*p[1] + m[4]) * 25.4 / 72, (m[1]*p[0] + m[3]*p[1] + m[5]) * 25.4 / 72}
				}
				all = append(all, r)
			}
			m = [6]float64{}
		}
		if !begins {
			continue
		}
		at := func(names ...string) (s string) {
			for _, name := range names {
				s += " " + attribute(e, name)
			}
			return s
		}
		switch e.Name.Local {
		case "layer":
			layer = attribute(e, "name")
		case "fill_path":
			copy(m[:], numbers(t, attribute(e, "transform")))
			data = ""
		case "moveto":
			data += " M" + at("x", "y")
		case "lineto":
			data += " L" + at("x", "y")
		case "curveto":
			data += " C" + at("x1", "y1", "x2", "y2", "x3", "y3")
		case "closepath":
			data += " Z"
		}
	}
}

// byHp2xx has hp2xx write the strokes that it would draw, pen by pen. It moves the
// lowest left place to zero and lifts the pen after every ten strokes; a run that
// begins where the last one ended goes on with it, and ends where it began.
func byHp2xx(t *testing.T, path string, d export.Drawing) []rim {
	t.Helper()
	out, log := filepath.Join(t.TempDir(), "out"), filepath.Join(t.TempDir(), "log")
	repeattest.Tool(t, "hp2xx", "hp2xx", "-l", log, "-t", "-m", "hpgl", "-f", out, path)
	told, err := os.ReadFile(log)
	if err != nil || !regexp.MustCompile(`ignored:\s*0\n`).Match(told) || !regexp.MustCompile(`event\(s\):\s*0\n`).Match(told) {
		t.Errorf("hp2xx says %s, %v", told, err)
	}
	written, err := os.ReadFile(out)
	if err != nil {
		t.Fatal(err)
	}
	b := geom.Box{}
	for _, l := range d.Layers {
		b = b.Union(export.Drawing{Layers: []export.Layer{l}}.Bounds())
	}
	var all []rim
	closed := true
	var last [2]float64
	layer := ""
	for _, command := range strings.Split(string(written), ";") {
		if len(command) < 3 {
			continue
		}
		if command[:2] == "SP" {
			if n, err := strconv.Atoi(command[2:]); err == nil && n > 0 && n <= len(d.Layers) {
				layer = d.Layers[n-1].Name
			}
			continue
		}
		xy := numbers(t, strings.ReplaceAll(command[2:], ",", " "))
		p := [2]float64{b.Min.X.MM() + xy[0]/40, b.Max.Y.MM() - xy[1]/40}
		switch begun := command[:2] == "PU"; {
		case begun && p == last:
		case begun:
			all, closed = append(all, rim{layer, [][2]float64{p}}), false
		case !closed:
			r := &all[len(all)-1]
			if math.Hypot(p[0]-r.run[0][0], p[1]-r.run[0][1]) < 1e-6 && len(r.run) > 2 {
				closed = true
			} else {
				r.run = append(r.run, p)
			}
		}
		last = p
	}
	return all
}
