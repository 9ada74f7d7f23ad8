package pattern

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"tsugime/repeat/geom"
)

// A ParamKind says what a parameter counts.
type ParamKind string

// The kinds of parameters.
const (
	LengthParam ParamKind = "length" // millimetres
	CountParam  ParamKind = "count"  // a whole number
	ShareParam  ParamKind = "share"  // percent
	ChoiceParam ParamKind = "choice" // one of Choices, by its place in the list
)

// A Param is one row of a ground's table. Least, Most and Default are in Unit.
type Param struct {
	Key     string // in files and flags
	Name    string // as it is shown
	Help    string // one sentence
	Kind    ParamKind
	Unit    string // "mm", "%" or "", always shown with the number
	Least   float64
	Most    float64
	Default float64
	Choices []string // of a ChoiceParam
}

// Check returns an error where v is none of what p takes.
func (p Param) Check(v float64) error {
	switch {
	case math.IsNaN(v) || v < p.Least || v > p.Most:
		return fmt.Errorf("%s: %s is out of bounds; give %s", p.Key, p.number(v), p.bounds())
	case p.Kind != LengthParam && p.Kind != ShareParam && v != math.Trunc(v):
		return fmt.Errorf("%s: %s is no whole number; give %s", p.Key, p.number(v), p.bounds())
	}
	return nil
}

func (p Param) bounds() string {
	if p.Kind == ChoiceParam {
		return "one of " + strings.Join(p.Choices, ", ")
	}
	return p.number(p.Least) + " to " + p.number(p.Most)
}

// number writes v with p's unit.
func (p Param) number(v float64) string {
	s := strconv.FormatFloat(v, 'f', -1, 64)
	if p.Unit != "" {
		s += " " + p.Unit
	}
	return s
}

// Text writes v as people read it: a number with its unit, or the choice's name.
func (p Param) Text(v float64) string {
	if i := int(v); p.Kind == ChoiceParam && i >= 0 && i < len(p.Choices) {
		return p.Choices[i]
	}
	return p.number(v)
}

// Parse reads a value of p as people write it, lengths in any unit; Text is read
// back to the same.
func (p Param) Parse(text string) (float64, error) {
	text = strings.TrimSpace(text)
	var v float64
	switch p.Kind {
	case ChoiceParam:
		i := slices.Index(p.Choices, text)
		if i < 0 {
			return 0, fmt.Errorf("%s: there is no %q; give %s", p.Key, text, p.bounds())
		}
		v = float64(i)
	case LengthParam:
		l, err := geom.ParseLength(text, geom.MMUnit)
		if err != nil {
			return 0, fmt.Errorf("%s: %w", p.Key, err)
		}
		v = l.MM()
	default:
		n, err := strconv.ParseFloat(strings.TrimSpace(strings.TrimSuffix(text, "%")), 64)
		if err != nil {
			return 0, fmt.Errorf("%s: %q is no number; give %s", p.Key, text, p.bounds())
		}
		v = n
	}
	return v, p.Check(v)
}

// values are a recipe's values with every gap filled from the table.
type values map[string]float64

// nm returns a length in nanometres.
func (v values) nm(key string) float64 { return v[key] * float64(geom.Millimetre) }

// share returns a share as a fraction.
func (v values) share(key string) float64 { return v[key] / 100 }

func (v values) count(key string) int { return int(v[key]) }

// length is a row of the table for a length in millimetres.
func length(key, name string, least, most, usual float64, help string) Param {
	return Param{Key: key, Name: name, Help: help, Kind: LengthParam, Unit: "mm", Least: least, Most: most, Default: usual}
}

// counted is a row for a whole number.
func counted(key, name string, least, most, usual float64, help string) Param {
	return Param{Key: key, Name: name, Help: help, Kind: CountParam, Least: least, Most: most, Default: usual}
}

// percent is a row for a share.
func percent(key, name string, least, most, usual float64, help string) Param {
	return Param{Key: key, Name: name, Help: help, Kind: ShareParam, Unit: "%", Least: least, Most: most, Default: usual}
}

// chosen is a row for one of several names, the first being usual.
func chosen(key, name, help string, choices ...string) Param {
	return Param{Key: key, Name: name, Help: help, Kind: ChoiceParam, Most: float64(len(choices) - 1), Choices: choices}
}
