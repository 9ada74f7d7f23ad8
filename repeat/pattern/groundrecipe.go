package pattern

import (
	"fmt"
	"maps"
	"slices"

	"tsugime/repeat/geom"
)

// A Recipe is all that it takes to draw a ground again, to the bit. Values holds
// what differs from the table, by key and in the parameter's unit.
type Recipe struct {
	Ground string
	Values map[string]float64
	Seed   uint64      // of what chance decides; the rest ignores it
	Width  geom.Length // across, in which the ground repeats too; 0 for as it comes
	// Columns and Rows are how many tiles fill the width and the step where a fit
	// has settled it; 0 for the number that stretches them least.
	Columns, Rows int
}

// MaxTiles bounds Columns and Rows: tiles of the least pitch on the longest step.
const MaxTiles = int(MaxPitch / MinPitch)

// With returns r with one value set from what a person wrote. Where that changes
// the size of a tile, their number is no longer settled.
func (r Recipe) With(key, text string) (Recipe, error) {
	g, err := r.ground()
	if err != nil {
		return r, err
	}
	p, ok := g.Param(key)
	if !ok {
		return r, fmt.Errorf("ground %s: there is no %q to set; give one of %s", g.Name, key, g.keys())
	}
	v, err := p.Parse(text)
	if err != nil {
		return r, fmt.Errorf("ground %s: %w", g.Name, err)
	}
	set := maps.Clone(r.Values)
	if set == nil {
		set = map[string]float64{}
	}
	set[key] = v
	next := r
	next.Values = set
	if !next.tiledAs(r) {
		next.Columns, next.Rows = 0, 0
	}
	return next, nil
}

// tiledAs reports whether the values of both ask for a tile of the same size.
func (r Recipe) tiledAs(other Recipe) bool {
	g, v, err := r.filled()
	_, w, failed := other.filled()
	if err != nil || failed != nil {
		return false
	}
	across, along := g.draft.tile(v)
	x, y := g.draft.tile(w)
	return across == x && along == y
}

// Check returns an error where the recipe names what is not in the table or
// leaves its bounds.
func (r Recipe) Check() error {
	_, _, err := r.filled()
	return err
}

// Value returns the value of key, from the table where r says nothing.
func (r Recipe) Value(key string) float64 {
	if v, ok := r.Values[key]; ok {
		return v
	}
	g, _ := GroundNamed(r.Ground)
	p, _ := g.Param(key)
	return p.Default
}

// Laying tells how the ground meets the step and its own width, and an error where
// it can't: nothing is drawn.
func (r Recipe) Laying(step geom.Length) (Laying, error) {
	g, v, err := r.filled()
	if err != nil {
		return Laying{}, err
	}
	l, err := g.lay(r, v, step)
	if err != nil {
		return Laying{}, fmt.Errorf("ground %s: %w", g.Name, err)
	}
	return l, nil
}

// Unit draws the ground so that step is a lattice vector, and the recipe's width
// across too where it is not zero. Tiles are stretched to fill both a whole number
// of times (Laying tells by how much); where a whole number of nanometres doesn't
// divide, the unit holds several tiles, each place within half a nanometre of the
// even one. Nothing is drawn before it is known that it is no more than
// MaxGroundMotifs.
func (r Recipe) Unit(step geom.Length) (Unit, error) {
	g, v, err := r.filled()
	if err != nil {
		return Unit{}, err
	}
	u, err := g.unit(r, v, step)
	if err != nil {
		return Unit{}, fmt.Errorf("ground %s: %w", g.Name, err)
	}
	return u, nil
}

func (r Recipe) ground() (Ground, error) {
	g, ok := GroundNamed(r.Ground)
	if !ok {
		var names []string
		for _, g := range grounds {
			names = append(names, g.Name)
		}
		return Ground{}, fmt.Errorf("there is no ground %q; give one of %q", r.Ground, names)
	}
	return g, nil
}

// filled returns the ground and every value of it.
func (r Recipe) filled() (Ground, values, error) {
	g, err := r.ground()
	if err != nil {
		return g, nil, err
	}
	for _, key := range slices.Sorted(maps.Keys(r.Values)) {
		if _, ok := g.Param(key); !ok {
			return g, nil, fmt.Errorf("ground %s: there is no %q to set; give one of %s", g.Name, key, g.keys())
		}
	}
	if r.Width < 0 || r.Width > MaxPitch {
		return g, nil, fmt.Errorf("ground %s: the width of %s mm can't be filled; give one of 0 (free) to %s mm", g.Name, r.Width, MaxPitch)
	}
	if max(r.Columns, r.Rows) > MaxTiles || min(r.Columns, r.Rows) < 0 {
		return g, nil, fmt.Errorf("ground %s: %d × %d tiles are out of bounds; give 0 (free) to %d", g.Name, r.Columns, r.Rows, MaxTiles)
	}
	v := values{}
	for _, p := range g.Params {
		v[p.Key] = r.Value(p.Key)
		if err := p.Check(v[p.Key]); err != nil {
			return g, nil, fmt.Errorf("ground %s: %w", g.Name, err)
		}
	}
	return g, v, nil
}

func (g Ground) keys() []string {
	keys := make([]string, len(g.Params))
	for i, p := range g.Params {
		keys[i] = p.Key
	}
	return keys
}
