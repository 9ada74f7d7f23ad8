package document

import (
	"fmt"
	"maps"
	"math"
	"slices"

	"tsugime/repeat/bench"
	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

// Motif returns the motif with an ID, and whether there is one.
func (o Order) Motif(id pattern.ID) (pattern.Motif, bool) {
	for _, m := range o.Unit.Motifs {
		if m.ID == id {
			return m, true
		}
	}
	return pattern.Motif{}, false
}

// AddMotif adds m under the next free ID, which is o.NextID; the ID that m came
// with is not looked at.
func AddMotif(o Order, m pattern.Motif) (Order, error) { return AddMotifs(o, m) }

// AddMotifs adds several motifs under the next free IDs, in their order.
func AddMotifs(o Order, motifs ...pattern.Motif) (Order, error) {
	next := o
	next.Unit.Motifs = slices.Concat(o.Unit.Motifs, motifs)
	for i := len(o.Unit.Motifs); i < len(next.Unit.Motifs); i++ {
		next.Unit.Motifs[i].ID = next.NextID
		next.NextID++
	}
	return o.checked(next)
}

// DeleteMotifs takes motifs away, their ties with them. Their IDs are never used
// again.
func DeleteMotifs(o Order, ids ...pattern.ID) (Order, error) {
	gone, err := chosen(o, ids)
	if err != nil {
		return o, err
	}
	next := o
	next.Unit.Motifs = slices.DeleteFunc(slices.Clone(o.Unit.Motifs), func(m pattern.Motif) bool { return gone[m.ID] })
	next.Methods = maps.Clone(o.Methods)
	maps.DeleteFunc(next.Methods, func(id pattern.ID, _ bench.Method) bool { return gone[id] })
	return o.checked(carryTies(o.Design(), next))
}

// MoveMotifs moves motifs by a way.
func MoveMotifs(o Order, by geom.Point, ids ...pattern.ID) (Order, error) {
	return change(o, ids, func(m *pattern.Motif) { m.At = m.At.Add(by) })
}

// MoveMotif moves one motif by a way.
func MoveMotif(o Order, id pattern.ID, by geom.Point) (Order, error) { return MoveMotifs(o, by, id) }

// TurnMotifs turns motifs by degrees, clockwise on the sheet, each about its own
// place.
func TurnMotifs(o Order, degrees float64, ids ...pattern.ID) (Order, error) {
	if math.IsNaN(degrees) || math.IsInf(degrees, 0) {
		return o, fmt.Errorf("turn: %g° is no angle; give a number of degrees", degrees)
	}
	return change(o, ids, func(m *pattern.Motif) { m.TurnDeg = turned(m.TurnDeg + math.Mod(degrees, 360)) })
}

// TurnMotif turns one motif by degrees about its own place.
func TurnMotif(o Order, id pattern.ID, degrees float64) (Order, error) {
	return TurnMotifs(o, degrees, id)
}

// turned brings an angle into (−180, 180], where a mirror only changes its sign.
func turned(degrees float64) float64 {
	degrees = math.Mod(degrees, 360)
	if degrees > 180 {
		degrees -= 360
	} else if degrees <= -180 {
		degrees += 360
	}
	return degrees
}

// MirrorMotifs mirrors motifs left to right as they stand, each about its own
// place. Mirrored twice is as before.
func MirrorMotifs(o Order, ids ...pattern.ID) (Order, error) {
	return change(o, ids, func(m *pattern.Motif) {
		// A mirror after a turn is the turn back after the mirror.
		m.TurnDeg, m.Mirrored = turned(-m.TurnDeg), !m.Mirrored
	})
}

// MirrorMotif mirrors one motif left to right about its own place.
func MirrorMotif(o Order, id pattern.ID) (Order, error) { return MirrorMotifs(o, id) }

// ResizeDiscs gives discs a new diameter. A motif that is no disc is an error.
func ResizeDiscs(o Order, diameter geom.Length, ids ...pattern.ID) (Order, error) {
	want, err := chosen(o, ids)
	if err != nil {
		return o, err
	}
	for _, m := range o.Unit.Motifs {
		if want[m.ID] && !m.Shape.Round() {
			return o, fmt.Errorf("motif %d is an outline, which has no diameter; choose discs", m.ID)
		}
	}
	return change(o, ids, func(m *pattern.Motif) { m.Shape.Disc.Diameter = diameter })
}

// Redraw gives a motif another shape.
func Redraw(o Order, id pattern.ID, shape geom.Shape) (Order, error) {
	return change(o, []pattern.ID{id}, func(m *pattern.Motif) { m.Shape = shape })
}

// Reshape gives a motif the shape that it shall have as it stands: drawn about its
// place, unturned and unmirrored.
func Reshape(o Order, id pattern.ID, shape geom.Shape) (Order, error) {
	return change(o, []pattern.ID{id}, func(m *pattern.Motif) { m.Shape, m.TurnDeg, m.Mirrored = shape, 0, false })
}

// change edits copies of the motifs with the ids.
func change(o Order, ids []pattern.ID, edit func(m *pattern.Motif)) (Order, error) {
	want, err := chosen(o, ids)
	if err != nil {
		return o, err
	}
	next := o
	next.Unit.Motifs = slices.Clone(o.Unit.Motifs)
	for i := range next.Unit.Motifs {
		if m := &next.Unit.Motifs[i]; want[m.ID] {
			edit(m)
		}
	}
	return o.checked(carryTies(o.Design(), next))
}

// chosen returns ids as a set and fails where one is missing.
func chosen(o Order, ids []pattern.ID) (map[pattern.ID]bool, error) {
	want := make(map[pattern.ID]bool, len(ids))
	for _, id := range ids {
		want[id] = true
	}
	n := 0
	for _, m := range o.Unit.Motifs {
		if want[m.ID] {
			n++
		}
	}
	if n < len(want) {
		for _, id := range ids {
			if _, ok := o.Motif(id); !ok {
				return nil, fmt.Errorf("there is no motif %d; choose one that is in the unit", id)
			}
		}
	}
	return want, nil
}
