package pattern

import (
	"math/rand/v2"

	"tsugime/repeat/geom"
)

// A Ground is a traditional ground as data: what it is called, what can be set,
// and how one tile of it is drawn. The window, the command line, the order file
// and the guide all read the same table.
type Ground struct {
	Name   string  // in plain words, as files and flags write it
	Trade  string  // as the trade calls it
	About  string  // one sentence: how it is built
	Params []Param // what can be set, in the order it is asked
	draft  draft
}

// A draft is what a ground needs beyond its table. Lengths are nanometres.
type draft struct {
	tile  func(v values) (across, along float64)                    // the size wanted
	count func(v values, t tile) float64                            // about how many cut-outs a tile gets
	draw  func(v values, t tile, random *rand.Rand) ([]mark, error) // the cut-outs of one tile
	dot   func(size float64) geom.Shape                             // grounds of dots: a dot of that size
	whole func(v values) bool                                       // the tile reaches over the whole step
	// What a stretch does to it. Across and along are fitted each for itself where
	// apart; along only spaces bridges where spaced; a tile is only a piece of a
	// ground that has no figure where piece.
	apart, spaced, piece bool
	scale                string // the parameter that a tile's sides are in proportion to; "" for none
}

// A tile is the fitted piece that a ground is drawn on, in nanometres.
type tile struct{ w, h float64 }

// A mark is one cut-out of a tile: a shape around its own origin and where that
// stands, in nanometres. In a ground of dots it has a size instead of a shape.
type mark struct {
	x, y  float64
	shape geom.Shape
	size  float64
}

// grounds lists every ground: dots, stripes, figures.
var grounds = []Ground{
	arcDots, diagonalDots, rowDots, rowSquares, scatteredDots, scatteredTwoSizes,
	evenStripes, threadStripes, fineStripes, finestStripes, companionStripes, cascadeStripes, pairedStripes,
	waveringStripes, steamStripes,
	waveScales, hempLeaf, linkedCircles, fishScales, checker, tortoiseShell,
}

// Grounds returns every ground: those of dots, then stripes, then figures.
func Grounds() []Ground { return append([]Ground(nil), grounds...) }

// GroundNamed returns the ground that is written as name, and whether there is one.
func GroundNamed(name string) (Ground, bool) {
	for _, g := range grounds {
		if g.Name == name {
			return g, true
		}
	}
	return Ground{}, false
}

// Param returns the ground's parameter that is written as key.
func (g Ground) Param(key string) (Param, bool) {
	for _, p := range g.Params {
		if p.Key == key {
			return p, true
		}
	}
	return Param{}, false
}

// Chance reports whether the ground depends on the seed.
func (g Ground) Chance() bool { _, ok := g.Param("patch"); return ok }

// Recipe returns the ground with everything as the table has it.
func (g Ground) Recipe() Recipe { return Recipe{Ground: g.Name, Seed: 1} }
