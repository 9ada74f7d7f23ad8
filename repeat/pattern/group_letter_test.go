package pattern

import (
	"encoding/json"
	"math/rand/v2"
	"testing"

	"tsugime/repeat/geom"
	"tsugime/repeat/repeattest"
)

// In these two the space group's list stands in another order than the plane
// group's: spglib's letter, and that of the plane group (from memory). That the
// places of each letter are the same ones is checked all the same.
var listedOtherwise = map[Group]map[string]string{
	P2:   {"b": "c", "c": "b"},
	P4MM: {"d": "f", "e": "d", "f": "e"},
}

// spglib's letters of places with the fractions that special positions have, and
// of places on the lines between.
func TestSitesHaveTheLettersThatSpglibGives(t *testing.T) {
	random := rand.New(rand.NewPCG(8, 17))
	asked := map[Group][][2]float64{}
	fractions := []float64{0, 1.0 / 4, 1.0 / 3, 1.0 / 2, 2.0 / 3, 3.0 / 4}
	for _, g := range Groups() {
		for _, x := range fractions {
			for _, y := range fractions {
				asked[g] = append(asked[g], [2]float64{x, y})
			}
			free := 0.05 + 0.15*random.Float64()
			asked[g] = append(asked[g], [2]float64{x, free}, [2]float64{free, x},
				[2]float64{free, free + x}, [2]float64{free, x - free}, [2]float64{free, 2*free + x}, [2]float64{2*free + x, free})
		}
	}
	text, err := json.Marshal(asked)
	if err != nil {
		t.Fatal(err)
	}
	var told map[Group][][3]any
	out := repeattest.Tool(t, "python3-gemmi python3-spglib", "/usr/bin/python3", "testdata/sites.py", repeattest.Put(t, "places.json", text))
	if err := json.Unmarshal([]byte(out), &told); err != nil {
		t.Fatal(err)
	}
	for _, g := range Groups() {
		l := conventional(g)
		_, f, err := g.on(l)
		if err != nil {
			t.Fatal(err)
		}
		letters := map[string]bool{}
		for i, place := range told[g] {
			u, v, want := place[0].(float64), place[1].(float64), place[2].(string)
			s, err := g.Site(l, f.point(u, v))
			if err != nil {
				t.Fatal(err)
			}
			letters[want] = true
			if other, ok := listedOtherwise[g][want]; ok {
				want = other
			}
			if s.Letter != want {
				t.Errorf("%s at %.4f, %.4f (asked for %v): %s, spglib says %s", g, u, v, asked[g][i], s.Letter, want)
			}
		}
		general := string(rune('a' + len(letters) - 1))
		if s, _ := g.Site(l, f.point(0.0413, 0.1127)); s.Letter != general {
			t.Errorf("%s: a general place has the letter %s, of %d that spglib gives", g, s.Letter, len(letters))
		}
	}
}

// conventional is a lattice that carries g.
func conventional(g Group) Lattice {
	mm := geom.MM
	switch g {
	case P1, P2:
		return Lattice{A: geom.Point{X: mm(90)}, B: geom.Point{X: mm(23), Y: mm(70)}}
	case CM, C2MM:
		return Laid(DiagonalKind, mm(40), mm(35))
	case P4, P4MM, P4GM:
		return Straight(mm(80), mm(80))
	case P3, P3M1, P31M, P6, P6MM:
		l, _ := Hexagonal(mm(80))
		return l
	}
	return Straight(mm(80), mm(70))
}
