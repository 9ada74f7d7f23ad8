package check_test

import (
	"strings"
	"testing"

	"tsugime/repeat/check"
	"tsugime/repeat/cloth"
	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

// A star in the middle of the cloth is seen wherever a piece shows it, one at the
// selvedge nowhere: the seams take it.
func TestStarsThatTheGarmentShowsAreTold(t *testing.T) {
	m := sound()
	bolt := cloth.Bolt{Width: geom.MM(375), Length: geom.MM(12_600)}
	run, err := cloth.Lay(bolt, cloth.Board{Length: geom.MM(6400)}, cloth.Register{}, geom.MM(180))
	if err != nil {
		t.Fatal(err)
	}
	m.Run = run
	m.Dressed, err = cloth.Dress(bolt, run, pattern.Straight(geom.MM(1), geom.MM(1)),
		cloth.Garment{Body: cloth.Body{Kind: cloth.WomensKimono, Height: geom.MM(1600)}}, geom.MM(0.5))
	if err != nil {
		t.Fatal(err)
	}
	found := func() (check.Finding, bool) {
		for _, f := range check.All(m, limits()) {
			if f.Code == "star-seen" {
				return f, true
			}
		}
		return check.Finding{}, false
	}
	if f, ok := found(); ok {
		t.Fatalf("a star 3 mm from the selvedge is told as seen: %s", f.Text)
	}
	for i := range m.Sheet.Stars.Stars {
		m.Sheet.Stars.Stars[i].At.X = geom.MM(150)
	}
	f, ok := found()
	if !ok || f.Severity != check.Note || !strings.HasPrefix(f.Text, "Of 71 marks") {
		t.Fatalf("a star in the middle of the cloth: found %v %q", ok, f.Text)
	}
	for i := range m.Sheet.Stars.Stars {
		m.Sheet.Stars.Stars[i].Clear = geom.MM(-2)
	}
	if f, ok := found(); ok {
		t.Errorf("a star within a hole leaves no mark, but is told: %s", f.Text)
	}
}
