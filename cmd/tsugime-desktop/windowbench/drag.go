package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"math"
	"os"
	"time"
)

// How a motif is dragged: so often there and back, each time by so many moves of so
// many pixels.
const (
	dragTimes = 20
	dragMoves = 10
	dragBy    = 4
)

// A ground is what the bench knows of the order's unit: one motif on a lattice.
type ground struct {
	Unit struct {
		Lattice struct {
			A [2]float64 `json:"a_mm"`
			B [2]float64 `json:"b_mm"`
		} `json:"lattice"`
		Motifs []struct {
			At   [2]float64 `json:"at_mm"`
			Disc struct {
				Diameter float64 `json:"diameter_mm"`
			} `json:"disc"`
		} `json:"motifs"`
	} `json:"unit"`
}

// drag moves a motif of the unit and measures how long it takes until a copy of it
// moves on the screen, and from letting go until the findings are shown.
func (b *bench) drag() error {
	var g ground
	data, err := os.ReadFile(b.order)
	if err != nil {
		return err
	}
	if err := json.Unmarshal(data, &g); err != nil || len(g.Unit.Motifs) == 0 {
		return fmt.Errorf("%s has no motif to drag: %w", b.order, err)
	}
	if err := b.goTo(0); err != nil {
		return err
	}
	if err := b.screen.chord(control, '0'); err != nil {
		return err
	}
	if err := b.settle(); err != nil {
		return err
	}
	at := b.nearMiddle(g)
	x, y := b.on(at)
	copyX, copyY := b.on([2]float64{at[0] + g.Unit.Lattice.A[0], at[1] + g.Unit.Lattice.A[1]})
	part := int(g.Unit.Motifs[0].Disc.Diameter*b.program.now().number("zoom")) + 2*dragMoves*dragBy
	var copies, edited, pattern, findings []time.Duration
	for n := range dragTimes {
		by := dragBy
		if n%2 == 1 {
			by = -dragBy
		}
		moved, err := b.pull(x, y, by, square{copyX - part/2, copyY - part/2, part})
		if err != nil {
			return fmt.Errorf("drag %d: %w", n+1, err)
		}
		copies = append(copies, moved...)
		x += by * dragMoves
		let, err := b.letGo()
		if err != nil {
			return fmt.Errorf("drag %d, let go: %w", n+1, err)
		}
		edited, pattern, findings = append(edited, let.edited), append(pattern, let.pattern), append(findings, let.all)
	}
	fmt.Printf("\n%-62s %9s %9s %9s\n", "drag of a motif, ms", "50 %", "99 %", "most")
	for _, row := range []struct {
		name  string
		times []time.Duration
	}{{"pointer's move to the frame in which a copy has moved", copies},
		{"letting go to the edit, without its findings", edited},
		{"letting go to the frame with the pattern's findings, goal 50", pattern},
		{"letting go to the frame with joint, cloth and garment too", findings}} {
		fmt.Printf("%-62s %9.1f %9.1f %9.1f   of %d\n", row.name, ms(percentile(row.times, 50)), ms(percentile(row.times, 99)), ms(percentile(row.times, 100)), len(row.times))
	}
	return nil
}

// A square is a part of the screen.
type square struct{ x, y, side int }

// pull takes what is at a place and moves it step by step; it leaves the button held,
// and Shift, with which nothing catches. It returns how long each step took to be seen
// in a part of the screen.
func (b *bench) pull(x, y, by int, where square) ([]time.Duration, error) {
	if err := b.screen.moveTo(x, y); err != nil {
		return nil, err
	}
	if err := b.screen.press(leftButton); err != nil {
		return nil, err
	}
	if err := b.screen.feign(keyDown, b.screen.keycode[shift], 0, 0); err != nil {
		return nil, err
	}
	if err := b.settle(); err != nil {
		return nil, err
	}
	var all []time.Duration
	for n := 1; n <= dragMoves; n++ {
		before, err := b.screen.pixels(where.x, where.y, where.side, where.side)
		if err != nil {
			return nil, err
		}
		begun := time.Now()
		if err := b.screen.moveTo(x+n*by, y); err != nil {
			return nil, err
		}
		took, err := b.changed(where, before, begun)
		if err != nil {
			return nil, fmt.Errorf("step %d: %w", n, err)
		}
		all = append(all, took)
		time.Sleep(30 * time.Millisecond)
	}
	return all, nil
}

// changed waits until a part of the screen is another than before and returns how
// long after a time the frame came that changed it.
func (b *bench) changed(where square, before []byte, begun time.Time) (time.Duration, error) {
	last := begun
	for {
		f, err := b.screen.frameAfter(last, time.Second)
		if err != nil {
			return 0, fmt.Errorf("no copy has moved: %w", err)
		}
		now, err := b.screen.pixels(where.x, where.y, where.side, where.side)
		if err != nil {
			return 0, err
		}
		if !bytes.Equal(before, now) {
			return f.at.Sub(begun), nil
		}
		last = f.at
	}
}

// A letting is how long after the button was let go the edit was made, the frame with
// the findings of the plain pattern was shown, and the one with all of them.
type letting struct{ edited, pattern, all time.Duration }

// letGo lets the button go.
func (b *bench) letGo() (letting, error) {
	state := b.program.now().fields["state"]
	begun := time.Now()
	if err := b.screen.release(leftButton); err != nil {
		return letting{}, err
	}
	if err := b.screen.feign(keyUp, b.screen.keycode[shift], 0, 0); err != nil {
		return letting{}, err
	}
	edit, err := b.program.await(begun, patience, func(s sign) bool { return s.fields["state"] != state })
	if err != nil {
		return letting{}, err
	}
	times := letting{edited: edit.at.Sub(begun)}
	for _, until := range []struct {
		holds func(sign) bool
		took  *time.Duration
	}{{sign.found, &times.pattern}, {sign.built, &times.all}} {
		done, err := b.program.await(edit.at, patience, until.holds)
		if err != nil {
			return letting{}, err
		}
		shown, err := b.screen.frameAfter(done.at, patience)
		if err != nil {
			return letting{}, err
		}
		*until.took = shown.at.Sub(begun)
	}
	return times, b.settle()
}

// on returns where a place of the scene is on the screen.
func (b *bench) on(mm [2]float64) (x, y int) {
	s := b.program.now()
	at := func(origin, from, mm float64) int { return int(math.Round(origin + (mm-from)*s.number("zoom"))) }
	return at(s.number("x"), s.number("left"), mm[0]), at(s.number("y"), s.number("top"), mm[1])
}

// nearMiddle returns where the copy of the first motif stands that is nearest to the
// middle of the surface, within a cell.
func (b *bench) nearMiddle(g ground) [2]float64 {
	s := b.program.now()
	l, at := g.Unit.Lattice, g.Unit.Motifs[0].At
	dx := s.number("left") + s.number("w")/2/s.number("zoom") - at[0]
	dy := s.number("top") + s.number("h")/2/s.number("zoom") - at[1]
	area := l.A[0]*l.B[1] - l.A[1]*l.B[0]
	i := math.Round((dx*l.B[1] - dy*l.B[0]) / area)
	j := math.Round((dy*l.A[0] - dx*l.A[1]) / area)
	return [2]float64{at[0] + i*l.A[0] + j*l.B[0], at[1] + i*l.A[1] + j*l.B[1]}
}
