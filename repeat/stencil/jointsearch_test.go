package stencil

import (
	"context"
	"testing"

	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

// Between long rims that run side by side no web tells the way: the line winds
// through the paper all the same, and parts no motif.
func TestTheLineWindsBetweenLongRims(t *testing.T) {
	field, step := Field{geom.MM(9.5), geom.MM(180)}, geom.Length(181_818_180)
	for _, name := range []string{"wave-scales", "checker"} {
		g, ok := pattern.GroundNamed(name)
		if !ok {
			t.Fatalf("there is no ground %q", name)
		}
		u, err := g.Recipe().Unit(step)
		if err != nil {
			t.Fatal(err)
		}
		for _, share := range []float64{1, 0.8} {
			j, err := FindJoint(context.Background(), u, field, step, JointSpec{Share: share})
			if err != nil {
				t.Fatal(err)
			}
			if least := j.Widest.Times(min(share, windingMost)) - 3*geom.Grid; j.Widest < geom.MM(0.39) || j.Clearance < least {
				t.Errorf("%s at %g: %s mm clear of %s mm that there are, want %s", name, share, j.Clearance, j.Widest, least)
			}
			keepsClear(t, name, u, field, step, j)
		}
	}
}
