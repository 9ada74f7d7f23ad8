package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"tsugime/repeat/document"
	"tsugime/repeat/geom"
	"tsugime/repeat/outlinefile"
	"tsugime/repeat/pattern"
)

// The ways in which what is brought in is kept.
const (
	bringEach  = "each"
	bringOne   = "one"
	bringShelf = "shelf"
)

func runBring(_ context.Context, p program, c command, args []string) error {
	flags := newFlags(c)
	in, as := flags.String("in", "", ""), flags.String("as", bringEach, "")
	at, size, unit := flags.String("at", "", ""), flags.String("size", "", ""), flags.String("unit", "", "")
	lines := flags.Bool("lines", false, "")
	out, force := flags.String("o", "", ""), flags.Bool("force", false, "")
	var layers []string
	flags.Func("layer", "", func(v string) error {
		layers = append(layers, v)
		return nil
	})
	words, err := p.parse(c, flags, args, 1, 1)
	if err != nil {
		return err
	}
	if err := oneOf("as", *as, bringEach, bringOne, bringShelf); err != nil {
		return err
	}
	width, err := lengthFlag("size", *size, 0)
	if err != nil {
		return err
	}
	d, err := p.readOutlines(words[0], *unit, *lines)
	if err != nil {
		return err
	}
	if d, err = onLayers(d, layers); err != nil {
		return err
	}
	if d, err = placed(d, *at, width); err != nil {
		return err
	}
	if *as == bringOne {
		d = d.AsOne()
	}
	o := document.Defaults()
	if *in != "" {
		if o, err = p.readOrder(*in); err != nil {
			return err
		}
	}
	title := strings.TrimSuffix(filepath.Base(words[0]), filepath.Ext(words[0]))
	if o, err = broughtIn(o, d, title, *as); err != nil {
		return fmt.Errorf("%s: %w", words[0], err)
	}
	if err := p.save(*out, *force, func(w io.Writer) error { return document.Write(w, o) }); err != nil {
		return err
	}
	_, err = fmt.Fprint(p.err, bringText(words[0], d))
	return err
}

// readOutlines reads a file of outlines; "-" is standard input.
func (p program) readOutlines(name, unit string, lines bool) (outlinefile.Drawing, error) {
	with := outlinefile.Options{Lines: lines}
	if unit != "" {
		u, ok := geom.UnitNamed(unit)
		if !ok {
			return outlinefile.Drawing{}, wrongUse("--unit: %q is no unit; give mm, cm, m or in", unit)
		}
		with.Unit = u
	}
	in := p.in
	if name != "-" {
		f, err := os.Open(name)
		if err != nil {
			return outlinefile.Drawing{}, fmt.Errorf("open %s: %w; give the name of an SVG or DXF file", name, cause(err))
		}
		defer f.Close()
		in = f
	}
	d, err := outlinefile.Read(in, with)
	var none outlinefile.NoUnit
	if errors.As(err, &none) {
		return d, wrongUse("%s: %v; say it with --unit mm (or cm, m, in)", name, err)
	}
	if err != nil {
		return d, fmt.Errorf("%s: %w", name, cause(err))
	}
	if len(d.Pieces) == 0 {
		why := "it draws no outline"
		if len(d.Notes) > 0 {
			why = noteText(d.Notes[0])
		}
		return d, fmt.Errorf("%s: nothing can be cut of it: %s", name, why)
	}
	return d, nil
}

// onLayers keeps only some layers; none named keeps all.
func onLayers(d outlinefile.Drawing, layers []string) (outlinefile.Drawing, error) {
	if len(layers) == 0 {
		return d, nil
	}
	has := d.Layers()
	for _, l := range layers {
		if !slices.Contains(has, l) {
			return d, wrongUse("--layer: there is no outline on %q; there are some on %q", l, has)
		}
	}
	return d.On(layers...), nil
}

// placed scales a drawing to a width, where that isn't zero, and moves its middle.
func placed(d outlinefile.Drawing, at string, width geom.Length) (outlinefile.Drawing, error) {
	if width > 0 {
		if b := d.Bounds(); b.Width() > 0 {
			d = d.Scaled(float64(width) / float64(b.Width()))
		}
	}
	if at == "" {
		return d, nil
	}
	x, y, ok := strings.Cut(at, ",")
	px, errX := geom.ParseLength(x, geom.MMUnit)
	py, errY := geom.ParseLength(y, geom.MMUnit)
	if !ok || errX != nil || errY != nil {
		return d, wrongUse("--at: %q is no place; write X,Y in mm, such as 12,30.5", at)
	}
	return d.Moved(geom.Point{X: px, Y: py}.Sub(d.Bounds().Centre())), nil
}

// broughtIn puts the pieces of a drawing into an order.
func broughtIn(o document.Order, d outlinefile.Drawing, title, as string) (document.Order, error) {
	if o.Title == "" && title != "" && title != "-" {
		o.Title = title
	}
	if as == bringShelf {
		for _, p := range d.Pieces {
			shape, _ := p.Centred()
			var err error
			if o, err = document.PutOnShelf(o, document.ShelfMotif{Name: o.FreeShelfName(title), Shape: shape}); err != nil {
				return o, err
			}
		}
		return o, nil
	}
	motifs := make([]pattern.Motif, len(d.Pieces))
	for i, p := range d.Pieces {
		motifs[i].Shape, motifs[i].At = p.Centred()
	}
	return document.AddMotifs(o, motifs...)
}

// mostListed is how many pieces are told one by one.
const mostListed = 40

// bringText says what was taken; it is a message, since the order itself may go to
// standard output.
func bringText(name string, d outlinefile.Drawing) string {
	var b strings.Builder
	box := d.Bounds()
	discs := 0
	for _, p := range d.Pieces {
		if p.Shape.Round() {
			discs++
		}
	}
	fmt.Fprintf(&b, "tsugime: %s: taken %s, %d of them discs; together %s × %s mm\n",
		name, counted(len(d.Pieces), "shape"), discs, short(box.Width()), short(box.Height()))
	if layers := d.Layers(); len(layers) > 1 {
		var counts []string
		for _, l := range layers[:min(len(layers), mostListed)] {
			counts = append(counts, fmt.Sprintf("%q %d", l, len(d.On(l).Pieces)))
		}
		fmt.Fprintf(&b, "tsugime: by layer: %s\n", strings.Join(counts, ", "))
	}
	for i, p := range d.Pieces {
		if i == mostListed {
			fmt.Fprintf(&b, "tsugime: … and %d more\n", len(d.Pieces)-i)
			break
		}
		fmt.Fprintf(&b, "tsugime: %s\n", pieceText(p))
	}
	for _, n := range d.Notes {
		fmt.Fprintf(&b, "tsugime: note: %s\n", noteText(n))
	}
	return b.String()
}

func pieceText(p outlinefile.Piece) string {
	_, at := p.Centred()
	where := fmt.Sprintf("line %d: %s", p.Line, p.Kind)
	if p.Layer != "" {
		where += " on " + p.Layer
	}
	if p.Shape.Round() {
		return fmt.Sprintf("%s: disc of %s mm at %s, %s", where, short(p.Shape.Disc.Diameter), short(at.X), short(at.Y))
	}
	box := p.Shape.Bounds()
	return fmt.Sprintf("%s: %s × %s mm, %.3f mm², at %s, %s", where, short(box.Width()), short(box.Height()), p.Shape.AreaMM2(), short(at.X), short(at.Y))
}

func noteText(n outlinefile.Note) string {
	if n.Line == 0 {
		return n.Text
	}
	return fmt.Sprintf("line %d: %s", n.Line, n.Text)
}
