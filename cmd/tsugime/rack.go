package main

import (
	"fmt"
	"io"
	"os"

	"tsugime/repeat/bench"
)

// The flags that tell what the cutter has and how fast the cutter is.
var (
	rackFlag = flagHelp{"rack", "FILE.csv", "the cutter's own tools and limits, beside the order's punches"}
	jobsFlag = flagHelp{"jobs", "FILE.csv", "finished jobs, from which the cutter's rates are learnt"}
	dayFlag  = flagHelp{"day", "HOURS", "hours at the bench a day (default 8)"}
)

// rackNamed reads a rack from a file, or from standard input for "-"; "" is an empty
// one.
func (p program) rackNamed(name string) (bench.Rack, error) {
	return tableNamed(p, name, bench.ReadRack)
}

// ratesNamed learns rates from a file of jobs; "" leaves them to guesses.
func (p program) ratesNamed(name string, dayHours float64) (bench.Rates, error) {
	jobs, err := tableNamed(p, name, bench.ReadJobs)
	if err != nil {
		return bench.Rates{}, err
	}
	rates := bench.Learn(jobs)
	rates.DayHours = dayHours
	return rates, nil
}

// tableNamed reads a table; its errors name the file, the line and the value.
func tableNamed[T any](p program, name string, read func(io.Reader) (T, error)) (T, error) {
	var none T
	in, shown := p.in, "standard input"
	switch name {
	case "":
		return none, nil
	case "-":
	default:
		f, err := os.Open(name)
		if err != nil {
			return none, fmt.Errorf("open %s: %w; give the name of a file of comma-separated values", name, cause(err))
		}
		defer f.Close()
		in, shown = f, name
	}
	table, err := read(in)
	if err != nil {
		return none, fmt.Errorf("%s: %w", shown, cause(err))
	}
	return table, nil
}
