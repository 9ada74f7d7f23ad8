package main

import (
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"tsugime/repeat/document"
	"tsugime/repeat/geom"
)

const ringAndDot = `<svg xmlns="http://www.w3.org/2000/svg" width="40mm" height="20mm" viewBox="0 0 40 20">
<g id="cut"><circle cx="10" cy="10" r="4" fill="none" stroke="black" stroke-width="2"/></g>
<g id="more"><circle cx="30" cy="10" r="1.5"/></g>
<text>name</text></svg>`

func file(t *testing.T, name, text string) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), name)
	if err := os.WriteFile(path, []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
	return path
}

// brought returns the order that a command line writes to standard output, and what
// it says.
func brought(t *testing.T, args ...string) (document.Order, string) {
	t.Helper()
	out, msg, code := call(t, "", append(append([]string{"bring"}, args...), "-o", "-")...)
	if code != exitFine {
		t.Fatalf("%v: exit %d, %s", args, code, msg)
	}
	o, err := document.Read(strings.NewReader(out))
	if err != nil {
		t.Fatal(err)
	}
	return o, msg
}

func TestOutlinesAreBroughtInAtTheirSize(t *testing.T) {
	name := file(t, "ring.svg", ringAndDot)
	o, msg := brought(t, name)
	if len(o.Unit.Motifs) != 2 {
		t.Fatalf("motifs %+v", o.Unit.Motifs)
	}
	ring, dot := o.Unit.Motifs[0], o.Unit.Motifs[1]
	if got := ring.Shape.AreaMM2(); math.Abs(got-16*math.Pi) > 1e-5 || ring.At != geom.PtMM(10, 10) {
		t.Errorf("the ring has %.6f mm² at %v", got, ring.At)
	}
	if dot.Shape.Disc.Diameter != geom.MM(3) || dot.At != geom.PtMM(30, 10) {
		t.Errorf("the dot is %v at %v", dot.Shape.Disc, dot.At)
	}
	for _, says := range []string{"taken 2 shapes, 1 of them discs; together 26.5 × 10 mm", `by layer: "cut" 1, "more" 1`, "line 3: circle on more: disc of 3 mm at 30, 10", "note: line 4: text: it is no outline"} {
		if !strings.Contains(msg, says) {
			t.Errorf("it doesn't say %q in\n%s", says, msg)
		}
	}
	if o.Title != "ring" {
		t.Errorf("the order is called %q", o.Title)
	}
}

func TestOutlinesAreScaledMovedJoinedOrShelved(t *testing.T) {
	name := file(t, "ring.svg", ringAndDot)
	o, _ := brought(t, name, "--as", "one", "--size", "53", "--at", "5,-3")
	if len(o.Unit.Motifs) != 1 || o.Unit.Motifs[0].At != geom.PtMM(5, -3) {
		t.Fatalf("motifs %+v", o.Unit.Motifs)
	}
	if got, want := o.Unit.Motifs[0].Shape.AreaMM2(), 4*(16*math.Pi+2.25*math.Pi); math.Abs(got-want) > 1e-4 {
		t.Errorf("together %.6f mm², want %.6f", got, want)
	}
	leaf := order(t, "leaf")
	o, _ = brought(t, name, "--as", "shelf", "--layer", "more", "--in", leaf)
	if len(o.Shelf) != 1 || o.Shelf[0].Name != "ring" || o.Shelf[0].Shape.Disc.Diameter != geom.MM(3) || o.Title == "ring" {
		t.Errorf("the shelf of %q holds %+v", o.Title, o.Shelf)
	}
}

func TestStrokesAreLinesToCutAlongWhereThatIsAsked(t *testing.T) {
	o, _ := brought(t, file(t, "ring.svg", ringAndDot), "--lines", "--layer", "cut")
	if m := o.Unit.Motifs; len(m) != 1 || !m[0].Shape.Round() || m[0].Shape.Disc.Diameter != geom.MM(8) {
		t.Errorf("motifs %+v, want a disc of 8 mm", m)
	}
}

func TestAUnitIsAskedForWhereAFileHasNone(t *testing.T) {
	name := file(t, "dot.dxf", "0\nSECTION\n2\nENTITIES\n0\nCIRCLE\n8\nA\n10\n2\n20\n1\n40\n.5\n0\nENDSEC\n0\nEOF\n")
	if _, msg, code := call(t, "", "bring", name, "-o", "-"); code != exitWrongUse || !strings.Contains(msg, "--unit mm") || strings.Count(msg, "\n") != 1 {
		t.Errorf("exit %d: %s", code, msg)
	}
	o, _ := brought(t, name, "--unit", "in")
	if m := o.Unit.Motifs[0]; m.Shape.Disc.Diameter != geom.MM(25.4) || m.At != geom.PtMM(50.8, -25.4) {
		t.Errorf("in inches it is %+v", m)
	}
}

func TestAFileThatCanNotBeBroughtInIsRefusedInOneLine(t *testing.T) {
	for text, says := range map[string]string{
		"":                     "empty",
		"<svg>\n<path d='Q'/>": "line 2",
		"<svg xmlns='http://www.w3.org/2000/svg'>\n<path d='Q'/></svg>":     "line 2: path: path data at character 1",
		"<svg xmlns='http://www.w3.org/2000/svg'>\n<text>a</text></svg>":    "nothing can be cut of it: line 2: text",
		"<svg xmlns='http://www.w3.org/2000/svg'><circle r='2in'/>\n</svg>": "",
	} {
		name := file(t, "a.svg", text)
		out, msg, code := call(t, "", "bring", name, "-o", filepath.Join(t.TempDir(), "o.tsugime"))
		if fine := says == ""; (code == exitFine) != fine || out != "" || !fine && (code != exitUnreadable || strings.Count(msg, "\n") != 1 || !strings.Contains(msg, "a.svg: ") || !strings.Contains(msg, says)) {
			t.Errorf("%q: exit %d, out %q, message %q; want %q", text, code, out, msg, says)
		}
	}
	name := file(t, "a.svg", ringAndDot)
	for _, c := range [][2]string{{"--at", "here"}, {"--layer", "none"}, {"--size", "wide"}} {
		if _, msg, code := call(t, "", "bring", name, c[0], c[1], "-o", "-"); code != exitWrongUse || strings.Count(msg, "\n") != 1 || !strings.Contains(msg, c[0]) {
			t.Errorf("%v: exit %d, %s", c, code, msg)
		}
	}
}
