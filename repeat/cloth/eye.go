package cloth

import (
	"math"

	"tsugime/repeat/geom"
)

// An Eye is what is seen from a distance.
type Eye struct {
	Distance geom.Length
	// Plain is what any good eye parts: 1 arc minute, acuity 1.0 of ISO 8596.
	Plain geom.Length
	// Crisp is what an expert finds out of line where lines are crisp: 10 arc
	// seconds. Published for vernier acuity are 2 to 10, under good conditions
	// (summaries that cite Westheimer, 1975); the cloth's grain hides more.
	Crisp geom.Length
}

// EyeAt returns what is seen from a distance.
func EyeAt(distance geom.Length) Eye {
	const minute = math.Pi / 180 / 60
	return Eye{distance, distance.Times(minute), distance.Times(minute / 6)}
}

// A Sight says how visible an offset is.
type Sight string

// The sights.
const (
	Unseen       Sight = "unseen"
	SeenByExpert Sight = "seen-by-an-expert" // on crisp lines
	PlainlySeen  Sight = "plainly-seen"
)

// Sees returns how visible an offset is.
func (e Eye) Sees(offset geom.Length) Sight {
	switch offset = offset.Abs(); {
	case offset > e.Plain:
		return PlainlySeen
	case offset > e.Crisp:
		return SeenByExpert
	}
	return Unseen
}
