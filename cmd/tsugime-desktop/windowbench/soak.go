package main

import (
	"fmt"
	"time"
)

// soakRow is after how many frames a line is written.
const soakRow = 2000

// soak pans and zooms through the stations until so many frames were shown, and
// writes what the program holds in memory.
func (b *bench) soak(frames int) error {
	if frames == 0 {
		return nil
	}
	fmt.Printf("\n%10s %14s %14s\n", "frames", "resident, MB", "Go heap, MB")
	shown := 0
	begun := time.Now()
	for i := 0; ; i++ {
		resident, heap, err := b.program.memory()
		if err != nil {
			return err
		}
		fmt.Printf("%10d %14.1f %14.1f\n", shown, resident, heap)
		if shown >= frames {
			break
		}
		if err := b.goTo(i % 4); err != nil {
			return err
		}
		n, err := b.soaked(soakRow)
		if err != nil {
			return err
		}
		shown += n
	}
	fmt.Printf("in %.0f s; goal 400 MB, no growth\n", time.Since(begun).Seconds())
	return nil
}

// soaked pans and zooms by turns until at least so many frames were shown.
func (b *bench) soaked(frames int) (int, error) {
	shown := 0
	for i := 0; shown < frames; i++ {
		move := b.pan
		if i%2 == 1 {
			move = b.zoom
		}
		const length = 4 * time.Second
		s, err := move(length)
		if err != nil {
			return shown, err
		}
		shown += int(s.perSecond * length.Seconds())
		if s.perSecond == 0 {
			return shown, fmt.Errorf("no frame was shown in %v", length)
		}
	}
	return shown, nil
}
