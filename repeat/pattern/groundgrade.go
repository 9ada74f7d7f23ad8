package pattern

import (
	"math"
	"strconv"

	"tsugime/repeat/geom"
)

// A Grade is a named fineness: so many dots on a square kane sun, or so many
// stripes on a kane sun (1000/33 mm). Where the trade names a range, the lower end
// is taken.
type Grade struct {
	Name, Trade string
	Count       int
	Square      bool // Count is on a square kane sun
}

// grades are the counts that the trade names, the coarsest first. Where two
// sources differ, both stand. That a stripe of ten and a dot of 700 have a grade
// of their own is not named by any: 700 is the count computed from a writer's
// 40,000 to 50,000 grains on 18 × 30 cm.
var grades = []Grade{
	{"classic dots", "komon", 700, true},
	{"finest dots", "goku-same", 900, true},
	{"finest dots, the old record", "gokugoku-same", 1200, true},
	{"ten thousand stripes, coarse", "mansuji", 12, false},
	{"ten thousand stripes", "mansuji", 15, false},
	{"hair stripes", "ke-mansuji", 20, false},
	{"split in two", "futatsu-wari", 23, false},
	{"finest hair stripes", "goku-ke-mansuji", 26, false},
	{"mist of stripes", "goku-mijin", 31, false},
}

// Grades returns the named counts: dots, then stripes, the coarsest first.
func Grades() []Grade { return append([]Grade(nil), grades...) }

// Pitch returns the distance from dot to dot on a square ground of that count, or
// from stripe to stripe.
func (g Grade) Pitch() geom.Length {
	const sun = 1000.0 / 33
	if g.Square {
		return geom.MM(sun / math.Sqrt(float64(g.Count)))
	}
	return geom.MM(sun / float64(g.Count))
}

// String writes the count with its unit: "900 per square kane sun".
func (g Grade) String() string {
	if g.Square {
		return strconv.Itoa(g.Count) + " per square kane sun"
	}
	return strconv.Itoa(g.Count) + " per kane sun"
}

// For returns whether the grade counts what the ground is made of, and then the
// value of the ground's pitch.
func (g Grade) For(ground Ground) (mm float64, ok bool) {
	if _, ok := ground.Param("pitch"); !ok || g.Square != (ground.draft.dot != nil) {
		return 0, false
	}
	return g.Pitch().MM(), true
}
