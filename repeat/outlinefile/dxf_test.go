package outlinefile_test

import (
	"encoding/json"
	"errors"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"tsugime/repeat/geom"
	"tsugime/repeat/outlinefile"
	"tsugime/repeat/repeattest"
)

// written has ezdxf, a general DXF library, write files of each entity, and returns
// their folder and what the library itself says of the areas it draws.
func written(t *testing.T) (folder string, areas map[string]float64) {
	t.Helper()
	folder = t.TempDir()
	said := repeattest.Tool(t, "python3-ezdxf", "/usr/bin/python3", "testdata/entities.py", folder)
	if err := json.Unmarshal([]byte(said), &areas); err != nil {
		t.Fatalf("%v in %s", err, said)
	}
	return folder, areas
}

// The files are written once, since the library is slow to start.
func TestFilesOfAnotherLibraryAreRead(t *testing.T) {
	folder, areas := written(t)
	t.Run("entities have the area and place of their form", func(t *testing.T) { entitiesHaveTheirArea(t, folder, areas) })
	t.Run("every release reads the same", func(t *testing.T) { everyReleaseReadsTheSame(t, folder) })
	t.Run("the unit of the file is honoured", func(t *testing.T) { theUnitIsHonoured(t, folder) })
	t.Run("what is left out is told", func(t *testing.T) { whatIsLeftOutIsTold(t, folder) })
}

func readDXF(t *testing.T, folder, name string) outlinefile.Drawing {
	t.Helper()
	f, err := os.Open(filepath.Join(folder, name+".dxf"))
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	d, err := outlinefile.ReadDXF(f, outlinefile.Options{})
	if err != nil {
		t.Fatalf("%s: %v", name, err)
	}
	return d
}

func total(d outlinefile.Drawing) (area float64, discs int) {
	for _, p := range d.Pieces {
		area += p.Shape.AreaMM2()
		if p.Shape.Round() {
			discs++
		}
	}
	return area, discs
}

func entitiesHaveTheirArea(t *testing.T, folder string, areas map[string]float64) {
	slot := 80 + 16*math.Pi
	// Half a disc is added on one side, and on the other goes the segment of an arc
	// over a chord of 10 whose height is a quarter of it.
	r := 5.0 * (1 + 0.25) / (2 * 0.5)
	turn := 4 * math.Atan(0.5)
	bulged := 80 + 12.5*math.Pi - r*r/2*(turn-math.Sin(turn))
	box := func(x0, y0, x1, y1 float64) [4]float64 { return [4]float64{x0, y0, x1, y1} }
	for name, want := range map[string]struct {
		pieces, discs int
		area          float64
		box           [4]float64 // y down; all zero where it isn't looked at
	}{
		"circle":   {1, 1, 9 * math.Pi, box(7, -8, 13, -2)},
		"chain":    {1, 0, slot, box(-4, -4, 14, 4)},
		"bulges":   {1, 0, bulged, box(0, -8, 10, 5)},
		"heavy":    {1, 0, bulged, box(0, -8, 10, 5)},
		"ellipse":  {1, 0, 30 * math.Pi, [4]float64{}},
		"ellipses": {1, 0, 6.25 * math.Pi, box(-5, -2.5, 5, 0)},
		"spline":   {1, 1, 49 * math.Pi, box(-6, -9, 8, 5)},
		"cubic":    {1, 0, 12, box(0, -3, 6, 0)},
		"uniform":  {1, 0, areas["uniform"], [4]float64{}},
		"nested":   {3, 2, 600 - 36*math.Pi + 4*math.Pi - 9*math.Pi + math.Pi, box(0, -20, 30, 0)},
		"crossing": {1, 0, 150, box(0, -15, 15, 0)},
		"blocks":   {26, 12, 6*(math.Pi/4+0.5)*5 + 3*(math.Pi/4+0.5), [4]float64{}},
		"below":    {2, 1, 9*math.Pi + 6, box(-13, -8, 0, 0)},
		"solid":    {1, 0, 50, box(0, -5, 10, 0)},
		"hidden":   {1, 1, 4 * math.Pi, box(-2, -2, 2, 2)},
	} {
		d := readDXF(t, folder, name)
		area, discs := total(d)
		if len(d.Pieces) != want.pieces || discs != want.discs || math.Abs(area-want.area) > 1e-5*want.area {
			t.Errorf("%s: %d pieces, %d discs, %.6f mm²; want %d, %d, %.6f (%v)", name, len(d.Pieces), discs, area, want.pieces, want.discs, want.area, d.Notes)
		}
		b := d.Bounds()
		got := box(b.Min.X.MM(), b.Min.Y.MM(), b.Max.X.MM(), b.Max.Y.MM())
		for i := range got {
			if want.box != ([4]float64{}) && math.Abs(got[i]-want.box[i]) > 1e-4 {
				t.Errorf("%s: it lies in %v, want %v", name, got, want.box)
				break
			}
		}
	}
}

func everyReleaseReadsTheSame(t *testing.T, folder string) {
	for _, release := range []string{"R2000", "R2004", "R2007", "R2010", "R2013", "R2018"} {
		if area, _ := total(readDXF(t, folder, "version-"+release)); math.Abs(area-80-16*math.Pi) > 1e-6 {
			t.Errorf("%s: %.6f mm²", release, area)
		}
	}
}

func theUnitIsHonoured(t *testing.T, folder string) {
	for name, mm := range map[string]float64{"1": 25.4, "4": 1, "5": 10, "14": 100} {
		d := readDXF(t, folder, "unit-"+name)
		if got := d.Pieces[0].Shape.Disc; (got.Diameter-geom.MM(6*mm)).Abs() > 2 || got.Centre.Distance(geom.PtMM(10*mm, -5*mm)) > 2 {
			t.Errorf("unit %s: %v, want a diameter of %g mm", name, got, 6*mm)
		}
	}
	for _, name := range []string{"unit-0", "version-R12"} {
		data, err := os.ReadFile(filepath.Join(folder, name+".dxf"))
		if err != nil {
			t.Fatal(err)
		}
		var none outlinefile.NoUnit
		if _, err := outlinefile.ReadDXF(strings.NewReader(string(data)), outlinefile.Options{}); !errors.As(err, &none) {
			t.Errorf("%s names no unit, and that gave %v", name, err)
		}
		if d, err := outlinefile.ReadDXF(strings.NewReader(string(data)), outlinefile.Options{Unit: geom.InchUnit}); err != nil || len(d.Pieces) != 1 {
			t.Errorf("%s in inches: %v, %d pieces", name, err, len(d.Pieces))
		}
	}
}

// What can't be taken is told with its line; the gap of an open line is told in mm.
func whatIsLeftOutIsTold(t *testing.T, folder string) {
	d := readDXF(t, folder, "open_lines")
	if area, _ := total(d); len(d.Pieces) != 1 || math.Abs(area-40) > 0.05 {
		t.Errorf("%d pieces of %.3f mm², want the one whose ends meet", len(d.Pieces), area)
	}
	for _, says := range []string{"0.350 mm away", "TEXT: it is no outline"} {
		if !slices.ContainsFunc(d.Notes, func(n outlinefile.Note) bool { return n.Line > 0 && strings.Contains(n.Text, says) }) {
			t.Errorf("nothing says %q: %v", says, d.Notes)
		}
	}
	for name, says := range map[string]string{"hidden": "OFF", "nested": "drawn twice"} {
		d := readDXF(t, folder, name)
		if !slices.ContainsFunc(d.Notes, func(n outlinefile.Note) bool { return strings.Contains(n.Text, says) }) {
			t.Errorf("%s: nothing says %q: %v", name, says, d.Notes)
		}
	}
}
