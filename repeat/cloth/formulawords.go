package cloth

import (
	"errors"
	"math/big"
	"slices"
	"strings"

	"github.com/expr-lang/expr"

	"tsugime/repeat/geom"
)

// A length is a value with a length in formulas: lengths are added to lengths
// and multiplied by numbers, and nothing else goes through.
type length struct{ nm geom.Length }

// formulaReach bounds every length on the way to a result, so that sums and
// products stay within an int64.
const formulaReach = 100_000 * geom.Metre

var errReach = errors.New("a length in it exceeds 100 km")

// reached returns l, whose exact value is about v.
func reached(v float64, l geom.Length) (any, error) {
	if !(v >= -float64(formulaReach) && v <= float64(formulaReach)) {
		return nil, errReach
	}
	return length{l}, nil
}

// number returns what a formula counts with as a float64.
func number(v any) float64 {
	if n, ok := v.(int); ok {
		return float64(n)
	}
	return v.(float64)
}

// formulaWords are the operations of formulas, beside the names of the form.
var formulaWords = slices.Concat(
	[]expr.Option{expr.DisableAllBuiltins(), expr.MaxNodes(maxFormulaNodes)},
	operator("plus", "+", func(p ...any) (any, error) {
		a, b := p[0].(length).nm, p[1].(length).nm
		return reached(float64(a)+float64(b), a+b)
	}, new(func(a, b length) length)),
	operator("minus", "-", func(p ...any) (any, error) {
		a, b := p[0].(length).nm, p[1].(length).nm
		return reached(float64(a)-float64(b), a-b)
	}, new(func(a, b length) length)),
	operator("times", "*", times, new(func(int, length) length), new(func(length, int) length),
		new(func(float64, length) length), new(func(length, float64) length)),
	operator("part", "/", part, new(func(length, int) length), new(func(length, float64) length), new(func(a, b length) float64)),
	comparison("less", "<", func(a, b geom.Length) bool { return a < b }),
	comparison("most", "<=", func(a, b geom.Length) bool { return a <= b }),
	comparison("more", ">", func(a, b geom.Length) bool { return a > b }),
	comparison("least", ">=", func(a, b geom.Length) bool { return a >= b }),
	[]expr.Option{
		chosen("min", func(a, b geom.Length) geom.Length { return min(a, b) }),
		chosen("max", func(a, b geom.Length) geom.Length { return max(a, b) }),
		unitWord("mm", geom.MMUnit), unitWord("cm", geom.CMUnit),
		unitWord("bu", geom.KujiraBu), unitWord("sun", geom.KujiraSun), unitWord("shaku", geom.KujiraShaku),
	},
)

// reservedNames can't be names of a form.
var reservedNames = strings.Fields(`plus minus times part less most more least min max mm cm bu sun shaku
	and or not in true false nil let if else matches contains cloth panel_width panel_length`)

func operator(name, sign string, do func(...any) (any, error), types ...any) []expr.Option {
	return []expr.Option{expr.Function(name, do, types...), expr.Operator(sign, name)}
}

func comparison(name, sign string, is func(a, b geom.Length) bool) []expr.Option {
	return operator(name, sign, func(p ...any) (any, error) {
		return is(p[0].(length).nm, p[1].(length).nm), nil
	}, new(func(a, b length) bool))
}

func times(p ...any) (any, error) {
	l, ok := p[0].(length)
	by := p[1]
	if !ok {
		l, by = p[1].(length), p[0]
	}
	v := float64(l.nm) * number(by)
	if n, whole := by.(int); whole {
		return reached(v, l.nm*geom.Length(n))
	}
	return reached(v, l.nm.Times(number(by)))
}

// part divides: by a whole number it leaves out what is below a nanometre.
func part(p ...any) (any, error) {
	l := p[0].(length).nm
	if by, ok := p[1].(length); ok {
		if by.nm == 0 {
			return nil, errors.New("it divides by a length of nought")
		}
		return float64(l) / float64(by.nm), nil
	}
	by := number(p[1])
	if by == 0 {
		return nil, errors.New("it divides by nought")
	}
	if n, whole := p[1].(int); whole {
		return length{l / geom.Length(n)}, nil
	}
	return reached(float64(l)/by, l.Times(1/by))
}

// chosen is one of two or three lengths.
func chosen(name string, of func(a, b geom.Length) geom.Length) expr.Option {
	return expr.Function(name, func(p ...any) (any, error) {
		best := p[0].(length).nm
		for _, v := range p[1:] {
			best = of(best, v.(length).nm)
		}
		return length{best}, nil
	}, new(func(a, b length) length), new(func(a, b, c length) length))
}

// unitWord makes a length of a number of units.
func unitWord(name string, u geom.Unit) expr.Option {
	return expr.Function(name, func(p ...any) (any, error) {
		n := new(big.Rat).SetFloat64(number(p[0]))
		if n == nil {
			return nil, errReach
		}
		l, err := u.Of(n)
		if err != nil {
			return nil, errReach
		}
		return reached(float64(l), l)
	}, new(func(int) length), new(func(float64) length))
}
