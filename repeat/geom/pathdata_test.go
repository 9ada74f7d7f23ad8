package geom_test

import (
	"math"
	"math/rand/v2"
	"reflect"
	"strings"
	"testing"

	"tsugime/repeat/geom"
)

// outline reads path data that must be sound.
func outline(t testing.TB, data string) geom.Outline {
	t.Helper()
	o, err := geom.ParsePathData(data)
	if err != nil {
		t.Fatalf("%s: %v", data, err)
	}
	return o
}

// Areas and bounds in closed form. The star is that of five outer points at
// radius R = 10 and five inner ones at r = 4: its area is 5·R·r·sin 36°. A
// quarter ellipse as one cubic is off by at most 2.8e-4 of a radius.
func TestOutlinesHaveTheAreaOfTheirForm(t *testing.T) {
	var star strings.Builder
	for i := range 10 {
		r, command := 10.0, " L"
		if i%2 == 1 {
			r = 4
		}
		if i == 0 {
			command = "M"
		}
		sin, cos := math.Sincos(float64(i) * math.Pi / 5)
		star.WriteString(command + geom.MM(r*sin).String() + " " + geom.MM(-r*cos).String())
	}
	for _, row := range []struct {
		data           string
		area           float64
		close          float64 // relative
		x0, y0, x1, y1 float64
		kinds          string
		name           string
	}{
		{"M0 0H10V5H0Z", 50, 1e-12, 0, 0, 10, 5, "LLLL", "rectangle"},
		{"m1 2h10v5h-10z", 50, 1e-12, 1, 2, 11, 7, "LLLL", "relative rectangle"},
		{"M0 0H10V10H0ZM2 2V8H8V2Z", 64, 1e-12, 0, 0, 10, 10, "LLLLLLLL", "frame"},
		{"M-3 0A3 3 0 0 1 3 0A3 3 0 0 1 -3 0Z", 9 * math.Pi, 1e-12, -3, -3, 3, 3, "AA", "circle of two halves"},
		{"M3 0A3 3 0 1 1 0 -3Z", 9*math.Pi*3/4 + 4.5, 1e-12, -3, -3, 3, 3, "AL", "three quarters and a chord"},
		{"M3 0A3 3 0 0 0 0 -3Z", 9 * (math.Pi/4 - 0.5), 1e-12, 0, -3, 3, 0, "AL", "segment of a quarter"},
		{"M5 0A5 2 0 0 1 -5 0A5 2 0 0 1 5 0Z", 10 * math.Pi, 6e-4, -5, -2, 5, 2, "CCCC", "ellipse"},
		{"M4.330127 2.5A5 2 30 0 1 -4.330127 -2.5A5 2 30 0 1 4.330127 2.5Z", 10 * math.Pi, 6e-4,
			-4.444097, -3.041381, 4.444097, 3.041381, "CCCC", "ellipse turned by 30°"},
		{"M0 0C0 10 10 10 10 0Z", 60, 1e-12, 0, 0, 10, 7.5, "CL", "cubic arch"},
		{"M0 0Q5 10 10 0Z", 100.0 / 3, 1e-6, 0, 0, 10, 5, "CL", "parabola (Archimedes: two thirds of its box)"},
		{"M0 0Q5 10 10 0T20 0Z", 0, 1e-6, 0, -5, 20, 5, "CCL", "two parabolas against each other"},
		{"M0 0A1 1 0 0 1 10 0Z", 12.5 * math.Pi, 1e-12, 0, -5, 10, 0, "AL", "too small a radius makes a half circle"},
		{star.String() + "Z", 117.557050458, 2e-7, -9.510565, -10, 9.510565, 8.090170, "LLLLLLLLLL", "star"},
	} {
		o := outline(t, row.data)
		if got := o.AreaMM2(); math.Abs(got-row.area) > row.close*math.Max(row.area, 1) {
			t.Errorf("%s: area %.9f mm², want %.9f", row.name, got, row.area)
		}
		want := geom.BoxOf(geom.PtMM(row.x0, row.y0), geom.PtMM(row.x1, row.y1))
		if got := o.Bounds(); apart(got, want) > 4*geom.Micrometre*geom.Length(math.Ceil(row.close*1000))+2 {
			t.Errorf("%s: reaches %v, want %v", row.name, got, want)
		}
		var kinds strings.Builder
		for _, c := range o {
			for _, s := range c.Segments {
				kinds.WriteByte("LAC"[s.Kind])
			}
		}
		if kinds.String() != row.kinds {
			t.Errorf("%s: segments %s, want %s", row.name, kinds.String(), row.kinds)
		}
	}
}

// apart returns by how much two boxes differ at most.
func apart(a, b geom.Box) geom.Length {
	d, e := a.Min.Sub(b.Min), a.Max.Sub(b.Max)
	return max(d.X.Abs(), d.Y.Abs(), e.X.Abs(), e.Y.Abs())
}

func TestPathDataIsReadHoweverItIsWritten(t *testing.T) {
	want := outline(t, "M1 1L2 1L2 2L1 2L1 1Z")
	for _, data := range []string{
		"M1 1 2 1 2 2 1 2Z", "m1,1 1,0 0,1-1,0z", "M1 1H2V2H1Z", "M1,1h1v1h-1z", " M 1e0 +1 L 2.0,1.0\n2 2 1 2 z ",
		"M1 1H2V2H1V1Z", "M.1e1.1e1H2V2H1Z",
	} {
		if got := outline(t, data); !reflect.DeepEqual(got, want) {
			t.Errorf("%s: got %v, want %v", data, got, want)
		}
	}
	// Flags may stand without spaces; what follows Z starts where the subpath did.
	a, b := outline(t, "M3 0a3 3 0 01-6 0"), outline(t, "M3 0A3 3 0 0 1 -3 0Z")
	if !reflect.DeepEqual(a, b) {
		t.Errorf("close flags: got %v, want %v", a, b)
	}
	a, b = outline(t, "M1 1H2V2Zl1 3h1"), outline(t, "M1 1H2V2ZM1 1L2 4L3 4Z")
	if !reflect.DeepEqual(a, b) {
		t.Errorf("after Z: got %v, want %v", a, b)
	}
	a, b = outline(t, "M0 0C1 1 2 1 3 0S5-1 6 0z"), outline(t, "M0 0C1 1 2 1 3 0C4 -1 5 -1 6 0Z")
	if !reflect.DeepEqual(a, b) {
		t.Errorf("smooth cubic: got %v, want %v", a, b)
	}
}

func TestBrokenPathDataIsRefused(t *testing.T) {
	for data, want := range map[string]string{
		"": "draws nothing", "M1 1": "draws nothing", "L1 1": "character 1: it must begin with M",
		"M1 1X": `'X' is no command`, "M1": "a number is missing", "M1 1L2": "a number is missing",
		"M0 0L1e5 0": "1e5 mm is out of reach; stay within ±10000 mm", "M0 0LNaN 1": "a number is missing",
		"M0 0A1 1 0 2 1 3 3": "flag must be 0 or 1", "M0 0L1 1Z5 5": `'5' is no command`,
		"M0 0L1e999 0":                            "is no number",
		"M0 0" + strings.Repeat("l9999 0", 2):     "it reaches out of ±10000 mm",
		"M0 9999A9000 9000 0 1 0 1 9999":          "it reaches out of ±10000 mm",
		"M0 0C9000 0 9000 0 9000 0S0 0 0 0":       "", // its mirrored control is at 9000
		"M0 0C-9000 0 -9000 0 9000 0S0 0 0 0":     "it reaches out of ±10000 mm",
		"M0 0" + strings.Repeat("h1h-1", 100_001): "it has more than 200000 pieces",
		"M0 0A1 1e9 0 0 1 3 3":                    "1e9 mm is out of reach; stay within ±100000000 mm",
	} {
		_, err := geom.ParsePathData(data)
		if want == "" && err == nil {
			continue
		}
		if err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%.40s: got %v, want …%s…", data, err, want)
		}
	}
}

// The height of an arc survives writing, at any number of decimals, however near
// to a half circle or a line it is.
func TestArcsKeepTheirHeightWhenWritten(t *testing.T) {
	random := rand.New(rand.NewPCG(4, 4))
	for range 20_000 {
		bulge := math.Exp(random.NormFloat64() * 2)
		if random.IntN(4) == 0 {
			bulge = 1 + random.NormFloat64()*1e-9
		}
		if random.IntN(2) == 0 {
			bulge = -bulge
		}
		a := geom.Point{X: geom.Length(random.Int64N(1e7)), Y: geom.Length(random.Int64N(1e7))}
		b := a.Add(geom.Point{X: geom.Length(random.Int64N(2e7) - 1e7), Y: geom.Length(random.Int64N(2e7) - 1e7)})
		o := geom.Outline{{Start: a, Segments: []geom.Segment{{Kind: geom.Arc, End: b, Bulge: bulge}, {End: a}}}}
		for _, places := range []int{6, 4, 3} {
			unit := math.Pow(10, float64(6-places))
			back := outline(t, o.PathData(places))
			// A strip of a few units along the whole arc.
			radius := a.Sub(b).Norm() / 4 * (math.Abs(bulge) + 1/math.Abs(bulge))
			strip := 4 * unit * 2 * math.Pi * (radius + unit) / 1e12
			if math.Abs(back.AreaMM2()-o.AreaMM2()) > strip || float64(apart(back.Bounds(), o.Bounds())) > 5*unit {
				t.Fatalf("bulge %v from %v to %v is written %s:\narea %v mm², want %v; reaches %v, want %v",
					bulge, a, b, o.PathData(places), back.AreaMM2(), o.AreaMM2(), back.Bounds(), o.Bounds())
			}
		}
	}
}

// The neat arcs of a drawing stay as they were drawn.
func TestNeatArcsAreWrittenAsTheyWereRead(t *testing.T) {
	for _, data := range []string{
		"M-3 0A3 3 0 0 1 3 0A3 3 0 0 1 -3 0Z", "M0 0A2.5 2.5 0 0 0 3 1A1000 1000 0 0 1 0 0Z", "M0 0L4 0A2 2 0 0 1 4 4C3 5 1 5 0 4Z",
	} {
		if got := outline(t, data).PathData(6); got != data {
			t.Errorf("%s is written %s", data, got)
		}
	}
}

// Whatever the text: no panic, and what was read is written, read and written the
// same.
func FuzzParsePathData(f *testing.F) {
	for _, data := range []string{
		"M0 0H10V5H0Z", "M-3 0A3 3 0 0 1 3 0A3 3 0 1 0 -3 0Z", "M0 0A1000 1000 0 0 1 0.001 0Z", "m1 1q1 2 3 4t5 6s1 2 3 4a5 3 20 1 1 2 2z",
		"M0 0A.0003.0003 0 01.0005.0001", "M1e-7 0L1 1 0 3Z", "M0 0A1e8 1e8 0 0 1 1e-6 0L1 1Z",
	} {
		f.Add(data)
	}
	f.Fuzz(func(t *testing.T, data string) {
		if len(data) > 10_000 {
			return
		}
		o, err := geom.ParsePathData(data)
		if err != nil {
			if strings.ContainsAny(err.Error(), "\n\r") {
				t.Errorf("the error is %q", err)
			}
			return
		}
		first := o.PathData(6)
		again, err := geom.ParsePathData(first)
		if err != nil {
			t.Fatalf("%q is written %s, which is refused: %v", data, first, err)
		}
		if second := again.PathData(6); second != first {
			t.Fatalf("%q is written\n%s\nand after reading that\n%s", data, first, second)
		}
		if d := apart(o.Bounds(), again.Bounds()); d > 10 {
			t.Fatalf("%q reaches %v, after writing %v", data, o.Bounds(), again.Bounds())
		}
	})
}
