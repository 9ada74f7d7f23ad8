package document

import (
	"tsugime/repeat/bench"
	"tsugime/repeat/cloth"
	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
	"tsugime/repeat/stencil"
)

// An Order is one job: the pattern, the sheet that carries it, the cloth it
// falls on, the garment made of it, and how it is cut and printed.
type Order struct {
	Title    string
	Note     string
	Unit     pattern.Unit   // as it is drawn; Design has the copies too
	Group    pattern.Group  // the plane group that multiplies the motifs
	Ground   pattern.Recipe // what the unit was made from; zero where it was drawn by hand
	Sheet    stencil.Spec
	Cloth    Cloth
	Board    cloth.Board
	Register Register
	Garment  Garment
	Rack     []Punch
	Methods  bench.Overrides // what the cutter named for some motifs
	Shelf    []ShelfMotif
	Limits   Limits
	Sheets   Sheets
	NextID   pattern.ID // the ID that the next motif gets
	Extra    Extra      // what a file held that this version doesn't know
}

// Cloth is the bolt and its dye.
type Cloth struct {
	Bolt cloth.Bolt
	Dye  Colour // of the dyed part; where the stencil is open the cloth stays undyed
}

// A Colour is red, green, blue, each 0 to 255.
type Colour struct{ R, G, B uint8 }

// Register is how the dyer lays the stencil.
type Register struct {
	Way        cloth.Way
	StarError  geom.Length // standard deviation of one star in each direction
	PitchError geom.Length // by which every step is too long
	// StarErrorAcross is a star's error across where it is another; zero takes
	// StarError.
	StarErrorAcross geom.Length
	Growth          cloth.Growth // how the sheet dries through the job, beyond Sheet.Paper's growth
	// Sheets is how many sheets and colours a placement is laid with. Where the
	// order itself cuts more of them, those count.
	Sheets int
}

// Garment is what the cloth becomes.
type Garment = cloth.Garment

// A Punch is a tool of the cutter's own rack that leaves a round hole.
type Punch struct {
	Name     string
	Diameter geom.Length
}

// Limits are what the craft allows; each is the cutter's own to set.
type Limits struct {
	Hole         geom.Length // the smallest opening that the paste passes
	StarClear    geom.Length // from a star's rim to the nearest cut-out
	Baseline     geom.Length // the shortest distance between the outer stars
	TurnedMisfit geom.Length // by which a wrongly laid set must fail to fit
	Joint        geom.Length // the largest gap or lap at a joint
	SeamPhase    geom.Length // the largest phase difference of a matched seam
	// Misfit is by how much one print may miss another that it is to fall on, the
	// back the front or a later sheet the first; MostMisfit is where it spoils the cloth.
	Misfit, MostMisfit geom.Length
	Look               geom.Length // from how far the cloth is looked at
}

// Sheets is how the sheets are printed.
type Sheets struct {
	Page  string // a name that export.Pages knows: "A4", "A3", "B4", "letter"
	Units string // "mm" or "sun"
	Lap   geom.Length

	Language string // of the words on them: "en" or "ja"

	// PrintedAcross and PrintedAlong are what 100 mm of a page measured that the
	// printer printed at 100 %; 0 where it was not measured.
	PrintedAcross, PrintedAlong geom.Length

	// Marks is how the transfer drawing shows what is cut, and Mirrored whether it is
	// drawn for the back of the paper.
	Marks    string // one of MarkNames; "" for filled
	Mirrored bool
}

// How a transfer drawing shows what is cut.
const (
	FilledMarks  = "filled"
	OutlineMarks = "outline"
	CentreMarks  = "centres" // a cross for a round hole, an outline for others
)

// MarkNames are the ways in which a transfer drawing shows what is cut.
var MarkNames = []string{FilledMarks, OutlineMarks, CentreMarks}
