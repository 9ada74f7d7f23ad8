package report

import (
	"sync"

	"tsugime/repeat"
)

// A job is what the files of one folder share, each made once, by whoever asks
// first: the sheets at cut size, and how they are cut.
type job struct {
	sheets func() []setSheet
	bench  func() repeat.Bench
}

func newJob(w repeat.Work, o Options) *job {
	return &job{
		sheets: sync.OnceValue(func() []setSheet { return sheetsOf(w) }),
		bench:  sync.OnceValue(func() repeat.Bench { return w.Bench(o.Rack, o.Rates) }),
	}
}

// shared returns the job of options that are filled in, or else one of its own.
func (o Options) shared(w repeat.Work) *job {
	if o.job != nil {
		return o.job
	}
	return newJob(w, o)
}

// sheets returns the sheets of the set, the first one first.
func (o Options) sheets(w repeat.Work) []setSheet { return o.shared(w).sheets() }

// bench returns how the sheets are cut, by the options' rack and rates.
func (o Options) bench(w repeat.Work) repeat.Bench { return o.shared(w).bench() }

// benchOf returns how one sheet of the set is cut.
func (o Options) benchOf(w repeat.Work, s setSheet) repeat.BenchSheet {
	return o.bench(w).Sheets[max(s.number, 1)-1]
}
