package outlinefile_test

import (
	"errors"
	"fmt"
	"strings"
	"testing"

	"tsugime/repeat/geom"
	"tsugime/repeat/outlinefile"
)

// Each is refused in one line that names the line of the file and what to do.
func TestBrokenSVGIsRefused(t *testing.T) {
	deep := strings.Repeat("<g>", 200) + strings.Repeat("</g>", 200)
	for file, says := range map[string]string{
		"":                              "no SVG file",
		"hello":                         "no SVG file",
		"<html/>":                       "first element must be svg",
		page(`<path d="M0 0`):           "line 1: the XML is broken",
		page("\n\n<path d=\"M0 0Q\"/>"): "line 3: path: path data at character",
		page("\n<circle r='wide'/>"):    `line 2: circle: r="wide" is no length`,
		page(`<rect width="5furlong" height="3"/>`):              "no length",
		page(`<g transform="spin(3)"><path d="M0 0H1V1Z"/></g>`): "transform",
		page(`<polygon points="0,0 5,x 3,3"/>`):                  "no number",
		page(`<path d="M0 0H1e8V1Z"/>`):                          "reaches farther",
		page(`<circle cx="1" cy="1" r="1e300"/>`):                "no length",
		page(deep):                             "nested more than 100 deep",
		page(`<g id="a"><use href="#a"/></g>`): "copies",
		page(`<g id="a"><use href="#b"/></g><g id="b"><use href="#a"/><use href="#a"/></g>`):                                 "copies",
		page(`<path stroke="red" stroke-dasharray="1e-5" d="M0 0H30"/>`):                                                     "dashes",
		page(`<path stroke="red" stroke-width="-1" d="M0 0H30"/>`):                                                           "can't be",
		`<?xml version="1.0" encoding="koi8-r"?><svg xmlns="http://www.w3.org/2000/svg"/>`:                                   "UTF-8",
		`<svg xmlns="http://www.w3.org/2000/svg" width="1mile" height="3mm"/>`:                                               "no unit here",
		`<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 x 3"/>`:                                                        "viewBox",
		`<!DOCTYPE svg [<!ENTITY a "aaaa"><!ENTITY b "&a;&a;">]><svg xmlns="http://www.w3.org/2000/svg"><g id="&b;"/></svg>`: "invalid character entity",
		`<!DOCTYPE svg [<!ENTITY a SYSTEM "/etc/passwd">]><svg xmlns="http://www.w3.org/2000/svg"><g id="&a;"/></svg>`:       "invalid character entity",
		bomb(): "more than 400000 elements",
	} {
		_, err := outlinefile.ReadSVG(strings.NewReader(file), outlinefile.Options{})
		refused(t, file, says, err)
	}
}

func refused(t *testing.T, file, says string, err error) {
	t.Helper()
	var fault *outlinefile.Fault
	if err == nil || !errors.As(err, &fault) || strings.Contains(err.Error(), "\n") || !strings.Contains(err.Error(), says) {
		t.Errorf("%.80q gave %v, want a fault that says %q", file, err, says)
	}
}

// bomb doubles what it draws forty times.
func bomb() string {
	var b strings.Builder
	b.WriteString(`<g id="g0"><circle r="1"/></g>`)
	for i := range 12 {
		fmt.Fprintf(&b, `<g id="g%d">%s</g>`, i+1, strings.Repeat(fmt.Sprintf(`<use href="#g%d"/>`, i), 10))
	}
	return page("<defs>" + b.String() + `</defs><use href="#g12"/>`)
}

func TestBrokenDXFIsRefused(t *testing.T) {
	entity := func(groups string) string { return "0\nSECTION\n2\nENTITIES\n" + groups + "0\nENDSEC\n0\nEOF\n" }
	for file, says := range map[string]string{
		"":        "no section",
		"hello\n": "line 1: \"hello\" stands where a group code should",
		"0\nSECTION\n2\nENTITIES\n0\nCIRCLE\n10\n": "ends within a group",
		"\x00\x01\x02": "binary",
		entity("0\nCIRCLE\n8\nA\n10\nx\n20\n0\n40\n1\n"):                  "line 10: \"x\" is no number",
		entity("0\nCIRCLE\n10\n0\n20\n0\n40\nNaN\n"):                      "no number",
		entity("0\nCIRCLE\n10\n1e12\n20\n0\n40\n1\n"):                     "no number",
		entity("0\nCIRCLE\n10\n1e8\n20\n0\n40\n1\n"):                      "check the unit",
		entity("0\nSPLINE\n71\n3\n40\n0\n10\n0\n20\n0\n"):                 "knots",
		entity("0\nSPLINE\n71\n99\n40\n0\n10\n0\n20\n0\n"):                "degree",
		entity("0\nINSERT\n2\nA\n10\n0\n20\n0\n70\n100000\n71\n100000\n"): "too many",
		"0\nSECTION\n2\nBLOCKS\n0\nBLOCK\n2\nA\n0\nLWPOLYLINE\n" + strings.Repeat("10\n1\n20\n2\n", 1000) + "0\nENDBLK\n0\nENDSEC\n" + entity("0\nINSERT\n2\nA\n70\n3000\n"): "more than 2000000 pieces",
		"0\nSECTION\n2\nBLOCKS\n0\nBLOCK\n2\nA\n0\nINSERT\n2\nA\n0\nENDBLK\n0\nENDSEC\n" + entity("0\nINSERT\n2\nA\n"):                                                       "blocks in blocks",
	} {
		_, err := outlinefile.ReadDXF(strings.NewReader(file), outlinefile.Options{Unit: geom.MMUnit})
		refused(t, file, says, err)
	}
}

// What is no outline is told once, with its first line and how often it came.
func TestSVGSaysWhatItLeavesOut(t *testing.T) {
	d := readSVG(t, page(`<defs><linearGradient id="l"/></defs>
<text x="3" y="3">words</text><text>more</text>
<image href="http://example.org/a.png"/>
<path d="M0 0H9V9Z" fill="url(#l)" clip-path="url(#c)"/>
<path d="M0 0H9V9Z" fill="none"/><path d="M0 0H9V9Z" display="none"/><path d="M0 0H9V9Z" opacity="0"/>
<path d="M0 0H9" stroke="black" marker-end="url(#m)"/><use href="#nowhere"/><style>a b{fill:none}</style>`))
	if len(d.Pieces) != 2 {
		t.Errorf("%d pieces, want the filled triangle and the stroke", len(d.Pieces))
	}
	var told []string
	for _, n := range d.Notes {
		told = append(told, fmt.Sprintf("%d %s", n.Line, n.Text))
	}
	all := strings.Join(told, "\n")
	for _, says := range []string{
		"2 text: it is no outline and was left out (2 times, first here)", "3 image:", "4 path: its fill is a gradient",
		"4 path: its clip-path", "5 path: it is neither", "5 path: it is not shown", "5 path: its fill is clear", "6 path: its markers", `6 use: there is no "#nowhere"`, `0 style "a b"`,
	} {
		if !strings.Contains(all, says) {
			t.Errorf("nothing says %q in\n%s", says, all)
		}
	}
}

func FuzzReadSVG(f *testing.F) {
	for _, file := range drawings {
		f.Add(file)
	}
	f.Fuzz(func(t *testing.T, file string) {
		if len(file) > 2000 {
			return
		}
		for _, lines := range []bool{false, true} {
			d, err := outlinefile.ReadSVG(strings.NewReader(file), outlinefile.Options{Lines: lines})
			sane(t, d, err)
		}
	})
}

func FuzzReadDXF(f *testing.F) {
	for _, groups := range []string{
		"0\nCIRCLE\n8\nA\n10\n5\n20\n5\n40\n2\n", "0\nARC\n10\n0\n20\n0\n40\n3\n50\n10\n51\n200\n", "0\nELLIPSE\n10\n0\n20\n0\n11\n4\n21\n1\n40\n.5\n",
		"0\nLWPOLYLINE\n90\n3\n70\n1\n10\n0\n20\n0\n42\n.5\n10\n9\n20\n0\n10\n0\n20\n9\n", "0\nSPLINE\n71\n2\n40\n0\n40\n0\n40\n0\n40\n1\n40\n1\n40\n1\n10\n0\n20\n0\n10\n5\n20\n5\n10\n9\n20\n0\n41\n1\n41\n2\n41\n1\n",
		"0\nPOLYLINE\n70\n1\n0\nVERTEX\n10\n0\n20\n0\n42\n1\n0\nVERTEX\n10\n5\n20\n0\n0\nSEQEND\n", "0\nLINE\n10\n0\n20\n0\n11\n3\n21\n4\n0\nLINE\n10\n3\n20\n4\n11\n6\n21\n0\n0\nLINE\n10\n0\n20\n0\n11\n6\n21\n0\n",
	} {
		f.Add("0\nSECTION\n2\nBLOCKS\n0\nBLOCK\n2\nB\n" + groups + "0\nENDBLK\n0\nENDSEC\n0\nSECTION\n2\nENTITIES\n" + groups + "0\nINSERT\n2\nB\n41\n2\n42\n3\n50\n20\n70\n2\n44\n9\n0\nENDSEC\n0\nEOF\n")
	}
	f.Fuzz(func(t *testing.T, file string) {
		if len(file) > 2000 {
			return
		}
		d, err := outlinefile.ReadDXF(strings.NewReader(file), outlinefile.Options{Unit: geom.MMUnit})
		sane(t, d, err)
	})
}

// sane holds for whatever is read: an error is one line, and a piece has an extent
// within reach and is covered as its area says.
func sane(t *testing.T, d outlinefile.Drawing, err error) {
	t.Helper()
	if err != nil && strings.Contains(err.Error(), "\n") {
		t.Fatalf("the error has more than one line: %q", err)
	}
	for _, p := range d.Pieces {
		b := p.Shape.Bounds()
		if b.Empty() || b.Width() < 0 || b.Height() < 0 || b.Width() > 21*geom.Metre {
			t.Fatalf("%s on line %d lies in %v", p.Kind, p.Line, b)
		}
		if a := p.Shape.AreaMM2(); !(a >= 0) || a > 1.01*b.Width().MM()*b.Height().MM()+1e-3 {
			t.Fatalf("%s on line %d has %g mm² in %v", p.Kind, p.Line, a, b)
		}
	}
}
