package pattern

import (
	"math"

	"tsugime/repeat/geom"
)

// A rimFigure is what a motif covers about its place: a disc, or straight edges
// with the cut-out on the right of each on the sheet. Millimetres.
type rimFigure struct {
	diameter float64 // of a disc, where there are no edges
	edges    [][4]float64
	area     float64 // of the edges' inside
}

func (f rimFigure) areaMM2() float64 {
	if f.edges == nil {
		return math.Pi / 4 * f.diameter * f.diameter
	}
	return f.area
}

// transform returns ∫ exp(−2πi k·x) dx over the figure, k = (x, y) ≠ 0 in cycles a
// millimetre. A disc's is the Airy pattern, d·J₁(π·d·k)/(2k) (Born and Wolf,
// Principles of Optics, 8.5.2, from memory); that of straight edges follows from
// the divergence theorem applied to k·exp(−2πi k·x)·i/(2πk²), so it also holds on
// a torus, where a rim need not close.
func (f rimFigure) transform(x, y float64) complex128 {
	if f.edges == nil {
		return complex(discTransform(f.diameter, math.Hypot(x, y)), 0)
	}
	var sum complex128
	for _, e := range f.edges {
		dx, dy := e[2]-e[0], e[3]-e[1]
		out := (x*dy - y*dx) * sinc(x*dx+y*dy)
		sum += complex(out, 0) * turns(x*(e[0]+e[2])/2+y*(e[1]+e[3])/2)
	}
	return sum * complex(0, 1/(2*math.Pi*(x*x+y*y)))
}

func discTransform(diameter, k float64) float64 {
	if k == 0 {
		return math.Pi / 4 * diameter * diameter
	}
	return diameter * math.J1(math.Pi*diameter*k) / (2 * k)
}

// sinc is sin(πt)/(πt).
func sinc(t float64) float64 {
	if math.Abs(t) < 1e-8 {
		return 1
	}
	return math.Sin(math.Pi*t) / (math.Pi * t)
}

// A form is a figure and the places, in millimetres, where it stands.
type form struct {
	figure rimFigure
	places [][2]float64
}

// finestChord is the chord of flattened curves as a share of the finest wave
// looked at: what is left out is 10⁻⁶ of a wave's swing.
const finestChord = 1e-3

// maxEdgeWaves bounds edges times waves: about a tenth of a second. Outlines
// beyond it count as discs of their area.
const maxEdgeWaves = 4_000_000

// formsOf returns what covers the cell of l: every figure once with its places, and
// the union of those that overlap as one more.
func formsOf(l Lattice, holes []hole, waves int) ([]form, error) {
	chord := max(geom.Chord, geom.Length(finestChord/wavesPerPitch*math.Sqrt(l.CellMM2()/float64(len(holes)))*1e6))
	overlaps := overlapping(l, holes)
	var forms []form
	var shared [][]geom.Ring
	known := map[figureKey]int{}
	edges := 0
	for i, s := range holes {
		if overlaps[i] {
			shared = append(shared, evenRings(s.shape))
			continue
		}
		n, ok := known[s.key]
		if !ok {
			f := figureAbout(s, chord)
			if edges += len(f.edges); edges*waves > maxEdgeWaves {
				f = rimFigure{diameter: s.diameter}
			}
			n = len(forms)
			known[s.key], forms = n, append(forms, form{figure: f})
		}
		forms[n].places = append(forms[n].places, [2]float64{s.x, s.y})
	}
	if shared == nil {
		return forms, nil
	}
	region, err := geom.Union(shared, l.A, l.B)
	if err != nil {
		return nil, err
	}
	return append(forms, form{regionFigure(region), [][2]float64{{0, 0}}}), nil
}

func figureAbout(s hole, chord geom.Length) rimFigure {
	if s.shape.Round() {
		return rimFigure{diameter: s.diameter}
	}
	f := rimFigure{edges: [][4]float64{}}
	var twice float64
	for _, r := range s.shape.Rings(chord) {
		twice += r.Area2()
		for i, p := range r {
			q := r[(i+1)%len(r)]
			f.edges = append(f.edges, [4]float64{p.X.MM() - s.x, p.Y.MM() - s.y, q.X.MM() - s.x, q.Y.MM() - s.y})
		}
	}
	f.area = math.Abs(twice) / 2e12
	if twice < 0 {
		for i, e := range f.edges {
			f.edges[i] = [4]float64{e[2], e[3], e[0], e[1]}
		}
	}
	return f
}

// evenRings returns s as straight pieces; those of a disc enclose as much as it does,
// so that its rim runs on both sides of them.
func evenRings(s geom.Shape) []geom.Ring {
	rings := s.Rings(geom.Chord)
	if s.Round() {
		step := 2 * math.Pi / float64(len(rings[0]))
		s.Disc.Diameter = s.Disc.Diameter.Times(math.Sqrt(step / math.Sin(step)))
		rings = s.Rings(geom.Chord)
	}
	return rings
}

func regionFigure(r geom.Region) rimFigure {
	f := rimFigure{edges: [][4]float64{}, area: r.AreaMM2()}
	for _, b := range r.Boundaries {
		for i, p := range b.Points {
			q := b.Points[0].Add(b.Wrap)
			if i+1 < len(b.Points) {
				q = b.Points[i+1]
			}
			f.edges = append(f.edges, [4]float64{p.X.MM(), p.Y.MM(), q.X.MM(), q.Y.MM()})
		}
	}
	return f
}

// maxCopies is over how many cells the holes of one may reach for what overlaps to be
// counted once; beyond, each counts alone.
const maxCopies = 100_000

// overlapping marks the holes that may share area with another or with a copy of
// themselves: discs that do, outlines whose boxes do.
func overlapping(l Lattice, holes []hole) []bool {
	boxes := make([]geom.Box, len(holes))
	var all geom.Box
	for i, s := range holes {
		boxes[i] = s.shape.Bounds()
		all = all.Union(boxes[i])
	}
	marked := make([]bool, len(holes))
	if l.Count(2*all.Width(), 2*all.Height()) > maxCopies {
		return marked
	}
	index := geom.NewIndex(boxes)
	for _, p := range l.Places(geom.BoxOf(all.Min.Sub(all.Max), all.Max.Sub(all.Min))) {
		for i, s := range holes {
			index.Visit(boxes[i].Moved(p), func(j int) bool {
				if (j != i || p != geom.Point{}) && !(marked[i] && marked[j]) && s.meets(holes[j], p) {
					marked[i], marked[j] = true, true
				}
				return true
			})
		}
	}
	return marked
}

// meets reports whether s moved by p may share area with t.
func (s hole) meets(t hole, p geom.Point) bool {
	if !s.shape.Round() || !t.shape.Round() {
		return true
	}
	c, d := s.shape.Disc, t.shape.Disc
	return 2*c.Centre.Add(p).Sub(d.Centre).Norm() < float64(c.Diameter+d.Diameter)
}
