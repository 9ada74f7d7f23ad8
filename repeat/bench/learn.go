package bench

import (
	"encoding/csv"
	"io"
	"math"
	"slices"
	"strconv"
)

// A Job is one finished piece of work in one method: how many cut-outs, how long
// their lines were in all (each once), and how long it took.
type Job struct {
	Name     string
	Method   Method
	Count    int
	LengthMM float64
	Hours    float64
}

// maxJobs bounds a file of jobs.
const maxJobs = 10_000

// ReadJobs reads finished jobs as comma-separated values (RFC 4180): job, method,
// count, length_mm, hours. Its errors are a *Fault, or the reader's own.
func ReadJobs(in io.Reader) ([]Job, error) {
	var jobs []Job
	err := readTable(in, jobColumns, func(r row) error {
		j := Job{Name: r.text("job"), Method: Method(r.text("method"))}
		if !j.Method.Known() {
			return r.fault("method", "%.40q is no method; give one of %q", j.Method, Methods())
		}
		var err error
		if j.Count, err = r.count("count", 100_000_000); err != nil {
			return err
		}
		if j.LengthMM, err = r.number("length_mm"); err != nil {
			return err
		}
		if j.Hours, err = r.number("hours"); err != nil {
			return err
		}
		switch {
		case j.Count == 0:
			return r.fault("count", "a job without cut-outs teaches nothing; give their number")
		case j.Hours == 0:
			return r.fault("hours", "a job without hours teaches nothing; give them")
		}
		if jobs = append(jobs, j); len(jobs) > maxJobs {
			return r.fault("", "more than %d jobs; keep the newest", maxJobs)
		}
		return nil
	})
	return jobs, err
}

// jobColumns is the header of a file of jobs; only the method must be there.
var jobColumns = []string{"method", "job", "count", "length_mm", "hours"}

// WriteJobs writes finished jobs as ReadJobs reads them.
func WriteJobs(out io.Writer, jobs []Job) error {
	table := csv.NewWriter(out)
	table.UseCRLF = true // RFC 4180, section 2
	rows := [][]string{jobColumns}
	number := func(v float64) string { return strconv.FormatFloat(v, 'g', -1, 64) }
	for _, j := range jobs {
		rows = append(rows, []string{string(j.Method), j.Name, strconv.Itoa(j.Count), number(j.LengthMM), number(j.Hours)})
	}
	return table.WriteAll(rows)
}

// number reads a number from zero up; an empty field is zero.
func (r row) number(column string) (float64, error) {
	text := r.text(column)
	if text == "" {
		return 0, nil
	}
	v, err := strconv.ParseFloat(text, 64)
	if err != nil || !(v >= 0 && v <= 1e9) {
		return 0, r.fault(column, "%.40q is no number from 0 to 1e9", text)
	}
	return v, nil
}

// Learn returns the rates that finished jobs show; methods that none of them used are
// left to guesses.
//
// A method of single cuts takes the median of minutes for each cut-out. Of any other
// the minutes for each cut-out are a line over its mean length, by least squares:
// what a cut-out takes by itself, and each millimetre. Where fewer than three jobs or
// jobs of one mean length can't tell the two apart, or one would be below zero, it
// is the median of minutes for each millimetre alone.
func Learn(jobs []Job) Rates {
	var r Rates
	for _, m := range Methods() {
		var of []Job
		for _, j := range jobs {
			if j.Method == m && j.Count > 0 && j.Hours > 0 {
				of = append(of, j)
			}
		}
		if len(of) > 0 {
			r.Of = append(r.Of, learnt(m, of))
		}
	}
	return r
}

func learnt(m Method, jobs []Job) Rate {
	rate := Rate{Method: m, Jobs: len(jobs)}
	var x, y, each []float64 // mean length and minutes of a cut-out; minutes of a mm
	for _, j := range jobs {
		length := j.LengthMM * float64(m.Passes()) / float64(j.Count)
		x, y = append(x, length), append(y, j.Hours*60/float64(j.Count))
		if length > 0 {
			each = append(each, j.Hours*60/float64(j.Count)/length)
		}
	}
	if m.Single() || len(each) == 0 {
		rate.CutMin = median(y)
	} else if b0, b1, _, ok := line(x, y); ok && len(jobs) >= 3 && b0 >= 0 && b1 >= 0 && spread(x) {
		rate.CutMin, rate.MMMin = b0, b1
	} else {
		rate.MMMin = median(each)
	}
	var sum float64
	for i := range x {
		length := x[i]
		if m.Single() {
			length = 0
		}
		off := (rate.CutMin+rate.MMMin*length)/y[i] - 1
		sum += off * off
	}
	rate.Scatter = math.Sqrt(sum / float64(len(x)))
	return rate
}

// spread reports whether the lengths differ by a fifth at least, so that a line
// through them means something.
func spread(x []float64) bool { return slices.Max(x) >= 1.2*slices.Min(x) && slices.Max(x) > 0 }

func median(v []float64) float64 {
	s := slices.Clone(v)
	slices.Sort(s)
	n := len(s)
	if n%2 == 1 {
		return s[n/2]
	}
	return (s[n/2-1] + s[n/2]) / 2
}

// line fits y = b0 + b1·x by least squares about the means and returns the standard
// deviation of what is left, of n − 2 degrees of freedom. It is not ok where x has
// no spread.
func line(x, y []float64) (b0, b1, residual float64, ok bool) {
	n := float64(len(x))
	var mx, my float64
	for i := range x {
		mx, my = mx+x[i]/n, my+y[i]/n
	}
	var sxx, sxy float64
	for i := range x {
		sxx += (x[i] - mx) * (x[i] - mx)
		sxy += (x[i] - mx) * (y[i] - my)
	}
	if sxx == 0 {
		return 0, 0, 0, false
	}
	b1 = sxy / sxx
	b0 = my - b1*mx
	var rest float64
	for i := range x {
		r := y[i] - b0 - b1*x[i]
		rest += r * r
	}
	if n > 2 {
		residual = math.Sqrt(rest / (n - 2))
	}
	return b0, b1, residual, true
}
