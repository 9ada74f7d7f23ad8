package pattern

import (
	"math"
	"strings"

	"tsugime/repeat/geom"
)

// A Site says what stands at a place under a group: its Wyckoff letter, how many
// equivalent places one conventional cell holds, and how many operations leave
// it where it is (1 at a general place).
type Site struct {
	Letter       string
	Multiplicity int
	Order        int
}

// sites holds a place of each special position in the order of its letters, a
// first, the general position left out (International Tables for
// Crystallography, volume A; from memory, and checked with spglib). x and y stand
// for any number.
var sites = map[Group]string{
	P2:   "0,0 0,1/2 1/2,0 1/2,1/2",
	PM:   "0,y 1/2,y",
	CM:   "0,y",
	P2MM: "0,0 0,1/2 1/2,0 1/2,1/2 x,0 x,1/2 0,y 1/2,y",
	P2MG: "0,0 0,1/2 1/4,y",
	P2GG: "0,0 1/2,0",
	C2MM: "0,0 0,1/2 1/4,1/4 x,0 0,y",
	P4:   "0,0 1/2,1/2 1/2,0",
	P4MM: "0,0 1/2,1/2 1/2,0 x,0 x,1/2 x,x",
	P4GM: "0,0 1/2,0 x,x+1/2",
	P3:   "0,0 1/3,2/3 2/3,1/3",
	P3M1: "0,0 1/3,2/3 2/3,1/3 x,-x",
	P31M: "0,0 1/3,2/3 x,0",
	P6:   "0,0 1/3,2/3 1/2,0",
	P6MM: "0,0 1/3,2/3 1/2,0 x,0 x,-x",
}

// Site returns what p is under g on l, taken for a special place where it lies
// within geom.Alike of one.
func (g Group) Site(l Lattice, p geom.Point) (Site, error) {
	e, f, err := g.on(l)
	if err != nil {
		return Site{}, err
	}
	u, v := f.into(float64(p.X), float64(p.Y))
	s := Site{Multiplicity: len(e.ops), Order: f.fixing(e, u, v)}
	s.Multiplicity /= s.Order
	letters := strings.Fields(sites[g])
	s.Letter = string(rune('a' + len(letters)))
	for i, place := range letters {
		if f.onSite(e, place, s.Order, u, v) {
			s.Letter = string(rune('a' + i))
			break
		}
	}
	return s, nil
}

// fixing counts the operations that leave a place where it is, a vector of the
// cell apart.
func (f frame) fixing(e groupEntry, u, v float64) int {
	n := 0
	for _, o := range e.ops {
		p, q := o.apply(u, v)
		if f.beside(p-u, q-v) {
			n++
		}
	}
	return n
}

// beside reports whether coordinates are whole numbers, to geom.Alike. An
// operation takes what is off by Alike to the other side: twice as far.
func (f frame) beside(u, v float64) bool {
	return math.Hypot(f.out(u-math.Round(u), v-math.Round(v))) <= 2*float64(geom.Alike)
}

// onSite reports whether some copy of a place lies on a special position, and
// has its order. The order of a general point of the position is looked at, so
// that a corner of a mirror isn't taken for its line.
func (f frame) onSite(e groupEntry, place string, order int, u, v float64) bool {
	at := position(place)
	const free = 0.1234567 // on no other position
	x, y := at.put(free, free)
	if f.fixing(e, x, y) != order {
		return false
	}
	for _, o := range e.ops {
		p, q := o.apply(u, v)
		for n := range 9 {
			p, q := p-math.Floor(p)+float64(n%3-1), q-math.Floor(q)+float64(n/3-1)
			// The free number, read off the coordinate it is the whole of.
			t := p
			if at.k[0] == 0 {
				t = q
			}
			if a, b := at.put(t, t); math.Hypot(f.out(a-p, b-q)) <= 2*float64(geom.Alike) {
				return true
			}
		}
	}
	return false
}

// A line of places: k times the free number plus c, in each coordinate.
type line struct{ k, c [2]float64 }

func (l line) put(x, y float64) (float64, float64) { return l.k[0]*x + l.c[0], l.k[1]*y + l.c[1] }

var fractions = map[string]float64{"0": 0, "1/2": 0.5, "1/3": 1.0 / 3, "2/3": 2.0 / 3, "1/4": 0.25}

func position(place string) line {
	var l line
	for i, text := range strings.Split(place, ",") {
		switch {
		case text == "x+1/2":
			l.k[i], l.c[i] = 1, 0.5
		case text == "-x":
			l.k[i] = -1
		case text == "x" || text == "y":
			l.k[i] = 1
		default:
			l.c[i] = fractions[text]
		}
	}
	return l
}
