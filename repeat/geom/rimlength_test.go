package geom

import (
	"math"
	"testing"
)

// A parabola y = x², x from 0 to 1, is a cubic with these controls; its length is
// (√5)/2 + asinh(2)/4.
func TestRimsAreAsLongAsTheirClosedForms(t *testing.T) {
	for _, c := range []struct {
		name, path string
		mm, off    float64
	}{
		{"a rectangle", "M0 0H30V4H0Z", 68, 1e-9},
		{"a contour that is left open", "M0 0H30V4H0", 68, 1e-9},
		{"a slot with round ends", "M0 0H8A1 1 0 0 1 8 2H0A1 1 0 0 1 0 0Z", 16 + 2*math.Pi, 1e-6},
		{"a parabola and its chord", "M0 0C33.333333 0 66.666667 33.333333 100 100Z",
			100*(math.Sqrt(5)/2+math.Asinh(2)/4) + 100*math.Sqrt2, 2e-3},
	} {
		o, err := ParsePathData(c.path)
		if err != nil {
			t.Fatal(err)
		}
		if got := o.RimMM(); math.Abs(got-c.mm) > c.off {
			t.Errorf("%s: %.6f mm, want %.6f", c.name, got, c.mm)
		}
	}
	if got := DiscShape(Point{}, MM(2)).RimMM(); math.Abs(got-2*math.Pi) > 1e-12 {
		t.Errorf("a disc of 2 mm: %v", got)
	}
}
