package pdf

import (
	"encoding/xml"
	"fmt"
	"math"
	"strings"
	"testing"

	"tsugime/export"
	"tsugime/export/exporttest"
	"tsugime/repeat/geom"
	"tsugime/repeat/repeattest"
)

// A painted is one path as another reader paints it, in millimetres from the top
// left of its page.
type painted struct {
	op             string
	area           float64 // with the sign of its turn
	x0, y0, x1, y1 float64 // of its points and controls
}

// trace has a reader paint a book and tell what it painted.
func trace(t *testing.T, b export.Book) []painted {
	t.Helper()
	said := repeattest.Tool(t, "mupdf-tools", "mutool", "trace", repeattest.Put(t, "book.pdf", write(t, b)), "1-N")
	reader := xml.NewDecoder(strings.NewReader(said))
	var all []painted
	for {
		token, err := reader.Token()
		if err != nil {
			return all
		}
		if start, ok := token.(xml.StartElement); ok && (start.Name.Local == "fill_path" || start.Name.Local == "stroke_path") {
			var path tracedPath
			if err := reader.DecodeElement(&path, &start); err != nil {
				t.Fatal(err)
			}
			all = append(all, path.measure(t, start.Name.Local))
		}
	}
}

// A tracedPath is one as the reader tells it.
type tracedPath struct {
	Transform string `xml:"transform,attr"`
	Steps     []struct {
		XMLName xml.Name
		X       float64 `xml:"x,attr"`
		Y       float64 `xml:"y,attr"`
		X1      float64 `xml:"x1,attr"`
		Y1      float64 `xml:"y1,attr"`
		X2      float64 `xml:"x2,attr"`
		Y2      float64 `xml:"y2,attr"`
		X3      float64 `xml:"x3,attr"`
		Y3      float64 `xml:"y3,attr"`
	} `xml:",any"`
}

type place struct{ x, y float64 }

func (p tracedPath) measure(t *testing.T, op string) painted {
	t.Helper()
	var m [6]float64
	if _, err := fmt.Sscan(p.Transform, &m[0], &m[1], &m[2], &m[3], &m[4], &m[5]); err != nil {
		t.Fatal(err)
	}
	at := func(x, y float64) place {
		return place{(m[0]*x + m[2]*y + m[4]) * 25.4 / 72, (m[1]*x + m[3]*y + m[5]) * 25.4 / 72}
	}
	out := painted{op: op, x0: math.Inf(1), y0: math.Inf(1), x1: math.Inf(-1), y1: math.Inf(-1)}
	var start, now place
	draw := func(c1, c2, end place) {
		out.area += underCubic(now, c1, c2, end)
		for _, q := range [3]place{c1, c2, end} {
			out.x0, out.y0 = math.Min(out.x0, q.x), math.Min(out.y0, q.y)
			out.x1, out.y1 = math.Max(out.x1, q.x), math.Max(out.y1, q.y)
		}
		now = end
	}
	for _, s := range p.Steps {
		switch s.XMLName.Local {
		case "moveto":
			start = at(s.X, s.Y)
			now = start
			draw(now, now, now)
		case "lineto":
			draw(now, at(s.X, s.Y), at(s.X, s.Y))
		case "curveto":
			draw(at(s.X1, s.Y1), at(s.X2, s.Y2), at(s.X3, s.Y3))
		case "closepath":
			draw(now, start, start)
		}
	}
	return out
}

// underCubic is half the integral of x·dy − y·dx along a cubic (Green); a
// straight piece is one with its controls at its ends.
func underCubic(a, b, c, d place) float64 {
	cross := func(p, q place) float64 { return p.x*q.y - q.x*p.y }
	return (6*cross(a, b) + 3*cross(a, c) + cross(a, d) + 3*cross(b, c) + 3*cross(b, d) + 6*cross(c, d)) / 20
}

// The reader keeps 32-bit floats: at 300 mm a step of 3e-5 mm.
func TestASquareOf100MMIsOneWhenPrinted(t *testing.T) {
	square := geom.Outline{{Start: geom.PtMM(50, 60), Segments: []geom.Segment{{End: geom.PtMM(150, 60)}, {End: geom.PtMM(150, 160)}, {End: geom.PtMM(50, 160)}}}}
	d := export.Drawing{Width: geom.MM(210), Height: geom.MM(297), Layers: []export.Layer{{
		Name: "check", Pen: export.Pen{Stroke: geom.MM(0.2)}, Outlines: []geom.Outline{square},
		Discs: []geom.Disc{{Centre: geom.PtMM(123.4567, 250.1234), Diameter: geom.MM(25)}},
	}}}
	got := trace(t, single(d))
	if len(got) != 2 {
		t.Fatalf("%d paths, want 2: %+v", len(got), got)
	}
	if s := got[1]; !near(s.area/10_000, 1, 1e-5) || !near(s.x0, 50, 1e-4) || !near(s.y0, 60, 1e-4) || !near(s.x1, 150, 1e-4) || !near(s.y1, 160, 1e-4) {
		t.Errorf("the square is %+v, want 100 × 100 mm at 50, 60", s)
	}
	c := got[0]
	if x, y := (c.x0+c.x1)/2, (c.y0+c.y1)/2; !near(x, 123.4567, 1e-4) || !near(y, 250.1234, 1e-4) {
		t.Errorf("the disc stands at %.5f, %.5f mm, want 123.4567, 250.1234", x, y)
	}
	if want := math.Pi / 4 * 25 * 25; !near(c.area/want, 1, 2e-5) || !near(c.x1-c.x0, 25, 1e-4) {
		t.Errorf("the disc has %.5f mm² and is %.5f mm wide, want %.5f and 25", c.area, c.x1-c.x0, want)
	}
}

func TestFilledShapesHaveTheirArea(t *testing.T) {
	d := exporttest.Tiny()
	d.Layers = d.Layers[:1]
	var sum float64
	for _, p := range trace(t, single(d)) {
		if p.op == "fill_path" {
			sum += math.Abs(p.area)
		}
	}
	if !near(sum/exporttest.FilledMM2, 1, 2e-5) {
		t.Errorf("filled %.5f mm², want %.5f", sum, exporttest.FilledMM2)
	}
}

// A metre's arc as one cubic for each quarter would be 0.27 mm off.
func TestLargeArcsStayOnTheirCircle(t *testing.T) {
	const r = 1000.0
	o := geom.Outline{{Start: geom.PtMM(0, r), Segments: []geom.Segment{
		{Kind: geom.Arc, End: geom.PtMM(2*r, r), Bulge: 1}, {Kind: geom.Arc, End: geom.PtMM(0, r), Bulge: 1},
	}}}
	worst := 0.0
	for _, c := range o {
		at := c.Start
		for _, s := range c.Segments {
			for _, arc := range export.ArcPieces(at, s, arcStep(at, s)) {
				for _, cubic := range arc.Cubics(at) {
					worst = math.Max(worst, offCircle(at, cubic, geom.PtMM(r, r), r))
					at = cubic.End
				}
			}
		}
	}
	if worst > geom.Chord.MM() || worst < geom.Chord.MM()/20 {
		t.Errorf("off the circle by %.6f mm, want at most %s and not far below", worst, geom.Chord)
	}
}

// offCircle returns how far a cubic leaves a circle, looked at in 100 places.
func offCircle(a geom.Point, s geom.Segment, centre geom.Point, r float64) float64 {
	worst := 0.0
	for i := range 101 {
		t := float64(i) / 100
		u := 1 - t
		w := [4]float64{u * u * u, 3 * u * u * t, 3 * u * t * t, t * t * t}
		x := w[0]*a.X.MM() + w[1]*s.C1.X.MM() + w[2]*s.C2.X.MM() + w[3]*s.End.X.MM()
		y := w[0]*a.Y.MM() + w[1]*s.C1.Y.MM() + w[2]*s.C2.Y.MM() + w[3]*s.End.Y.MM()
		worst = math.Max(worst, math.Abs(math.Hypot(x-centre.X.MM(), y-centre.Y.MM())-r))
	}
	return worst
}

// The disc of Tiny at 10, 12 stands on the first page at 15, 17, and on the page
// that shows what is right of 50 mm at −35: outside its window.
func TestWindowsShowTheirPartAtTrueScale(t *testing.T) {
	b := paged()
	for i, want := range []place{{15, 17}, {-35, 17}, {15, -13}, {-35, -13}} {
		one := export.Book{Title: b.Title, Pages: b.Pages[i : i+1]}
		disc := trace(t, one)[0]
		if x, y := (disc.x0+disc.x1)/2, (disc.y0+disc.y1)/2; !near(x, want.x, 1e-4) || !near(y, want.y, 1e-4) {
			t.Errorf("page %d: the disc stands at %.4f, %.4f mm, want %v", i+1, x, y, want)
		}
	}
}
