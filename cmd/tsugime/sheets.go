package main

import (
	"cmp"
	"context"
	"fmt"
	"image/png"
	"io"
	"strings"

	"tsugime/export/report"
	"tsugime/repeat/document"
	"tsugime/repeat/geom"
)

func runSheets(ctx context.Context, p program, c command, args []string) error {
	flags := newFlags(c)
	folder, page, units := flags.String("o", "", ""), flags.String("paper", "", ""), flags.String("units", "", "")
	language := flags.String("language", "", "")
	rackFile, jobsFile, day := flags.String("rack", "", ""), flags.String("jobs", "", ""), flags.Float64("day", 8, "")
	offset, overcut := flags.String("blade-offset", "0", ""), flags.String("overcut", "0", "")
	across, along := flags.String("printed-across", "", ""), flags.String("printed-along", "", "")
	marks, mirrored, keep := flags.String("marks", "", ""), flags.Bool("mirrored", false, ""), flags.String("keep", "", "")
	only, force, quiet := flags.String("only", "", ""), flags.Bool("force", false, ""), flags.Bool("q", false, "")
	words, err := p.parse(c, flags, args, 1, 1)
	if err != nil {
		return err
	}
	if *folder == "" || *folder == "-" {
		return wrongUse("sheets: say which folder to write into: -o FOLDER")
	}
	options := report.Options{Force: *force}
	if options.Rack, options.Rates, err = p.benchFlags(*rackFile, *jobsFile, *day); err != nil {
		return err
	}
	if options.Blade, err = bladeFlags(*offset, *overcut); err != nil {
		return err
	}
	w, err := p.build(ctx, words[0])
	if err != nil {
		return err
	}
	options.Page, options.Units = w.Order.Sheets.Page, w.Order.Sheets.Units
	if *page != "" {
		options.Page = *page
	}
	if *units != "" {
		options.Units = *units
	}
	options.Language = *language
	options.Marks, options.Mirrored = *marks, *mirrored
	if options.PrintedAcross, options.PrintedAlong, err = printedFlags(*across, *along); err != nil {
		return err
	}
	if *only != "" {
		options.Only = strings.Split(*only, ",")
	}
	if err := options.Check(w); err != nil {
		return wrongUse("sheets: %v", err)
	}
	if *keep != "" {
		if err := p.keepPrinting(*keep, *force, w.Order, options); err != nil {
			return err
		}
	}
	files, err := report.JobFolder(ctx, w, *folder, options, func(done, of int, name string) {
		if !*quiet {
			fmt.Fprintf(p.err, "%d of %d  %s\n", done, of, name)
		}
	})
	if err != nil {
		return err
	}
	for _, f := range files {
		fmt.Fprintln(p.out, f)
	}
	return nil
}

// printedFlags reads what 100 mm measured across and along; 0 for what isn't told.
func printedFlags(across, along string) (x, y geom.Length, err error) {
	for _, flag := range []struct {
		name, value string
		into        *geom.Length
	}{{"printed-across", across, &x}, {"printed-along", along, &y}} {
		if flag.value == "" {
			continue
		}
		l, err := geom.ParseLength(flag.value, geom.MMUnit)
		if err != nil {
			return 0, 0, wrongUse("--%s: %v", flag.name, err)
		}
		if l < document.LeastPrinted || l > document.MostPrinted {
			return 0, 0, wrongUse("--%s: 100 mm that measure %s mm were not printed at 100 %%; print again without fitting to the page, or give %s to %s mm",
				flag.name, l, document.LeastPrinted, document.MostPrinted)
		}
		*flag.into = l
	}
	return x, y, nil
}

// keepPrinting writes the order with how its sheets were printed this time.
func (p program) keepPrinting(path string, force bool, o document.Order, options report.Options) error {
	next := o.Sheets
	next.Page, next.Units = options.Page, options.Units
	next.Language = cmp.Or(options.Language, next.Language)
	next.Marks = cmp.Or(options.Marks, next.Marks)
	next.Mirrored = options.Mirrored || next.Mirrored
	next.PrintedAcross = cmp.Or(options.PrintedAcross, next.PrintedAcross)
	next.PrintedAlong = cmp.Or(options.PrintedAlong, next.PrintedAlong)
	kept, err := document.SetSheets(o, next)
	if err != nil {
		return wrongUse("sheets: %v", err)
	}
	return p.save(path, force, func(w io.Writer) error { return document.Write(w, kept) })
}

func runPicture(ctx context.Context, p program, c command, args []string) error {
	flags := newFlags(c)
	of, out := flags.String("of", "", ""), flags.String("o", "", "")
	width, force := flags.Int("width", 1600, ""), flags.Bool("force", false, "")
	words, err := p.parse(c, flags, args, 1, 1)
	if err != nil {
		return err
	}
	if *width < 200 || *width > 8000 {
		return wrongUse("--width: %d pixels can't be drawn; give 200 to 8000", *width)
	}
	w, err := p.build(ctx, words[0])
	if err != nil {
		return err
	}
	if err := oneOf("of", *of, report.Pictures(w)...); err != nil {
		return err
	}
	picture, err := report.Picture(w, *of, *width)
	if err != nil {
		return err
	}
	return p.save(*out, *force, func(w io.Writer) error { return png.Encode(w, picture) })
}
