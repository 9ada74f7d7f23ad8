package board

import (
	"image/color"

	"tsugime/export/raster"
	"tsugime/repeat/geom"
)

// A Scene is what the surface shows, at true scale. It is a value and is never
// written once it is shown.
type Scene struct {
	Extent  geom.Box // what "whole" shows
	Desk    color.RGBA
	Areas   []Area
	Grounds []Laid
	Tints   []Tint // over the areas, the first lie lowest
	Marks   []Mark
	Casing  Casing
	Labels  []Label
	// Plain leaves the rulers out, where the scene is no one piece of cloth.
	Plain bool
}

// An Area is a piece of paper or cloth: one colour where it is covered, another
// where the grounds are open. The first Areas lie lowest. An empty Box is
// everywhere.
type Area struct {
	Box        geom.Box
	Shut, Open color.RGBA
}

// A Laid is a ground and how it is laid. Grounds are seen only in areas.
type Laid = raster.Laid

// A Shape says how a mark is drawn. Marks differ by shape, not by colour alone.
type Shape int

// The shapes of marks. Sizes on the screen stay the same at any zoom.
const (
	Line   Shape = iota // through Points
	Loop                // through Points and back
	Dashes              // a dashed line through Points
	Star                // ring of Radius with a cross, at each point
	Ring                // ring of Radius about each point
	Bar                 // short bars: Points in pairs, ends marked
	Wedge               // a small wedge pointing at each point
	Hatch               // slanting lines in the box of two Points, or in the outline of more
	Strip               // strips 2 × Radius wide: Points in pairs, ends ticked
	Cross               // two short strokes aslant at each point
	Peg                 // a small square at each point, filled
	Bead                // a small disc at each point, filled
	Knob                // Points in pairs: a square beyond the second as the way goes, and a line to it
)

// A Mark is drawn over the cloth.
type Mark struct {
	Shape  Shape
	Points []geom.Point
	Radius geom.Length // of stars, rings and strips; at least a few pixels are drawn
	Colour color.RGBA  // its alpha is taken for opaque
	Width  float32     // of the line, in screen units; zero is 1
	Bare   bool        // has no casing
}

// KnobPx is how far beyond the end of its way a Knob stands, in screen units.
const KnobPx = 18

// A Label is words at a place. It is left out where Room, if not zero, is
// narrower on the screen than the words.
type Label struct {
	At     geom.Point
	Text   string
	Colour color.RGBA
	Size   float32 // screen units; zero is the usual one
	Bold   bool
	Align  Align
	Room   geom.Length
	Shield color.RGBA // painted behind the words; no alpha for none
	Off    [2]float32 // from its place, in screen units across and along
	Keep   bool       // is moved so far that all of it is on the surface
}

// An Align says which end of a label stands at its place.
type Align int

// The alignments; each label is centred on its place up and down, except Above
// and Below.
const (
	After Align = iota // begins at the place
	Before
	Middle
	Above // in the middle, over the place
	Below
)
