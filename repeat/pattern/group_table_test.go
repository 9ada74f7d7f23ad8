package pattern_test

import (
	"encoding/json"
	"math"
	"math/rand/v2"
	"os"
	"slices"
	"strings"
	"testing"

	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
	"tsugime/repeat/repeattest"
)

// written is an operation as the International Tables write it.
func written(o pattern.Op) string {
	var rows []string
	for i := range 2 {
		text := ""
		for j, name := range []string{"x", "y"} {
			switch {
			case o.M[i][j] < 0:
				text += "-" + name
			case o.M[i][j] > 0 && text != "":
				text += "+" + name
			case o.M[i][j] > 0:
				text += name
			}
		}
		if o.T[i] == 12 {
			text += "+1/2"
		} else if o.T[i] != 0 {
			text += "+?"
		}
		rows = append(rows, text)
	}
	return strings.Join(rows, ",")
}

// International Tables for Crystallography, volume A, by way of gemmi and
// spglib; the file is what gemmi says here and now.
func TestGeneralPositionsAreThoseOfTheInternationalTables(t *testing.T) {
	kept, err := os.ReadFile("testdata/plane_groups.json")
	if err != nil {
		t.Fatal(err)
	}
	said := repeattest.Tool(t, "python3-gemmi", "/usr/bin/python3", "testdata/plane_groups.py")
	if said != string(kept) {
		t.Error("gemmi no longer says what testdata/plane_groups.json holds")
	}
	var tables struct {
		Groups []struct {
			Group        pattern.Group
			Multiplicity int
			Positions    []string
		}
	}
	if err := json.Unmarshal(kept, &tables); err != nil {
		t.Fatal(err)
	}
	if len(tables.Groups) != len(pattern.Groups()) {
		t.Fatalf("%d groups in the tables, %d here", len(tables.Groups), len(pattern.Groups()))
	}
	sum := 0
	for i, g := range tables.Groups {
		var got []string
		for _, o := range g.Group.Ops() {
			got = append(got, written(o))
		}
		slices.Sort(got)
		if pattern.Groups()[i] != g.Group || len(got) != g.Multiplicity || !slices.Equal(got, g.Positions) {
			t.Errorf("%s: got %v, want %v", g.Group, got, g.Positions)
		}
		sum += len(got)
	}
	if sum != 84 {
		t.Errorf("the multiplicities add up to %d, want 84", sum)
	}
}

// Inverses and closure, by multiplying the matrices out.
func TestOperationsMakeAGroup(t *testing.T) {
	for _, g := range pattern.Groups() {
		ops := g.Ops()
		for _, a := range ops {
			inverse := false
			for _, b := range ops {
				var c pattern.Op
				for i := range 2 {
					for j := range 2 {
						c.M[i][j] = a.M[i][0]*b.M[0][j] + a.M[i][1]*b.M[1][j]
					}
					c.T[i] = (a.M[i][0]*b.T[0] + a.M[i][1]*b.T[1] + a.T[i] + 96) % 24
				}
				if !slices.Contains(ops, c) {
					t.Fatalf("%s: %v after %v is missing", g, a, b)
				}
				inverse = inverse || c == ops[0]
			}
			if !inverse {
				t.Fatalf("%s: %v has no inverse", g, a)
			}
		}
	}
}

func TestOlderNamesOfGroupsAreRead(t *testing.T) {
	for name, want := range map[string]pattern.Group{"pmm": "p2mm", "PMG": "p2mg", "pgg": "p2gg", "cmm": "c2mm", "p4m": "p4mm", "p4g": "p4gm", " p6m ": "p6mm", "p31m": "p31m"} {
		if got, err := pattern.ParseGroup(name); err != nil || got != want {
			t.Errorf("%q is read as %q, %v; want %q", name, got, err, want)
		}
	}
	for _, name := range []string{"", "p5", "pmmm"} {
		if got, err := pattern.ParseGroup(name); err == nil {
			t.Errorf("%q is read as %q", name, got)
		}
	}
}

// Orbit and stabiliser: a disc there makes as many copies in a conventional cell
// as the multiplicity says, and every element is a special site.
func TestSitesCountTheirCopies(t *testing.T) {
	random := rand.New(rand.NewPCG(6, 17))
	for _, g := range pattern.Groups() {
		for range 10 {
			l := carrier(random, g)
			cells := 1
			if g == pattern.CM || g == pattern.C2MM {
				cells = 2
			}
			elements, err := g.Elements(l)
			if err != nil {
				t.Fatal(err)
			}
			places := []geom.Point{randomPoint(random, 9_000_000)}
			for _, p := range elements.Points {
				places = append(places, p.At)
			}
			for _, m := range elements.Mirrors {
				k := random.Float64()
				places = append(places, m.At.Add(geom.Point{X: m.Along.X.Times(k), Y: m.Along.Y.Times(k)}))
			}
			last := string(rune('a' + letters[g] - 1))
			for i, p := range places {
				s, err := g.Site(l, p)
				if err != nil {
					t.Fatal(err)
				}
				n := len(multiplied(t, g, l, []pattern.Motif{{Shape: geom.DiscShape(geom.Point{}, geom.MM(0.5)), At: p}}))
				if n*cells != s.Multiplicity || s.Order*s.Multiplicity != len(g.Ops()) || (s.Letter == last) != (i == 0) || (s.Order == 1) != (i == 0) {
					t.Fatalf("%s at %v: %+v, a disc makes %d in %d cells", g, p, s, n, cells)
				}
			}
		}
	}
}

// Wyckoff positions of each group, the general one included: 72 in all
// (International Tables, volume A; from memory).
var letters = map[pattern.Group]int{
	"p1": 1, "p2": 5, "pm": 3, "pg": 1, "cm": 2, "p2mm": 9, "p2mg": 4, "p2gg": 3, "c2mm": 6,
	"p4": 4, "p4mm": 7, "p4gm": 4, "p3": 4, "p3m1": 5, "p31m": 4, "p6": 4, "p6mm": 6,
}

// A pattern is the same after turning about any point, and after mirroring and
// gliding at any line, that the elements name.
func TestElementsKeepThePattern(t *testing.T) {
	random := rand.New(rand.NewPCG(7, 17))
	for _, g := range pattern.Groups() {
		l := carrier(random, g)
		dots := multiplied(t, g, l, []pattern.Motif{{Shape: geom.DiscShape(geom.Point{}, geom.MM(0.5)), At: randomPoint(random, 9_000_000)}})
		elements, err := g.Elements(l)
		if err != nil {
			t.Fatal(err)
		}
		check := func(what string, m geom.Affine) {
			for _, d := range dots {
				p := m.Apply(d.At)
				if !slices.ContainsFunc(dots, func(e pattern.Motif) bool { return l.Into(p.Sub(e.At)).Norm() < 50 }) {
					t.Errorf("%s: %s takes %v to %v, where nothing is", g, what, d.At, p)
					return
				}
			}
		}
		for _, p := range elements.Points {
			check("a turn", geom.Translate(p.At.Neg()).Then(geom.Rotate(360/float64(p.Order))).Then(geom.Translate(p.At)))
		}
		for _, line := range slices.Concat(elements.Mirrors, elements.Glides) {
			deg := math.Atan2(float64(line.Along.Y), float64(line.Along.X)) * 180 / math.Pi
			check("a line", geom.Translate(line.At.Neg()).Then(geom.Rotate(-deg)).Then(geom.Scale(1, -1)).Then(geom.Rotate(deg)).Then(geom.Translate(line.At.Add(line.Glide))))
		}
	}
}

// Points and lines per cell, as the diagrams of the International Tables show
// them (from memory).
func TestElementsAreCountedOnce(t *testing.T) {
	a := geom.MM(12)
	six, _ := pattern.Hexagonal(a)
	square := pattern.Straight(a, a)
	for _, row := range []struct {
		g                       pattern.Group
		l                       pattern.Lattice
		points, mirrors, glides int
	}{
		{pattern.P1, square, 0, 0, 0}, {pattern.P2, square, 4, 0, 0}, {pattern.PM, square, 0, 2, 0}, {pattern.PG, square, 0, 0, 2},
		{pattern.CM, square, 0, 2, 2}, {pattern.P2MM, square, 4, 4, 0}, {pattern.P2MG, square, 4, 2, 2}, {pattern.P2GG, square, 4, 0, 4},
		{pattern.C2MM, square, 8, 4, 4}, {pattern.P4, square, 4, 0, 0}, {pattern.P4MM, square, 4, 6, 2}, {pattern.P3, six, 3, 0, 0}, {pattern.P6, six, 6, 0, 0},
	} {
		e, err := row.g.Elements(row.l)
		if err != nil || len(e.Points) != row.points || len(e.Mirrors) != row.mirrors || len(e.Glides) != row.glides {
			t.Errorf("%s: %d points, %d mirrors, %d glides, %v; want %d, %d, %d", row.g, len(e.Points), len(e.Mirrors), len(e.Glides), err, row.points, row.mirrors, row.glides)
		}
	}
}
