package pattern

import (
	"fmt"
	"math"
	"math/rand/v2"

	"tsugime/repeat/geom"
)

// MaxGroundMotifs bounds what one unit of a ground may hold: three sheets of the
// finest dots.
const MaxGroundMotifs = 200_000

// A laying is how tiles fill the unit: cols × rows of them in a cell.
type laying struct {
	tile
	cols, rows int
	cell       Lattice
}

// unit fits the tiles, draws one and repeats it over the cell.
func (g Ground) unit(v values, step, width geom.Length, random *rand.Rand) (Unit, error) {
	l, err := g.lay(v, step, width)
	if err != nil {
		return Unit{}, err
	}
	many := g.draft.count(v, l.tile) * float64(l.cols) * float64(l.rows)
	if !(many <= MaxGroundMotifs) {
		return Unit{}, fmt.Errorf("the unit would hold about %.0f cut-outs, and %d are the most; "+
			"make them coarser, or the step or width smaller", many, MaxGroundMotifs)
	}
	pieces, err := g.draft.draw(v, l.tile, random)
	if err != nil {
		return Unit{}, err
	}
	return Unit{l.cell, g.motifs(v, l, pieces)}, nil
}

// lay fits the tiles into step and width.
func (g Ground) lay(v values, step, width geom.Length) (laying, error) {
	if step < MinPitch || step > MaxPitch {
		return laying{}, fmt.Errorf("the step of %s mm can't be filled; give one of %s to %s mm", step, MinPitch, MaxPitch)
	}
	if width < 0 || width > MaxPitch {
		return laying{}, fmt.Errorf("the width of %s mm can't be filled; give one of 0 (free) to %s mm", width, MaxPitch)
	}
	across, along := g.draft.tile(v)
	if g.draft.whole != nil && g.draft.whole(v) {
		along = float64(step)
	}
	if across < float64(MinPitch) || along < float64(MinPitch) {
		return laying{}, fmt.Errorf("its tile of %.6f × %.6f mm is too fine; keep it above %s mm",
			across/1e6, along/1e6, MinPitch)
	}
	rows := max(1, int(math.Round(float64(step)/along)))
	l := laying{rows: rows}
	l.h = float64(step) / float64(rows)
	if !g.draft.apart {
		across *= l.h / along
	}
	times := 1
	swell := v["swell"]
	if swell == swellRound {
		times = max(1, int(math.Round(float64(step)/across)))
	}
	wide := geom.Length(math.Round(across * float64(times)))
	if width > 0 {
		wide, times = width, max(1, int(math.Round(float64(width)/across)))
	}
	l.cols, l.w = times, float64(wide)/float64(times)
	high := step
	if swell == swellNone {
		// The smallest whole cell: what the count and the length have in common.
		d := gcd(l.rows, int(step))
		l.rows, high = l.rows/d, step/geom.Length(d)
		d = gcd(l.cols, int(wide))
		l.cols, wide = l.cols/d, wide/geom.Length(d)
	}
	l.cell = Straight(wide, high)
	return l, l.cell.Check()
}

// motifs repeats the pieces of a tile over the cell.
func (g Ground) motifs(v values, l laying, pieces []mark) []Motif {
	motifs := make([]Motif, 0, len(pieces)*l.cols*l.rows)
	dots := map[float64]geom.Shape{}
	swell := swellOf(v, l)
	for row := range l.rows {
		for col := range l.cols {
			for _, p := range pieces {
				x, y := p.x+float64(col)*l.w, p.y+float64(row)*l.h
				shape := p.shape
				if g.draft.dot != nil {
					size := math.Round(p.size * swell(x, y))
					known := false
					if shape, known = dots[size]; !known {
						shape = g.draft.dot(size)
						dots[size] = shape
					}
				}
				motifs = append(motifs, Motif{
					ID: ID(len(motifs) + 1), Shape: shape,
					At: geom.Point{X: geom.Length(math.Round(x)), Y: geom.Length(math.Round(y))},
				})
			}
		}
	}
	return motifs
}

// The ways a ground of dots may swell, as the table lists them.
const (
	swellNone = iota
	swellAlong
	swellRound
)

// swellParams are the rows of a ground of dots that tell how their size changes
// over the step. The count stays.
func swellParams() []Param {
	return []Param{
		chosen("swell", "Swell", "Where dots grow: nowhere, half way along the step, or around a centre.", "even", "along", "round"),
		percent("small", "Smallest", 20, 100, 60, "The smallest dot of a swell, of the full size."),
		counted("sizes", "Sizes", 2, 64, 5, "How many sizes a swell has; each takes a punch of its own."),
	}
}

// swellOf returns the size of a dot at a place of the cell, as a fraction of the
// full one: a cosine that closes over the step, in as many sizes as there are
// punches. Around a centre it falls to the least at half the shorter side.
func swellOf(v values, l laying) func(x, y float64) float64 {
	w, h := float64(l.cell.A.X), float64(l.cell.B.Y)
	last := v["sizes"] - 1
	sized := func(turn float64) float64 {
		full := math.Round((1-math.Cos(turn))/2*last) / last
		return v.share("small") + (1-v.share("small"))*full
	}
	switch v["swell"] {
	case swellAlong:
		return func(_, y float64) float64 { return sized(2 * math.Pi * y / h) }
	case swellRound:
		return func(x, y float64) float64 {
			dx, dy := math.Remainder(x-w/2, w), math.Remainder(y-h/2, h)
			far := math.Min(1, math.Hypot(dx, dy)/(math.Min(w, h)/2))
			return sized(math.Pi * (1 - far))
		}
	}
	return func(_, _ float64) float64 { return 1 }
}
