package report

import (
	"bytes"
	"fmt"
	"image"
	"image/png"
	"math"
	"os"
	"path/filepath"
	"testing"

	"tsugime/export"
	"tsugime/repeat/geom"
)

// pasteDPI gives five pixels to the millimetre.
const pasteDPI = 127

// rendered returns the pages of a PDF as poppler draws them.
func rendered(t testing.TB, path string) []image.Image {
	t.Helper()
	base := filepath.Join(t.TempDir(), "page")
	read(t, "pdftoppm", "-r", fmt.Sprint(pasteDPI), "-png", path, base)
	files, err := filepath.Glob(base + "*.png")
	if err != nil || len(files) == 0 {
		t.Fatalf("pdftoppm drew nothing of %s: %v", path, err)
	}
	var pages []image.Image
	for _, f := range files {
		b, err := os.ReadFile(f)
		if err != nil {
			t.Fatal(err)
		}
		img, err := png.Decode(bytes.NewReader(b))
		if err != nil {
			t.Fatal(err)
		}
		pages = append(pages, img)
	}
	return pages
}

// A blot is a dark, connected part of a picture: its middle and area.
type blot struct{ x, y, area float64 } // mm

// blots returns what is dark and not in the mark's colour, weighed by darkness.
func blots(img image.Image) []blot {
	b := img.Bounds()
	w, h := b.Dx(), b.Dy()
	dark := make([]float64, w*h)
	for y := range h {
		for x := range w {
			r, _, _, _ := img.At(b.Min.X+x, b.Min.Y+y).RGBA()
			if v := 1 - (float64(r>>8)-0x1a)/(255-0x1a); v > 0.2 {
				dark[y*w+x] = v
			}
		}
	}
	const px = 25.4 / pasteDPI
	var all []blot
	var stack []int
	for start := range dark {
		if dark[start] == 0 {
			continue
		}
		var sum, sx, sy float64
		push := func(i int) {
			v := dark[i]
			dark[i] = 0
			sum, sx, sy = sum+v, sx+v*(float64(i%w)+0.5), sy+v*(float64(i/w)+0.5)
			stack = append(stack, i)
		}
		for push(start); len(stack) > 0; {
			i := stack[len(stack)-1]
			stack = stack[:len(stack)-1]
			x, y := i%w, i/w
			for _, d := range [][2]int{{1, 0}, {-1, 0}, {0, 1}, {0, -1}} {
				nx, ny := x+d[0], y+d[1]
				if nx >= 0 && ny >= 0 && nx < w && ny < h && dark[ny*w+nx] > 0 {
					push(ny*w + nx)
				}
			}
		}
		all = append(all, blot{sx / sum * px, sy / sum * px, sum * px * px})
	}
	return all
}

// printedCrosses returns the middles of the crosses of each page as mutool reads
// them, row by row: an upright and a level stroke of 8 mm about one point.
func printedCrosses(t *testing.T, path string) [][]blot {
	var pages [][]blot
	for _, p := range strokes(t, path) {
		var found []blot
		for _, s := range p {
			for _, q := range p {
				sw, sh := s.size()
				qw, qh := q.size()
				if math.Abs(sw-8) > 1e-3 || sh != 0 || math.Abs(qh-8) > 1e-3 || qw != 0 {
					continue
				}
				x, y := (s.xs[0]+s.xs[1])/2, (q.ys[0]+q.ys[1])/2
				if math.Abs(q.xs[0]-x) < 1e-3 && math.Abs(s.ys[0]-y) < 1e-3 {
					found = append(found, blot{x: x, y: y})
				}
			}
		}
		pages = append(pages, found)
	}
	return pages
}

// TestPagesPastedByTheirCrossesGiveTheWholeDrawing prints, pastes and measures:
// each page is moved so that its left crosses lie on the right crosses of the
// page before, its top ones on the bottom ones of the page above. Every hole is
// then within 0.1 mm of where it lies on the page that shows the whole field.
func TestPagesPastedByTheirCrossesGiveTheWholeDrawing(t *testing.T) {
	o := dotOrder(t, 14, 3)
	o.Sheet.Paper.Width, o.Sheet.Paper.Height = geom.MM(430), geom.MM(300)
	w := built(t, o)
	paged, err := Transfer(w, 1, Options{Page: "letter"})
	if err != nil {
		t.Fatal(err)
	}
	path := written(t, "transfer.pdf", paged)
	cols := pagesAcross(paged)
	crosses, pages := printedCrosses(t, path)[1:], rendered(t, path)[1:]
	if len(pages) < 2 {
		t.Fatalf("%d pages can't be pasted", len(pages))
	}
	offsets := make([]blot, len(pages))
	var pasted []blot
	for i, page := range pages {
		if len(crosses[i]) != 4 {
			t.Fatalf("page %d has %d crosses, want 4", i+1, len(crosses[i]))
		}
		// The crosses come as top left, bottom left, top right, bottom right.
		switch {
		case i%cols > 0:
			offsets[i] = blot{x: offsets[i-1].x + crosses[i-1][2].x - crosses[i][0].x, y: offsets[i-1].y + crosses[i-1][2].y - crosses[i][0].y}
		case i > 0:
			up := i - cols
			offsets[i] = blot{x: offsets[up].x + crosses[up][1].x - crosses[i][0].x, y: offsets[up].y + crosses[up][1].y - crosses[i][0].y}
		}
		for _, b := range blots(page) {
			pasted = append(pasted, blot{b.x + offsets[i].x, b.y + offsets[i].y, b.area})
		}
	}
	one, err := TransferWhole(w, 1, Options{})
	if err != nil {
		t.Fatal(err)
	}
	whole := holesOf(blots(rendered(t, written(t, "whole.pdf", one))[0]))
	if len(whole) != len(w.Sheet.CutOuts) {
		t.Fatalf("the whole page shows %d holes of %d", len(whole), len(w.Sheet.CutOuts))
	}
	move, worst := registerBlots(whole, holesOf(pasted))
	t.Logf("%d holes, moved by %.2f, %.2f mm, worst %.4f mm", len(whole), move.x, move.y, worst)
	if worst > 0.1 {
		t.Errorf("a hole is %.3f mm from where the whole field has it", worst)
	}
}

// pagesAcross counts the marking pages of the first row.
func pagesAcross(b export.Book) int {
	n := 0
	for _, p := range b.Pages {
		if len(p.Views) == 1 && p.Views[0].Window.Min.Y == b.Pages[1].Views[0].Window.Min.Y {
			n++
		}
	}
	return n
}

// holesOf keeps the blots that have the area of a hole of 3 mm.
func holesOf(all []blot) []blot {
	var holes []blot
	for _, b := range all {
		if want := math.Pi / 4 * 9; math.Abs(b.area-want) < 0.1*want {
			holes = append(holes, b)
		}
	}
	return holes
}

// registerBlots lays the second set on the first by their uppermost holes, the
// left one of these, and returns the move and the largest distance from one of
// the first to its nearest of the second.
func registerBlots(first, second []blot) (move blot, worst float64) {
	top := func(all []blot) blot {
		best := blot{y: math.Inf(1)}
		for _, b := range all {
			if b.x+3*b.y < best.x+3*best.y {
				best = b
			}
		}
		return best
	}
	a, b := top(first), top(second)
	move = blot{x: a.x - b.x, y: a.y - b.y}
	for _, a := range first {
		near := math.Inf(1)
		for _, b := range second {
			near = min(near, math.Hypot(b.x+move.x-a.x, b.y+move.y-a.y))
		}
		worst = max(worst, near)
	}
	return move, worst
}
