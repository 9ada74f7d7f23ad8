package stencil

import (
	"cmp"
	"context"
	"fmt"
	"math"
	"slices"
	"sort"

	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

// jointWays are the ways that a joint line can take: what every line across one
// field has in common, found once.
type jointWays struct {
	u     pattern.Unit
	field Field
	step  geom.Length
	cloth *cloth
	empty bool        // the field holds no motif
	maps  []*clothMap // the webs looked for once, twice, four, eight times as far as usual
	about *nearbyCuts // the cut-outs about the line drawn last
}

// nearbyCuts are the cut-outs of the field whose boxes meet a stretch of it.
type nearbyCuts struct {
	*neighbourhood
	from, to geom.Length
}

func newJointWays(ctx context.Context, u pattern.Unit, field Field, step geom.Length) (*jointWays, error) {
	if field.Width <= 0 || step <= 0 {
		return nil, fmt.Errorf("a field of %s mm and a step of %s mm leave no joint; give both more than zero", field.Width, step)
	}
	w := &jointWays{u: u, field: field, step: step}
	var err error
	w.cloth, w.empty, err = clothOf(ctx, u, field, step)
	return w, err
}

// farthestLook is how often webs are looked for, each time twice as far: where a
// web was too wide to be found two pockets seem one, and the way through may not
// be led.
const farthestLook = 4

// best returns the line that keeps the share of the greatest clearance, as far as
// it can be led: the shortest, or one that climbs less where that one climbs far.
// It reports whether there is one through paper alone.
func (w *jointWays) best(ctx context.Context, share float64) (Joint, bool, error) {
	var best Joint
	for look := range farthestLook {
		if look == len(w.maps) {
			m, err := w.cloth.mapped(ctx, float64(int(1)<<look))
			if err != nil {
				return Joint{}, false, err
			}
			w.maps = append(w.maps, m)
		}
		m := w.maps[look]
		if m == nil {
			break
		}
		routes := w.routes(m, share)
		if len(routes) == 0 {
			break
		}
		for _, r := range routes {
			j, ok := w.drawn(r.at, r.widest/2, share)
			if ok && j.Clearance > best.Clearance {
				best = j
			}
			if best.keeps(share) {
				break
			}
		}
		if best.Line == nil {
			j, ok, err := w.winding(ctx, m, share)
			if err != nil {
				return Joint{}, false, err
			}
			if ok {
				return j, true, nil
			}
		}
		if best.keeps(share) {
			break
		}
	}
	return best, best.Line != nil, ctx.Err()
}

// keeps reports whether a line has the share of the greatest clearance.
func (j Joint) keeps(share float64) bool {
	return j.Line != nil && j.Clearance >= j.Widest.Times(share)-3*geom.Grid
}

// How far a line may climb. The paper must be as much higher than the step as the
// line is high (our choice, no source).
const (
	levelShare = 1. / 8 // of the step: a line that is no higher is level enough
	riseCost   = 1      // what a millimetre of height costs beside one of length
)

// bandShares are the bands about y = 0 that a route which climbs is held to, as
// shares of the step to either side.
var bandShares = [...]float64{1. / 16, 1. / 8, 1. / 4}

// levelLeast is the share of the greatest clearance that a level line must be able
// to have, to be taken before one that climbs (our choice).
const levelLeast = 1. / 5

// A route is a way over the middles of webs and the width of the web that it and
// all others like it must cross.
type route struct {
	at     []place
	widest float64
}

// routes returns the ways across the cloth that keep the share of the greatest
// clearance, in the order in which they should be drawn: the shortest where it is
// level, else by length and height. Where only ways that climb are so wide, the
// widest level one comes first.
func (w *jointWays) routes(m *clothMap, share float64) []route {
	at, found := w.cloth.across(m, w.field, share*m.widest, math.Inf(1))
	switch {
	case !found:
		return nil
	case heightOf(at) <= levelShare*float64(w.step):
		return []route{{at, m.widest}}
	}
	routes := []route{{at, m.widest}}
	for _, band := range bandShares {
		if at, found := w.cloth.across(m, w.field, share*m.widest, band*float64(w.step)); found {
			routes = append(routes, route{at, m.widest})
		}
	}
	slices.SortStableFunc(routes, func(a, b route) int { return cmp.Compare(w.price(a.at), w.price(b.at)) })
	if len(routes) == 1 {
		if level, found := w.widestLevel(m, share); found {
			return append([]route{level}, routes...)
		}
	}
	return routes
}

// widestLevel returns the way that keeps the share of the greatest clearance that
// a line within the widest band can have, and whether that is worth its while.
func (w *jointWays) widestLevel(m *clothMap, share float64) (route, bool) {
	band := bandShares[len(bandShares)-1] * float64(w.step)
	var widths []float64
	for _, l := range m.webs {
		if l.width >= levelLeast*m.widest && l.width <= m.widest {
			widths = append(widths, l.width)
		}
	}
	slices.Sort(widths)
	widths = slices.Compact(widths)
	// The narrowest of these at which no level way is left.
	none := sort.Search(len(widths), func(i int) bool {
		_, found := w.cloth.across(m, w.field, widths[i], band)
		return !found
	})
	if none == 0 {
		return route{}, false
	}
	widest := widths[none-1]
	at, found := w.cloth.across(m, w.field, share*widest, band)
	return route{at, widest}, found
}

// price is what a route costs by its length and its height, in nanometres.
func (w *jointWays) price(at []place) float64 {
	length := at[0].x - float64(w.field.Left) + float64(w.field.Right()) - at[len(at)-1].x
	for i, p := range at[1:] {
		length += p.sub(at[i]).norm()
	}
	return length + riseCost*heightOf(at)
}

// heightOf returns how high a route is.
func heightOf(at []place) float64 {
	lo, hi := math.Inf(1), math.Inf(-1)
	for _, p := range at {
		lo, hi = min(lo, p.y), max(hi, p.y)
	}
	return hi - lo
}

// drawn draws the line over the places of a route: tight where that keeps it off
// its copy. It reports whether the line keeps clear of all cut-outs.
func (w *jointWays) drawn(at []place, widest, share float64) (Joint, bool) {
	clearance := share * widest
	j := Joint{Widest: geom.Length(math.Round(widest))}
	way := make([]geom.Point, len(at))
	for i, p := range at {
		way[i] = p.point()
	}
	box := geom.BoxOf(way...)
	for range 8 {
		n := w.near(box)
		line := n.drawn(at, w.field, clearance)
		if tight := n.tightened(line, clearance); w.keeps(n, tight) {
			line = tight
		}
		if few := n.fewer(line, clearance); w.keeps(n, few) {
			line = few
		}
		j = j.along(n, line)
		// A line that was led far away may lie where no cut-outs were looked for.
		if all := box.Union(geom.BoxOf(line...)); all != box && all.Height() > box.Height()+jointBand/2 {
			box = all
			continue
		}
		break
	}
	return j, j.Clearance > 0 && w.keeps(w.near(box), j.Line)
}

// keeps reports whether a line keeps off its copy and parts no motif.
func (w *jointWays) keeps(n *neighbourhood, line []geom.Point) bool {
	return !meetsCopy(line, w.step) && len(Joint{Line: line}.parted(n)) == 0
}

// near returns the cut-outs about a box, as far as jointBand at least.
func (w *jointWays) near(box geom.Box) *neighbourhood {
	from, to := box.Min.Y-jointBand, box.Max.Y+jointBand
	if w.about == nil || from < w.about.from || to > w.about.to {
		w.about = &nearbyCuts{around(fieldCuts(w.u, w.field, from, to)), from, to}
	}
	return w.about.neighbourhood
}
