package cloth

import (
	"strings"
	"testing"

	"tsugime/repeat/geom"
)

var someNames = values{"body": length{geom.MM(1600)}, "tuck": length{geom.MM(150)}, "hem": length{geom.MM(20)}, "panels": 3}

func TestFormulasCountWithLengths(t *testing.T) {
	for text, want := range map[string]float64{
		"2*(body + tuck + hem)": 3540, "2 * (body+tuck+hem)": 3540, "(body + hem) * 2": 3240, "body/3": 533.333333, "body / 4 + cm(1.5)": 415,
		"8 sun": 8 * 2500.0 / 66, "2.5": 2.5 * 250 / 66, "12 mm": 12, "mm(12)": 12, "bu(2.5) + sun(4)": 42.5 * 250 / 66, "shaku(1)": 378.787879,
		"0.3 * body": 480, "body * 0.4 + cm(2)": 660, "min(body, tuck)": 150, "max(tuck, hem, body) - hem": 1580,
		"panels >= 3 ? body : tuck": 1600, "panels == 2 ? body : tuck": 150, "(panels - 1) * hem": 40, "body > tuck && panels < 4 ? hem : body": 20,
		"body * (tuck / hem)": 12000, "hem * panels / 2": 30, "mm(-3)": -3,
	} {
		f, err := parseFormula(text, aLength, someNames, geom.KujiraBu)
		if err != nil {
			t.Errorf("%s: %v", text, err)
			continue
		}
		got, err := f.length(someNames)
		if err != nil {
			t.Errorf("%s: %v", text, err)
			continue
		}
		within(t, text, got.MM(), want, 1e-6)
	}
	for text, want := range map[string]float64{"1/2": 0.5, "0": 0, "1/panels": 1.0 / 3, "panels > 2 ? 0.25 : 1": 0.25} {
		f, err := parseFormula(text, aNumber, someNames, geom.KujiraBu)
		if err != nil {
			t.Errorf("%s: %v", text, err)
			continue
		}
		if got, err := f.result(someNames); err != nil || got != want {
			t.Errorf("%s: %v, %v", text, got, err)
		}
	}
	for text, want := range map[string]bool{"panels >= 3": true, "body < hem": false, "not (panels > 4)": true, "body >= body and tuck <= tuck": true} {
		f, err := parseFormula(text, aCondition, someNames, geom.KujiraBu)
		if err != nil {
			t.Errorf("%s: %v", text, err)
			continue
		}
		if got, err := f.result(someNames); err != nil || got != want {
			t.Errorf("%s: %v, %v", text, got, err)
		}
	}
}

func TestWhatIsNoFormulaIsToldSo(t *testing.T) {
	for text, say := range map[string]string{
		"body * tuck": "mismatched", "body + 3": "mismatched", "body +": "unexpected", "hip": "hip", "3 * 4": "expected a length",
		"len(\"x\") * body": "len", "map(1..3, # * 2)[0] * body": "use names", "body[0]": "use names", "body.nm": "use names", "\"body\"": "use names",
		"[body][0]": "use names", "1..3": "..", "body ** 2": "**", "-body": "invalid operation", "let x = body; x": "use names", "panels": "expected a length",
		strings.Repeat("body+", 60) + "body": "keep a formula", "(" + strings.Repeat("1+", 85) + "1)*hem": "nodes", "": "",
	} {
		_, err := parseFormula(text, aLength, someNames, geom.KujiraBu)
		if err == nil || !strings.Contains(err.Error(), say) || strings.Contains(err.Error(), "\n") {
			t.Errorf("%.40s: error %v, want one that says %q", text, err, say)
		}
	}
	for text, say := range map[string]string{
		"body * 1000000 * 1000000": "100 km", "body / (panels - 3)": "nought", "body * (tuck / (hem - hem))": "nought", "mm(1e300)": "100 km",
		"body * 1e300 * 1e300": "100 km", "body / 1e-300": "100 km",
	} {
		f, err := parseFormula(text, aLength, someNames, geom.KujiraBu)
		if err != nil {
			t.Errorf("%s: %v", text, err)
			continue
		}
		if l, err := f.length(someNames); err == nil || !strings.Contains(err.Error(), say) {
			t.Errorf("%s: %s, error %v, want one that says %q", text, l, err, say)
		}
	}
}

func FuzzFormulasNeverPanic(f *testing.F) {
	for _, text := range []string{"2*(body + tuck + hem)", "1/2", "panels >= 3 ? body : tuck", "min(body, 8 sun)", "body ** -hem", "a..b | map(#)"} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		formula, err := parseFormula(text, aLength, someNames, geom.MMUnit)
		if err != nil {
			return
		}
		if l, err := formula.length(someNames); err == nil && l.Abs() > formulaReach {
			t.Errorf("%q is %s", text, l)
		}
	})
}
