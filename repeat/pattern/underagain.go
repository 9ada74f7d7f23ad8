package pattern

import (
	"context"
	"slices"
)

// Again returns the proof of u as p looks, which is the proof of from; it is p
// itself where the two are drawn alike.
func (p Proof) Again(ctx context.Context, from, u Unit) (Proof, error) {
	alike := func(a, b Motif) bool {
		return a.At == b.At && a.TurnDeg == b.TurnDeg && a.Mirrored == b.Mirrored && a.Shape.Disc == b.Shape.Disc &&
			len(a.Shape.Outline) == len(b.Shape.Outline) &&
			(a.Shape.Round() && b.Shape.Round() || len(a.Shape.Outline) > 0 && &a.Shape.Outline[0] == &b.Shape.Outline[0])
	}
	if from.Lattice == u.Lattice && len(u.Motifs) > 0 && slices.EqualFunc(from.Motifs, u.Motifs, alike) {
		return p, ctx.Err()
	}
	if p.Look == (Look{}) {
		p.Look = StandBack
	}
	return p.Look.UnderPattern(ctx, u)
}
