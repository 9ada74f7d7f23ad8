package geom_test

import (
	"math/big"
	"math/rand/v2"
	"strings"
	"testing"

	"tsugime/repeat/geom"
)

func TestLengthsAreWrittenToTheirDecimals(t *testing.T) {
	for _, row := range []struct {
		nm     int64
		places int
		want   string
	}{
		{181_818_182, 6, "181.818182"}, {181_818_182, 3, "181.818"}, {181_818_182, 0, "182"},
		{0, 6, "0"}, {-1, 6, "-0.000001"}, {-1, 3, "0"}, {-499_999, 0, "0"}, {-500_000, 0, "-1"}, {500_000, 0, "1"},
		{1_500_000, 6, "1.5"}, {10_000_000, 6, "10"}, {999_999_999, 3, "1000"}, {50_000, 1, "0.1"}, {49_999, 1, "0"},
	} {
		if got := string(geom.Length(row.nm).AppendMM(nil, row.places)); got != row.want {
			t.Errorf("%d nm to %d places: got %s, want %s", row.nm, row.places, got, row.want)
		}
	}
}

// Against a fraction rounded half away from zero by the big-number library.
func TestLengthsAreRoundedAsFractionsAre(t *testing.T) {
	random := rand.New(rand.NewPCG(1, 3))
	for range 20_000 {
		l := geom.Length(random.Int64N(1<<random.IntN(45)+1) - 1<<20)
		for places := range 7 {
			want := big.NewRat(int64(l), int64(geom.Millimetre)).FloatString(places)
			if strings.Contains(want, ".") {
				want = strings.TrimRight(strings.TrimRight(want, "0"), ".")
			}
			if want == "-0" {
				want = "0"
			}
			if got := string(l.AppendMM(nil, places)); got != want {
				t.Fatalf("%d nm to %d places: got %s, want %s", int64(l), places, got, want)
			}
		}
	}
}

func TestMillimetresComeBackToTheNanometre(t *testing.T) {
	random := rand.New(rand.NewPCG(2, 3))
	for range 20_000 {
		l := geom.Length(random.Int64N(18e12) - 9e12) // ±9 km
		if got := geom.MM(l.MM()); got != l {
			t.Fatalf("%d nm comes back from %v mm as %d nm", int64(l), l.MM(), int64(got))
		}
	}
	if got := geom.MM(-0.0000005); got != -1 {
		t.Errorf("half a nanometre below zero rounds to %d nm, want -1", int64(got))
	}
}
