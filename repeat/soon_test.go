package repeat_test

import (
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"tsugime/assets"
	"tsugime/repeat"
	"tsugime/repeat/check"
	"tsugime/repeat/document"
	"tsugime/repeat/geom"
)

// plainCodes are the findings that the plain pattern alone decides.
var plainCodes = []string{"island", "band", "web-thin", "hole-small", "outline-flaw"}

func ofThePattern(all []check.Finding) []check.Finding {
	return slices.DeleteFunc(slices.Clone(all), func(f check.Finding) bool { return !slices.Contains(plainCodes, f.Code) })
}

// What is told first of an edit is what is told in the end, as far as the plain pattern
// decides it: for the starters, whose motifs are moved until something touches.
func TestWhatIsToldFirstIsTrue(t *testing.T) {
	random := rand.New(rand.NewPCG(3, 11))
	told, faults := 0, 0
	for _, s := range assets.Starters() {
		o := starter(t, s.Name)
		if len(o.Unit.Motifs) == 0 || strings.HasSuffix(s.Name, "-stripes") || s.Name == "wave-scales" {
			continue // long rims take a second each
		}
		w, err := repeat.Build(t.Context(), o)
		if err != nil {
			t.Fatal(err)
		}
		for range 3 {
			id := o.Unit.Motifs[random.IntN(len(o.Unit.Motifs))].ID
			by := geom.PtMM(random.Float64()-0.5, random.Float64()-0.5)
			next, err := document.MoveMotif(o, id, by)
			if err != nil {
				t.Fatal(err)
			}
			var first []check.Finding
			after, err := repeat.RebuildTelling(t.Context(), w, next, func(f []check.Finding) { first = f; told++ })
			if err != nil {
				t.Fatal(err)
			}
			if first == nil {
				continue
			}
			got, want := ofThePattern(first), ofThePattern(after.Findings)
			if !slices.Equal(got, want) {
				t.Errorf("%s: told first\n%v\nin the end\n%v", s.Name, got, want)
			}
			faults += len(want)
			o, w = next, after
		}
	}
	if told < 30 || faults < 12 {
		t.Errorf("only %d edits told something first, with %d findings", told, faults)
	}
}
