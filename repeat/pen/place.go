package pen

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"tsugime/repeat/geom"
)

// ParsePlace reads a place as it is written: "12.5, 3" is across and along from the
// origin, "by 3, -2" from a place before, "5 at 30" a distance and the degrees by
// which its direction is turned from the right, clockwise on the sheet. Any unit may
// follow a number; without one it is in bare. A comma parts the two numbers where a
// space follows it; so does a semicolon, and where there is neither, a space.
func ParsePlace(text string, bare geom.Unit, before geom.Point) (geom.Point, error) {
	t := strings.TrimSpace(text)
	if rest, ok := strings.CutPrefix(t, "by "); ok {
		p, err := ParsePlace(rest, bare, before)
		if err != nil || strings.Contains(rest, " at ") || strings.HasPrefix(strings.TrimSpace(rest), "by ") {
			return geom.Point{}, fmt.Errorf("%q is no way; write across and along, like by 3, -2", text)
		}
		return before.Add(p), nil
	}
	if distance, angle, ok := strings.Cut(t, " at "); ok {
		return polar(distance, angle, bare, before)
	}
	across, along, ok := parted(t)
	if !ok {
		return geom.Point{}, fmt.Errorf("%q is no place; write across and along, like 12.5, 3", text)
	}
	x, err := geom.ParseLength(across, bare)
	if err != nil {
		return geom.Point{}, err
	}
	y, err := geom.ParseLength(along, bare)
	return bounded(geom.Point{X: x, Y: y}, err)
}

// parted parts the text of a place into its two numbers.
func parted(t string) (across, along string, ok bool) {
	for _, mark := range []string{";", ", "} {
		if across, along, ok = strings.Cut(t, mark); ok {
			return across, along, true
		}
	}
	if words := strings.Fields(t); len(words) == 2 {
		return words[0], words[1], true
	}
	if across, along, ok = strings.Cut(t, ","); ok && !strings.Contains(along, ",") {
		return across, along, true
	}
	return "", "", false
}

func polar(distance, angle string, bare geom.Unit, before geom.Point) (geom.Point, error) {
	l, err := geom.ParseLength(distance, bare)
	if err != nil {
		return geom.Point{}, err
	}
	deg, err := ParseDegrees(angle)
	if err != nil {
		return geom.Point{}, err
	}
	if _, err := bounded(geom.Point{X: l}, nil); err != nil {
		return geom.Point{}, err
	}
	return before.Add(geom.Rotate(deg).Apply(geom.Point{X: l})), nil
}

// ParseDegrees reads an angle in degrees, with or without its sign "°".
func ParseDegrees(text string) (float64, error) {
	t := strings.TrimSpace(strings.TrimSuffix(strings.TrimSpace(text), "°"))
	deg, err := strconv.ParseFloat(strings.ReplaceAll(strings.ReplaceAll(t, ",", "."), "−", "-"), 64)
	if err != nil || math.IsNaN(deg) || math.Abs(deg) > 36_000 {
		return 0, fmt.Errorf("%q is no angle; write degrees, like 30", text)
	}
	return deg, nil
}

// bounded refuses a place farther out than any sheet.
func bounded(p geom.Point, err error) (geom.Point, error) {
	if err == nil && (p.X.Abs() > 3*geom.Metre || p.Y.Abs() > 3*geom.Metre) {
		err = fmt.Errorf("%s, %s mm is out of reach; stay within ±3000 mm", p.X, p.Y)
	}
	if err != nil {
		return geom.Point{}, err
	}
	return p, nil
}
