package outlinefile

import (
	"math"
	"strconv"
	"strings"

	"tsugime/repeat/geom"
)

// perInch is how many px an inch has (CSS 2.1, section 4.3.2; SVG 1.1 leaves it to
// the program, and all now take this).
const perInch = 96

// A measure is a length of SVG: a number with or without a unit.
type measure struct {
	value float64
	unit  string
}

// pxOf are the units of SVG 1.1, section 7.10, in px; % and em depend on the place.
var pxOf = map[string]float64{
	"": 1, "px": 1, "in": perInch, "mm": perInch / 25.4, "cm": perInch / 2.54,
	"pt": perInch / 72.0, "pc": perInch / 6.0, "q": perInch / 101.6,
}

func parseMeasure(text string) (measure, bool) {
	text = strings.TrimSpace(text)
	end := len(text)
	for end > 0 && (text[end-1] >= 'a' && text[end-1] <= 'z' || text[end-1] >= 'A' && text[end-1] <= 'Z' || text[end-1] == '%') {
		end--
	}
	v, err := strconv.ParseFloat(strings.TrimSpace(text[:end]), 64)
	if err != nil || math.IsNaN(v) || math.Abs(v) > farthest {
		return measure{}, false
	}
	return measure{v, strings.ToLower(text[end:])}, true
}

// px returns m in user units. whole is what 100 % is, em the size of the letters.
func (m measure) px(whole, em float64) (float64, bool) {
	switch m.unit {
	case "%":
		return m.value / 100 * whole, true
	case "em":
		return m.value * em, true
	case "ex":
		return m.value * em / 2, true
	}
	k, ok := pxOf[m.unit]
	return m.value * k, ok
}

// numbers reads a list of numbers with spaces or commas between.
func numbers(text string) ([]float64, bool) {
	var all []float64
	for word := range strings.FieldsFuncSeq(text, func(r rune) bool { return r == ',' || r == ' ' || r == '\t' || r == '\n' || r == '\r' }) {
		v, err := strconv.ParseFloat(word, 64)
		if err != nil || !(math.Abs(v) <= farthest) {
			return nil, false
		}
		all = append(all, v)
	}
	return all, true
}

// transform reads a transform attribute (SVG 1.1, section 7.6).
func transform(text string) (geom.Affine, bool) {
	m := geom.Identity
	rest := strings.TrimSpace(text)
	for rest != "" {
		name, after, ok := strings.Cut(rest, "(")
		if !ok {
			return m, false
		}
		inside, after, ok := strings.Cut(after, ")")
		if !ok {
			return m, false
		}
		n, ok := numbers(inside)
		if !ok {
			return m, false
		}
		one, ok := transformOne(strings.TrimSpace(name), n)
		if !ok {
			return m, false
		}
		m = one.Then(m)
		rest = strings.TrimLeft(after, " ,\t\n\r")
	}
	return m, true
}

func transformOne(name string, n []float64) (geom.Affine, bool) {
	or := func(i int, fallback float64) float64 {
		if i < len(n) {
			return n[i]
		}
		return fallback
	}
	count := func(allowed ...int) bool {
		for _, a := range allowed {
			if len(n) == a {
				return true
			}
		}
		return false
	}
	switch {
	case name == "matrix" && count(6):
		return geom.Affine{A: n[0], C: n[1], B: n[2], D: n[3], E: n[4], F: n[5]}, true
	case name == "translate" && count(1, 2):
		return geom.Affine{A: 1, D: 1, E: n[0], F: or(1, 0)}, true
	case name == "scale" && count(1, 2):
		return geom.Scale(n[0], or(1, n[0])), true
	case name == "rotate" && count(1, 3):
		to := geom.Affine{A: 1, D: 1, E: or(1, 0), F: or(2, 0)}
		back := geom.Affine{A: 1, D: 1, E: -or(1, 0), F: -or(2, 0)}
		return back.Then(geom.Rotate(n[0])).Then(to), true
	case name == "skewX" && count(1):
		return geom.Affine{A: 1, B: math.Tan(n[0] * math.Pi / 180), D: 1}, true
	case name == "skewY" && count(1):
		return geom.Affine{A: 1, C: math.Tan(n[0] * math.Pi / 180), D: 1}, true
	}
	return geom.Identity, false
}

// A port is an area that user units are laid in: an svg or a symbol.
type port struct{ width, height float64 }

// diagonal is what 100 % of a length that is neither across nor along is.
func (p port) diagonal() float64 { return math.Hypot(p.width, p.height) / math.Sqrt2 }

// fitted returns the map that lays the box of a viewBox into width × height at the
// origin as preserveAspectRatio says (SVG 1.1, section 7.8).
func fitted(box [4]float64, width, height float64, preserve string) geom.Affine {
	sx, sy := width/box[2], height/box[3]
	words := strings.Fields(preserve)
	if len(words) > 0 && words[0] == "defer" {
		words = words[1:]
	}
	align, slice := "xMidYMid", false
	if len(words) > 0 {
		align = words[0]
		slice = len(words) > 1 && words[1] == "slice"
	}
	if align != "none" {
		if slice {
			sx = max(sx, sy)
		} else {
			sx = min(sx, sy)
		}
		sy = sx
	}
	m := geom.Affine{A: sx, D: sy, E: -box[0] * sx, F: -box[1] * sy}
	share := func(word string) float64 {
		switch {
		case strings.Contains(align, word+"Mid"):
			return 0.5
		case strings.Contains(align, word+"Max"):
			return 1
		}
		return 0
	}
	if align != "none" {
		m.E += share("x") * (width - box[2]*sx)
		m.F += share("Y") * (height - box[3]*sy)
	}
	return m
}
