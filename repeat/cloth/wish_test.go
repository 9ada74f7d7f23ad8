package cloth

import (
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
