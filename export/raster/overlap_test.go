package raster

import (
	"math"
	"testing"

	"tsugime/repeat/geom"
)

// ringShape is a circle line: two contours that turn against each other.
func ringShape(c geom.Point, outer, inner geom.Length) geom.Shape {
	circle := func(r geom.Length, bulge float64) geom.Contour {
		return geom.Contour{Start: c.Add(geom.Point{X: -r}), Segments: []geom.Segment{
			{Kind: geom.Arc, End: c.Add(geom.Point{X: r}), Bulge: bulge},
			{Kind: geom.Arc, End: c.Add(geom.Point{X: -r}), Bulge: bulge}}}
	}
	return geom.Shape{Outline: geom.Outline{circle(outer, 1), circle(inner, -1)}}
}

func TestWhatLiesOverOneAnotherIsCutOnce(t *testing.T) {
	at := geom.PtMM
	bow := geom.Shape{Outline: geom.Outline{{Start: at(0, 0), Segments: []geom.Segment{
		{End: at(3, 2)}, {End: at(3, 0)}, {End: at(0, 2.3)}}}}}
	nested := ringShape(at(0.5, 0.5), geom.MM(1.4), geom.MM(0.6))
	nested.Outline[1] = ringShape(at(0.5, 0.5), geom.MM(0.6), 1).Outline[0] // turns the same way: no hole
	cases := map[string]struct {
		shapes  []geom.Shape
		periods []geom.Point
	}{
		"discs":       {append(apart(seeded(11), 2, 1.7), apart(seeded(12), 2, 1.6)...), nil},
		"twice":       {append(apart(seeded(11), 1, 1.7), apart(seeded(11), 1, 1.7)...), nil},
		"outlines":    {append(blades(), ringShape(at(0.3, 0.4), geom.MM(2), geom.MM(1.7)), bow), nil},
		"bow":         {[]geom.Shape{bow}, nil},
		"nested":      {[]geom.Shape{nested}, nil},
		"interlaced":  {[]geom.Shape{ringShape(at(0.1, 0.2), geom.MM(1), geom.MM(0.86))}, []geom.Point{at(1.4, 0), at(0.7, 0.7)}},
		"all but":     {[]geom.Shape{geom.DiscShape(at(0.1, 0.2), geom.MM(1.25))}, []geom.Point{at(1, 0), at(0.1, 1)}},
		"along":       {[]geom.Shape{geom.DiscShape(at(0, 0.2), geom.MM(2.5)), bow}, []geom.Point{at(0.2, 1.9)}},
		"everything":  {[]geom.Shape{geom.DiscShape(at(0, 0), geom.MM(2))}, []geom.Point{at(1, 0), at(0, 1)}},
		"stripes met": {[]geom.Shape{{Outline: geom.Outline{{Start: at(0, 0), Segments: []geom.Segment{{End: at(0.4, 0)}, {End: at(0.4, 2)}, {End: at(0, 2)}}}}}}, []geom.Point{at(1, 0), at(0, 2)}},
	}
	for name, c := range cases {
		g := NewGround(c.shapes, c.periods...)
		var all []geom.Shape
		box := newCrowd(c.shapes, nil).all
		copies(box, reduced(c.periods), rect{-6, -6, 18, 16}, func(d geom.Point) {
			for _, s := range c.shapes {
				all = append(all, s.Moved(d))
			}
		})
		worst := 0.0
		for _, zoom := range []float64{1.3, 11} {
			v := View{X: -2.03, Y: -2.57, PxPerMM: zoom}
			p := NewPlane(20, 18)
			g.direct(p, v, Lay{})
			worst = math.Max(worst, worstAgainstOracle(t, p, v, all, 4))
			q := NewPlane(20, 18)
			forceSums(g, q, v, Lay{})
			worst = math.Max(worst, worstAgainstOracle(t, q, v, all, 4))
		}
		if worst > 0.5 {
			t.Errorf("%s: off by %.3f levels before rounding, want at most 0.5", name, worst)
		}
	}
}

func TestShapesApartStayAsTheyAre(t *testing.T) {
	g := NewGround(append(apart(seeded(1), 3, 2), func() (far []geom.Shape) {
		for _, s := range blades() {
			far = append(far, s.Moved(geom.PtMM(40, 0)))
		}
		return far
	}()...))
	if len(g.unit.discs) != 49 || len(g.unit.curves) != 4 {
		t.Errorf("got %d discs and %d outlines, want 49 and 4", len(g.unit.discs), len(g.unit.curves))
	}
	for _, c := range g.unit.curves {
		if c.shape.of == nil {
			t.Error("an outline that meets nothing lost its curves")
		}
	}
}

func BenchmarkNewGround(b *testing.B) {
	var shapes []geom.Shape
	for _, d := range sheet().unit.discs {
		shapes = append(shapes, geom.DiscShape(geom.PtMM(d.x, d.y), geom.MM(2*d.r)))
	}
	for b.Loop() {
		NewGround(shapes)
	}
}
