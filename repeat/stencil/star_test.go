package stencil

import (
	"math"
	"testing"

	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

func dotGround(across, along, diameter float64) pattern.Unit {
	return pattern.Unit{
		Lattice: pattern.Straight(geom.MM(across), geom.MM(along)),
		Motifs:  []pattern.Motif{{ID: 1, Shape: geom.DiscShape(geom.Point{}, geom.MM(diameter))}},
	}
}

func starSpec(perEnd int) Spec {
	return Spec{
		Step:     geom.MM(180),
		Field:    Field{Left: geom.MM(9.5), Width: geom.MM(356)},
		Paper:    Paper{Width: geom.MM(430), Height: geom.MM(300)},
		Stars:    StarSpec{PerEnd: perEnd, Diameter: geom.MM(1), Hidden: geom.MM(9)},
		WebLimit: geom.MM(0.4),
	}
}

func TestTwoStarsAnEndFitUpsideDownAndThreeDoNot(t *testing.T) {
	u := dotGround(1, 1, 0.5)
	for _, c := range []struct {
		perEnd int
		least  float64 // mm
		most   float64
	}{{2, 0, 0}, {3, 5.5, 6.5}, {4, 3, 30}} {
		set := placeStars(u, starSpec(c.perEnd), Joint{}, geom.MM(375))
		if got := set.TurnedMisfit.MM(); got < c.least || got > c.most {
			t.Errorf("%d stars an end: turned misfit %.3f mm, want %.1f to %.1f", c.perEnd, got, c.least, c.most)
		}
		if len(set.Stars) != 2*c.perEnd {
			t.Errorf("%d stars an end: %d stars in all", c.perEnd, len(set.Stars))
		}
	}
}

// Every leading star has its trailing one exactly a step on, all are clear and
// covered by the seam, and the outer four are a rectangle.
func TestStarsAreAStepApartHiddenAndSquare(t *testing.T) {
	spec := starSpec(3)
	set := placeStars(dotGround(1, 1, 0.5), spec, Joint{}, geom.MM(375))
	n := len(set.Stars) / 2
	for i, s := range set.Stars[:n] {
		if got, want := set.Stars[n+i].At, s.At.Add(geom.Point{Y: spec.Step}); got != want {
			t.Errorf("trailing star %d at %v, want %v", i, got, want)
		}
		if !s.Hidden || s.Clear < geom.MM(1) {
			t.Errorf("star at %v: hidden %v, clear %s mm", s.At, s.Hidden, s.Clear)
		}
	}
	q := set.Square
	if q.Top != q.Bottom || q.Left != q.Right || q.Down != q.Up || q.Left != spec.Step {
		t.Errorf("square check %+v is no rectangle of a step", q)
	}
	// Pythagoras: the diagonal of the rectangle, to a nanometre.
	want := math.Hypot(float64(q.Top), float64(q.Left))
	if math.Abs(float64(q.Down)-want) > 1 {
		t.Errorf("diagonal %s mm, want %.6f", q.Down, want/1e6)
	}
	if set.Baseline < geom.MM(360) {
		t.Errorf("baseline %s mm; the stars could stand 370 mm apart", set.Baseline)
	}
}

func TestStarInAFullFieldHidesInAHoleOfItsSize(t *testing.T) {
	spec := starSpec(2)
	spec.Field = Field{Width: geom.MM(375)} // no margin left for a star
	spec.Stars.Diameter = geom.MM(0.5)
	set := placeStars(dotGround(1, 1, 0.6), spec, Joint{}, geom.MM(375))
	for _, s := range set.Stars {
		if s.Clear > -s.Diameter && s.Clear < spec.WebLimit {
			t.Errorf("star at %v is neither clear nor in a hole: %s mm", s.At, s.Clear)
		}
	}
}

// The misfit is the radius by which the worst star misses after the best shift:
// held against a search over shifts on a fine grid.
func TestTurnedMisfitAgreesWithASearchOverShifts(t *testing.T) {
	at := []geom.Point{geom.PtMM(0, 0), geom.PtMM(10, 0), geom.PtMM(0, 3)}
	least := math.Inf(1)
	for _, way := range []geom.Affine{geom.Rotate(180), geom.Scale(-1, 1), geom.Scale(1, -1)} {
		for sx := -15.0; sx <= 15; sx += 0.25 {
			for sy := -8.0; sy <= 8; sy += 0.25 {
				shift := geom.PtMM(sx, sy)
				perm := []geom.Point{way.Apply(at[0]), way.Apply(at[1]), way.Apply(at[2])}
				permute(perm, 0, func() {
					worst := 0.0
					for i := range at {
						worst = max(worst, at[i].Sub(perm[i].Add(shift)).Norm()/1e6)
					}
					least = min(least, worst)
				})
			}
		}
	}
	got := turnedMisfit(at).MM()
	if got > least+1e-9 || got < least-0.36 { // the grid's half diagonal is 0.18 mm
		t.Errorf("turned misfit %.4f mm; the search found %.4f", got, least)
	}
}
