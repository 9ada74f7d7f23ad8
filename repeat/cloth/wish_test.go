package cloth

import (
	"reflect"
	"strings"
	"testing"

	"tsugime/repeat/geom"
)

// Wishes of an order, on cloth long enough: the turn lies between panels, the
// seams run on as they are measured, and each tells its cost.
func TestWishesAreSeenOnTheGarment(t *testing.T) {
	bolt := coatBolt
	bolt.Length = 15 * geom.Metre
	run := mustLay(t, bolt, coatBoard, design, geom.MM(sixSun.MM()/0.97))
	g := Garment{Body: Body{Kind: WomensKimono, Height: 1580 * geom.Millimetre}, MatchBackCentre: true, Wishes: Wishes{
		AvoidTurn: true, Seams: []SeamWish{{Seam: "upper overlap", Goal: RunOn}},
	}}
	d, err := Dress(bolt, run, lattices()["half-drop"], g, 500*geom.Micrometre)
	if err != nil {
		t.Fatal(err)
	}
	if c := ClearTurn(run, d); len(c.Over) != 0 {
		t.Errorf("over the turn lie %v", c.Over)
	}
	if len(d.Matches) != 3 || d.Matches[0].Name != BackCentre || d.Matches[2].Name != AvoidName || d.LowerBound > d.Used {
		t.Fatalf("%+v, %s of at least %s", d.Matches, d.Used, d.LowerBound)
	}
	for _, m := range d.Matches {
		for _, s := range d.Seams {
			if s.Name == m.Name && (m.Reached != s.Matched || m.Off != (geom.Point{X: s.PhaseAcross, Y: s.PhaseAlong})) {
				t.Errorf("%+v, measured %+v", m, s)
			}
		}
	}
	if m := d.Matches[2]; !m.Reached || m.Cost <= 0 {
		t.Errorf("the turn: %+v", m)
	}
}

func TestWishesForWhatIsNotThereAreRefused(t *testing.T) {
	run := mustLay(t, coatBolt, coatBoard, design, sixSun)
	for say, w := range map[string]Wishes{
		"no seam \"hem\"":  {Seams: []SeamWish{{Seam: "hem", Goal: RunOn}}},
		"no piece \"hat\"": {Targets: []PlaceWish{{Name: "crown", Piece: "hat"}}},
		"outside":          {Targets: []PlaceWish{{Name: "crown", Piece: "left overlap", At: geom.PtMM(5000, 0)}}},
	} {
		g := Garment{Body: Body{Kind: WomensKimono, Height: 1580 * geom.Millimetre}, Wishes: w}
		if _, err := Dress(coatBolt, run, lattices()["straight"], g, 0); err == nil || !strings.Contains(err.Error(), say) {
			t.Errorf("error %v, want one that says %q", err, say)
		}
	}
}

// A garment dressed again after an edit is the one that is dressed anew, whether
// the edit changes what the solver is asked or not.
func TestDressingAgainIsDressingAnew(t *testing.T) {
	bolt := coatBolt
	bolt.Length = 15 * geom.Metre
	run := mustLay(t, bolt, coatBoard, design, geom.MM(sixSun.MM()/0.97))
	g := Garment{Body: Body{Kind: WomensKimono, Height: 1580 * geom.Millimetre}, MatchBackCentre: true, Wishes: Wishes{AvoidTurn: true}}
	var prev Dressed
	for _, edit := range []struct {
		what string
		do   func()
	}{
		{"first", func() {}},
		{"another order", func() { g.Wishes.AnyOrder = true }},
		{"nothing", func() {}},
		{"another seam", func() { g.Wishes.Seams = []SeamWish{{Seam: "collar", Goal: RunOn}} }},
		{"nothing else", func() {}},
		{"taller", func() { g.Body.Height += 20 * geom.Millimetre }},
		{"shorter cloth", func() { bolt.Length = 13 * geom.Metre }},
		{"no wish", func() { g.Wishes = Wishes{} }},
	} {
		edit.do()
		again, err := DressAgain(prev, bolt, run, lattices()["brick"], g, 500*geom.Micrometre)
		if err != nil {
			t.Fatalf("%s: %v", edit.what, err)
		}
		anew, err := Dress(bolt, run, lattices()["brick"], g, 500*geom.Micrometre)
		if err != nil {
			t.Fatalf("%s: %v", edit.what, err)
		}
		if !reflect.DeepEqual(again, anew) {
			t.Errorf("%s: %+v\nanew %+v", edit.what, again, anew)
		}
		prev = again
	}
}

// Every edit of an order in the window dresses the garment: with four seams and
// the turn wished for, first and after an edit that leaves the wishes as they are.
func BenchmarkDressWishes(b *testing.B) {
	bolt := coatBolt
	bolt.Length = 15 * geom.Metre
	run := mustLay(b, bolt, coatBoard, design, geom.MM(sixSun.MM()/0.97))
	for _, name := range []string{"straight", "half-drop", "brick", "diagonal", "leaning"} {
		for _, any := range []bool{false, true} {
			g := Garment{Body: Body{Kind: WomensKimono, Height: 1580 * geom.Millimetre}, MatchBackCentre: true}
			g.Wishes = Wishes{AvoidTurn: true, AnyOrder: any}
			for _, s := range []string{"upper overlap", "collar", "left sleeve", "right sleeve"} {
				g.Wishes.Seams = append(g.Wishes.Seams, SeamWish{Seam: s, Goal: RunOn})
			}
			var d Dressed
			again := func(b *testing.B, prev func() Dressed) {
				for b.Loop() {
					var err error
					if d, err = DressAgain(prev(), bolt, run, lattices()[name], g, 500*geom.Micrometre); err != nil {
						b.Fatal(err)
					}
				}
			}
			order := map[bool]string{false: "kept order", true: "any order"}[any]
			b.Run(name+", "+order, func(b *testing.B) { again(b, func() Dressed { return Dressed{} }) })
			b.Run(name+", "+order+", again", func(b *testing.B) { again(b, func() Dressed { return d }) })
		}
	}
}
