package outlinefile

import (
	"math"
	"strings"

	"tsugime/repeat/geom"
)

// stroke takes the outline of a stroke. Under a map that keeps circles round it is
// worked out on the sheet; else in the file's own frame, and then mapped.
func (p *painter) stroke(n *node, at spot, runs []run, filled bool) error {
	for _, name := range [...]string{"marker", "marker-start", "marker-mid", "marker-end"} {
		if at.style.get(name) != "none" {
			p.log.add(n.line, "%s: its markers were left out", n.name)
			break
		}
	}
	if p.with.Lines && !filled {
		return p.cutAlong(n, at, runs)
	}
	scale := math.Sqrt(math.Abs(at.frame.Det()))
	if at.style.get("vector-effect") == "non-scaling-stroke" {
		p.log.add(n.line, "%s: its stroke is not to be scaled, but was", n.name)
	}
	if scale == 0 {
		return nil
	}
	pen, err := p.penOf(n, at, scale)
	if err != nil || pen.Width <= 0 {
		return err
	}
	// A frame that is off from round by less than a tenth of geom.Chord over the
	// pen's width is round.
	skewed := skew(at.frame)/scale*float64(pen.Width) > float64(geom.Chord)/10
	frame, after := at.frame, geom.Identity
	if skewed {
		frame = geom.Scale(scale, scale)
		after = geom.Scale(1/scale, 1/scale).Then(at.frame)
	}
	var tracks []geom.Track
	for _, r := range runs {
		r = r.under(frame)
		if r.wild() {
			return outOfReach(n)
		}
		tracks = append(tracks, r.track())
	}
	o, err := outlined(pen, tracks)
	if err != nil {
		return faultf(n.line, "%s: %v", n.name, err)
	}
	if skewed {
		o = o.Mapped(after)
		if b := o.Bounds(); b.Width() > 2*maxReach || b.Height() > 2*maxReach {
			return outOfReach(n)
		}
	}
	if len(o) == 0 && filled {
		return nil
	}
	return p.take(n, at, n.name+strokeKind, o, false)
}

// strokeKind follows the name of an element whose stroke was taken.
const strokeKind = ", its stroke"

// cutAlong takes the middle line of a stroke.
func (p *painter) cutAlong(n *node, at spot, runs []run) error {
	for _, r := range runs {
		r = r.under(at.frame)
		if r.wild() {
			return outOfReach(n)
		}
		t := r.track()
		if p.segments += len(t.Segments); p.segments > maxSegments {
			return faultf(n.line, "the outlines up to here have more than %d pieces; draw them plainer", maxSegments)
		}
		if len(t.Segments) > 0 {
			p.lines.group(at.layer).add(n.name, n.line, t)
		}
	}
	return nil
}

// outlined returns the outline of a stroke, worked out about the origin, where
// coordinates are small.
func outlined(pen geom.Stroke, tracks []geom.Track) (geom.Outline, error) {
	var lines geom.Outline
	for _, t := range tracks {
		lines = append(lines, t.Contour)
	}
	home := lines.Bounds().Centre()
	for i, c := range lines.Moved(home.Neg()) {
		tracks[i].Contour = c
	}
	o, err := pen.Outline(tracks...)
	return o.Moved(home), err
}

// skew is by how much a frame makes an ellipse of the unit circle: the difference
// of its axes.
func skew(m geom.Affine) float64 {
	// Singular values of a 2×2 matrix: the half sum and half difference of the
	// lengths of its conformal and anticonformal parts.
	p := math.Hypot(m.A+m.D, m.C-m.B) / 2
	q := math.Hypot(m.A-m.D, m.C+m.B) / 2
	return 2 * min(p, q)
}

// penOf returns the pen of a style, in nanometres, where a user unit has scale of them.
func (p *painter) penOf(n *node, at spot, scale float64) (geom.Stroke, error) {
	s := at.style
	width, err := p.lengthOf(n, "stroke-width", s.get("stroke-width"), at)
	if err != nil {
		return geom.Stroke{}, err
	}
	if width < 0 || width*scale > float64(maxReach) {
		return geom.Stroke{}, faultf(n.line, "%s: a stroke can't be %s wide", n.name, short(s.get("stroke-width")))
	}
	pen := geom.Stroke{Width: geom.Length(math.Round(width * scale))}
	if miter, ok := parseMeasure(s.get("stroke-miterlimit")); ok && miter.value >= 1 {
		pen.Miter = miter.value
	}
	pen.Cap = map[string]geom.Cap{"round": geom.RoundCap, "square": geom.SquareCap}[s.get("stroke-linecap")]
	pen.Join = map[string]geom.Join{"round": geom.RoundJoin, "bevel": geom.BevelJoin}[s.get("stroke-linejoin")]
	dashes := s.get("stroke-dasharray")
	if dashes == "none" {
		return pen, nil
	}
	for word := range strings.FieldsFuncSeq(dashes, func(r rune) bool { return r == ',' || r == ' ' || r == '\t' || r == '\n' }) {
		d, err := p.lengthOf(n, "stroke-dasharray", word, at)
		if err != nil {
			return pen, err
		}
		if d < 0 || d*scale > float64(geom.MaxSpan) || len(pen.Dash) >= 1000 {
			return pen, faultf(n.line, "%s: stroke-dasharray=%q makes no dashes", n.name, short(dashes))
		}
		pen.Dash = append(pen.Dash, geom.Length(math.Round(d*scale)))
	}
	from, err := p.lengthOf(n, "stroke-dashoffset", s.get("stroke-dashoffset"), at)
	if err != nil {
		return pen, err
	}
	if math.Abs(from*scale) > float64(geom.MaxSpan) {
		from = 0
	}
	pen.DashFrom = geom.Length(math.Round(from * scale))
	return pen, nil
}
