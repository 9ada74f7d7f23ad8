package geom

import (
	"fmt"
	"math/big"
	"strings"
	"unicode"
)

// A Unit is a measure that people write lengths in. Its size is an exact
// fraction of a millimetre.
type Unit struct {
	Name     string // as written after a number: "mm", "kane sun"
	num, den int64  // size in millimetres
	finer    int    // decimals that are written beyond those asked for
}

// The units that are read and written. The kane shaku is 10/33 m and the kujira
// shaku 25/66 m by the Japanese Weights and Measures Act of 1891 (law no. 3,
// art. 4); a shaku is 10 sun, a sun 10 bu, a bu 10 rin. Stencil density is
// counted in kane, cloth in kujira.
var (
	MMUnit      = Unit{"mm", 1, 1, 0}
	CMUnit      = Unit{"cm", 10, 1, 0}
	MUnit       = Unit{"m", 1000, 1, 0}
	InchUnit    = Unit{"in", 254, 10, 0}
	KaneShaku   = Unit{"kane shaku", 10_000, 33, 0}
	KaneSun     = Unit{"kane sun", 1_000, 33, 0}
	KaneBu      = Unit{"kane bu", 100, 33, 0}
	KaneRin     = Unit{"kane rin", 10, 33, 0}
	KujiraShaku = Unit{"kujira shaku", 25_000, 66, 0}
	KujiraSun   = Unit{"kujira sun", 2_500, 66, 0}
	KujiraBu    = Unit{"kujira bu", 250, 66, 0}
	KujiraRin   = Unit{"kujira rin", 25, 66, 0}
)

// Units lists every unit, the metric ones first.
func Units() []Unit {
	return []Unit{
		MMUnit, CMUnit, MUnit, InchUnit,
		KaneShaku, KaneSun, KaneBu, KaneRin,
		KujiraShaku, KujiraSun, KujiraBu, KujiraRin,
	}
}

// UnitNamed returns the unit that is written as name, and whether there is one.
func UnitNamed(name string) (Unit, bool) {
	name = strings.Join(strings.Fields(strings.ToLower(name)), " ")
	switch name {
	case "inch", "inches", "\"":
		return InchUnit, true
	}
	for _, u := range Units() {
		if u.Name == name {
			return u, true
		}
	}
	return Unit{}, false
}

// Family is the ruler that u stands on: "kane", "kujira", or "" for the rest.
func (u Unit) Family() string {
	family, _, ok := strings.Cut(u.Name, " ")
	if !ok {
		return ""
	}
	return family
}

// Of returns n of the unit, rounded once to the nanometre.
func (u Unit) Of(n *big.Rat) (Length, error) {
	v := new(big.Rat).Mul(n, big.NewRat(u.num*int64(Millimetre), u.den))
	// Round half away from zero: floor(|v| + 1/2).
	twice := new(big.Int).Lsh(new(big.Int).Abs(v.Num()), 1)
	twice.Add(twice, v.Denom())
	whole := twice.Quo(twice, new(big.Int).Lsh(v.Denom(), 1))
	if !whole.IsInt64() {
		return 0, fmt.Errorf("%s %s is longer than any cloth", n.FloatString(0), u.Name)
	}
	l := Length(whole.Int64())
	if v.Sign() < 0 {
		l = -l
	}
	return l, nil
}

// Format writes l in the unit with at most places decimals and the unit's name:
// Format(181.818182 mm, kane sun, 3) is "6 kane sun".
func (u Unit) Format(l Length, places int) string {
	return u.Number(l, places) + " " + u.Name
}

// Number writes l in the unit with at most places decimals, without the name.
func (u Unit) Number(l Length, places int) string {
	s := u.rat(l).FloatString(places + u.finer)
	if strings.Contains(s, ".") {
		s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	}
	if s == "-0" || s == "" {
		return "0"
	}
	return s
}

// Finer returns the unit written with more decimals than are asked for: a place of an inch
// is twenty-five times coarser than one of a millimetre.
func (u Unit) Finer(places int) Unit {
	u.finer = places
	return u
}

// rat returns l as an exact count of the unit.
func (u Unit) rat(l Length) *big.Rat {
	n := big.NewRat(int64(l), int64(Millimetre))
	return n.Mul(n, big.NewRat(u.den, u.num))
}

// ParseLength reads a length as people write it: "12", "12mm", "1.2 cm",
// "1 1/2 in", "6 kane sun", "3 sun 5 bu", "182/6", "3 mm + 2 cm", with a point or a
// comma; in Japanese "3寸5分", "鯨尺1尺2寸", "１２．５ミリ". A number without a unit is in
// bare; a sun, bu, rin or shaku without a ruler is on the ruler named first, on bare's,
// or kane where there is none. The sum is rounded once.
func ParseLength(text string, bare Unit) (Length, error) {
	words := splitLength(text)
	if len(words) > 1 && (words[0] == "kane" || words[0] == "kujira") && numeric(words[1]) {
		bare, _ = UnitNamed(words[0] + " sun")
		words = words[1:]
	}
	if len(words) == 0 {
		return 0, fmt.Errorf("%q is no length; write a number and a unit, like 12 mm", text)
	}
	sum, sign := new(big.Rat), int64(1)
	for first := true; first || len(words) > 0; first = false {
		joined := words[0] == "+" || words[0] == "-"
		if joined {
			sign = 1
			if words[0] == "-" {
				sign = -1
			}
			words = words[1:]
		}
		var n *big.Rat
		var err error
		if n, words, err = takeNumber(words); err != nil {
			return 0, fmt.Errorf("%q: %w", text, err)
		}
		if !first && !joined && len(words) == 0 {
			return 0, fmt.Errorf("%q: the %s has no unit; write it, like 3 sun 5 bu", text, n.RatString())
		}
		var u Unit
		if u, words, err = takeUnit(words, bare); err != nil {
			return 0, fmt.Errorf("%q: %w", text, err)
		}
		sum.Add(sum, n.Mul(n, big.NewRat(sign*u.num, u.den)))
	}
	return MMUnit.Of(sum)
}

// japaneseWords are the words for rulers and units in Japanese.
var japaneseWords = map[string]string{
	"尺": "shaku", "寸": "sun", "分": "bu", "厘": "rin", "鯨尺": "kujira", "鯨": "kujira", "曲尺": "kane", "曲": "kane",
	"ミリ": "mm", "ミリメートル": "mm", "センチ": "cm", "センチメートル": "cm", "メートル": "m", "インチ": "in",
}

// plainRune is a letter, digit or sign of full width as the plain one (Unicode, block
// Halfwidth and Fullwidth Forms), and one sign for each meaning.
func plainRune(r rune) rune {
	switch {
	case r >= 0xff01 && r <= 0xff5e:
		r -= 0xfee0
	case r == '\u3000' || r == '\u00a0' || r == '\t':
		return ' '
	}
	switch r {
	case ',':
		return '.'
	case '−', '–':
		return '-'
	case '×':
		return '*'
	case '÷':
		return '/'
	}
	return r
}

// splitLength parts text into numbers, words and signs.
func splitLength(text string) []string {
	var b strings.Builder
	kind := ' '
	for _, r := range text {
		r = unicode.ToLower(plainRune(r))
		now := 'a'
		switch {
		case r >= '0' && r <= '9' || r == '.':
			now = '0'
		case strings.ContainsRune("/*-+ ", r):
			now = r
		}
		if now != kind {
			b.WriteByte(' ')
		}
		kind = now
		b.WriteRune(r)
	}
	words := strings.Fields(b.String())
	for i, w := range words {
		if known, ok := japaneseWords[w]; ok {
			words[i] = known
		}
	}
	return words
}

// takeNumber takes a number, "1.5", a whole one with a fraction, "1 1/2", or several that
// are multiplied and divided in their order, "182/6*2".
func takeNumber(words []string) (*big.Rat, []string, error) {
	n, words, err := takeDigits(words)
	if err != nil {
		return nil, nil, err
	}
	if len(words) >= 3 && numeric(words[0]) && words[1] == "/" && numeric(words[2]) {
		part, rest, err := takeNumber(words)
		if err != nil {
			return nil, nil, err
		}
		return n.Add(n, part), rest, nil
	}
	for len(words) >= 2 && (words[0] == "/" || words[0] == "*") && numeric(words[1]) {
		by, rest, err := takeDigits(words[1:])
		switch {
		case err != nil:
			return nil, nil, err
		case words[0] == "*":
			n.Mul(n, by)
		case by.Sign() == 0:
			return nil, nil, fmt.Errorf("can't divide by %s", words[1])
		default:
			n.Quo(n, by)
		}
		words = rest
	}
	return n, words, nil
}

func takeDigits(words []string) (*big.Rat, []string, error) {
	if len(words) == 0 || !numeric(words[0]) {
		return nil, nil, fmt.Errorf("a number is missing; write it before the unit, like 12 mm")
	}
	n, ok := new(big.Rat).SetString(words[0])
	if !ok {
		return nil, nil, fmt.Errorf("%s is no number", words[0])
	}
	return n, words[1:], nil
}

// numeric reports whether a word is digits with at most one point, short enough
// to be a length and not an attack.
func numeric(word string) bool {
	return len(word) <= 24 && strings.Trim(word, "0123456789.") == "" &&
		strings.Count(word, ".") <= 1 && strings.ContainsAny(word, "0123456789")
}

func takeUnit(words []string, bare Unit) (Unit, []string, error) {
	if len(words) == 0 || words[0] == "+" || words[0] == "-" {
		return bare, words, nil
	}
	if len(words) >= 2 {
		if u, ok := UnitNamed(words[0] + " " + words[1]); ok {
			return u, words[2:], nil
		}
	}
	if u, ok := UnitNamed(words[0]); ok {
		return u, words[1:], nil
	}
	family := bare.Family()
	if family == "" {
		family = "kane"
	}
	if u, ok := UnitNamed(family + " " + words[0]); ok {
		return u, words[1:], nil
	}
	return Unit{}, nil, fmt.Errorf("%s is no unit; use mm, cm, m, in, kane sun or kujira sun (shaku, bu, rin)", words[0])
}
