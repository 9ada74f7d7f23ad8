package pen_test

import (
	"math"
	"testing"

	"tsugime/repeat/geom"
	"tsugime/repeat/pen"
)

// Areas by the textbook formulas of plane geometry.
func TestFiguresCoverWhatTheirFormulasSay(t *testing.T) {
	const r = 3.0
	check := func(name string, o geom.Outline, err error, want, wide, high float64) {
		t.Helper()
		if err != nil {
			t.Errorf("%s: %v", name, err)
			return
		}
		if got := o.AreaMM2(); math.Abs(got-want) > 1e-5 {
			t.Errorf("%s covers %v mm², want %v", name, got, want)
		}
		if b := o.Bounds(); math.Abs(b.Width().MM()-wide) > 1e-5 || math.Abs(b.Height().MM()-high) > 1e-5 {
			t.Errorf("%s reaches %v by %v mm, want %v by %v", name, b.Width(), b.Height(), wide, high)
		}
		if _, mends := o.Mended(); len(mends) > 0 {
			t.Errorf("%s is not sound: %v", name, mends)
		}
	}
	for n := 4; n <= 12; n += 4 {
		o, err := pen.Polygon(n, geom.MM(r), 0)
		check("a polygon", o, err, float64(n)/2*r*r*math.Sin(2*math.Pi/float64(n)), 2*r, 2*r)
	}
	o, err := pen.Star(8, geom.MM(r), 0.4, 0)
	check("a star", o, err, 8*r*0.4*r*math.Sin(math.Pi/8), 2*r, 2*r)
	// A petal 4 long and 2 wide: two half circles' segments with r = 2.5.
	theta := 2 * math.Asin(2/2.5)
	o, err = pen.Petal(geom.MM(4), 0.5, 0)
	check("a petal", o, err, 2.5*2.5*(theta-math.Sin(theta)), 2, 4)
	o, err = pen.Slot(geom.MM(5), 0.4, 0)
	check("a slot", o, err, 3*2+math.Pi, 5, 2)
	o, err = pen.Ring(geom.MM(r), 0.5)
	check("a ring", o, err, math.Pi*(r*r-r*r/4), 2*r, 2*r)
	check("a disc's outline", pen.OfDisc(geom.Disc{Diameter: geom.MM(2 * r)}), nil, math.Pi*r*r, 2*r, 2*r)
}

func TestFiguresRefuseWhatTheyCannotBe(t *testing.T) {
	refused := map[string]func() (geom.Outline, error){
		"two corners":       func() (geom.Outline, error) { return pen.Polygon(2, geom.MM(1), 0) },
		"a billion corners": func() (geom.Outline, error) { return pen.Polygon(1e9, geom.MM(1), 0) },
		"no radius":         func() (geom.Outline, error) { return pen.Polygon(5, 0, 0) },
		"a full inner star": func() (geom.Outline, error) { return pen.Star(5, geom.MM(1), 1, 0) },
		"no share":          func() (geom.Outline, error) { return pen.Star(5, geom.MM(1), math.NaN(), 0) },
		"a round slot":      func() (geom.Outline, error) { return pen.Slot(2, 0.9, 0) },
		"a ring of nothing": func() (geom.Outline, error) { return pen.Ring(2, 0.9) },
		"a huge petal":      func() (geom.Outline, error) { return pen.Petal(2*geom.Metre, 0.5, 0) },
	}
	for name, make := range refused {
		if o, err := make(); err == nil {
			t.Errorf("%s was drawn: %v", name, o)
		}
	}
}
