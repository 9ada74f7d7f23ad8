package document

import (
	"tsugime/repeat/cloth"
	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
	"tsugime/repeat/stencil"
)

// Defaults returns an order without motifs, ready to draft on. What a file
// leaves out is taken from here. Sources:
//
//   - step: 6 kane sun, within the 15 to 20 cm that a Tokyo workshop names for
//     its small-pattern stencils
//   - bolt: 375 mm × 12.6 m, within the 37 to 38 cm × 12 to 14 m of present
//     bolts; the field leaves 9.5 mm free on each side (our recommendation)
//   - changes of the cloth: none, until the dyer has measured them; a yukata bolt
//     shrinks by 1 to 2 % along at its first wetting, crepe by more
//   - paper: a sheet of three plies about 0.22 mm thick, computed from trade
//     weights; its size is common practice, no source; it does not grow until
//     the cutter has measured it
//   - pile: seven sheets, of the six to eight that cutters name
//   - stars: three at each end, of the two to four that workshops use, 1 mm or
//     less in diameter; the seam hides 9 mm (common practice, no source)
//   - board: 6.4 m, the 3.5 ken (6.36 m) of a prefecture's text; 40 mm of cloth
//     lost at its end (our recommendation, no source)
//   - board: both faces, one cloth, one laying, one placement after another
//   - register: an edge line, each star to 0.1 mm (our recommendation); a sheet
//     that stays as it was taken to be
//   - kimono: a wearer of 160 cm, the middle of the published tables
func Defaults() Order {
	mm := geom.MM
	step, _ := geom.ParseLength("6 kane sun", geom.MMUnit)
	return Order{
		Unit:  pattern.Unit{Lattice: pattern.Straight(step/12, step/12)},
		Group: pattern.P1,
		Sheet: stencil.Spec{
			Step:     step / 12 * 12,
			Field:    stencil.Field{Left: mm(9.5), Width: mm(356)},
			Paper:    stencil.Paper{Width: mm(430), Height: mm(300), Thickness: mm(0.22), Pile: 7},
			Stars:    stencil.StarSpec{PerEnd: 3, Diameter: mm(1), Hidden: mm(9)},
			WebLimit: mm(0.4),
			Joint:    stencil.JointSpec{Share: 0.8},
			Hold:     defaultHold(),
		},
		Cloth: Cloth{
			Bolt: cloth.Bolt{Width: mm(375), Length: mm(12_600), Sides: cloth.OneSide},
			Dye:  Colour{0x1f, 0x2c, 0x4d},
		},
		Board:    cloth.Board{Length: mm(6400), Turn: mm(40), Faces: 2, Cloths: 1, Layings: 1, Sequence: cloth.OneAfterAnother},
		Register: Register{Way: cloth.EdgeLine, StarError: mm(0.1), Sheets: 1},
		Garment:  Garment{Body: cloth.Body{Kind: cloth.WomensKimono, Height: mm(1600)}, MatchBackCentre: true},
		Limits:   defaultLimits(),
		Sheets:   Sheets{Page: "A4", Units: "mm", Lap: mm(10), Language: "en"},
		NextID:   1,
	}
}

// defaultHold adds nothing to the drawing. Two ties to an island are what an old
// collection of two-sheet stencils shows; their width and the lap are our
// recommendations, no source.
func defaultHold() stencil.Hold {
	return stencil.Hold{
		Way: stencil.AsDrawn, TieWidth: geom.MM(0.8), PerIsland: 2,
		Second: stencil.Second{Cut: stencil.TiePlaces, Lap: geom.MM(0.2)},
	}
}

// defaultLimits are our recommendations; none of them has a source.
//
//   - hole 0.33 mm: one and a half times the usual paper, which paste still passes
//   - star clear 1 mm: about one star
//   - baseline 300 mm: most of a field, so that a star error turns the sheet little
//   - turned misfit 3 mm: seen at a glance
//   - joint 0.1 mm: a tenth of a fine ground's pitch
//   - seam phase 0.5 mm: what sewing by hand keeps
//   - misfit 0.3 mm, 0.5 mm where it spoils the cloth: of the back against the
//     front a trade text says only that it is not the least off
//   - look 400 mm: cloth in the hand
//
// The web limit of 0.40 mm stands with the sheet; it is our recommendation too,
// from the pitches and holes of recorded fine grounds.
func defaultLimits() Limits {
	mm := geom.MM
	return Limits{
		Hole: mm(0.33), StarClear: mm(1), Baseline: mm(300),
		TurnedMisfit: mm(3), Joint: mm(0.1), SeamPhase: mm(0.5),
		Misfit: mm(0.3), MostMisfit: mm(0.5), Look: mm(400),
	}
}
