package main

import (
	"math"
	"slices"
	"time"
)

// A spread is how frames followed one another.
type spread struct {
	perSecond      float64
	middle, most99 time.Duration // 50th and 99th percentile of the gaps
	greatest       time.Duration
	painting       [2]time.Duration // our own drawing: 50th and 99th percentile
	processor      time.Duration    // of the program, for a frame
}

// step is how often the pointer or the wheel moves: faster than frames are shown.
const step = 8 * time.Millisecond

// watched moves the pointer by a function for a while and returns how the frames
// that reached the screen followed one another.
func (b *bench) watched(length time.Duration, move func(n int) error) (spread, error) {
	b.screen.forget()
	b.program.forget()
	busy, err := b.program.processor()
	if err != nil {
		return spread{}, err
	}
	begun := time.Now()
	tick := time.NewTicker(step)
	defer tick.Stop()
	for n := 0; time.Since(begun) < length; n++ {
		if err := move(n); err != nil {
			return spread{}, err
		}
		<-tick.C
	}
	ended := time.Now()
	more, err := b.program.processor()
	if err != nil {
		return spread{}, err
	}
	var gaps []time.Duration
	last := begun
	frames := 0
	for _, f := range b.screen.since(begun) {
		if f.at.After(ended) {
			break
		}
		gaps = append(gaps, f.at.Sub(last))
		last = f.at
		frames++
	}
	gaps = append(gaps, ended.Sub(last))
	painted := b.program.times()
	return spread{
		perSecond: float64(frames) / ended.Sub(begun).Seconds(),
		middle:    percentile(gaps, 50), most99: percentile(gaps, 99), greatest: percentile(gaps, 100),
		painting:  [2]time.Duration{percentile(painted, 50), percentile(painted, 99)},
		processor: (more - busy) / time.Duration(max(frames, 1)),
	}, nil
}

// percentile returns the value that so many hundredths of some don't exceed, zero for
// none.
func percentile(of []time.Duration, pct float64) time.Duration {
	if len(of) == 0 {
		return 0
	}
	sorted := slices.Sorted(slices.Values(of))
	return sorted[max(int(math.Ceil(pct/100*float64(len(sorted))))-1, 0)]
}

// pan drags the surface about with the left button on bare ground, round and
// round.
func (b *bench) pan(length time.Duration) (spread, error) {
	const radius, round = 150.0, 250
	x, y := b.middle()
	at := func(n int) (int, int) {
		sin, cos := math.Sincos(2 * math.Pi * float64(n) / round)
		return x + int(radius*(cos-1)), y + int(radius*sin)
	}
	if err := b.screen.moveTo(x, y); err != nil {
		return spread{}, err
	}
	const middleButton = 2
	if err := b.screen.press(middleButton); err != nil {
		return spread{}, err
	}
	time.Sleep(100 * time.Millisecond)
	s, err := b.watched(length, func(n int) error { return b.screen.moveTo(at(n)) })
	if err != nil {
		return s, err
	}
	return s, b.screen.release(middleButton)
}

// zoom turns the wheel in and out over the middle, a notch every third step.
func (b *bench) zoom(length time.Duration) (spread, error) {
	const notches = 12
	x, y := b.middle()
	if err := b.screen.moveTo(x, y); err != nil {
		return spread{}, err
	}
	time.Sleep(100 * time.Millisecond)
	return b.watched(length, func(n int) error {
		if n%2 != 0 {
			return nil
		}
		if n/2/notches%2 == 0 {
			return b.screen.click(wheelUp)
		}
		return b.screen.click(wheelDown)
	})
}

// middle is the middle of the surface on the screen.
func (b *bench) middle() (x, y int) {
	s := b.program.now()
	return int(s.number("x") + s.number("w")/2), int(s.number("y") + s.number("h")/2)
}
