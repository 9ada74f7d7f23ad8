package main

import (
	"context"
	"fmt"
	"image/png"
	"io"
	"strings"

	"tsugime/export/report"
)

func runSheets(ctx context.Context, p program, c command, args []string) error {
	flags := newFlags(c)
	folder, page, units := flags.String("o", "", ""), flags.String("paper", "", ""), flags.String("units", "", "")
	language := flags.String("language", "", "")
	rackFile, jobsFile, day := flags.String("rack", "", ""), flags.String("jobs", "", ""), flags.Float64("day", 8, "")
	offset, overcut := flags.String("blade-offset", "0", ""), flags.String("overcut", "0", "")
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
	if *only != "" {
		options.Only = strings.Split(*only, ",")
	}
	if err := options.Check(w); err != nil {
		return wrongUse("sheets: %v", err)
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
