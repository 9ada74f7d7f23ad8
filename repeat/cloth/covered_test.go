package cloth

import (
	"math/rand/v2"
	"testing"

	"tsugime/repeat/geom"
)

// What is hidden and what is shown make up the panel, place by place.
func TestWhatSeamsHideAndWhatIsSeenMakeUpThePanel(t *testing.T) {
	for _, kind := range GarmentKinds() {
		run := mustLay(t, coatBolt, coatBoard, design, sixSun)
		f, err := FormOf(kind)
		if err != nil {
			t.Fatal(err)
		}
		body := Body{Kind: kind}
		if a, ok := f.Ask(heightName); ok {
			body.Height = a.Usual
		}
		d, err := Dress(coatBolt, run, squareDots, Garment{Body: body}, 500*geom.Micrometre)
		if err != nil {
			t.Fatal(err)
		}
		r := rand.New(rand.NewPCG(5, 1))
		for i, s := range d.SewnIn() {
			p := d.Panels[i]
			for range 400 {
				at := geom.Point{X: p.X + geom.Length(r.Int64N(int64(p.Width))), Y: p.Y + geom.Length(r.Int64N(int64(p.Length)))}
				shown, hidden := false, 0
				for _, piece := range d.Pieces() {
					shown = shown || piece.Panel == p.Name && piece.Window().Holds(at)
				}
				for _, b := range s.Parts {
					if b.Holds(at) {
						hidden++
					}
				}
				if shown == (hidden > 0) || hidden > 1 {
					t.Fatalf("%s: %v on the %s is shown %v and hidden %d times", kind, at, p.Name, shown, hidden)
				}
			}
		}
	}
}

// The women's kimono from the coat's cloth: of a body panel the back's two seams
// hide the cloth's width less the back's 8 kujira sun.
func TestTheHiddenStripIsTheClothLessTheFinishedWidth(t *testing.T) {
	run := mustLay(t, coatBolt, coatBoard, design, sixSun)
	d := mustDress(t, coatBolt, run, squareDots, 160, false)
	body, s := d.Panels[leftBody], d.SewnIn()[leftBody]
	widest := geom.Length(0)
	for _, p := range d.Pieces() {
		if p.Panel == body.Name {
			widest = max(widest, p.Area.Width())
		}
	}
	if got := body.Width - s.Left - s.Right; got < widest {
		t.Errorf("both strips leave %v of the body, less than its widest piece of %v", got, widest)
	}
	if s.Left < d.Hidden || s.Right < d.Hidden {
		t.Errorf("strips of %v and %v, with %v hidden beside every selvedge", s.Left, s.Right, d.Hidden)
	}
}
