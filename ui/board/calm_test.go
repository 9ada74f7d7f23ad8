package board

import (
	"math"
	"math/rand/v2"
	"testing"

	"tsugime/export/raster"
	"tsugime/repeat/geom"
)

// Every place of a lay is shown by a strip that has it within a part of a pixel.
func TestStripsKeepEveryPlaceWithinAPartOfAPixel(t *testing.T) {
	r := rand.New(rand.NewPCG(8, 1))
	for range 300 {
		v := raster.View{X: 200 * r.Float64(), Y: 200 * r.Float64(), PxPerMM: 0.1 + r.Float64()}
		l := raster.Lay{
			Move: geom.PtMM(400*r.Float64()-200, 400*r.Float64()-200), Turned: r.IntN(2) == 0,
			TurnDeg: r.NormFloat64(), Grown: 0.002 * r.NormFloat64(),
			Clip: geom.BoxOf(geom.PtMM(210, 215), geom.PtMM(500+100*r.Float64(), 700)),
		}
		pieces := calm([]raster.Lay{l}, v, 1600, 1000, geom.MM(0.8))
		sin, cos := math.Sincos(l.TurnDeg * math.Pi / 180)
		for range 50 {
			at := geom.PtMM(v.X+1600/v.PxPerMM*r.Float64(), v.Y+1000/v.PxPerMM*r.Float64())
			if !l.Clip.Holds(at) {
				continue
			}
			// The place of the ground there, half a turn left out.
			x, y := at.X.MM()-l.Move.X.MM(), at.Y.MM()-l.Move.Y.MM()
			gx, gy := (cos*x+sin*y)/(1+l.Grown), (cos*y-sin*x)/(1+l.Grown)
			shown := 0
			for _, p := range pieces {
				if !p.Clip.Holds(at) {
					continue
				}
				shown++
				dx, dy := (at.X.MM()-p.Move.X.MM()-gx)*v.PxPerMM, (at.Y.MM()-p.Move.Y.MM()-gy)*v.PxPerMM
				if most := snapPx/2 + slackPx + 0.05; math.Abs(dx) > most || math.Abs(dy) > most || p.Turned != l.Turned {
					t.Fatalf("%v at %+v is shown %.2f, %.2f pixels off", at, l, dx, dy)
				}
			}
			if shown == 0 {
				t.Fatalf("%v of %+v is in none of %d strips", at, l, len(pieces))
			}
		}
	}
}

func TestHolesThatCanBeToldApartAreLeftAsTheyAre(t *testing.T) {
	l := []raster.Lay{{Move: geom.PtMM(0.123, 0.4), TurnDeg: 0.2}}
	if got := calm(l, raster.View{PxPerMM: 4}, 100, 100, geom.MM(0.8)); got[0] != l[0] {
		t.Errorf("%+v became %+v", l[0], got[0])
	}
}
