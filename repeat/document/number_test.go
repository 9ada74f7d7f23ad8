package document

import (
	"fmt"
	"math/big"
	"math/rand/v2"
	"testing"

	"tsugime/repeat/geom"
)

// exactMM reads a number as a fraction and rounds it half away from zero.
func exactMM(t *testing.T, text string) *big.Int {
	t.Helper()
	v, ok := new(big.Rat).SetString(text)
	if !ok {
		t.Fatalf("%q is no number", text)
	}
	v.Mul(v, big.NewRat(int64(geom.Millimetre), 1))
	twice := new(big.Int).Lsh(new(big.Int).Abs(v.Num()), 1)
	whole := new(big.Int).Quo(twice.Add(twice, v.Denom()), new(big.Int).Lsh(v.Denom(), 1))
	if v.Sign() < 0 {
		whole.Neg(whole)
	}
	return whole
}

func TestLengthsAreReadAsExactFractions(t *testing.T) {
	random := rand.New(rand.NewPCG(3, 5))
	texts := []string{
		"0", "-0", "0.5", "181.8182", "-181.818182", "0.0000005", "0.00000049", "-0.0000005", "1e2", "1.5E-3",
		"123456789e-7", "0.00012345678e4", "999999.9999999", "1e-400", "0e999999999", "5e-7", "4.9e-7", "12e0",
	}
	for range 5000 {
		text := fmt.Sprintf("%d.%0*d", random.IntN(1000), 1+random.IntN(9), random.IntN(10))
		if random.IntN(3) == 0 {
			text += fmt.Sprintf("e%d", random.IntN(8)-5)
		}
		texts = append(texts, text)
	}
	for _, text := range texts {
		want := exactMM(t, text)
		if !want.IsInt64() || want.CmpAbs(big.NewInt(int64(maxLength))) > 0 {
			if got, ok := parseMM([]byte(text)); ok {
				t.Errorf("%s mm is out of reach, read as %s", text, got)
			}
			continue
		}
		if got, ok := parseMM([]byte(text)); !ok || int64(got) != want.Int64() {
			t.Errorf("%s mm: got %d nm (%v), want %s", text, int64(got), ok, want)
		}
	}
}

func TestLengthsOutOfReachAreRefused(t *testing.T) {
	for _, text := range []string{"1000000.000001", "-1e7", "1e999999999999", "123456789012345678901234567890", "1e22"} {
		if got, ok := parseMM([]byte(text)); ok {
			t.Errorf("%s mm is read as %s", text, got)
		}
	}
}

func TestFractionsKeepEveryBitInPercent(t *testing.T) {
	random := rand.New(rand.NewPCG(13, 17))
	values := []float64{0, 0.01, -0.01, 0.1, 0.002, 0.07, 0.29, -0.035, 1e-9, 1e-300, 5e-324, 0.5, 123456.789}
	for range 20_000 {
		values = append(values, random.NormFloat64()*0.1)
	}
	for _, v := range values {
		for _, shift := range []int{0, 2} {
			text := appendFloat(nil, v, shift)
			if n := numberLength(text); n != len(text) {
				t.Fatalf("%g is written as %s, which is no JSON number", v, text)
			}
			got, ok := parseFloat(text, -shift)
			if !ok || got != v {
				t.Errorf("%v by 10^%d: written %s, read %v", v, shift, text, got)
			}
		}
	}
	for want, v := range map[string]float64{"1": 0.01, "-3.5": -0.035, "29": 0.29, "0.2": 0.002, "7": 0.07} {
		if got := string(appendFloat(nil, v, 2)); got != want {
			t.Errorf("%v in percent is written %s, want %s", v, got, want)
		}
	}
}

func TestNumbersAreThoseOfJSON(t *testing.T) {
	for text, want := range map[string]int{
		"0": 1, "-0": 2, "10": 2, "1.5": 3, "1e5": 3, "1E+5": 4, "1.5e-3x": 6, "12,": 2,
		"01": 0, "-": 0, ".5": 0, "1.": 0, "1e": 0, "+1": 0, "NaN": 0, "Infinity": 0, "": 0, "0x1": 1,
	} {
		if got := numberLength([]byte(text)); got != want {
			t.Errorf("%q: got %d bytes, want %d", text, got, want)
		}
	}
	if v, ok := parseFloat([]byte("1e999"), 0); ok {
		t.Errorf("1e999 is read as %v", v)
	}
}
