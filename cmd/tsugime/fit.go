package main

import (
	"context"
	"fmt"
	"io"
	"math"
	"strings"

	"tsugime/repeat/document"
	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

type fitJSON struct {
	M       int     `json:"m"`
	N       int     `json:"n"`
	P       int     `json:"p"`
	Q       int     `json:"q"`
	StrainX rounded `json:"strain_x_pct"`
	StrainY rounded `json:"strain_y_pct"`
	Shear   rounded `json:"shear_pct"`
	Pitch   mm      `json:"pitch_mm"`
	PerCM2  rounded `json:"cut_outs_per_cm2"`
	Step    mm      `json:"step_mm"`
	Width   mm      `json:"width_mm"`
	A       [2]mm   `json:"a_mm"`
	B       [2]mm   `json:"b_mm"`
}

func runFit(_ context.Context, p program, c command, args []string) error {
	flags := newFlags(c)
	asJSON, force := flags.Bool("json", false, ""), flags.Bool("force", false, "")
	stepText, widthText := flags.String("step", "", ""), flags.String("width", "", "")
	apply, out := flags.Int("apply", 0, ""), flags.String("o", "", "")
	words, err := p.parse(c, flags, args, 1, 1)
	if err != nil {
		return err
	}
	o, err := p.readOrder(words[0])
	if err != nil {
		return err
	}
	step, err := lengthFlag("step", *stepText, o.Sheet.Step)
	if err != nil {
		return err
	}
	width, err := lengthFlag("width", *widthText, 0)
	if err != nil {
		return err
	}
	fits, err := o.Design().Fits(step, width)
	if err != nil {
		return wrongUse("fit: %v", err)
	}
	if *apply != 0 || *out != "" {
		return p.applyFit(o, fits, *apply, *out, *force)
	}
	if *asJSON {
		return p.printJSON(fitDocument(fits))
	}
	_, err = fmt.Fprint(p.out, fitText(fits, step))
	return err
}

// applyFit writes the order with fit n of the list.
func (p program) applyFit(o document.Order, fits []pattern.Fit, n int, out string, force bool) error {
	if n < 1 || n > len(fits) {
		return wrongUse("--apply: give the number of a fit, 1 to %d", len(fits))
	}
	o, err := document.ApplyFit(o, fits[n-1])
	if err != nil {
		return err
	}
	return p.save(out, force, func(w io.Writer) error { return document.Write(w, o) })
}

func fitDocument(fits []pattern.Fit) any {
	doc := struct {
		Schema int       `json:"schema"`
		Fits   []fitJSON `json:"fits"`
	}{schema, []fitJSON{}}
	for _, f := range fits {
		doc.Fits = append(doc.Fits, fitJSON{
			M: f.M, N: f.N, P: f.P, Q: f.Q,
			StrainX: rounded(100 * f.Strain.X), StrainY: rounded(100 * f.Strain.Y), Shear: rounded(100 * f.Strain.Shear),
			Pitch: mm(f.Pitch()), PerCM2: rounded(f.PerCM2), Step: mm(f.Step), Width: mm(f.Width),
			A: at(f.Lattice.A), B: at(f.Lattice.B),
		})
	}
	return doc
}

func fitText(fits []pattern.Fit, step geom.Length) string {
	var b strings.Builder
	fmt.Fprintf(&b, "Ways to meet a step of %s, the least strain first:\n\n", long(step))
	b.WriteString("   #       m       n    across %     along %     shear %    pitch mm    per cm²\n")
	for i, f := range fits {
		fmt.Fprintf(&b, "%4d %7d %7d %11.4f %11.4f %11.4f %11.4f %10.2f\n", i+1, f.M, f.N,
			shown(f.Strain.X), shown(f.Strain.Y), shown(f.Strain.Shear), f.Pitch().MM(), f.PerCM2)
	}
	if len(fits) == 0 {
		b.WriteString("   none within reach; change the pitch or the step\n")
	}
	return b.String()
}

// shown is a strain in percent to four decimals, never "-0.0000".
func shown(strain float64) float64 { return math.Round(1e6*strain)/1e4 + 0 }
