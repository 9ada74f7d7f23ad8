package geom

import (
	"fmt"
	"math"
	"strconv"
)

func (p *pathReader) skip() {
	for p.rest != "" {
		switch p.rest[0] {
		case ' ', '\t', '\n', '\r', ',':
			p.rest = p.rest[1:]
		default:
			return
		}
	}
}

func (p *pathReader) number() (float64, error) { return p.numberWithin(p.reach) }

func (p *pathReader) numberWithin(most float64) (float64, error) {
	p.skip()
	n := numberLength(p.rest)
	if n == 0 {
		return 0, fmt.Errorf("a number is missing")
	}
	v, err := strconv.ParseFloat(p.rest[:n], 64)
	if err != nil {
		return 0, fmt.Errorf("%s is no number", p.rest[:n])
	}
	if math.Abs(v) > most {
		return 0, fmt.Errorf("%s%s is out of reach; stay within ±%.0f%s", p.rest[:n], p.unit, most, p.unit)
	}
	p.rest = p.rest[n:]
	return v, nil
}

// numberLength returns how many bytes at the start of s are a number of the SVG
// grammar.
func numberLength(s string) int {
	i, digits := 0, 0
	if i < len(s) && (s[i] == '+' || s[i] == '-') {
		i++
	}
	for dot := false; i < len(s) && (s[i] >= '0' && s[i] <= '9' || s[i] == '.' && !dot); i++ {
		if s[i] == '.' {
			dot = true
		} else {
			digits++
		}
	}
	if digits == 0 {
		return 0
	}
	if i < len(s) && (s[i] == 'e' || s[i] == 'E') {
		j := i + 1
		if j < len(s) && (s[j] == '+' || s[j] == '-') {
			j++
		}
		from := j
		for j < len(s) && s[j] >= '0' && s[j] <= '9' {
			j++
		}
		if j > from {
			return j
		}
	}
	return i
}

// flag reads a 0 or 1 of an arc, which may stand without a space after it.
func (p *pathReader) flag() (bool, error) {
	p.skip()
	if p.rest == "" || p.rest[0] != '0' && p.rest[0] != '1' {
		return false, fmt.Errorf("an arc's flag must be 0 or 1")
	}
	on := p.rest[0] == '1'
	p.rest = p.rest[1:]
	return on, nil
}

// numbers reads n coordinates; pairs are made absolute where relative is set.
func (p *pathReader) numbers(n int, relative bool) ([6]float64, error) {
	var v [6]float64
	for i := range n {
		x, err := p.number()
		if err != nil {
			return v, err
		}
		if relative && i%2 == 0 {
			x += p.x
		} else if relative {
			x += p.y
		}
		v[i] = x
	}
	return v, nil
}
