// Package check turns what the stations measured into findings. Stations
// measure; only this package judges, by the limits of the order.
package check

import "tsugime/repeat/geom"

// A Severity says how much a finding matters.
type Severity string

// The severities, the worst last.
const (
	Note    Severity = "note"    // worth knowing
	Warning Severity = "warning" // look before you cut
	Fault   Severity = "fault"   // cutting this wastes the paper or the cloth
)

// Rank orders severities: note 0, warning 1, fault 2, anything else −1.
func (s Severity) Rank() int {
	for i, t := range []Severity{Note, Warning, Fault} {
		if s == t {
			return i
		}
	}
	return -1
}

// A Domain says on what a place lies.
type Domain string

// The domains. Places on a unit repeat by the lattice; places on a sheet are
// from its own start; places on the cloth are along the bolt.
const (
	OnUnit  Domain = "unit"
	OnSheet Domain = "sheet"
	OnCloth Domain = "cloth"
)

// A Finding is something measured that needs a look.
type Finding struct {
	Code     string // stable, like "joint-step"; never used again for another thing
	Severity Severity
	Domain   Domain
	At       geom.Point
	Text     string // what is wrong, with the measure
	Remedy   string // what to do about it
}
