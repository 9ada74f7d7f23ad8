package main

import (
	"fmt"
	"os"
	"slices"
	"time"
)

// A bench is one display with one program at work on it.
type bench struct {
	screen                *screen
	program               *program
	binary, order, folder string
	width, height         int
	window                uint32
}

const patience = 20 * time.Second

// begin starts the program and returns how long it took until its first frame, and
// until the first frame after its work was done.
func (b *bench) begin() (first, ready time.Duration, err error) {
	b.screen.forget()
	if b.program, err = run(b.binary, b.order, b.folder); err != nil {
		return 0, 0, err
	}
	done, err := b.program.await(b.program.begun, patience, sign.built)
	if err != nil {
		return 0, 0, err
	}
	if b.window, err = b.screen.toplevel(patience); err != nil {
		return 0, 0, err
	}
	last, err := b.screen.frameAfter(done.at, patience)
	if err != nil {
		return 0, 0, err
	}
	frames := b.screen.since(b.program.begun)
	return frames[0].at.Sub(b.program.begun), last.at.Sub(b.program.begun), nil
}

// starts measures how long the window takes to be ready.
func (b *bench) starts(count int) error {
	if count == 0 {
		return nil
	}
	var firsts, readies []time.Duration
	for range count {
		first, ready, err := b.begin()
		if err != nil {
			return err
		}
		firsts, readies = append(firsts, first), append(readies, ready)
		if err := b.program.end(); err != nil {
			return fmt.Errorf("asked to leave, the program says: %w", err)
		}
	}
	fmt.Printf("from start to the first frame     %s\n", middleAndMost(firsts))
	fmt.Printf("from start to ready               %s   goal 1000 ms\n", middleAndMost(readies))
	return nil
}

// stop ends a program that a failure has left at work, and shows what it said.
func (b *bench) stop() {
	if b.program == nil || b.program.cmd.ProcessState != nil {
		return
	}
	b.program.cmd.Process.Kill()
	b.program.cmd.Wait()
	if said, err := os.ReadFile(b.program.log.Name()); err == nil {
		os.Stderr.Write(said)
	}
}

// middleAndMost writes the median and the greatest of some times.
func middleAndMost(of []time.Duration) string {
	return fmt.Sprintf("%6.0f ms median, %6.0f ms at most, of %d", ms(percentile(of, 50)), ms(slices.Max(of)), len(of))
}

func ms(d time.Duration) float64 { return d.Seconds() * 1000 }

// stations measures each station, the drag and the soak in one run of the program.
func (b *bench) stations(length time.Duration, soak int) error {
	if _, _, err := b.begin(); err != nil {
		return err
	}
	if err := b.screen.place(b.window, 0, 0, b.width, b.height); err != nil {
		return err
	}
	if err := b.settle(); err != nil {
		return err
	}
	fmt.Printf("\n%-18s %9s %33s %22s %10s\n", "", "shown", "gap between shown frames, ms", "our painting, ms", "processor")
	fmt.Printf("%-18s %9s %10s %10s %11s %10s %11s %10s\n", "", "per s", "50 %", "99 %", "most", "50 %", "99 %", "ms/frame")
	for i, name := range []string{"unit", "sheet", "bolt", "garment"} {
		if err := b.goTo(i); err != nil {
			return err
		}
		for _, way := range []struct {
			name string
			move func(time.Duration) (spread, error)
		}{{"pan", b.pan}, {"zoom", b.zoom}} {
			s, err := way.move(length)
			if err != nil {
				return err
			}
			fmt.Printf("%-10s %-7s %9.1f %10.1f %10.1f %11.1f %10.2f %11.2f %10.1f\n", name, way.name,
				s.perSecond, ms(s.middle), ms(s.most99), ms(s.greatest), ms(s.painting[0]), ms(s.painting[1]), ms(s.processor))
			if err := b.settle(); err != nil {
				return err
			}
		}
	}
	fmt.Printf("%-18s %9s %10s %10s %11s %10s %11s\n", "goal", "40", "", "50", "", "", "5")
	if err := b.drag(); err != nil {
		return err
	}
	if err := b.soak(soak); err != nil {
		return err
	}
	return b.program.end()
}

// settle waits until the work is done and the screen is still.
func (b *bench) settle() error {
	if err := b.screen.still(400*time.Millisecond, patience); err != nil {
		return err
	}
	if s := b.program.now(); !s.built() {
		_, err := b.program.await(s.at, patience, sign.built)
		return err
	}
	return nil
}

// goTo opens a station, numbered from 0.
func (b *bench) goTo(i int) error {
	if err := b.screen.chord(control, uint32('1'+i)); err != nil {
		return err
	}
	return b.settle()
}
