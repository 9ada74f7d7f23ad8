package stencil

import (
	"slices"

	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

// laid returns the cut-outs of a sheet that cuts u, and the narrowest web across
// the joint.
func (a *again) laid(u pattern.Unit, spec Spec, joint Joint) ([]pattern.CutOut, Web) {
	way := geom.Point{Y: spec.Step}
	if a == nil || !a.asDrawn || !a.sameField || !slices.Equal(a.sheet.Joint.Line, joint.Line) {
		cuts := Between(u, spec.Field, joint, spec.Step)
		return cuts, AcrossJoint(cuts, way)
	}
	old := a.sheet.CutOuts
	if a.edit.none() {
		return old, a.sheet.Webs.AcrossJoint
	}
	gone := make(map[pattern.ID]bool, len(a.edit.gone))
	for _, m := range a.edit.gone {
		gone[m.ID] = true
	}
	come := Between(pattern.Unit{Lattice: u.Lattice, Motifs: a.edit.come}, spec.Field, joint, spec.Step)
	cuts, changed := replaced(old, gone, come)
	if farFromJoint(changed, cuts, joint, spec.Step) && foundWithin(a.sheet.Webs.AcrossJoint, firstAcross) {
		return cuts, a.sheet.Webs.AcrossJoint
	}
	return cuts, AcrossJoint(cuts, way)
}

// replaced returns the cut-outs less those of the motifs that are gone, with those
// that have come at their places in the order. It tells too which they all are.
func replaced(old []pattern.CutOut, gone map[pattern.ID]bool, come []pattern.CutOut) (cuts, changed []pattern.CutOut) {
	cuts = make([]pattern.CutOut, 0, len(old)+len(come))
	changed = slices.Clone(come)
	for _, c := range old {
		if gone[c.Motif] {
			changed = append(changed, c)
			continue
		}
		for len(come) > 0 && asRead(come[0], c) < 0 {
			cuts, come = append(cuts, come[0]), come[1:]
		}
		cuts = append(cuts, c)
	}
	return append(cuts, come...), changed
}

// foundWithin reports whether a web across the joint was found by looking so far.
func foundWithin(w Web, reach geom.Length) bool { return w != Web{} && w.Width < reach }

// farFromJoint reports whether none of the changed cut-outs comes within
// firstAcross of one of the next placement or of the one before: whether their
// boxes lie so far within the stretch that the line can't matter.
func farFromJoint(changed, all []pattern.CutOut, joint Joint, step geom.Length) bool {
	var half geom.Length
	for _, cuts := range [][]pattern.CutOut{all, changed} {
		for _, c := range cuts {
			if !c.Shape.Round() {
				return false
			}
			half = max(half, c.Shape.Disc.Diameter/2+1)
		}
	}
	line := geom.BoxOf(joint.Line...)
	if line.Empty() || len(all) == 0 {
		return false
	}
	far := 2*half + firstAcross
	return !slices.ContainsFunc(changed, func(c pattern.CutOut) bool {
		y := c.Shape.Disc.Centre.Y
		return y <= line.Max.Y+far || y >= line.Min.Y+step-far
	})
}

// stars returns the feed stars of the design.
func (a *again) stars(design pattern.Unit, spec Spec, joint Joint, cloth geom.Length) StarSet {
	if a != nil && a.sameStars && slices.Equal(ends(a.sheet.Joint), ends(joint)) && !a.nearStars(design.Lattice, spec, joint, cloth) {
		set := a.sheet.Stars
		set.Match = nil
		return set
	}
	return placeStars(design, spec, joint, cloth)
}

// ends returns the ends of a joint line.
func ends(j Joint) []geom.Point {
	if n := len(j.Line); n > 0 {
		return []geom.Point{j.Line[0], j.Line[n-1]}
	}
	return nil
}

// nearStars reports whether a motif that was changed comes, before or after, where
// stars are looked for or measured.
func (a *again) nearStars(l pattern.Lattice, spec Spec, joint Joint, cloth geom.Length) bool {
	if a.edit.none() {
		return false
	}
	var looked []geom.Box
	if len(spec.Stars.At) == 0 {
		for _, s := range starSpots(spec, cloth) {
			y := starHeight(joint) + s.drop
			looked = append(looked, geom.BoxOf(geom.Point{X: s.from, Y: y}, geom.Point{X: s.to, Y: y + 2*starSearch + starDrop}))
		}
	}
	for _, star := range a.sheet.Stars.Stars {
		looked = append(looked, geom.BoxOf(star.At))
	}
	for _, motifs := range [][]pattern.Motif{a.edit.gone, a.edit.come} {
		for _, m := range motifs {
			box := m.Placed().Bounds()
			for _, b := range looked {
				b = b.Grown(clearanceReach + starRaster)
				if len(l.Places(geom.BoxOf(b.Min.Sub(box.Max), b.Max.Sub(box.Min)))) > 0 {
					return true
				}
			}
		}
	}
	return false
}
