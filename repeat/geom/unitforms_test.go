package geom

import "testing"

// Every form that a field takes. A kane shaku is 10/33 m, a kujira shaku 25/66 m (the
// Japanese Weights and Measures Act of 1891, as the units table of unit.go has them); an
// inch is 25.4 mm (international yard and pound agreement, 1959).
func TestALengthIsReadInEveryForm(t *testing.T) {
	kane, kujira := 1000*10/33.0, 1000*25/66.0 // mm
	bareKujira, _ := UnitNamed("kujira sun")
	for _, c := range []struct {
		text string
		bare Unit
		mm   float64
	}{
		{"12", MMUnit, 12}, {"12,5", MMUnit, 12.5}, {"1.2 cm", MMUnit, 12}, {"0.3 m", MMUnit, 300}, {"1/2 in", MMUnit, 12.7},
		{"1 1/2 in", MMUnit, 38.1}, {"182/6", MMUnit, 182 / 6.0}, {"10*3", MMUnit, 30}, {"182/6*2 mm", MMUnit, 182 / 3.0},
		{"3 mm + 2 cm", MMUnit, 23}, {"2 cm - 3 mm", MMUnit, 17}, {"5 - 2", MMUnit, 3}, {"-3 sun 5 bu", MMUnit, -0.35 * kane},
		{"3 sun 5 bu - 1 mm", MMUnit, 0.35*kane - 1}, {"3 sun 5 bu", bareKujira, 0.35 * kujira}, {"6 kane sun", bareKujira, 0.6 * kane},
		{"１２．５", MMUnit, 12.5}, {"１２，５ｍｍ", MMUnit, 12.5}, {"－５", MMUnit, -5}, {"３寸５分", MMUnit, 0.35 * kane}, {"3寸5分", bareKujira, 0.35 * kujira},
		{"1尺", MMUnit, kane}, {"鯨尺1尺2寸", MMUnit, 1.2 * kujira}, {"鯨3寸", MMUnit, 0.3 * kujira}, {"曲尺3寸", bareKujira, 0.3 * kane}, {"5厘", MMUnit, 0.005 * kane},
		{"10ミリ", MMUnit, 10}, {"10センチ", MMUnit, 100}, {"2インチ", MMUnit, 50.8}, {"3 × 4", MMUnit, 12}, {"12÷5", MMUnit, 2.4}, {"　7　", MMUnit, 7},
	} {
		got, err := ParseLength(c.text, c.bare)
		if err != nil {
			t.Errorf("%q: %v", c.text, err)
		} else if off := got - MM(c.mm); off > 1 || off < -1 {
			t.Errorf("%q is %s mm, want %.6f", c.text, got, c.mm)
		}
	}
	for _, text := range []string{"", "mm", "+", "3 +", "3 * mm", "1/0", "3 sun 5", "1.2.3", "1,234.5", "3 elle", "鯨", "- - 3", "3 mm 4 mm +"} {
		if got, err := ParseLength(text, MMUnit); err == nil {
			t.Errorf("%q was read as %s mm", text, got)
		}
	}
}
