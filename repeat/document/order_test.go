package document_test

import (
	"bytes"
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"

	"tsugime/assets"
	"tsugime/repeat/bench"
	"tsugime/repeat/cloth"
	"tsugime/repeat/document"
	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
	"tsugime/repeat/stencil"
)

// full is an order in which every key has a value of its own.
func full(t testing.TB) document.Order {
	t.Helper()
	outline, err := geom.ParsePathData("M0 0L4 0A2 2 0 0 1 4 4C3 5 1 5 0 4Z M1 1V2H2Z")
	if err != nil {
		t.Fatal(err)
	}
	o := document.Defaults()
	o.Title, o.Note = "Waves \"and\" 波", "first line\nsecond\tline"
	o.Sheet = stencil.Spec{
		Step:  181_818_182,
		Field: stencil.Field{Left: geom.MM(9.500001), Width: geom.MM(356)},
		Paper: stencil.Paper{
			Width: geom.MM(430), Height: geom.MM(300), Thickness: geom.MM(0.22),
			GrowthAcross: 0.002, GrowthAlong: -0.0013, Pile: 6,
		},
		Stars:    stencil.StarSpec{PerEnd: 2, Diameter: geom.MM(1), Hidden: geom.MM(9), At: []geom.Point{geom.PtMM(12, 3), geom.PtMM(360, 3)}},
		WebLimit: geom.MM(0.4),
		Joint:    stencil.JointSpec{Share: 0.625, Line: []geom.Point{geom.PtMM(9.5, 1), geom.PtMM(100, -2), geom.PtMM(365.5, 1)}},
		Hold: stencil.Hold{
			Way: stencil.Split, TieWidth: geom.MM(0.7), PerIsland: 3,
			Ties: []stencil.Tie{
				{Motif: 1, From: geom.PtMM(6, 8), To: geom.PtMM(12, 8.5), Width: geom.MM(0.7)},
				{Motif: 3, From: geom.PtMM(0.5, -2), To: geom.PtMM(1.5, -2), Width: geom.MM(0.2)},
			},
			Second: stencil.Second{
				Cut: stencil.Whole, Lap: geom.MM(0.25), Motifs: []pattern.ID{3},
				Ties: []stencil.Tie{{Motif: 1, From: geom.PtMM(9, 5), To: geom.PtMM(9, 13), Width: geom.MM(0.9)}},
			},
		},
	}
	o.Cloth = document.Cloth{
		Bolt: cloth.Bolt{Width: geom.MM(375), Length: geom.MM(12_600), ChangeAcross: -0.0071, ChangeAlong: -0.029, Selvedge: geom.MM(7), Sides: cloth.BothSides},
		Dye:  document.Colour{R: 0x01, G: 0x80, B: 0xff},
	}
	o.Board = cloth.Board{Length: geom.MM(6400), Turn: geom.MM(40), Start: geom.MM(15), End: geom.MM(20), Faces: 1, Cloths: 2, Layings: 3, Sequence: cloth.EveryOther}
	o.Register = document.Register{
		Way: cloth.MarkedLine, StarError: geom.MM(0.1), StarErrorAcross: geom.MM(0.15), PitchError: -geom.MM(0.02),
		Growth: cloth.Growth{Start: 0.002, End: -0.0015, Half: 20}, Sheets: 4,
	}
	o.Garment = document.Garment{
		Body: cloth.Body{
			Kind: cloth.WomensKimono, Own: ownForm(t), Height: geom.MM(1650),
			Sizes: map[string]geom.Length{"hip": geom.MM(905.5), "arm": geom.MM(640)}, Counts: map[string]int{"panels": 3},
			Allowances: map[string]geom.Length{"tuck": geom.MM(151.515152)},
		},
		Layout: cloth.Layout{
			Order: []string{"right half", "left half"}, Gaps: map[string]geom.Length{"left half": geom.MM(12.5)},
			Shifts: map[string]geom.Length{"left half": -geom.MM(3)}, Turned: map[string]bool{"right half": true, "left half": false},
		},
		MatchBackCentre: true,
		Wishes: cloth.Wishes{
			Seams: []cloth.SeamWish{
				{Seam: "upper overlap", Goal: cloth.Staggered, Share: 0.25}, {Seam: "collar", Goal: cloth.Apart, Share: 0.5, Distance: geom.MM(42)},
			},
			Targets:   []cloth.PlaceWish{{Name: "left breast", Piece: "left", At: geom.PtMM(-90, 320), Motif: geom.PtMM(1, 2), Within: geom.MM(7.5)}},
			AvoidTurn: true, AnyOrder: true,
		},
	}
	o.Rack = []document.Punch{{Name: "awl", Diameter: geom.MM(0.5)}, {Name: "punch 3", Diameter: geom.MM(3)}}
	o.Methods = bench.Overrides{1: bench.Hikibori, 3: bench.Kiribori}
	o.Shelf = []document.ShelfMotif{
		{Name: "leaf", Shape: geom.Shape{Outline: outline}},
		{Name: "dot", Shape: geom.DiscShape(geom.Point{}, geom.MM(1.25))},
	}
	o.Sheets = document.Sheets{Page: "B4", Units: "sun", Lap: geom.MM(12), Language: "ja",
		PrintedAcross: geom.MM(99.7), PrintedAlong: geom.MM(100.2), Marks: document.CentreMarks, Mirrored: true}
	o.Unit = pattern.Unit{
		Lattice: pattern.HalfDrop(geom.MM(20), geom.MM(18.181818)),
		Motifs: []pattern.Motif{
			{ID: 3, Shape: geom.DiscShape(geom.Point{}, geom.MM(0.5)), At: geom.PtMM(1.000001, -2)},
			{ID: 1, Shape: geom.Shape{Outline: outline}, At: geom.PtMM(7, 8), TurnDeg: 22.5, Mirrored: true},
		},
	}
	o.Ground = pattern.Recipe{Ground: "diagonal-dots", Values: map[string]float64{"dot": 0.45, "pitch": 1.3}, Seed: 7, Width: geom.MM(356.2), Columns: 194, Rows: 99}
	o.NextID = 9
	return o
}

// ownForm is a form that an order may bring along.
func ownForm(t testing.TB) string {
	t.Helper()
	f, err := cloth.ReadForm([]byte(`{"format": "tsugime garment", "version": 1, "name": "cape", "title": "Cape", "edge": "seam", "match": "back centre",
		"views": [{"name": "back", "title": "Back"}],
		"allowances": [{"name": "seam", "title": "Seam", "is": "10 mm", "source": "common practice, no source"}],
		"panels": [{"name": "left half", "lane": [0, "cloth"], "length": "900 mm"}, {"name": "right half", "lane": [0, "cloth"], "length": "900 mm"}],
		"pieces": [
			{"name": "left", "panel": "left half", "view": "back", "x": "mm(20) - cloth", "y": 0, "width": "cloth - 2 * seam", "height": "800 mm", "across": "seam", "along": "20 mm"},
			{"name": "right", "panel": "right half", "view": "back", "x": 0, "y": 0, "width": "cloth - 2 * seam", "height": "800 mm", "across": "seam", "along": "20 mm"}],
		"seams": [{"name": "back centre", "priority": 1, "joins": [{"first": ["left", "right"], "second": ["right", "left"]}]}]}`))
	if err != nil {
		t.Fatal(err)
	}
	return f.Text
}

// written returns o as a file.
func written(t testing.TB, o document.Order) string {
	t.Helper()
	var b bytes.Buffer
	if err := document.Write(&b, o); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

// read returns the order in a file.
func read(t testing.TB, text string) document.Order {
	t.Helper()
	o, err := document.Read(strings.NewReader(text))
	if err != nil {
		t.Fatalf("%v\nin %s", err, text)
	}
	return o
}

// starter returns the order that a starter holds.
func starter(t testing.TB, name string) document.Order {
	t.Helper()
	text, ok := assets.Starter(name)
	if !ok {
		t.Fatalf("there is no starter %q", name)
	}
	return read(t, string(text))
}

// ground is an order of n dots on the field, each drawn by itself, as a recovered
// stencil has them.
func ground(t testing.TB, n int) document.Order {
	t.Helper()
	random := rand.New(rand.NewPCG(1, 2))
	o := document.Defaults()
	o.Unit.Lattice = pattern.Straight(o.Sheet.Field.Width, o.Sheet.Step)
	motifs := make([]pattern.Motif, n)
	for i := range motifs {
		at := geom.Point{
			X: o.Sheet.Field.Left + geom.Length(random.Int64N(int64(o.Sheet.Field.Width))),
			Y: geom.Length(random.Int64N(int64(o.Sheet.Step))),
		}
		motifs[i] = pattern.Motif{Shape: geom.DiscShape(geom.Point{}, geom.MM(0.4)), At: at}
	}
	o, err := document.AddMotifs(o, motifs...)
	if err != nil {
		t.Fatal(err)
	}
	return o
}

// changedLines returns the lines of b that differ from those of a, side by side.
func changedLines(a, b string) []string {
	was, is := strings.Split(a, "\n"), strings.Split(b, "\n")
	var changed []string
	for i := range max(len(was), len(is)) {
		if i >= len(was) || i >= len(is) || was[i] != is[i] {
			changed = append(changed, fmt.Sprintf("line %d", i+1))
		}
	}
	return changed
}
