package export

import (
	"strings"
	"testing"

	"tsugime/repeat/geom"
)

// ISO 216: each size of the A series is the next one halved across its long
// side, rounded down to a millimetre.
func TestASheetIsTheNextOneHalved(t *testing.T) {
	for _, pair := range [][2]string{{"A2", "A3"}, {"A3", "A4"}} {
		large, small := named(t, pair[0]), named(t, pair[1])
		half := large.Height / 2 / geom.Millimetre * geom.Millimetre
		if small.Height != large.Width || small.Width != half {
			t.Errorf("%s is %s × %s mm, want half of %s: %s × %s", small.Name, small.Width, small.Height, large.Name, half, large.Width)
		}
	}
}

// Areas from the standards: A4 62,370 mm², JIS B4 93,548 mm² (ISO's has 88,250).
func TestPaperHasItsArea(t *testing.T) {
	for name, want := range map[string]float64{"A4": 62_370, "B4": 93_548, "letter": 215.9 * 279.4} {
		p := named(t, name)
		if got := p.Width.MM() * p.Height.MM(); got-want > 1e-9 || want-got > 1e-9 {
			t.Errorf("%s has %v mm², want %v", name, got, want)
		}
	}
}

func TestPapersAreUprightAndNamedOnce(t *testing.T) {
	seen := map[string]bool{}
	for _, p := range Pages() {
		if p.Width >= p.Height {
			t.Errorf("%s is %s × %s mm, want it upright", p.Name, p.Width, p.Height)
		}
		if seen[p.Name] {
			t.Errorf("%s comes twice", p.Name)
		}
		seen[p.Name] = true
		if q := p.Turned(); q.Width != p.Height || q.Height != p.Width {
			t.Errorf("%s turned is %s × %s mm", p.Name, q.Width, q.Height)
		}
	}
}

func TestAPaperIsFoundHoweverItIsWritten(t *testing.T) {
	for _, name := range []string{"a4", " A4 ", "A4"} {
		if p := named(t, name); p.Name != "A4" {
			t.Errorf("%q is %s", name, p.Name)
		}
	}
	if _, err := PageNamed("A9"); err == nil || !strings.Contains(err.Error(), "A4, A3, A2, B4, letter") {
		t.Errorf("got %v, want a list of what there is", err)
	}
}

func named(t *testing.T, name string) PageSize {
	t.Helper()
	p, err := PageNamed(name)
	if err != nil {
		t.Fatal(err)
	}
	return p
}
