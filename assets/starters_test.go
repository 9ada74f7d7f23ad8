package assets_test

import (
	"bytes"
	"flag"
	"math"
	"os"
	"testing"

	"tsugime/assets"
	"tsugime/repeat/cloth"
	"tsugime/repeat/document"
	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

// updating reports whether the starters are to be written anew: the flag -update
// is that of the goldens.
func updating() bool { return flag.Lookup("update").Value.String() == "true" }

// The starters are made here and kept in files, so that what a person opens is
// what these functions say.
var made = map[string]func(t *testing.T) document.Order{
	"small-dot":  smallDot,
	"square-dot": squareDot,
	"fine-dot":   fineDot,
	"scale-dot":  scaleDot,
	"leaf":       leaf,
}

// Every ground has a starter of its own name.
func init() {
	for _, g := range pattern.Grounds() {
		made[g.Name] = func(t *testing.T) document.Order { return laid(t, g) }
	}
}

// startMotifs is how many motifs the unit of a starter may hold, so that the file
// stays small enough to be read by a person.
const startMotifs = 2000

// laid is a ground that fits the step and the width between the back seams, in a
// size that meets both unbent: drawn for both where the unit stays small, else
// drawn for the step and fitted. Square tiles that no size brings to 6 kane sun
// get a step of half the width, 178 mm.
func laid(t *testing.T, g pattern.Ground) document.Order {
	t.Helper()
	o := start(t, g.Name)
	recipe := g.Recipe()
	for key, value := range settings[g.Name] {
		var err error
		if recipe, err = recipe.With(key, value); err != nil {
			t.Fatal(err)
		}
	}
	recipe.Width = o.SeamWidth()
	eased, ok := recipe.Eased(o.Sheet.Step)
	if !ok {
		o.Sheet.Step = o.SeamWidth() / 2
		if eased, ok = recipe.Eased(o.Sheet.Step); !ok {
			t.Fatalf("%s: no size meets step and width", g.Name)
		}
	}
	recipe = eased
	both, err := document.LayGround(o, recipe)
	if err == nil && len(both.Unit.Motifs) <= startMotifs {
		return both
	}
	recipe.Width, recipe.Columns = 0, 0
	along, err := document.LayGround(o, recipe)
	if err != nil {
		t.Fatal(err)
	}
	return bent(t, along)
}

// settings are what a starter sets otherwise than the ground's table.
var settings = map[string]map[string]string{
	"row-squares":    {"pitch": "1.6 mm", "dot": "0.8 mm"},
	"finest-stripes": {"every": "20 mm"},
	"paired-stripes": {"every": "25 mm"},
}

func smallDot(t *testing.T) document.Order {
	o := start(t, "small-dot")
	o.Note = "A small dye shop in a harbour town orders a fine small-dot ground for a light indoor coat."
	o.Garment = cloth.Garment{Body: cloth.Body{Kind: "light-coat", Height: o.Garment.Body.Height}, MatchBackCentre: true}
	o.Garment.Wishes.AvoidTurn = true
	row := o.Sheet.Step / 200
	o.Unit = pattern.Unit{
		Lattice: pattern.Diagonal(row, row),
		Motifs:  []pattern.Motif{dot(0.5, middle(o))},
	}
	o.Rack = []document.Punch{{Name: "awl 0.4", Diameter: geom.MM(0.4)}, {Name: "awl 0.5", Diameter: geom.MM(0.5)}}
	return fitted(t, o)
}

func squareDot(t *testing.T) document.Order {
	o := start(t, "square-dot")
	row := o.Sheet.Step / 144
	o.Unit = pattern.Unit{
		Lattice: pattern.Straight(row, row),
		Motifs:  []pattern.Motif{dot(0.5, middle(o))},
	}
	o.Rack = []document.Punch{{Name: "awl 0.5", Diameter: geom.MM(0.5)}}
	return fitted(t, o)
}

func fineDot(t *testing.T) document.Order {
	o := start(t, "fine-dot")
	o.Unit = pattern.Unit{
		Lattice: pattern.Diagonal(geom.MM(0.7125), o.Sheet.Step/254),
		Motifs:  []pattern.Motif{dot(0.4, middle(o))},
	}
	o.Rack = []document.Punch{{Name: "awl 0.4", Diameter: geom.MM(0.4)}}
	return fitted(t, o)
}

// scaleDot lays dots along six arcs about the foot of each scale; the next scale
// covers them from half a height below.
func scaleDot(t *testing.T) document.Order {
	o := start(t, "scale-dot")
	along := o.Sheet.Step / 20 // of one scale, two rows of them
	across := geom.MM(18)
	o.Unit.Lattice = pattern.HalfDrop(across/2, along)
	foot := middle(o)
	for ring := range 6 {
		radius := 8.6 - 1.35*float64(ring)
		n := int(math.Round(math.Pi * radius / 1.3))
		for i := range n + 1 {
			sin, cos := math.Sincos(math.Pi * float64(i) / float64(n))
			p := foot.Add(geom.PtMM(-radius*cos, -radius*sin))
			if hiddenBelow(p.Sub(foot), o.Unit.Lattice) {
				continue
			}
			o.Unit.Motifs = append(o.Unit.Motifs, dot(0.6, p))
		}
	}
	return fitted(t, o)
}

// hiddenBelow reports whether a neighbouring scale that lies nearer covers p: its
// foot is lower, and p within its outermost arc and the gap around it.
func hiddenBelow(p geom.Point, l pattern.Lattice) bool {
	for _, foot := range l.Places(geom.BoxOf(p).Grown(geom.MM(12))) {
		if foot.Y > 0 && p.Y <= foot.Y && p.Distance(foot) < geom.MM(8.6+1.2) {
			return true
		}
	}
	return false
}

func leaf(t *testing.T) document.Order {
	o := start(t, "leaf")
	o.Unit.Lattice = pattern.HalfDrop(geom.MM(11), o.Sheet.Step/10)
	// Two sides of a leaf with a web for its middle vein.
	shape, err := geom.ParsePathData("M0.35 -4.4C2.6 -2 2.4 1.6 0.35 3.6Z M-0.35 -4.4L-0.35 3.6C-2.4 1.6 -2.6 -2 -0.35 -4.4Z")
	if err != nil {
		t.Fatal(err)
	}
	at := middle(o)
	o.Unit.Motifs = []pattern.Motif{
		{Shape: geom.Shape{Outline: shape}, At: at, TurnDeg: 30},
		dot(1.2, at.Add(geom.PtMM(4.6, 3.2))),
		dot(0.8, at.Add(geom.PtMM(5.4, -3.4))),
	}
	o.Rack = []document.Punch{{Name: "punch 0.8", Diameter: geom.MM(0.8)}, {Name: "punch 1.2", Diameter: geom.MM(1.2)}}
	return fitted(t, o)
}

// start is an order that the starter's title names, without motifs.
func start(t *testing.T, name string) document.Order {
	t.Helper()
	o := document.Defaults()
	o.Sheet.Step = geom.Length(181_818_182) // 6 kane sun
	for _, s := range assets.Starters() {
		if s.Name == name {
			o.Title = s.Title
			return o
		}
	}
	t.Fatalf("starter %q is not listed", name)
	return o
}

func dot(diameter float64, at geom.Point) pattern.Motif {
	return pattern.Motif{Shape: geom.DiscShape(geom.Point{}, geom.MM(diameter)), At: at}
}

// middle is the middle of the field at the start of the cloth, so that the left
// selvedge looks like the right one.
func middle(o document.Order) geom.Point {
	return geom.Point{X: o.Sheet.Field.Left + o.Sheet.Field.Width/2}
}

// fitted numbers the motifs and applies the fit that bends least.
func fitted(t *testing.T, o document.Order) document.Order {
	t.Helper()
	motifs := o.Unit.Motifs
	o.Unit.Motifs = nil
	o, err := document.AddMotifs(o, motifs...)
	if err != nil {
		t.Fatal(err)
	}
	return bent(t, o)
}

// bent applies the fit to step and width that bends the unit least.
func bent(t *testing.T, o document.Order) document.Order {
	t.Helper()
	fits, err := o.Fits(document.FitWish{Step: o.Sheet.Step, Seam: true})
	if err != nil {
		t.Fatal(err)
	}
	if o, err = document.ApplyFit(o, fits[0]); err != nil {
		t.Fatal(err)
	}
	return o
}

func TestStartersAreWhatTheyWereMadeAs(t *testing.T) {
	if len(made) != len(assets.Starters()) {
		t.Errorf("%d starters are made, %d listed", len(made), len(assets.Starters()))
	}
	for name, order := range made {
		t.Run(name, func(t *testing.T) {
			var want bytes.Buffer
			if err := document.Write(&want, order(t)); err != nil {
				t.Fatal(err)
			}
			if updating() {
				if err := os.WriteFile("starters/"+name+".tsugime", want.Bytes(), 0o644); err != nil {
					t.Fatal(err)
				}
				return
			}
			got, ok := assets.Starter(name)
			if !ok {
				t.Fatalf("there is no starter %q", name)
			}
			if !bytes.Equal(got, want.Bytes()) {
				t.Errorf("starters/%s.tsugime is\n%s\nmade is\n%s\nrun go test -update", name, got, want.Bytes())
			}
		})
	}
}

// What the list says of a starter is so: its holes on a square centimetre, no
// joint fault, and nothing finer than its own limits.
func TestStartersKeepTheirWord(t *testing.T) {
	density := map[string]float64{"small-dot": 60, "square-dot": 63, "fine-dot": 98}
	for _, s := range assets.Starters() {
		text, _ := assets.Starter(s.Name)
		o, err := document.Read(bytes.NewReader(text))
		if err != nil {
			t.Fatalf("%s: %v", s.Name, err)
		}
		if want, ok := density[s.Name]; ok && math.Abs(o.Unit.PerCM2()-want) > 1 {
			t.Errorf("%s: %.1f holes on a square centimetre, want about %g", s.Name, o.Unit.PerCM2(), want)
		}
		if o.Title != s.Title || s.About == "" {
			t.Errorf("%s: the file's title is %q, the list's %q", s.Name, o.Title, s.Title)
		}
		if step := (geom.Point{Y: o.Sheet.Step}); !o.Unit.Lattice.Holds(step) {
			t.Errorf("%s: the step %s mm is no place of %v", s.Name, o.Sheet.Step, o.Unit.Lattice)
		}
		if web := narrowest(o.Unit); web < o.Sheet.WebLimit {
			t.Errorf("%s: two dots leave a web of %s mm, below %s", s.Name, web, o.Sheet.WebLimit)
		}
		for _, m := range o.Unit.Motifs {
			if m.Shape.Round() && m.Shape.Disc.Diameter < o.Limits.Hole {
				t.Errorf("%s: a hole of %s mm, below %s", s.Name, m.Shape.Disc.Diameter, o.Limits.Hole)
			}
		}
	}
	if _, ok := assets.Starter("none"); ok {
		t.Error("there is a starter none")
	}
}

// narrowest returns the narrowest paper between two dots of the pattern.
func narrowest(u pattern.Unit) geom.Length {
	least := geom.Metre
	for _, m := range u.Motifs {
		if !m.Shape.Round() {
			continue
		}
		for c := range u.In(geom.BoxOf(m.At).Grown(geom.MM(5))) {
			if c.Shape.Round() && c.Shape.Disc.Centre != m.At {
				between := c.Shape.Disc.Centre.Distance(m.At) - (c.Shape.Disc.Diameter+m.Shape.Disc.Diameter)/2
				least = min(least, between)
			}
		}
	}
	return least
}
