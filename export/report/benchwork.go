package report

import (
	"sync"

	"tsugime/repeat"
)

// A planned is the bench of one order, planned once for all files of its folder.
type planned struct {
	once  sync.Once
	bench repeat.Bench
}

// bench returns how the sheets are cut, by the options' rack and rates.
func (o Options) bench(w repeat.Work) repeat.Bench {
	if o.planned == nil {
		return w.Bench(o.Rack, o.Rates)
	}
	o.planned.once.Do(func() { o.planned.bench = w.Bench(o.Rack, o.Rates) })
	return o.planned.bench
}

// benchOf returns how one sheet of the set is cut.
func (o Options) benchOf(w repeat.Work, s setSheet) repeat.BenchSheet {
	return o.bench(w).Sheets[max(s.number, 1)-1]
}
