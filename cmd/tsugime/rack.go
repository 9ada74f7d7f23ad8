package main

import (
	"fmt"
	"io"
	"os"

	"tsugime/repeat/bench"
	"tsugime/repeat/geom"
)

// The flags that tell what the cutter has and how fast the cutter is.
var (
	rackFlag = flagHelp{"rack", "FILE.csv", "the cutter's own tools and limits, beside the order's punches"}
	jobsFlag = flagHelp{"jobs", "FILE.csv", "finished jobs, from which the cutter's rates are learnt"}
	dayFlag  = flagHelp{"day", "HOURS", "hours at the bench a day (default 8)"}

	offsetFlag  = flagHelp{"blade-offset", "LENGTH", "how far a machine's blade trails its holder, for the files cut-only (default 0)"}
	overcutFlag = flagHelp{"overcut", "LENGTH", "how far it cuts on past the start of a line, for the files cut-only (default 0)"}
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

// benchFlags reads what the cutter has and how fast the cutter is.
func (p program) benchFlags(rackFile, jobsFile string, dayHours float64) (bench.Rack, bench.Rates, error) {
	if !(dayHours > 0 && dayHours <= 24) {
		return bench.Rack{}, bench.Rates{}, wrongUse("--day: %v hours make no day; give more than 0 and at most 24", dayHours)
	}
	if rackFile == "-" && jobsFile == "-" {
		return bench.Rack{}, bench.Rates{}, wrongUse("--rack and --jobs can't both be standard input; give one a name")
	}
	rack, err := p.rackNamed(rackFile)
	if err != nil {
		return rack, bench.Rates{}, err
	}
	rates, err := p.ratesNamed(jobsFile, dayHours)
	return rack, rates, err
}

// bladeFlags reads the knife of a cutting machine; its bounds are the sheets'.
func bladeFlags(offset, overcut string) (bench.Blade, error) {
	var b bench.Blade
	var err error
	if b.Offset, err = geom.ParseLength(offset, geom.MMUnit); err != nil {
		return b, wrongUse("--blade-offset: %v", err)
	}
	if b.Overcut, err = geom.ParseLength(overcut, geom.MMUnit); err != nil {
		return b, wrongUse("--overcut: %v", err)
	}
	return b, nil
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
