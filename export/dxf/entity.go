package dxf

import (
	"tsugime/export"
	"tsugime/repeat/geom"
)

func (f *file) layer(l export.Layer) {
	for _, d := range l.Discs {
		f.circle(l.Name, d)
	}
	for _, o := range l.Outlines {
		for _, c := range o {
			f.polyline(l.Name, vertices(c), true)
		}
	}
	for _, line := range l.Lines {
		run := make([]vertex, len(line.Points))
		for i, p := range line.Points {
			run[i].at = p
		}
		f.polyline(l.Name, run, line.Closed)
	}
	for _, t := range l.Texts {
		f.lettering(l.Name, t)
	}
}

// entity starts one in the model space.
func (f *file) entity(kind, layer string) {
	f.text(0, kind)
	f.handle(5, f.free())
	f.handle(330, modelRecord)
	f.text(100, "AcDbEntity")
	f.text(8, layer)
}

func (f *file) circle(layer string, d geom.Disc) {
	f.entity("CIRCLE", layer)
	f.text(100, "AcDbCircle")
	f.at(10, d.Centre)
	f.int(30, 0)
	f.half(40, d.Diameter)
}

// A vertex is a corner of a polyline and how the piece after it bends.
type vertex struct {
	at    geom.Point
	bulge float64 // as in geom, y down
}

// polyline writes a run of vertices; fewer than two make no line.
func (f *file) polyline(layer string, run []vertex, closed bool) {
	if n := len(run); closed && n > 1 && run[n-1].at == run[0].at {
		run = run[:n-1]
	}
	if len(run) < 2 {
		return
	}
	f.entity("LWPOLYLINE", layer)
	f.text(100, "AcDbPolyline")
	f.int(90, len(run))
	flags := 0
	if closed {
		flags = 1
	}
	f.int(70, flags)
	for _, v := range run {
		f.at(10, v.at)
		if v.bulge != 0 {
			// Turning y up turns the arc the other way round.
			f.real(42, -v.bulge)
		}
	}
}

// vertices returns a contour as a polyline has it: lines and arcs as they are,
// cubics as straight pieces.
func vertices(c geom.Contour) []vertex {
	run := []vertex{{at: c.Start}}
	for _, s := range c.Segments {
		last := &run[len(run)-1]
		switch {
		case s.End == last.at && s.Kind != geom.Cubic:
		case s.Kind == geom.Arc:
			last.bulge = s.Bulge
			run = append(run, vertex{at: s.End})
		case s.Kind == geom.Cubic:
			alone := geom.Outline{{Start: last.at, Segments: []geom.Segment{s}}}
			for _, p := range alone.Rings(geom.Chord)[0][1:] {
				run = append(run, vertex{at: p})
			}
			if run[len(run)-1].at != s.End {
				run = append(run, vertex{at: s.End})
			}
		default:
			run = append(run, vertex{at: s.End})
		}
	}
	return run
}
