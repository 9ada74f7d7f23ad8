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

// A Laying is how the tiles of a ground meet a step and a width. It is known
// before anything is drawn.
type Laying struct {
	Lattice Lattice // of the unit
	// Columns is how many tiles the width holds, or the unit where no width was
	// asked for; Rows is how many the step holds.
	Columns, Rows int
	// Stretch is by how much a tile is larger than the recipe has it.
	Stretch Strain
	// Bent is by how much a tile is stretched more across than along. It is 0 for
	// a ground whose sizes across and along are set each for itself.
	Bent float64
	// CutOuts is about how many the unit holds.
	CutOuts float64

	tile
	cols, rows int // tiles in a cell
}

// The bounds of a ground that is still the one that was asked for: by how much it
// may be bent, and by how much larger or smaller it may be drawn. Common practice
// goes no farther than a percent, no source; these only keep nonsense out.
const (
	maxBent    = 0.1
	maxStretch = 1.0 / 3
)

// unit fits the tiles, draws one and repeats it over the cell.
func (g Ground) unit(r Recipe, v values, step geom.Length) (Unit, error) {
	l, err := g.lay(r, v, step)
	if err != nil {
		return Unit{}, err
	}
	pieces, err := g.draft.draw(v, l.tile, rand.New(rand.NewPCG(r.Seed, 0x7465_6174)))
	if err != nil {
		return Unit{}, err
	}
	return Unit{l.Lattice, g.motifs(v, l, pieces)}, nil
}

// lay fits the tiles into the step and the recipe's width.
func (g Ground) lay(r Recipe, v values, step geom.Length) (Laying, error) {
	across, along, err := g.wanted(r, v, step)
	if err != nil {
		return Laying{}, err
	}
	l := Laying{Rows: tiles(r.Rows, float64(step), along)}
	l.h = float64(step) / float64(l.Rows)
	l.Stretch.Y = l.h/along - 1
	even := across // with the proportions of the tile kept
	if !g.draft.apart {
		even *= l.h / along
	}
	swell := v["swell"]
	wide := r.Width
	if wide > 0 {
		l.Columns = tiles(r.Columns, float64(wide), even)
	} else {
		l.Columns = 1
		if swell == swellRound {
			l.Columns = tiles(0, float64(step), even)
		}
		wide = geom.Length(math.Round(even * float64(l.Columns)))
	}
	l.w = float64(wide) / float64(l.Columns)
	l.Stretch.X = l.w/across - 1
	if !g.draft.apart && !g.draft.piece {
		l.Bent = l.w/even - 1
	}
	if err := g.sound(l, v, step, r.Width, even); err != nil {
		return Laying{}, err
	}
	high := step
	l.cols, l.rows = l.Columns, l.Rows
	if swell == swellNone {
		// The smallest whole cell: what the count and the length have in common.
		d := gcd(l.rows, int(step))
		l.rows, high = l.rows/d, step/geom.Length(d)
		d = gcd(l.cols, int(wide))
		l.cols, wide = l.cols/d, wide/geom.Length(d)
	}
	l.CutOuts = g.draft.count(v, l.tile) * float64(l.cols) * float64(l.rows)
	if !(l.CutOuts <= MaxGroundMotifs) {
		return Laying{}, fmt.Errorf("the unit would hold about %.0f cut-outs, and %d are the most; "+
			"make them coarser, or the step or width smaller", l.CutOuts, MaxGroundMotifs)
	}
	l.Lattice = Straight(wide, high)
	return l, l.Lattice.Check()
}

// tiles returns how many tiles of a size fill a length: the number that is fixed,
// or the one that stretches them least.
func tiles(fixed int, length, size float64) int {
	if fixed > 0 {
		return fixed
	}
	return max(1, int(math.Round(length/size)))
}

// wanted returns the tile that the values ask for, and an error where it or what
// it is to fill is out of bounds.
func (g Ground) wanted(r Recipe, v values, step geom.Length) (across, along float64, err error) {
	if step < MinPitch || step > MaxPitch {
		return 0, 0, fmt.Errorf("the step of %s mm can't be filled; give one of %s to %s mm", step, MinPitch, MaxPitch)
	}
	across, along = g.draft.tile(v)
	if g.draft.whole != nil && g.draft.whole(v) {
		along = float64(step)
	}
	if across < float64(MinPitch) || along < float64(MinPitch) {
		return 0, 0, fmt.Errorf("its tile of %.6f × %.6f mm is too fine; keep it above %s mm",
			across/1e6, along/1e6, MinPitch)
	}
	return across, along, nil
}

// sound returns an error where a laying is no longer the ground that was asked
// for; even is the tile's size across that keeps its proportions.
func (g Ground) sound(l Laying, v values, step, width geom.Length, even float64) error {
	if math.Abs(l.Stretch.Y) > maxStretch && !g.draft.piece && !g.draft.spaced {
		along := l.h / (1 + l.Stretch.Y)
		n := math.Max(1, math.Floor(float64(step)/along))
		return fmt.Errorf("its tile of %.3f mm doesn't go into the step of %s mm: it would be drawn at %.0f %% of its length; give %s, or another step",
			along/1e6, step, 100*(1+l.Stretch.Y), g.sized(v, float64(step)/along, n))
	}
	off := l.Bent
	limit := maxBent
	if g.draft.apart {
		off, limit = l.Stretch.X, maxStretch
	}
	if math.Abs(off) > limit {
		n := math.Floor(float64(width) / even)
		near := fmt.Sprintf("%.3f mm", (n+1)*even/1e6)
		if n > 0 {
			near = fmt.Sprintf("%.3f or %s", n*even/1e6, near)
		}
		return fmt.Errorf("to repeat in a width of %s mm it would be stretched by %.1f %% across; give a width near %s, or make it finer",
			width, 100*off, near)
	}
	return nil
}

// sized says with which value of the parameter that scales the ground n or n+1
// tiles fill the step, which now holds so many times its tile.
func (g Ground) sized(v values, times, n float64) string {
	if g.draft.scale == "" {
		return "a shorter tile"
	}
	p, _ := g.Param(g.draft.scale)
	what := fmt.Sprintf("a %s near %.3f %s", p.Key, v[p.Key]*times/n, p.Unit)
	if times > n {
		what += fmt.Sprintf(" or %.3f %s", v[p.Key]*times/(n+1), p.Unit)
	}
	return what
}

// motifs repeats the pieces of a tile over the cell.
func (g Ground) motifs(v values, l Laying, pieces []mark) []Motif {
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
