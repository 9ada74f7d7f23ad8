package geom

import (
	"math"
	"strconv"
)

// A Length is a distance or a coordinate in whole nanometres. The zero Length
// is no distance. It reaches ±9.2 million kilometres, so sums never overflow.
type Length int64

// Lengths to multiply with. All are exact.
const (
	Nanometre  Length = 1
	Micrometre        = 1000 * Nanometre
	Millimetre        = 1000 * Micrometre
	Centimetre        = 10 * Millimetre
	Metre             = 1000 * Millimetre
	// Inch is 25.4 mm exactly (international yard and pound agreement, 1959).
	Inch = 25_400_000 * Nanometre
)

// MM returns the Length nearest to v millimetres; halves go away from zero.
// v must be finite and within ±9e9 mm.
func MM(v float64) Length { return Length(math.Round(v * float64(Millimetre))) }

// MM returns l in millimetres. The result is the float64 nearest to the exact
// value, so MM(l.MM()) == l up to 9 km.
func (l Length) MM() float64 { return float64(l) / float64(Millimetre) }

// Abs returns the distance without its sign.
func (l Length) Abs() Length {
	if l < 0 {
		return -l
	}
	return l
}

// Times returns l·f, rounded to the nanometre; halves go away from zero.
func (l Length) Times(f float64) Length { return Length(math.Round(float64(l) * f)) }

// String returns l in millimetres, exact, without trailing zeros: "181.818182".
func (l Length) String() string { return string(l.AppendMM(nil, 6)) }

// AppendMM appends l in millimetres with at most places decimals (0 to 6),
// rounded half away from zero, without trailing zeros and never as "-0". Every
// writer uses it, so the same length reads the same in each file.
func (l Length) AppendMM(dst []byte, places int) []byte {
	unit := int64(1)
	for range 6 - places {
		unit *= 10
	}
	v := int64(l)
	negative := v < 0
	if negative {
		v = -v
	}
	v = (v + unit/2) / unit
	if negative && v != 0 {
		dst = append(dst, '-')
	}
	one := int64(Millimetre) / unit
	dst = strconv.AppendInt(dst, v/one, 10)
	rest := v % one
	if rest == 0 {
		return dst
	}
	dst = append(dst, '.')
	for one /= 10; rest > 0; one /= 10 {
		dst = append(dst, byte('0'+rest/one))
		rest %= one
	}
	return dst
}
