package ui

import (
	"context"

	"tsugime/repeat/cloth"
)

// manyBolts is how many bolts are laid by chance where that is asked for. The
// measures go by fewer, since they are wanted at once.
const manyBolts = 10_000

// A laidBolts is what bolts that were laid by chance came to.
type laidBolts struct {
	number    int // of the state that they belong to
	bolts     cloth.Simulated
	set, back cloth.Overlaid
}

// layManyBolts lays ten thousand bolts in the background, with the stars off by
// chance, and has the measures go by them.
func (w *Window) layManyBolts() {
	if !w.Ready() {
		w.Say(say("Still measuring; ask again in a moment."))
		return
	}
	r, c := w.work.Run, laidBolts{number: w.built}
	if r.Simulated.Bolts == 0 {
		w.Say(say("There is nothing to lay by chance: no stars, or no placement."))
		return
	}
	w.background(say("Lay Ten Thousand Bolts"), func(ctx context.Context) (func(), error) {
		var err error
		if c.bolts, err = r.Simulate(manyBolts, 1); err != nil {
			return nil, err
		}
		if c.set, err = r.SimulateSet(manyBolts, 1); err != nil {
			return nil, err
		}
		if c.back, err = r.SimulateBack(manyBolts, 1); err != nil {
			return nil, err
		}
		return func() {
			w.boltStation().chance = c
			w.Say(say("%s.", counted(c.bolts.Bolts, "bolt laid by chance", "bolts laid by chance")))
			w.refresh()
		}, ctx.Err()
	})
}

// laidByChance is what the measures go by: the bolts that were asked for, as long
// as the order is still the one that they belong to.
func (s *boltStation) laidByChance() laidBolts {
	if s.chance.number == s.w.built {
		return s.chance
	}
	return laidBolts{bolts: s.w.work.Run.Simulated}
}
