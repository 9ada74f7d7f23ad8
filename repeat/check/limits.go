package check

import (
	"tsugime/repeat/cloth"
	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
	"tsugime/repeat/stencil"
)

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

// Measures are what the stations found.
type Measures struct {
	Unit    pattern.Unit
	Under   pattern.Proof // of the joined units
	Ground  Ground        // that the unit was laid as; zero where it was drawn by hand
	Sheet   stencil.Sheet
	Run     cloth.Run
	Dressed cloth.Dressed
	Reverse *cloth.Reverse // where both sides are printed
	Fold    *cloth.Folding // what meets at the folds, where the cloth is folded
	Unlaid  error          // why there is no garment; nil where there is one
}

// stepSlack is the error of a step that is not worth a word: over a bolt of a
// hundred placements it adds up to a tenth of a millimetre.
const stepSlack = geom.Micrometre

// A rule looks at the measures and reports what it finds.
type rule func(m Measures, l Limits) []Finding

// rules stand in the order of the work: unit, sheet, stars, bolt, garment.
var rules = []rule{
	emptyUnit, bentGround, flaws, underPatterns, smallHoles, islands, bands, webs, tongues, ribbons, skews, ties, hinges, cover, lap,
	stepFault, jointCrosses, jointByHand, jointThin, fieldFits, selvedges, paperFits,
	starsClear, starsHidden, starBaseline, starsTurned, matchStars,
	noPlacement, remainder, turnedPlacements, boardFull, drift, walkOff, dries,
	setMisses, backSheet, backMisses, foldJumps, foldCrossed,
	garmentUnlaid, garmentNarrowed, boltShort, backCentre, unmatched, starsSeen,
}

// All returns every finding, in the order of the work.
func All(m Measures, l Limits) []Finding {
	var all []Finding
	for _, r := range rules {
		all = append(all, r(m, l)...)
	}
	return all
}

// Worst returns the highest severity among the findings, "" for none.
func Worst(findings []Finding) Severity {
	var worst Severity
	for _, f := range findings {
		if f.Severity.Rank() > worst.Rank() {
			worst = f.Severity
		}
	}
	return worst
}

// mm writes a length as findings do: to the micrometre, with its unit.
func mm(l geom.Length) string { return geom.MMUnit.Format(l, 3) }
