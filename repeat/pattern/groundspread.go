package pattern

import (
	"math"
	"math/rand/v2"
)

// spread chooses many of the dots by chance but evenly: it takes them in a random
// order where none chosen is near, and asks for less distance until there are
// enough. It begins a little above what discs placed by chance reach before none
// fits: they cover 0.547 of the area (Feder 1980, from memory), so that they are
// √(0.547·4/π) = 0.83 apart where the area is as many squares of side 1.
func (f *scatter) spread(many int, random *rand.Rand) []int {
	chosen := make([]int, 0, many)
	is := make([]bool, len(f.x))
	turn := random.Perm(len(f.x))
	for apart := 0.85 * math.Sqrt(f.w*f.h/float64(many)); ; apart *= 0.95 {
		near := f.boxed(math.Min(apart, math.Min(f.w, f.h)/3))
		for _, i := range chosen {
			near.put(f.x[i], f.y[i], i)
		}
		for _, i := range turn {
			if len(chosen) == many {
				return chosen
			}
			if !is[i] && !f.taken(near, i, apart) {
				is[i] = true
				chosen = append(chosen, i)
				near.put(f.x[i], f.y[i], i)
			}
		}
	}
}

// A boxes holds dots by the box that they stand in: first is one of each box and
// next the one after it, both counted from 1.
type boxes struct {
	cols, rows  int
	wide, high  float64 // boxes to the nanometre
	first, next []int32
}

func (f *scatter) boxed(side float64) boxes {
	b := boxes{cols: max(3, int(f.w/side)), rows: max(3, int(f.h/side)), next: make([]int32, len(f.x)+1)}
	b.wide, b.high = float64(b.cols)/f.w, float64(b.rows)/f.h
	b.first = make([]int32, b.cols*b.rows)
	return b
}

func (b boxes) of(x, y float64) (col, row int) {
	return min(int(x*b.wide), b.cols-1), min(int(y*b.high), b.rows-1)
}

func (b boxes) put(x, y float64, i int) {
	col, row := b.of(x, y)
	in := &b.first[row*b.cols+col]
	b.next[i+1] = *in
	*in = int32(i + 1)
}

// taken reports whether one of those in the boxes lies within apart of dot i.
func (f *scatter) taken(near boxes, i int, apart float64) bool {
	x, y := f.x[i], f.y[i]
	col, row := near.of(x, y)
	for r := row - 1; r <= row+1; r++ {
		line := (r + near.rows) % near.rows * near.cols
		for c := col - 1; c <= col+1; c++ {
			for j := near.first[line+(c+near.cols)%near.cols]; j != 0; j = near.next[j] {
				dx, dy := apartBy(x, f.x[j-1], f.w), apartBy(y, f.y[j-1], f.h)
				if dx*dx+dy*dy < apart*apart {
					return true
				}
			}
		}
	}
	return false
}
