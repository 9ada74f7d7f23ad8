package main

import (
	"context"
	"encoding/csv"
	"fmt"
	"strconv"

	"tsugime/repeat"
	"tsugime/repeat/cloth"
)

// simulated is how many bolts are laid by chance where nothing else is asked.
const simulated = 10_000

func runBolt(ctx context.Context, p program, c command, args []string) error {
	flags := newFlags(c)
	asJSON, asCSV := flags.Bool("json", false, ""), flags.Bool("csv", false, "")
	bolts, seed := flags.Int("bolts", simulated, ""), flags.Uint64("seed", 1, "")
	words, err := p.parse(c, flags, args, 1, 1)
	if err != nil {
		return err
	}
	if *asJSON && *asCSV {
		return wrongUse("bolt: --json and --csv are two forms of the same; give one")
	}
	if *bolts < 1 {
		return wrongUse("bolt: --bolts %d lays nothing; give 1 or more", *bolts)
	}
	w, err := p.build(ctx, words[0])
	if err != nil {
		return err
	}
	if *asCSV {
		return p.boltCSV(w)
	}
	laid, err := laidByChance(w.Run, *bolts, *seed)
	if err != nil {
		return wrongUse("bolt: %v", err)
	}
	if *asJSON {
		return p.printJSON(boltDocument(w, laid))
	}
	_, err = fmt.Fprint(p.out, boltText(w, laid))
	return err
}

// A chance is what bolts laid with drawn star errors came to.
type chance struct {
	bolts     cloth.Simulated
	set, back cloth.Overlaid
}

// laidByChance lays bolts; none where there are no stars, or nothing to lay.
func laidByChance(r cloth.Run, bolts int, seed uint64) (chance, error) {
	var c chance
	var err error
	if r.Simulated.Bolts == 0 {
		return c, nil
	}
	if c.bolts, err = r.Simulate(bolts, seed); err != nil {
		return c, err
	}
	if c.set, err = r.SimulateSet(bolts, seed); err != nil {
		return c, err
	}
	c.back, err = r.SimulateBack(bolts, seed)
	return c, err
}

func (p program) boltCSV(w repeat.Work) error {
	table := csv.NewWriter(p.out)
	rows := [][]string{{"n", "y_mm", "face", "walk_x_mm", "walk_y_mm", "laid_as", "between", "mirrored", "stretch"}}
	for _, l := range w.Run.Placements {
		rows = append(rows, []string{
			strconv.Itoa(l.N), l.Y.String(), string(l.Face), l.WalkX.String(), l.WalkY.String(),
			strconv.Itoa(l.LaidAs), strconv.FormatBool(l.Between), strconv.FormatBool(l.Mirrored), strconv.Itoa(l.Stretch),
		})
	}
	return table.WriteAll(rows)
}

// boltKeys explains the keys of the document to those who ask for help.
const boltKeys = `Keys of --json: places and lengths are those of the cloth on the board, before it
changes. In --json and --csv n counts from 0; words and sheets count placements from 1.
Of a placement, walk_x_mm and walk_y_mm are standard deviations, along with the share of
pitch and growth; laid_as is its turn among those of its cloth, between that it joins two
finished ones, stretch its number in stretches: cloth lying on the board at one time, go
by go. drift is by formula (share_y_mm is what of end_y_mm is no chance, within_pct the
odds that no joint opens by more than tolerance_mm, a lower bound unless laid star to
star), simulated the same by laying bolts; eye is what is seen from distance_mm (plain_mm
by any good eye, crisp_mm by an expert on crisp lines), gains what each remedy brings to
the worst joint and to the walk at the end, the most first. set is each later sheet on the
first, back the reverse on the front, reverse and fold how the pattern meets its mirror
(null where there is no such thing); marks are those of the marking strip, at_mm from the
board's near end; clear_turn is the start and gap after which no panel lies over the turn.
`
