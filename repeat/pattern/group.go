package pattern

import (
	"fmt"
	"slices"
	"strings"
)

// A Group is one of the 17 plane groups by its short Hermann–Mauguin name
// (International Tables for Crystallography, volume A).
type Group string

// The plane groups.
const (
	P1   Group = "p1"
	P2   Group = "p2"
	PM   Group = "pm"
	PG   Group = "pg"
	CM   Group = "cm"
	P2MM Group = "p2mm"
	P2MG Group = "p2mg"
	P2GG Group = "p2gg"
	C2MM Group = "c2mm"
	P4   Group = "p4"
	P4MM Group = "p4mm"
	P4GM Group = "p4gm"
	P3   Group = "p3"
	P3M1 Group = "p3m1"
	P31M Group = "p31m"
	P6   Group = "p6"
	P6MM Group = "p6mm"
)

// A system says what the lattice of a group must look like.
type system int

const (
	obliqueAxes     system = iota // any
	rectangularAxes               // two vectors at right angles
	centredAxes                   // so, with a place in the middle of their rectangle
	squareAxes                    // as long as each other too
	hexagonalAxes                 // as long as each other, 120° apart
)

// A groupEntry is one row of the table: generators as coordinates, and the
// corners of a fundamental domain in 24ths.
type groupEntry struct {
	group      Group
	short      string // the older short name where it differs
	system     system
	generators []string
	domain     [][2]int
	ops        []Op
}

var (
	wholeCell   = [][2]int{{0, 0}, {24, 0}, {24, 24}, {0, 24}}
	halfCell    = [][2]int{{0, 0}, {12, 0}, {12, 24}, {0, 24}}
	quarterCell = [][2]int{{0, 0}, {12, 0}, {12, 12}, {0, 12}}
)

// table holds the groups in the order of the International Tables, in their
// settings and origins.
var table = filled([]groupEntry{
	{P1, "", obliqueAxes, nil, wholeCell, nil},
	{P2, "", obliqueAxes, []string{"-x,-y"}, halfCell, nil},
	{PM, "", rectangularAxes, []string{"-x,y"}, halfCell, nil},
	{PG, "", rectangularAxes, []string{"-x,y+1/2"}, halfCell, nil},
	{CM, "", centredAxes, []string{"-x,y", "x+1/2,y+1/2"}, quarterCell, nil},
	{P2MM, "pmm", rectangularAxes, []string{"-x,-y", "-x,y"}, quarterCell, nil},
	{P2MG, "pmg", rectangularAxes, []string{"-x,-y", "-x+1/2,y"}, [][2]int{{0, 0}, {6, 0}, {6, 24}, {0, 24}}, nil},
	{P2GG, "pgg", rectangularAxes, []string{"-x,-y", "-x+1/2,y+1/2"}, quarterCell, nil},
	{C2MM, "cmm", centredAxes, []string{"-x,-y", "-x,y", "x+1/2,y+1/2"}, [][2]int{{0, 0}, {6, 0}, {6, 12}, {0, 12}}, nil},
	{P4, "", squareAxes, []string{"-y,x"}, quarterCell, nil},
	{P4MM, "p4m", squareAxes, []string{"-y,x", "-x,y"}, [][2]int{{0, 0}, {12, 0}, {12, 12}}, nil},
	{P4GM, "p4g", squareAxes, []string{"-y,x", "-x+1/2,y+1/2"}, [][2]int{{0, 0}, {12, 0}, {0, 12}}, nil},
	{P3, "", hexagonalAxes, []string{"-y,x-y"}, [][2]int{{0, 0}, {16, 8}, {24, 24}, {8, 16}}, nil},
	{P3M1, "", hexagonalAxes, []string{"-y,x-y", "-y,-x"}, [][2]int{{0, 0}, {16, 8}, {8, 16}}, nil},
	{P31M, "", hexagonalAxes, []string{"-y,x-y", "y,x"}, [][2]int{{0, 0}, {24, 0}, {16, 8}}, nil},
	{P6, "", hexagonalAxes, []string{"x-y,x"}, [][2]int{{0, 0}, {24, 0}, {16, 8}}, nil},
	{P6MM, "p6m", hexagonalAxes, []string{"x-y,x", "-y,-x"}, [][2]int{{0, 0}, {12, 0}, {16, 8}}, nil},
})

func filled(rows []groupEntry) []groupEntry {
	for i := range rows {
		rows[i].ops = closed(rows[i].generators)
	}
	return rows
}

// Groups lists the 17 plane groups in the order of the International Tables.
func Groups() []Group {
	groups := make([]Group, len(table))
	for i, e := range table {
		groups[i] = e.group
	}
	return groups
}

// ParseGroup returns the group of a short Hermann–Mauguin name, or of the older
// forms pmm, pmg, pgg, cmm, p4m, p4g and p6m.
func ParseGroup(name string) (Group, error) {
	lower := strings.ToLower(strings.TrimSpace(name))
	for _, e := range table {
		if lower == string(e.group) || lower == e.short && lower != "" {
			return e.group, nil
		}
	}
	return "", fmt.Errorf("plane group: %q is none of the 17; give one of %v", name, Groups())
}

// entry returns g's row. A Group that is none of the 17 has none.
func (g Group) entry() (groupEntry, error) {
	i := slices.IndexFunc(table, func(e groupEntry) bool { return e.group == g })
	if i < 0 {
		_, err := ParseGroup(string(g))
		return groupEntry{}, err
	}
	return table[i], nil
}

// Ops returns the general positions of g in its conventional cell, the identity
// first: as many as the multiplicity that the International Tables give.
func (g Group) Ops() []Op {
	e, err := g.entry()
	if err != nil {
		return nil
	}
	return slices.Clone(e.ops)
}
