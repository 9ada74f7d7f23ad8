package report

import (
	"image"
	"math"
	"math/rand/v2"
	"testing"

	"tsugime/repeat"
	"tsugime/repeat/cloth"
	"tsugime/repeat/document"
	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

// light is what a pixel sends, 0 to 1, by IEC 61966-2-1.
func light(c uint8) float64 {
	v := float64(c) / 255
	if v <= 0.04045 {
		return v / 12.92
	}
	return math.Pow((v+0.055)/1.055, 2.4)
}

// TestTheToneOfAPictureIsTheOpenArea: where holes are finer than pixels the mean
// light of the cloth is the dye's and the white's in the proportion of the open
// area, on the bolt and on the garment.
func TestTheToneOfAPictureIsTheOpenArea(t *testing.T) {
	w := built(t, dotOrder(t, 1.29, 0.5))
	open := math.Pi / 4 * 0.5 * 0.5 / w.Order.Unit.Lattice.CellMM2()
	for _, of := range []string{"bolt", "garment"} {
		img, err := Picture(w, of, 1000)
		if err != nil {
			t.Fatal(err)
		}
		for channel := range 3 {
			ink := [3]uint8{w.Order.Cloth.Dye.R, w.Order.Cloth.Dye.G, w.Order.Cloth.Dye.B}[channel]
			white := [3]uint8{undyed.R, undyed.G, undyed.B}[channel]
			want := light(ink) + open*(light(white)-light(ink))
			got := meanLight(img, patchOf(of), channel)
			if math.Abs(got-want) > 0.02*want { // one level of 255 is 1 % here
				t.Errorf("%s, channel %d: mean light %.4f, want %.4f", of, channel, got, want)
			}
		}
	}
}

// patchOf returns pixels of a plate 1000 wide that lie inside cloth and on no
// line: on the first column of the bolt, and on the back of the garment between
// two joints.
func patchOf(of string) image.Rectangle {
	if of == "bolt" {
		return image.Rect(105, 120, 175, 600)
	}
	return image.Rect(150, 270, 220, 300)
}

func meanLight(img *image.RGBA, r image.Rectangle, channel int) float64 {
	sum := 0.0
	for y := r.Min.Y; y < r.Max.Y; y++ {
		for x := r.Min.X; x < r.Max.X; x++ {
			sum += light(img.Pix[img.PixOffset(x, y)+channel])
		}
	}
	return sum / float64(r.Dx()*r.Dy())
}

// unlikeDots returns an order whose unit is two dots of different size: it looks
// the same no way round but one.
func unlikeDots(t testing.TB) document.Order {
	o := dotOrder(t, 14, 3)
	third := o.Sheet.Step / 3
	o.Unit = pattern.Unit{
		Lattice: pattern.Straight(third, third),
		Motifs: []pattern.Motif{
			{ID: 1, Shape: geom.DiscShape(geom.Point{}, geom.MM(24)), At: geom.PtMM(14, 16)},
			{ID: 2, Shape: geom.DiscShape(geom.Point{}, geom.MM(11)), At: geom.PtMM(42, 24)},
		},
	}
	o.Sheet.Step, o.NextID = third*3, 3
	return o
}

// TestEveryPieceShowsItsOwnClothTheRightWayUp looks at places of every piece and
// asks the cut-outs themselves whether the cloth is open there. The two dots of
// the unit are unlike, so that cloth turned the wrong way shows, and so would every
// other section of a folded cloth that isn't mirrored.
func TestEveryPieceShowsItsOwnClothTheRightWayUp(t *testing.T) {
	for _, folded := range []bool{false, true} {
		o := unlikeDots(t)
		o.Cloth.Bolt.Folded = folded
		showsItsOwnCloth(t, built(t, o))
	}
}

func showsItsOwnCloth(t *testing.T, w repeat.Work) {
	const width = 2000
	img, err := Picture(w, "garment", width)
	if err != nil {
		t.Fatal(err)
	}
	sc, k := sceneIn(w.Dressed.Pieces(), geom.Point{X: plateWidth - 2*plateMargin, Y: tallest}, sceneShape)
	random := rand.New(rand.NewPCG(3, 8)) // places in rows would all lie on a line, or none
	seen, wrong, open := 0, 0, 0
	for _, p := range sc.pieces {
		if p.Panel == "collar" || p.Panel == "over-collar" {
			continue // as narrow as the marks on them
		}
		inner := p.Area.Grown(-25 * geom.Millimetre)
		for range int(inner.Width().MM() * inner.Height().MM() / 330) {
			at := inner.Min.Add(geom.PtMM(random.Float64()*inner.Width().MM(), random.Float64()*inner.Height().MM()))
			inside, sure := openAt(w, p.ToCloth(at).Sub(start(w)))
			if !sure {
				continue
			}
			seen++
			s := at.Add(sc.offset[p.View])
			px := int((plateMargin.MM() + s.X.MM()*k) * width / plateWidth.MM())
			py := int((plateMargin.MM() + viewTop.MM() + s.Y.MM()*k) * width / plateWidth.MM())
			if inside {
				open++
			}
			if light := img.RGBAAt(px, py).G > 0x90; light != inside {
				wrong++
			}
		}
	}
	// Joints, numbers and the rims of the turn lie on some of the places.
	if seen < 1000 || open < 100 || wrong > 20 {
		t.Errorf("%d of %d places are wrong, %d open", wrong, seen, open)
	}
}

// openAt reports whether the cloth is open at a place counted from the first
// placement, and whether no rim or joint is within 3 mm.
func openAt(w repeat.Work, at geom.Point) (open, sure bool) {
	step := w.Sheet.Spec.Step
	for n := at.Y/step - 1; n <= at.Y/step+1; n++ {
		for _, c := range w.Sheet.CutOuts {
			on := at.Sub(geom.Point{Y: n * step})
			if w.Run.Bolt.Folded && n%2 != 0 {
				on.Y = step - on.Y
			}
			d := on.Sub(c.Shape.Disc.Centre).Norm() - float64(c.Shape.Disc.Diameter)/2
			if math.Abs(d) < 3e6 {
				return false, false
			}
			open = open || d < 0
		}
	}
	toJoint := ((at.Y % step) + step) % step
	return open, min(toJoint, step-toJoint) > 3*geom.Millimetre
}

func TestPicturesHaveTheWidthAskedForAndNoOther(t *testing.T) {
	w := built(t, dotOrder(t, 6, 2))
	for _, of := range Pictures(w) {
		for _, width := range []int{100, 333} {
			img, err := Picture(w, of, width)
			if err != nil {
				t.Fatal(err)
			}
			if img.Rect.Dx() != width || img.Rect.Dy() < width/2 {
				t.Errorf("%s: %v, want %d across", of, img.Rect, width)
			}
		}
	}
	if _, err := Picture(w, "poster", 800); err == nil {
		t.Error("a poster was drawn")
	}
	if _, err := Picture(w, "unit", 99); err == nil {
		t.Error("99 pixels were drawn")
	}
	w.Dressed = cloth.Dressed{}
	if _, err := Picture(w, "garment", 800); err == nil {
		t.Error("a garment without panels was drawn")
	}
}

// TestEveryNumberedSeamLiesBetweenItsPieces looks the seams up on the garment.
func TestEveryNumberedSeamLiesBetweenItsPieces(t *testing.T) {
	w := built(t, dotOrder(t, 6, 2))
	sc := sceneOf(w.Dressed.Pieces(), 100*geom.Millimetre, sceneShape)
	for _, s := range w.Dressed.Seams {
		at, ok := sc.seamPlace(s)
		if !ok {
			t.Errorf("%s has no place", s.Name)
			continue
		}
		touched := map[string]bool{}
		for _, p := range sc.pieces {
			if p.Area.Moved(sc.offset[p.View]).Holds(at) {
				touched[p.Panel] = true
			}
		}
		if !touched[s.Between[0]] || !touched[s.Between[1]] {
			t.Errorf("%s at %v touches %v, want %v", s.Name, at, touched, s.Between)
		}
	}
}

func TestALineIsClippedToItsWindow(t *testing.T) {
	box := geom.BoxOf(geom.Point{}, geom.PtMM(10, 10))
	for _, c := range []struct {
		a, b, from, to geom.Point
		ok             bool
	}{
		{geom.PtMM(1, 1), geom.PtMM(9, 2), geom.PtMM(1, 1), geom.PtMM(9, 2), true},
		{geom.PtMM(-5, 5), geom.PtMM(15, 5), geom.PtMM(0, 5), geom.PtMM(10, 5), true},
		{geom.PtMM(-5, -5), geom.PtMM(20, 20), geom.PtMM(0, 0), geom.PtMM(10, 10), true},
		{geom.PtMM(-5, 5), geom.PtMM(5, 16), geom.Point{}, geom.Point{}, false},
		{geom.PtMM(3, -1), geom.PtMM(3, 11), geom.PtMM(3, 0), geom.PtMM(3, 10), true},
		{geom.PtMM(11, -1), geom.PtMM(11, 11), geom.Point{}, geom.Point{}, false},
	} {
		from, to, ok := clipped(c.a, c.b, box)
		if ok != c.ok || ok && (from != c.from || to != c.to) {
			t.Errorf("%v to %v: %v to %v, %v; want %v to %v, %v", c.a, c.b, from, to, ok, c.from, c.to, c.ok)
		}
	}
}
