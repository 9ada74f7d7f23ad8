package cloth

import (
	"testing"

	"tsugime/repeat/geom"
)

// One arc minute is 0.0873 mm at 300 mm, 0.1454 at 500, 0.2036 at 700, 0.2909 at
// 1 m and 0.5818 at 2 m; ten arc seconds 0.0242 at 500 and 0.0485 at 1 m: worked
// from the angle.
func TestTheEyeSeesLessFromAfar(t *testing.T) {
	for mm, want := range map[float64]float64{300: .0873, 500: .1454, 700: .2036, 1000: .2909, 2000: .5818} {
		e := EyeAt(geom.MM(mm))
		within(t, "plain", e.Plain.MM(), want, 5.1e-5)
		within(t, "crisp", 6*e.Crisp.MM(), want, 5.4e-5)
	}
	e := EyeAt(geom.MM(1000))
	for offset, want := range map[float64]Sight{.04: Unseen, -.06: SeenByExpert, .28: SeenByExpert, -.3: PlainlySeen} {
		if got := e.Sees(geom.MM(offset)); got != want {
			t.Errorf("%g mm: %s, want %s", offset, got, want)
		}
	}
}
