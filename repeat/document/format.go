package document

import (
	"fmt"

	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
	"tsugime/repeat/stencil"
)

// formatName is the value of the first key of every order file.
const formatName = "tsugime order"

// A field is one key of the file: where its value stands in an order, and
// whether the file must have it. Reader and writer walk the same table, in its
// order, so each key is named once.
type field struct {
	key  string
	must bool
	// bare tells whether the value is left out of the file; nil for never.
	bare func(o *Order) bool
	part []field            // the keys of a nested object
	at   func(o *Order) any // a pointer to the value, one of the types of read and write
}

// A percent is a fraction of one that the file shows in percent.
type percent float64

// A placeLine is a line of places, each on one line of the file.
type placeLine []geom.Point

// layout is the whole file after "format" and "version". The motifs are many, so
// they come last.
var layout = []field{
	{key: "title", at: func(o *Order) any { return &o.Title }},
	{key: "note", at: func(o *Order) any { return &o.Note }},
	{key: "sheet", must: true, part: []field{
		{key: "step_mm", must: true, at: func(o *Order) any { return &o.Sheet.Step }},
		{key: "field", part: []field{
			{key: "left_mm", at: func(o *Order) any { return &o.Sheet.Field.Left }},
			{key: "width_mm", at: func(o *Order) any { return &o.Sheet.Field.Width }},
		}},
		{key: "paper", part: []field{
			{key: "width_mm", at: func(o *Order) any { return &o.Sheet.Paper.Width }},
			{key: "height_mm", at: func(o *Order) any { return &o.Sheet.Paper.Height }},
			{key: "thickness_mm", at: func(o *Order) any { return &o.Sheet.Paper.Thickness }},
			{key: "growth_across_pct", at: func(o *Order) any { return (*percent)(&o.Sheet.Paper.GrowthAcross) }},
			{key: "growth_along_pct", at: func(o *Order) any { return (*percent)(&o.Sheet.Paper.GrowthAlong) }},
			{key: "pile", at: func(o *Order) any { return &o.Sheet.Paper.Pile }},
		}},
		{key: "stars", part: []field{
			{key: "per_end", at: func(o *Order) any { return &o.Sheet.Stars.PerEnd }},
			{key: "diameter_mm", at: func(o *Order) any { return &o.Sheet.Stars.Diameter }},
			{key: "hidden_mm", at: func(o *Order) any { return &o.Sheet.Stars.Hidden }},
			{key: "at_mm", at: func(o *Order) any { return &o.Sheet.Stars.At }},
		}},
		{key: "joint", part: []field{
			{key: "share_pct", at: func(o *Order) any { return (*percent)(&o.Sheet.Joint.Share) }},
			{key: "line_mm", at: func(o *Order) any { return (*placeLine)(&o.Sheet.Joint.Line) }},
		}},
		{key: "hold", part: []field{
			{key: "way", at: func(o *Order) any { return (*string)(&o.Sheet.Hold.Way) }},
			{key: "tie_width_mm", at: func(o *Order) any { return &o.Sheet.Hold.TieWidth }},
			{key: "per_island", at: func(o *Order) any { return &o.Sheet.Hold.PerIsland }},
			{key: "ties", at: func(o *Order) any { return &o.Sheet.Hold.Ties }},
			{key: "second", part: []field{
				{key: "cut", at: func(o *Order) any { return (*string)(&o.Sheet.Hold.Second.Cut) }},
				{key: "lap_mm", at: func(o *Order) any { return &o.Sheet.Hold.Second.Lap }},
				{key: "ties", at: func(o *Order) any { return &o.Sheet.Hold.Second.Ties }},
				{key: "motifs", at: func(o *Order) any { return &o.Sheet.Hold.Second.Motifs }},
			}},
		}},
	}},
	{key: "cloth", part: []field{
		{key: "width_mm", at: func(o *Order) any { return &o.Cloth.Bolt.Width }},
		{key: "length_mm", at: func(o *Order) any { return &o.Cloth.Bolt.Length }},
		{key: "change_across_pct", at: func(o *Order) any { return (*percent)(&o.Cloth.Bolt.ChangeAcross) }},
		{key: "change_along_pct", at: func(o *Order) any { return (*percent)(&o.Cloth.Bolt.ChangeAlong) }},
		{key: "selvedge_mm", at: func(o *Order) any { return &o.Cloth.Bolt.Selvedge }},
		{key: "sides", at: func(o *Order) any { return (*string)(&o.Cloth.Bolt.Sides) }},
		{key: "folded", at: func(o *Order) any { return &o.Cloth.Bolt.Folded }},
		{key: "dye", at: func(o *Order) any { return &o.Cloth.Dye }},
	}},
	{key: "board", part: []field{
		{key: "length_mm", at: func(o *Order) any { return &o.Board.Length }},
		{key: "turn_mm", at: func(o *Order) any { return &o.Board.Turn }},
		{key: "start_mm", at: func(o *Order) any { return &o.Board.Start }},
		{key: "end_mm", at: func(o *Order) any { return &o.Board.End }},
		{key: "faces", at: func(o *Order) any { return &o.Board.Faces }},
		{key: "cloths", at: func(o *Order) any { return &o.Board.Cloths }},
		{key: "layings", at: func(o *Order) any { return &o.Board.Layings }},
		{key: "order", at: func(o *Order) any { return (*string)(&o.Board.Sequence) }},
	}},
	{key: "register", part: []field{
		{key: "way", at: func(o *Order) any { return (*string)(&o.Register.Way) }},
		{key: "star_error_mm", at: func(o *Order) any { return &o.Register.StarError }},
		{key: "star_error_across_mm", at: func(o *Order) any { return &o.Register.StarErrorAcross }},
		{key: "pitch_error_mm", at: func(o *Order) any { return &o.Register.PitchError }},
		{key: "growth_start_pct", at: func(o *Order) any { return (*percent)(&o.Register.Growth.Start) }},
		{key: "growth_end_pct", at: func(o *Order) any { return (*percent)(&o.Register.Growth.End) }},
		{key: "growth_half_placements", at: func(o *Order) any { return &o.Register.Growth.Half }},
		{key: "sheets", at: func(o *Order) any { return &o.Register.Sheets }},
	}},
	{key: "garment", part: garmentLayout},
	{key: "rack", at: func(o *Order) any { return &o.Rack }},
	{key: "shelf", at: func(o *Order) any { return &o.Shelf }},
	{key: "limits", part: []field{
		{key: "hole_mm", at: func(o *Order) any { return &o.Limits.Hole }},
		{key: "web_mm", at: func(o *Order) any { return &o.Sheet.WebLimit }},
		{key: "star_clear_mm", at: func(o *Order) any { return &o.Limits.StarClear }},
		{key: "baseline_mm", at: func(o *Order) any { return &o.Limits.Baseline }},
		{key: "turned_misfit_mm", at: func(o *Order) any { return &o.Limits.TurnedMisfit }},
		{key: "joint_mm", at: func(o *Order) any { return &o.Limits.Joint }},
		{key: "seam_phase_mm", at: func(o *Order) any { return &o.Limits.SeamPhase }},
		{key: "misfit_mm", at: func(o *Order) any { return &o.Limits.Misfit }},
		{key: "most_misfit_mm", at: func(o *Order) any { return &o.Limits.MostMisfit }},
		{key: "look_mm", at: func(o *Order) any { return &o.Limits.Look }},
	}},
	{key: "sheets", part: []field{
		{key: "page", at: func(o *Order) any { return &o.Sheets.Page }},
		{key: "units", at: func(o *Order) any { return &o.Sheets.Units }},
		{key: "lap_mm", at: func(o *Order) any { return &o.Sheets.Lap }},
		{key: "language", at: func(o *Order) any { return &o.Sheets.Language }},
		{key: "printed_across_mm", bare: func(o *Order) bool { return o.Sheets.PrintedAcross == 0 }, at: func(o *Order) any { return &o.Sheets.PrintedAcross }},
		{key: "printed_along_mm", bare: func(o *Order) bool { return o.Sheets.PrintedAlong == 0 }, at: func(o *Order) any { return &o.Sheets.PrintedAlong }},
		{key: "marks", bare: func(o *Order) bool { return o.Sheets.Marks == "" }, at: func(o *Order) any { return &o.Sheets.Marks }},
		{key: "mirrored", bare: func(o *Order) bool { return !o.Sheets.Mirrored }, at: func(o *Order) any { return &o.Sheets.Mirrored }},
	}},
	{key: "unit", must: true, part: []field{
		{key: "lattice", must: true, part: []field{
			{key: "a_mm", must: true, at: func(o *Order) any { return &o.Unit.Lattice.A }},
			{key: "b_mm", must: true, at: func(o *Order) any { return &o.Unit.Lattice.B }},
		}},
		{key: "group", at: func(o *Order) any { return (*string)(&o.Group) }},
		{key: "ground", at: func(o *Order) any { return &o.Ground }},
		{key: "next_id", at: func(o *Order) any { return (*int)(&o.NextID) }},
		{key: "motifs", must: true, at: func(o *Order) any { return &o.Unit.Motifs }},
	}},
}

// motifPart names the part of an Extra that belongs to a motif.
func motifPart(id pattern.ID) string { return fmt.Sprintf("unit.motifs#%d", id) }

// punchPart names the part of an Extra that belongs to a punch.
func punchPart(name string) string { return "rack#" + name }

// shelfPart names the part of an Extra that belongs to a shape on the shelf.
func shelfPart(name string) string { return "shelf#" + name }

// groundPart names the part of an Extra that belongs to the recipe.
const groundPart = "unit.ground"

// tiePart names the part of an Extra that belongs to a tie: by where it stands, so
// that it goes when the tie is moved.
func tiePart(t stencil.Tie) string {
	return fmt.Sprintf("tie#%d,%d,%d,%d,%d", t.Motif, t.From.X, t.From.Y, t.To.X, t.To.Y)
}
