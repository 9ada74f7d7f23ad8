package cloth

import (
	"math"

	"tsugime/repeat/geom"
)

// A Print is what one placement leaves on the finished cloth, and how the sheet lay
// for it.
type Print struct {
	N        int
	Y        geom.Length // where its start belongs
	Step     geom.Length // its length, without what its sheet is too long
	Mirrored bool        // along: what the sheet has at its far end comes first
	Off      Misplacement
	// Grown is the share by which the sheet is too long: pitch error and growth.
	Grown float64
}

// Prints returns the placements on the finished cloth, the last one that is laid in
// part with them: all where they belong.
func (r Run) Prints() []Print {
	step := r.Bolt.Finished(geom.Point{Y: r.Step}).Y
	prints := make([]Print, 0, r.Needed)
	for n := range max(r.Needed, len(r.Placements)) {
		y := r.Bolt.Finished(geom.Point{Y: r.placed(n)}).Y
		prints = append(prints, Print{N: n, Y: y, Step: step, Mirrored: r.Bolt.Folded && n%2 == 1})
	}
	return prints
}

// ScatteredPrints returns the placements as one bolt has them whose errors, of the
// stars, of the step and of growth, are so many times those of the run's register.
// The same seed gives the same bolt. A register without stars leaves all where it
// belongs. What is laid in part is taken for one placement more.
func (r Run) ScatteredPrints(times float64, seed uint64) ([]Print, error) {
	prints := r.Prints()
	if times == 0 || r.Register.Baseline == 0 || len(prints) == 0 {
		return prints, nil
	}
	reg := r.Register.times(times)
	off, err := Scatter(reg, r.Step, len(prints), seed)
	if err != nil {
		return nil, err
	}
	over := reg.course(r.Step.MM(), len(prints)).over
	for i := range prints {
		off[i].By = r.Bolt.Finished(off[i].By)
		prints[i].Off, prints[i].Grown = off[i], over[i]/r.Step.MM()
	}
	return prints, nil
}

// times returns the register with so many times its errors.
func (r Register) times(k float64) Register {
	across, along := r.StarErrorAcross, r.StarError
	r.StarErrorAcross, r.StarError = across.Times(k), along.Times(k)
	r.PitchError = r.PitchError.Times(k)
	r.Growth.Start *= k
	r.Growth.End *= k
	return r
}

// Move returns the way from the sheet's origin to where it lies on the finished
// cloth, for a sheet that is then grown and turned about its own origin; pivot is
// the middle between its leading stars.
func (p Print) Move(pivot geom.Point) geom.Point {
	return p.Off.By.Add(geom.Point{Y: p.Y}).Add(pivot).Sub(p.turned(pivot))
}

// Place returns where a place of the sheet prints on the finished cloth.
func (p Print) Place(at, pivot geom.Point) geom.Point {
	if p.Mirrored {
		at.Y = p.Step - at.Y
	}
	return p.turned(at).Add(p.Move(pivot))
}

// turned grows and turns a place about the origin.
func (p Print) turned(at geom.Point) geom.Point {
	if p.Off.TurnDeg == 0 && p.Grown == 0 {
		return at
	}
	s, c := math.Sincos(p.Off.TurnDeg * math.Pi / 180)
	x, y := float64(at.X)*(1+p.Grown), float64(at.Y)*(1+p.Grown)
	return geom.Point{X: geom.Length(math.Round(c*x - s*y)), Y: geom.Length(math.Round(s*x + c*y))}
}

// Joined returns where a place of the joint line prints at the far end of p, and
// where the placement after it prints the same place: Y further on is a gap of the
// cloth between them, less far a lap. Folded cloth is joined at its folds, straight
// across, whatever the line.
func (p Print) Joined(next Print, at, pivot geom.Point) (before, after geom.Point) {
	if p.Mirrored != next.Mirrored {
		at.Y = 0
	}
	far, near := at, at
	if !p.Mirrored {
		far.Y += p.Step
	}
	if next.Mirrored {
		near.Y += next.Step
	}
	return p.Place(far, pivot), next.Place(near, pivot)
}

// Reach returns where on the cloth, from the placement's own start, a print lies whose
// sheet has it in the box.
func (p Print) Reach(box geom.Box) geom.Box {
	if !p.Mirrored {
		return box
	}
	return geom.BoxOf(geom.Point{X: box.Min.X, Y: p.Step - box.Max.Y}, geom.Point{X: box.Max.X, Y: p.Step - box.Min.Y})
}
