package stencil

import (
	"math"

	"tsugime/repeat/geom"
)

// crowding is how much dearer ties become that stand all on one side: one hinge
// costs as much as three ties well spread. Our recommendation, no source.
const crowding = 2

// spreadCost returns what ties at these bearings cost together: their sum, dearer
// where the nearest two stand closer than even spacing would have them.
func spreadCost(cost float64, turns []float64) float64 {
	if len(turns) < 2 {
		return cost
	}
	ideal := 360 / float64(len(turns))
	near := ideal
	for i, a := range turns {
		for _, b := range turns[:i] {
			near = math.Min(near, apartDeg(a, b))
		}
	}
	lack := 1 - near/ideal
	return cost * (1 + crowding*lack*lack)
}

// apartDeg returns the angle between two bearings, 0 … 180.
func apartDeg(a, b float64) float64 { return math.Abs(math.Remainder(a-b, 360)) }

// spread returns n of the crossings that cost least by spreadCost, each at least
// apart from the others: the best pair, and one after another the best to add.
// Fewer come back where fewer fit.
func spread(among []tieWay, usable []int, n int, apart geom.Length) []int {
	var chosen []int
	switch {
	case len(usable) == 0:
		return nil
	case n > 1:
		chosen = bestPair(among, usable, n, apart)
	}
	if chosen == nil {
		best := usable[0]
		for _, i := range usable[1:] {
			if among[i].cost < among[best].cost {
				best = i
			}
		}
		chosen = []int{best}
	}
	for len(chosen) < n {
		i := nextBest(among, usable, chosen, n, apart)
		if i < 0 {
			break
		}
		chosen = append(chosen, i)
	}
	return chosen
}

func bestPair(among []tieWay, usable []int, n int, apart geom.Length) []int {
	var best []int
	least := math.Inf(1)
	ideal := 360 / float64(n)
	for k, i := range usable {
		a := &among[i]
		for _, j := range usable[:k] {
			b := &among[j]
			sum := a.cost + b.cost
			if sum >= least {
				continue
			}
			lack := math.Max(0, 1-apartDeg(a.turn, b.turn)/ideal)
			if cost := sum * (1 + crowding*lack*lack); cost < least && !tooNear(a, b, apart) {
				best, least = []int{j, i}, cost
			}
		}
	}
	return best
}

func nextBest(among []tieWay, usable, chosen []int, n int, apart geom.Length) int {
	turns := make([]float64, 0, n)
	var sum float64
	for _, c := range chosen {
		turns, sum = append(turns, among[c].turn), sum+among[c].cost
	}
	best, least := -1, math.Inf(1)
next:
	for _, i := range usable {
		for _, c := range chosen {
			if i == c || tooNear(&among[i], &among[c], apart) {
				continue next
			}
		}
		if cost := spreadCost(sum+among[i].cost, append(turns, among[i].turn)); cost < least {
			best, least = i, cost
		}
	}
	return best
}

// tooNear reports whether the middles of two crossings lie closer than apart.
func tooNear(a, b *tieWay, apart geom.Length) bool {
	return a.middle().Sub(b.middle()).Norm() < float64(apart)
}

// RibbonSpacing is how far apart Tsugime ties a ribbon of paper that goes on for
// ever: our recommendation, no source.
const RibbonSpacing = 20 * geom.Millimetre

// ribbonTies returns how many ties a ribbon of that period gets.
func ribbonTies(along geom.Point, least int) int {
	return max(least, int(math.Ceil(along.Norm()/float64(RibbonSpacing))))
}

// evenly returns n of the crossings evenly along a ribbon, from the cheapest on:
// in each part of its length the one that costs least, dearer away from the even
// place.
func evenly(among []tieWay, usable []int, n int, apart geom.Length) []int {
	first := spread(among, usable, 1, apart)
	if first == nil {
		return nil
	}
	chosen := first
	each := 360 / float64(n)
	for k := 1; k < n; k++ {
		place := among[first[0]].turn + float64(k)*each
		best, least := -1, math.Inf(1)
	next:
		for _, i := range usable {
			off := apartDeg(among[i].turn, place) / each
			if off > 0.5 {
				continue
			}
			for _, c := range chosen {
				if i == c || tooNear(&among[i], &among[c], apart) {
					continue next
				}
			}
			if cost := among[i].cost * (1 + crowding*off*off); cost < least {
				best, least = i, cost
			}
		}
		if best >= 0 {
			chosen = append(chosen, best)
		}
	}
	return chosen
}
