package bench

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"
)

// The line fit that rates are learnt by, held against the certified values of the
// problem Norris of NIST's Statistical Reference Datasets (linear regression, lower
// difficulty): intercept, slope and residual standard deviation. The data are from
// memory; that they give fifteen certified digits proves them.
func TestTheLineFitAgreesWithNISTsNorris(t *testing.T) {
	yx := [][2]float64{
		{0.1, 0.2}, {338.8, 337.4}, {118.1, 118.2}, {888.0, 884.6}, {9.2, 10.1}, {228.1, 226.5}, {668.5, 666.3},
		{998.5, 996.3}, {449.1, 448.6}, {778.9, 777.0}, {559.2, 558.2}, {0.3, 0.4}, {0.1, 0.6}, {778.1, 775.5},
		{668.8, 666.9}, {339.3, 338.0}, {448.9, 447.5}, {10.8, 11.6}, {557.7, 556.0}, {228.3, 228.1}, {998.0, 995.8},
		{888.8, 887.6}, {119.6, 120.2}, {0.3, 0.3}, {0.6, 0.3}, {557.6, 556.8}, {339.3, 339.1}, {888.0, 887.2},
		{998.5, 999.0}, {778.9, 779.0}, {10.2, 11.1}, {117.6, 118.3}, {228.9, 229.2}, {668.4, 669.1}, {449.2, 448.9}, {0.2, 0.5},
	}
	var x, y []float64
	for _, p := range yx {
		y, x = append(y, p[0]), append(x, p[1])
	}
	b0, b1, s, ok := line(x, y)
	for _, c := range []struct {
		name      string
		got, want float64
	}{{"intercept", b0, -0.262323073774029}, {"slope", b1, 1.00211681802045}, {"residual", s, 0.884796396144373}} {
		if !ok || math.Abs(c.got-c.want) > 1e-12*math.Max(1, math.Abs(c.want)) {
			t.Errorf("%s %.15f, want %.15f", c.name, c.got, c.want)
		}
	}
}

func TestRatesAreLearntFromFinishedJobs(t *testing.T) {
	rnd := rand.New(rand.NewPCG(6, 6))
	var jobs []Job
	for range 12 {
		count := 500 + rnd.IntN(5000)
		length := float64(count) * (5 + 40*rnd.Float64())
		jobs = append(jobs,
			Job{Method: Tsukibori, Count: count, LengthMM: length, Hours: (0.4*float64(count) + 0.2*length) / 60},
			Job{Method: Kiribori, Count: count, LengthMM: 99, Hours: 0.15 * float64(count) / 60},
			Job{Method: Shimabori, Count: 100, LengthMM: 36_000, Hours: 36_000 * 3 * 0.02 / 60})
	}
	// One hole job that went wrong must not spoil the rate.
	jobs = append(jobs, Job{Method: Kiribori, Count: 10, Hours: 30})
	r := Learn(jobs)
	for _, c := range []struct {
		m       Method
		cut, mm float64
		jobs    int
	}{{Tsukibori, 0.4, 0.2, 12}, {Kiribori, 0.15, 0, 13}, {Shimabori, 0, 0.02, 12}} {
		got := r.Rate(c.m)
		if math.Abs(got.CutMin-c.cut) > 1e-9 || math.Abs(got.MMMin-c.mm) > 1e-9 || got.Jobs != c.jobs {
			t.Errorf("%s: %+v, want %v min a cut-out, %v min a mm, from %d jobs", c.m, got, c.cut, c.mm, c.jobs)
		}
	}
	if got := r.Rate(Hikibori); got.Jobs != 0 || got.MMMin == 0 {
		t.Errorf("hikibori, which no job used: %+v, want a guess", got)
	}
	if got := r.Rate(Tsukibori).Scatter; got > 1e-9 {
		t.Errorf("jobs on the line scatter by %v", got)
	}
}

// However jobs are made up, no rate is below zero or no number.
func TestNoRateIsBelowZero(t *testing.T) {
	rnd := rand.New(rand.NewPCG(7, 7))
	for range 500 {
		var jobs []Job
		for range 1 + rnd.IntN(6) {
			jobs = append(jobs, Job{
				Method: Methods()[rnd.IntN(5)], Count: 1 + rnd.IntN(3), LengthMM: float64(rnd.IntN(4)), Hours: rnd.Float64() + 0.01,
			})
		}
		for _, rate := range Learn(jobs).Of {
			if !(rate.CutMin >= 0 && rate.MMMin >= 0 && rate.CutMin+rate.MMMin > 0) || math.IsNaN(rate.Scatter) {
				t.Fatalf("%+v from %+v", rate, jobs)
			}
		}
	}
}

func TestJobsAreReadAndBadOnesNamed(t *testing.T) {
	jobs, err := ReadJobs(strings.NewReader("job,method,count,length_mm,hours\nspring,kiribori,41000,,160.5\n\"leaves, small\",tsukibori,320,5200,30\n"))
	want := []Job{{"spring", Kiribori, 41000, 0, 160.5}, {"leaves, small", Tsukibori, 320, 5200, 30}}
	if err != nil || len(jobs) != 2 || jobs[0] != want[0] || jobs[1] != want[1] {
		t.Errorf("%+v, %v; want %+v", jobs, err, want)
	}
	for _, c := range []struct{ text, want string }{
		{"", "the file is empty"},
		{"method,count,hours\ndrill,1,1\n", `line 2, method: "drill" is no method`},
		{"method,count,hours\nkiribori,1.5,1\n", `line 2, count: "1.5" is no whole number`},
		{"method,count,hours\nkiribori,0,1\n", "line 2, count: a job without cut-outs"},
		{"method,count,hours\nkiribori,5,\n", "line 2, hours: a job without hours"},
		{"method,count,hours\nkiribori,5,NaN\n", "line 2, hours: \"NaN\" is no number"},
	} {
		if _, err := ReadJobs(strings.NewReader(c.text)); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%q: %v, want %q", c.text, err, c.want)
		}
	}
}
