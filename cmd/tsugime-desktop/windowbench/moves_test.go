package main

import (
	"bufio"
	"strings"
	"testing"
	"time"
)

func TestAPercentileIsTheValueThatSoManyDontExceed(t *testing.T) {
	of := make([]time.Duration, 200)
	for i := range of {
		of[i] = time.Duration(200 - i) // 200 down to 1
	}
	for pct, want := range map[float64]time.Duration{50: 100, 99: 198, 100: 200, 0: 1} {
		if got := percentile(of, pct); got != want {
			t.Errorf("the %v %% of 1 to 200 is %d; want %d", pct, got, want)
		}
	}
	if got := percentile(nil, 50); got != 0 {
		t.Errorf("of nothing it is %v", got)
	}
}

func TestSignsAreReadAsTheProgramWritesThem(t *testing.T) {
	p := &program{news: make(chan struct{}, 1)}
	p.listen(bufio.NewScanner(strings.NewReader(`shown t=1000000001 station=Draft state=2 built=1 zoom=86.5 path="/a=b c" words="Place x=3."
painted t=1000000002 heap=5000000 ms=1.50,2.25
shown t=1000000003 station=Bolt state=2 built=2 zoom=0.5 path="" words=""
`)))
	if len(p.signs) != 2 || p.signs[0].built() || !p.signs[1].built() {
		t.Fatalf("the signs are %+v; want one before the work is done and one after", p.signs)
	}
	if s := p.signs[0]; s.number("zoom") != 86.5 || s.fields["x"] != "" || s.at.UnixNano() != 1000000001 {
		t.Errorf("the first sign is %+v", s)
	}
	if len(p.times()) != 2 || p.times()[1] != 2250*time.Microsecond || p.heap != 5000000 {
		t.Errorf("the pictures took %v, the heap is %d", p.times(), p.heap)
	}
	if s, err := p.await(time.Unix(1, 2), time.Second, sign.built); err != nil || s.fields["station"] != "Bolt" {
		t.Errorf("waiting for the work brings %+v, %v", s, err)
	}
	if _, err := p.await(time.Unix(1, 4), time.Millisecond, sign.built); err == nil {
		t.Error("what was shown before is taken for what is waited for")
	}
}
