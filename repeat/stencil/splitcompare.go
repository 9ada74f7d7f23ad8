package stencil

import (
	"slices"

	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

// A comparison is a motif against its parts on the two sheets.
type comparison struct {
	motif pattern.Motif
	parts []pattern.Motif
	rings []geom.Ring   // of the motif
	part  [][]geom.Ring // of each part
	trims [][]geom.Ring
	ok    []bool
}

// compared flattens a motif and its parts once and finds the trims. Parts that are
// the motif itself leave nothing.
func compared(m pattern.Motif, parts []pattern.Motif) comparison {
	c := comparison{motif: m, parts: parts, rings: m.Placed().Rings(geom.Chord)}
	var whole rimEdges
	for _, p := range parts {
		rings := c.rings
		var trims []geom.Ring
		ok := cutsAlike(m, p)
		if !ok {
			if whole.from == nil {
				whole = edgesOf(c.rings)
			}
			rings = p.Placed().Rings(geom.Chord)
			trims, ok = whole.trims(rings)
		}
		c.part, c.trims, c.ok = append(c.part, rings), append(c.trims, trims), append(c.ok, ok)
	}
	return c
}

// missing reports whether the parts leave anything of the motif.
func (c comparison) missing() (bool, error) {
	if len(c.parts) == 0 {
		return true, nil
	}
	for i, ok := range c.ok {
		for k := range i + 1 {
			if ok && c.ok[k] && (i == k && len(c.trims[i]) == 0 || i != k && apartFrom(c.trims[i], c.trims[k])) {
				return false, nil
			}
		}
	}
	left, err := geom.Without([][]geom.Ring{c.rings}, c.part)
	return len(patches(left)) > 0, err
}

// extra reports, for each part, whether it opens anything beside the motif.
func (c comparison) extra() ([]bool, error) {
	beside := make([]bool, len(c.parts))
	for i := range c.parts {
		if c.ok[i] && takesOnly(c.trims[i]) {
			continue
		}
		more, err := geom.Without([][]geom.Ring{c.part[i]}, [][]geom.Ring{c.rings})
		if err != nil {
			return nil, err
		}
		beside[i] = len(patches(more)) > 0
	}
	return beside, nil
}

// cutsAlike reports whether two motifs cut the same hole in the same place.
func cutsAlike(a, b pattern.Motif) bool {
	if a.At != b.At || a.TurnDeg != b.TurnDeg || a.Mirrored != b.Mirrored ||
		a.Shape.Disc != b.Shape.Disc || len(a.Shape.Outline) != len(b.Shape.Outline) {
		return false
	}
	for i, c := range a.Shape.Outline {
		d := b.Shape.Outline[i]
		if c.Start != d.Start || !sameSegments(c.Segments, d.Segments) {
			return false
		}
	}
	return true
}

// sameSegments compares at a glance where both are one slice.
func sameSegments(a, b []geom.Segment) bool {
	if len(a) != len(b) {
		return false
	}
	if len(a) > 0 && &a[0] == &b[0] {
		return true
	}
	return slices.Equal(a, b)
}
