package repeat

import (
	"sync"

	"tsugime/repeat/bench"
	"tsugime/repeat/stencil"
)

// A Bench is how every sheet of an order is cut: the tools and methods chosen, and
// the plan. The first sheet comes first.
type Bench struct {
	Rack   bench.Rack // the cutter's, joined by the order's own punches
	Rates  bench.Rates
	Sheets []BenchSheet
}

// A BenchSheet is one sheet of the set, at cut size, with what is chosen and planned
// for it.
type BenchSheet struct {
	Sheet      stencil.Sheet
	Number     int // from 1
	Assignment bench.Assignment
	Plan       bench.Plan
}

// Bench plans the cutting of every sheet of the set, at cut size, with the cutter's
// rack and rates; the zero Rack and Rates are those of a cutter who has told nothing.
func (w Work) Bench(rack bench.Rack, rates bench.Rates) Bench {
	b := Bench{Rack: rack.With(w.Order.OwnTools()...), Rates: rates}
	set := w.CutSheet().Set()
	b.Sheets = make([]BenchSheet, len(set))
	var together sync.WaitGroup
	for i, s := range set {
		together.Go(func() {
			a := bench.Assign(s, b.Rack, w.Order.Methods)
			b.Sheets[i] = BenchSheet{s, i + 1, a, bench.PlanSheet(s, i+1, a, rates)}
		})
	}
	together.Wait()
	return b
}

// Hours is how long the whole set takes.
func (b Bench) Hours() (hours float64) {
	for _, s := range b.Sheets {
		hours += s.Plan.Hours
	}
	return hours
}

// Days is how many days of the cutter's the whole set takes.
func (b Bench) Days() (days float64) {
	for _, s := range b.Sheets {
		days += s.Plan.Days
	}
	return days
}
