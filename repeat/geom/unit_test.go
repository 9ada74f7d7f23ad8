package geom_test

import (
	"math/big"
	"math/rand/v2"
	"os/exec"
	"strings"
	"testing"

	"tsugime/repeat/geom"
)

// The Weights and Measures Act of 1891 (law no. 3) sets the shaku at 10/33 m and
// the kujira shaku, which is 1 shaku 2 sun 5 bu, at 25/66 m. The international
// inch is 25.4 mm (agreement of 1959).
var law = map[string]*big.Rat{ // millimetres
	"mm": big.NewRat(1, 1), "cm": big.NewRat(10, 1), "m": big.NewRat(1000, 1), "in": big.NewRat(254, 10),
	"kane shaku":   big.NewRat(10_000, 33),
	"kane sun":     big.NewRat(10_000, 33*10),
	"kane bu":      big.NewRat(10_000, 33*100),
	"kane rin":     big.NewRat(10_000, 33*1000),
	"kujira shaku": big.NewRat(25_000, 66),
	"kujira sun":   big.NewRat(25_000, 66*10),
	"kujira bu":    big.NewRat(25_000, 66*100),
	"kujira rin":   big.NewRat(25_000, 66*1000),
}

func TestUnitsAreThoseOfTheLaw(t *testing.T) {
	if got, want := len(geom.Units()), len(law); got != want {
		t.Errorf("%d units, want %d", got, want)
	}
	for _, u := range geom.Units() {
		// A count that makes a whole number of nanometres, to see the fraction.
		count := big.NewRat(66_000, 1)
		want := new(big.Rat).Mul(law[u.Name], big.NewRat(66_000*int64(geom.Millimetre), 1))
		got, err := u.Of(count)
		if err != nil || !want.IsInt() || int64(got) != want.Num().Int64() {
			t.Errorf("66000 %s: got %d nm (%v), want %s", u.Name, int64(got), err, want.RatString())
		}
	}
	kujira, _ := geom.KujiraSun.Of(big.NewRat(8, 1))
	kane, _ := geom.KaneShaku.Of(big.NewRat(1, 1))
	if kujira != kane {
		t.Errorf("8 kujira sun are %s mm, one kane shaku is %s mm", kujira, kane)
	}
}

// GNU units knows the shaku and its parts by itself; the kujira shaku is five
// quarters of it.
func TestUnitsAgreeWithGNUUnits(t *testing.T) {
	theirs := map[string]string{
		"mm": "mm", "cm": "cm", "m": "m", "in": "inch",
		"kane shaku": "shaku", "kane sun": "shaku/10", "kane bu": "shaku/100", "kane rin": "shaku/1000",
		"kujira shaku": "1.25 shaku", "kujira sun": "0.125 shaku", "kujira bu": "0.0125 shaku", "kujira rin": "0.00125 shaku",
	}
	for _, u := range geom.Units() {
		out, err := exec.Command("units", "-t", "-o", "%.15g", "1000 "+theirs[u.Name], "mm").Output()
		if err != nil {
			t.Fatalf("units: %v\ninstall it with: apt-get install -y --no-install-recommends units", err)
		}
		v, ok := new(big.Rat).SetString(strings.TrimSpace(string(out)))
		if !ok {
			t.Fatalf("units says %q for %s", out, u.Name)
		}
		want, _ := geom.MMUnit.Of(v)
		if got, _ := u.Of(big.NewRat(1000, 1)); (got - want).Abs() > 1 {
			t.Errorf("1000 %s: got %s mm, units says %s", u.Name, got, want)
		}
	}
}

func TestLengthsAreReadAsPeopleWriteThem(t *testing.T) {
	for _, row := range []struct {
		text string
		bare geom.Unit
		want geom.Length
	}{
		{"12", geom.MMUnit, 12_000_000}, {"12mm", geom.KaneSun, 12_000_000}, {" 1.2 cm ", geom.MMUnit, 12_000_000},
		{"1/2 in", geom.MMUnit, 12_700_000}, {"1/2\"", geom.MMUnit, 12_700_000}, {"0,5 mm", geom.MMUnit, 500_000},
		{"6 kane sun", geom.MMUnit, 181_818_182}, {"6 SUN", geom.MMUnit, 181_818_182}, {"6", geom.KaneSun, 181_818_182},
		{"6 sun", geom.KujiraSun, 227_272_727}, {"3 sun 5 bu", geom.MMUnit, 106_060_606}, {"1 kujira shaku", geom.MMUnit, 378_787_879},
		{"-3 mm", geom.MMUnit, -3_000_000}, {"1 m 2 cm", geom.MMUnit, 1_020_000_000}, {"3 sun 5 kujira bu", geom.MMUnit, 109_848_485},
		{"4\u00a0mm", geom.MMUnit, 4_000_000}, {".5 mm", geom.MMUnit, 500_000}, {"2 inches", geom.MMUnit, 50_800_000},
	} {
		if got, err := geom.ParseLength(row.text, row.bare); err != nil || got != row.want {
			t.Errorf("%q with %s: got %s mm (%v), want %s", row.text, row.bare.Name, got, err, row.want)
		}
	}
}

func TestWhatIsNoLengthIsToldSo(t *testing.T) {
	for text, want := range map[string]string{
		"": "is no length; write a number and a unit, like 12 mm", "mm": "a number is missing", "-": "a number is missing",
		"12 furlongs": "furlongs is no unit; use mm", "1/0 mm": "can't divide by 0", "1..2": "a number is missing",
		"5 -": "a number is missing", "99999999999999999999 m": "longer than any cloth", "0x10": "is no unit",
		"1e9": "is no unit", "NaN": "a number is missing",
		"3 sun 5": "the 5 has no unit; write it, like 3 sun 5 bu", "1234567890123456789012345": "a number is missing",
	} {
		if got, err := geom.ParseLength(text, geom.MMUnit); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%q: got %s mm, %v; want …%s…", text, got, err, want)
		}
	}
}

// In each unit nine decimals, at most a nanometre apart for the longest unit, say
// which length it is.
func TestLengthsComeBackFromEveryUnit(t *testing.T) {
	random := rand.New(rand.NewPCG(9, 9))
	for range 500 {
		l := geom.Length(random.Int64N(4e10) - 2e10)
		for _, u := range geom.Units() {
			text := u.Format(l, 9)
			if got, err := geom.ParseLength(text, geom.MMUnit); err != nil || got != l {
				t.Fatalf("%s mm is %s, read as %s mm (%v)", l, text, got, err)
			}
		}
	}
	if got := geom.KaneSun.Format(181_818_182, 3); got != "6 kane sun" {
		t.Errorf("got %q, want 6 kane sun", got)
	}
	if got := geom.MMUnit.Number(-1, 3); got != "0" {
		t.Errorf("a nanometre below zero to three places: got %s, want 0", got)
	}
}

// Whatever the text: an error on one line, or a length that comes back from how
// it is written.
func FuzzParseLength(f *testing.F) {
	for _, text := range []string{"12", "3 sun 5 bu", "1/2 in", "-0,5 kujira rin", "1 m 2 cm", "9999999999999 m", "1/3", "\"", "5 \""} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		l, err := geom.ParseLength(text, geom.KujiraSun)
		if err != nil {
			return
		}
		if got, err := geom.ParseLength(l.String()+" mm", geom.KaneSun); err != nil || got != l {
			t.Errorf("%q is %s mm, which is read as %s mm (%v)", text, l, got, err)
		}
	})
}
