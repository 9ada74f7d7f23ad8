package stencil

import (
	"context"

	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

// A JointChoice is what a share of the greatest clearance makes of the joint
// line.
type JointChoice struct {
	Share     float64
	Clearance geom.Length
	Length    geom.Length
	Points    int // of the line, its two ends included
}

// jointShares are the shares that are offered.
var jointShares = [...]float64{1, 0.9, 0.8, 0.7, 0.6, 0.5, 0.4, 0.3}

// JointCurve returns what less clearance gains in length, from all of the
// greatest clearance down to 0.3 of it. Webs and pockets are found once for all.
// Where the field is empty, or every line must cross cut-outs, there is nothing
// to choose and only the one line of share 1 is told. It stops early only when
// ctx is done.
func JointCurve(ctx context.Context, u pattern.Unit, field Field, step geom.Length) ([]JointChoice, error) {
	w, err := newJointWays(ctx, u, field, step)
	if err != nil {
		return nil, err
	}
	var choices []JointChoice
	for _, share := range jointShares {
		j, err := w.find(ctx, share)
		if err != nil {
			return nil, err
		}
		choices = append(choices, JointChoice{share, j.Clearance, j.Length, len(j.Line)})
		if w.empty || j.Clearance <= 0 {
			break
		}
	}
	return choices, nil
}
