package main

import (
	"context"
	"fmt"
	"io"
	"math"
	"strings"

	"tsugime/repeat/document"
	"tsugime/repeat/pattern"
)

type fitJSON struct {
	M           int      `json:"m"`
	N           int      `json:"n"`
	P           int      `json:"p"`
	Q           int      `json:"q"`
	StrainX     rounded  `json:"strain_x_pct"`
	StrainY     rounded  `json:"strain_y_pct"`
	Shear       rounded  `json:"shear_pct"`
	Turn        rounded  `json:"turn_deg"`
	Pitch       mm       `json:"pitch_mm"`
	PerCM2      rounded  `json:"cut_outs_per_cm2"`
	PerSun      rounded  `json:"cut_outs_per_square_kane_sun"`
	Step        mm       `json:"step_mm"`
	Width       mm       `json:"width_mm"`
	WidthOff    *mm      `json:"width_off_mm"` // null where no width was asked for
	SeamOff     mm       `json:"seam_off_mm"`
	Dot         *mm      `json:"dot_mm"` // that changes most; null without dots or a rack
	Punch       *mm      `json:"nearest_punch_mm"`
	PunchChange *rounded `json:"punch_change_pct"`
	KeepsGround bool     `json:"keeps_ground"`
	Bent        rounded  `json:"bent_pct"`
	A           [2]mm    `json:"a_mm"`
	B           [2]mm    `json:"b_mm"`
}

func runFit(_ context.Context, p program, c command, args []string) error {
	flags := newFlags(c)
	asJSON, force := flags.Bool("json", false, ""), flags.Bool("force", false, "")
	stepText, widthText := flags.String("step", "", ""), flags.String("width", "", "")
	seam, snap := flags.Bool("seam", false, ""), flags.Bool("snap", false, "")
	apply, out := flags.Int("apply", 0, ""), flags.String("o", "", "")
	words, err := p.parse(c, flags, args, 1, 1)
	if err != nil {
		return err
	}
	o, err := p.readOrder(words[0])
	if err != nil {
		return err
	}
	wish := document.FitWish{Seam: *seam || *widthText == "seam"}
	if wish.Step, err = lengthFlag("step", *stepText, o.Sheet.Step); err != nil {
		return err
	}
	if *widthText != "seam" {
		if wish.Width, err = lengthFlag("width", *widthText, 0); err != nil {
			return err
		}
	}
	fits, err := o.Fits(wish)
	if err != nil {
		return wrongUse("fit: %v", err)
	}
	if *apply != 0 || *out != "" || *snap {
		return p.applyFit(o, fits, *apply, *snap, *out, *force)
	}
	if *asJSON {
		return p.printJSON(fitDocument(o, wish, fits))
	}
	_, err = fmt.Fprint(p.out, fitText(o, wish, fits))
	return err
}

// applyFit writes the order with fit n of the list, its dots as the rack has them
// where snap says so.
func (p program) applyFit(o document.Order, fits []document.OrderFit, n int, snap bool, out string, force bool) error {
	if n < 1 || n > len(fits) {
		return wrongUse("--apply: give the number of a fit, 1 to %d", len(fits))
	}
	next, err := document.ApplyFit(o, fits[n-1])
	if err != nil {
		return err
	}
	if snap {
		if next, err = document.SnapDots(next); err != nil {
			return wrongUse("--snap: %v", err)
		}
	}
	if err := p.save(out, force, func(w io.Writer) error { return document.Write(w, next) }); err != nil {
		return err
	}
	if o.Ground.Ground != "" && next.Ground.Ground == "" {
		fmt.Fprintf(p.err, "tsugime: the unit is no longer the ground %s: from now on it is drawn by hand\n", o.Ground.Ground)
	}
	return nil
}

func fitDocument(o document.Order, wish document.FitWish, fits []document.OrderFit) any {
	doc := struct {
		Schema int       `json:"schema"`
		Seam   mm        `json:"seam_width_mm"`
		Fits   []fitJSON `json:"fits"`
	}{schema, mm(o.SeamWidth()), []fitJSON{}}
	punches := o.Punches()
	for _, f := range fits {
		j := fitJSON{
			M: f.M, N: f.N, P: f.P, Q: f.Q,
			StrainX: rounded(100 * f.Strain.X), StrainY: rounded(100 * f.Strain.Y), Shear: rounded(100 * f.Strain.Shear),
			Turn: rounded(f.Strain.Turn * 180 / math.Pi), Pitch: mm(f.Pitch()), PerCM2: rounded(f.PerCM2), PerSun: rounded(f.PerSquareSun()),
			Step: mm(f.Step), Width: mm(f.Width), SeamOff: mm(f.SeamOff), KeepsGround: f.KeepsGround, Bent: rounded(100 * f.Bent),
			A: at(f.Lattice.A), B: at(f.Lattice.B),
		}
		if wish.Width > 0 {
			off := mm(f.WidthOff)
			j.WidthOff = &off
		}
		if len(punches) > 0 {
			dot, punch, change := mm(punches[0].Dot), mm(punches[0].Punch.Diameter), rounded(100*punches[0].Change())
			j.Dot, j.Punch, j.PunchChange = &dot, &punch, &change
		}
		doc.Fits = append(doc.Fits, j)
	}
	return doc
}

func fitText(o document.Order, wish document.FitWish, fits []document.OrderFit) string {
	var b strings.Builder
	fmt.Fprintf(&b, "Ways to meet a step of %s%s, the least change first:\n\n", long(wish.Step), wishText(o, wish))
	b.WriteString("   #       m       n    across %     along %     shear %    turn °    pitch mm    per cm²   per sun²  seams off mm\n")
	for i, f := range fits {
		s := f.Strain
		fmt.Fprintf(&b, "%4d %7d %7d %11.4f %11.4f %11.4f %9.3f %11.4f %10.2f %10.1f %13s", i+1, f.M, f.N,
			shown(s.X), shown(s.Y), shown(s.Shear), s.Turn*180/math.Pi+0, f.Pitch().MM(), f.PerCM2, f.PerSquareSun(), short(f.SeamOff))
		if wish.Seam && wish.Width > 0 {
			fmt.Fprintf(&b, "  the width off by %s", long(f.WidthOff))
		}
		if math.Abs(f.Bent) > pattern.MostBent {
			fmt.Fprintf(&b, "  bends the ground by %.2f %%", 100*math.Abs(f.Bent))
		}
		if !f.KeepsGround {
			b.WriteString("  ends the ground")
		}
		b.WriteString("\n")
	}
	if len(fits) == 0 {
		b.WriteString("   none within reach; change the pitch or the step\n")
	}
	for i, m := range o.Punches() {
		if i == 0 {
			b.WriteString("\nDots stay round and keep their size; the nearest punches of the rack:\n")
		}
		fmt.Fprintf(&b, "   %s: %s, %+.1f %% (%s)\n", long(m.Dot), long(m.Punch.Diameter), 100*m.Change()+0, m.Punch.Name)
	}
	return b.String()
}

// wishText says what is to be met besides the step.
func wishText(o document.Order, wish document.FitWish) string {
	text := ""
	if wish.Width > 0 {
		text = fmt.Sprintf(", a width of %s", long(wish.Width))
	}
	if wish.Seam {
		text += fmt.Sprintf(" and the back seams, %s apart", long(o.SeamWidth()))
	}
	return text
}

// shown is a strain in percent to four decimals, never "-0.0000".
func shown(strain float64) float64 { return math.Round(1e6*strain)/1e4 + 0 }
