package document

import (
	"bytes"
	"math"
	"strconv"

	"tsugime/repeat/geom"
)

// maxLength is the longest length that a file may name, far above any bolt.
const maxLength = 1000 * geom.Metre

// parseMM returns a JSON number of millimetres as a length, and whether it is
// within maxLength. Up to six decimals are exact; more are rounded half away
// from zero. The number never becomes a float64.
func parseMM(number []byte) (geom.Length, bool) {
	negative := number[0] == '-'
	if negative {
		number = number[1:]
	}
	exponent := 0
	if i := bytes.IndexAny(number, "eE"); i >= 0 {
		// Out of int is out of reach, or nothing at all, either way.
		exponent, _ = strconv.Atoi(string(number[i+1:]))
		number = number[:i]
	}
	exponent = min(max(exponent, -1_000_000), 1_000_000)
	whole, part, _ := bytes.Cut(number, []byte{'.'})
	// The digits before place are whole nanometres.
	place := len(whole) + 6 + exponent
	var nm int64
	for i := 0; i < place; i++ {
		digit := byte('0')
		if i < len(whole)+len(part) {
			digit = digitAt(whole, part, i)
		} else if nm == 0 {
			break
		}
		nm = nm*10 + int64(digit-'0')
		if nm > int64(maxLength) {
			return 0, false
		}
	}
	if place >= 0 && place < len(whole)+len(part) && digitAt(whole, part, place) >= '5' {
		nm++
	}
	if negative {
		nm = -nm
	}
	return geom.Length(nm), geom.Length(nm).Abs() <= maxLength
}

func digitAt(whole, part []byte, i int) byte {
	if i < len(whole) {
		return whole[i]
	}
	return part[i-len(whole)]
}

// parseFloat returns a JSON number as the nearest float64, and whether there is
// one. shift moves the point to the right: −2 reads a percentage as a fraction.
func parseFloat(number []byte, shift int) (float64, bool) {
	mantissa, exponent := number, 0
	if i := bytes.IndexAny(number, "eE"); i >= 0 {
		e, err := strconv.Atoi(string(number[i+1:]))
		if err != nil {
			return 0, false
		}
		mantissa, exponent = number[:i], min(max(e, -1_000_000), 1_000_000)
	}
	text := string(mantissa)
	if exponent+shift != 0 {
		text += "e" + strconv.Itoa(exponent+shift)
	}
	v, err := strconv.ParseFloat(text, 64)
	return v + 0, err == nil && !math.IsInf(v, 0)
}

// appendFloat appends v with its point moved to the right by shift, in the
// fewest digits that parseFloat reads back as v with −shift.
func appendFloat(dst []byte, v float64, shift int) []byte {
	if v == 0 {
		return append(dst, '0')
	}
	if v < 0 {
		dst, v = append(dst, '-'), -v
	}
	scientific := strconv.AppendFloat(nil, v, 'e', -1, 64) // d.ddde±dd
	mantissa, power, _ := bytes.Cut(scientific, []byte{'e'})
	exponent, _ := strconv.Atoi(string(power))
	exponent += shift
	digits := bytes.ReplaceAll(mantissa, []byte{'.'}, nil)
	switch {
	case exponent < -7 || exponent > 14:
		dst = append(append(dst, mantissa...), 'e')
		return strconv.AppendInt(dst, int64(exponent), 10)
	case exponent < 0:
		dst = append(dst, "0."...)
		return append(append(dst, bytes.Repeat([]byte{'0'}, -exponent-1)...), digits...)
	case len(digits) <= exponent+1:
		return append(append(dst, digits...), bytes.Repeat([]byte{'0'}, exponent+1-len(digits))...)
	}
	dst = append(append(dst, digits[:exponent+1]...), '.')
	return append(dst, digits[exponent+1:]...)
}
