package ui

import (
	"tsugime/repeat/geom"
	"tsugime/ui/board"
)

// gridPx is how near to each other on the screen the lines of the grid may be shown;
// where they are nearer, every fifth, tenth, … is.
const gridPx = 36

// markGrid shows the grid that places snap to.
func (w *Window) markGrid(sc *board.Scene, grid geom.Length) {
	if grid <= 0 || w.board.Scale() <= 0 {
		return
	}
	step := grid
	for k := 0; step.MM()*w.board.Scale() < gridPx; k++ {
		step *= geom.Length([2]int{5, 2}[k%2])
	}
	seen := w.board.Seen()
	line := func(a, b geom.Point) {
		sc.Marks = append(sc.Marks, board.Mark{Shape: board.Line, Points: []geom.Point{a, b}, Colour: worn().grid, Width: 0.7, Bare: true})
	}
	for x := -(-seen.Min.X / step) * step; x <= seen.Max.X; x += step {
		line(geom.Point{X: x, Y: seen.Min.Y}, geom.Point{X: x, Y: seen.Max.Y})
	}
	for y := -(-seen.Min.Y / step) * step; y <= seen.Max.Y; y += step {
		line(geom.Point{X: seen.Min.X, Y: y}, geom.Point{X: seen.Max.X, Y: y})
	}
}
