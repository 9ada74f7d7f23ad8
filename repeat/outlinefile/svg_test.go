package outlinefile_test

import (
	"bytes"
	"fmt"
	"image"
	"image/png"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"tsugime/export/raster"
	"tsugime/repeat/geom"
	"tsugime/repeat/outlinefile"
	"tsugime/repeat/repeattest"
)

// page wraps what is drawn in an SVG of 40 × 30 mm with a unit of 1 mm.
func page(body string) string {
	return `<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" width="40mm" height="30mm" viewBox="0 0 40 30">` + body + `</svg>`
}

func readSVG(t testing.TB, file string) outlinefile.Drawing {
	t.Helper()
	d, err := outlinefile.ReadSVG(strings.NewReader(file), outlinefile.Options{})
	if err != nil {
		t.Fatalf("%v in\n%s", err, file)
	}
	return d
}

// drawings are what another reader is to see as we do.
var drawings = map[string]string{
	"units": `<svg xmlns="http://www.w3.org/2000/svg" width="40mm" height="30mm">
		<rect x="2mm" y="0.2cm" width="0.25in" height="18pt"/><circle cx="20mm" cy="2pc" r="10px"/><rect x="50%" y="60%" width="20%" height="25%" rx="5" ry="9"/></svg>`,
	"view box in the middle": `<svg xmlns="http://www.w3.org/2000/svg" width="40mm" height="30mm" viewBox="-5 -5 20 20"><circle cx="5" cy="5" r="9"/></svg>`,
	"view box at an end":     `<svg xmlns="http://www.w3.org/2000/svg" width="40mm" height="30mm" viewBox="0 0 20 20" preserveAspectRatio="xMaxYMin meet"><circle cx="10" cy="10" r="9"/></svg>`,
	"view box stretched":     `<svg xmlns="http://www.w3.org/2000/svg" width="40mm" height="30mm" viewBox="0 0 20 20" preserveAspectRatio="none"><circle cx="10" cy="8" r="7"/><path fill="none" stroke="black" stroke-width="1" d="M1 18H19"/></svg>`,
	"fill rules":             page(`<path d="M2 2H18V18H2ZM6 6H14V14H6Z"/><path fill-rule="evenodd" d="M20 2H38V18H20ZM24 6H34V14H24Z"/><path style="fill-rule:evenodd" d="M10 20L20 29L4 23H16L2 29Z"/>`),
	"curves":                 page(`<path d="M2 10c3-9 9-9 12 0s9 9 12 0v15h-24z"/><path d="M28 4q4-6 8 0t-2 8t-6-8"/><path d="M30 20a5 3 30 1 1 4 4z"/>`),
	"shapes":                 page(`<ellipse cx="8" cy="8" rx="6" ry="3"/><polygon points="20,2 30 4 26 12"/><polyline points="2 15 10 15 6 25"/><rect x="20" y="15" width="16" height="10" rx="3"/><circle cx="35" cy="8" r="3"/>`),
	"transforms":             page(`<g transform="translate(20 15) rotate(30)"><rect x="-8" y="-3" width="16" height="6"/><g transform="skewX(20) scale(1 -1)"><circle cx="0" cy="9" r="3"/></g></g><rect transform="matrix(.5 .2 -.3 .6 8 4)" width="10" height="10" rx="2"/><path transform="rotate(45,30,5)" d="M28 3h4v4h-4z"/>`),
	"copies": page(`<defs><g id="a"><circle cx="2" cy="2" r="1.5"/><rect x="4" y="1" width="3" height="2"/></g><symbol id="s" viewBox="0 0 10 10"><path d="M0 0H10L5 10Z"/></symbol></defs>
		<use xlink:href="#a"/><use href="#a" x="10" y="5" transform="rotate(10)"/><use href="#s" x="20" y="4" width="12" height="8"/><svg x="2" y="15" width="10" height="10" viewBox="0 0 4 4"><circle cx="2" cy="2" r="1.6"/></svg>`),
	"styles": page(`<style>/* one */ .cut, #b {fill:none;stroke:black;stroke-width:2} rect.cut{stroke-width:1} circle{fill:none}</style>
		<g fill="none"><rect class="cut" x="2" y="2" width="8" height="8"/><path id="b" d="M15 3L20 9"/><path d="M25 3h5v5z" style="fill:red"/></g><circle cx="8" cy="20" r="4"/><circle cx="20" cy="20" r="4" style="fill:blue"/>`),
	"skewed stroke":      page(`<g transform="scale(2 .7) rotate(20)"><path d="M3 8h10l-4 12" fill="none" stroke="black" stroke-width="2" stroke-linejoin="round" stroke-linecap="round"/></g>`),
	"tight bends":        page(`<path d="M5 15C5 2 9 2 9 15S17 20 17 15S15 2 22 6" fill="none" stroke="black" stroke-width="3"/><path d="M28 10a1 1 0 0 1 2 0v8a.5 .5 0 0 1 -1 0" fill="none" stroke="black" stroke-width="2.4" stroke-linecap="round"/>`),
	"dots":               page(`<path d="M5 5h0M10 5z" stroke="black" stroke-width="3" stroke-linecap="round"/><path d="M5 12h0" stroke="black" stroke-width="3" stroke-linecap="square"/><path d="M3 20H37" fill="none" stroke="black" stroke-width="2" stroke-linecap="round" stroke-dasharray="0 4"/>`),
	"filled and stroked": page(`<rect x="5" y="5" width="12" height="9" rx="2" stroke="black" stroke-width="2"/><circle cx="28" cy="12" r="6" fill="none" stroke="black" stroke-width="2.5"/>`),
}

// strokes adds every join with every cap, and dashes, along a line with corners, a
// closed one, and a curve.
func init() {
	for _, join := range []string{"miter", "round", "bevel"} {
		for _, cap := range []string{"butt", "round", "square"} {
			for _, dash := range []string{"", "5", "4 2 1", "3.3 1.7"} {
				pen := fmt.Sprintf(`fill="none" stroke="black" stroke-width="1.6" stroke-linejoin="%s" stroke-linecap="%s"`, join, cap)
				if dash != "" {
					pen += fmt.Sprintf(` stroke-dasharray="%s" stroke-dashoffset="1.3"`, dash)
				}
				drawings["stroke "+join+" "+cap+" "+dash] = page(`<g ` + pen + `><path d="M3 4L14 3L6 9L16 12"/><path d="M22 4H36V13L28 9Z"/><path d="M4 24C8 10 12 34 18 20"/><path d="M25 25a5 5 0 1 1 9 2" stroke-miterlimit="2"/></g>`)
			}
		}
	}
}

// librsvg paints the same files. Each pixel holds the same area within how it cuts
// curves to straight pieces, a tenth of a pixel off: seen here are at most 49 of
// 255. A dash that ends flat on a tight curve ends square to such a piece: 80.
func TestAnotherReaderSeesTheSameAreas(t *testing.T) {
	const perMM = 10
	for name, file := range drawings {
		d := readSVG(t, file)
		picture := filepath.Join(t.TempDir(), "seen.png")
		path := repeattest.Put(t, "drawing.svg", []byte(file))
		repeattest.Tool(t, "librsvg2-bin", "rsvg-convert", "-w", fmt.Sprint(40*perMM), "-h", fmt.Sprint(30*perMM), "-o", picture, path)
		seen := alphas(t, picture)
		ours := covered(d, seen.Rect.Dx(), seen.Rect.Dy(), perMM)
		worst, sum, ink, at := 0, 0, 0, [2]int{}
		for y := range seen.Rect.Dy() {
			for x := range seen.Rect.Dx() {
				a, b := int(seen.AlphaAt(x, y).A), int(ours.AlphaAt(x, y).A)
				if max(a-b, b-a) > worst {
					worst = max(worst, a-b, b-a)
					at = [2]int{x, y}
				}
				sum += a - b
				ink += a
			}
		}
		most := 55
		if strings.Contains(file, "dasharray") {
			most = 90
		}
		if worst > most || math.Abs(float64(sum)) > 2.5e-3*float64(ink) {
			t.Errorf("%s: pixel %v is off by %d of 255, the ink by %d of %d", name, at, worst, sum, ink)
		}
	}
}

func alphas(t *testing.T, name string) *image.Alpha {
	t.Helper()
	data, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	m, err := png.Decode(bytes.NewReader(data))
	if err != nil {
		t.Fatal(err)
	}
	a := image.NewAlpha(m.Bounds())
	for y := range a.Rect.Dy() {
		for x := range a.Rect.Dx() {
			_, _, _, v := m.At(x, y).RGBA()
			a.Pix[a.PixOffset(x, y)] = uint8(v >> 8)
		}
	}
	return a
}

// covered paints what d covers.
func covered(d outlinefile.Drawing, w, h int, perMM float64) *image.Alpha {
	p := raster.NewPlane(w, h)
	g := raster.NewGround([]geom.Shape{d.Joined()})
	g.Paint(p, raster.View{PxPerMM: perMM}, raster.Lay{})
	a := image.NewAlpha(image.Rect(0, 0, w, h))
	copy(a.Pix, p.Cover)
	return a
}
