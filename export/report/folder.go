package report

import (
	"context"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"tsugime/export"
	"tsugime/export/dxf"
	"tsugime/export/hpgl"
	"tsugime/export/pdf"
	"tsugime/export/raster"
	"tsugime/export/svg"
	"tsugime/repeat"
)

// The proof pictures: pixels across, and to the inch, which makes them 203 mm wide.
const (
	pictureWidth = 1600
	pictureDPI   = 200
)

// JobFolder writes the job folder of w and returns the paths written, in the
// order of Names. The folder is made where it is missing. Nothing is begun where
// a file would be overwritten without Force. Every file is whole on the disk before
// the first gets its name, so that a folder whose writing fails or is given up when
// ctx is done stays as it was. progress, which may be nil, is called after each file
// that is whole, in their order.
func JobFolder(ctx context.Context, w repeat.Work, folder string, opt Options, progress func(done, of int, name string)) ([]string, error) {
	opt = opt.with(w)
	if err := opt.Check(w); err != nil {
		return nil, fmt.Errorf("job folder: %w", err)
	}
	w.Order.Sheets.Units, w.Order.Sheets.Language = opt.Units, opt.Language
	var names []string
	for _, name := range Names(w) {
		if opt.wants(name) {
			names = append(names, name)
		}
	}
	if err := ready(folder, names, opt.Force); err != nil {
		return nil, fmt.Errorf("job folder: %w", err)
	}
	prepare := func(ctx context.Context, name string) (export.Pending, error) {
		return export.Prepare(filepath.Join(folder, name), opt.Force, func(out io.Writer) error {
			return writeFile(stoppable{ctx, out}, name, w, opt)
		})
	}
	all, err := prepareAll(ctx, names, prepare, progress)
	defer func() {
		for _, d := range all {
			d.Drop()
		}
	}()
	if ctx.Err() != nil {
		return nil, ctx.Err()
	}
	if err != nil {
		return nil, fmt.Errorf("job folder: %w; the folder is as it was", err)
	}
	var written []string
	for i, d := range all {
		if err := d.Keep(); err != nil {
			return written, fmt.Errorf("job folder: %w; %d of %d files are written", err, i, len(all))
		}
		written = append(written, filepath.Join(folder, names[i]))
	}
	return written, nil
}

// ready makes the folder and sees that nothing in it would be lost.
func ready(folder string, names []string, force bool) error {
	if err := os.MkdirAll(folder, 0o777); err != nil {
		return fmt.Errorf("%w; choose a folder that you may write to", err)
	}
	if force {
		return nil
	}
	var there []string
	for _, name := range names {
		if _, err := os.Lstat(filepath.Join(folder, name)); !errors.Is(err, fs.ErrNotExist) {
			there = append(there, name)
		}
	}
	if len(there) > 0 {
		return fmt.Errorf("%s already holds %s; choose another folder, or allow them to be replaced (--force)",
			folder, strings.Join(there, ", "))
	}
	return nil
}

// stoppable is a writer that fails once its context is done, so that a large
// file is given up in the middle and Save takes it away.
type stoppable struct {
	ctx context.Context
	out io.Writer
}

func (s stoppable) Write(b []byte) (int, error) {
	if err := s.ctx.Err(); err != nil {
		return 0, err
	}
	return s.out.Write(b)
}

// writeFile writes the file of that name.
func writeFile(out io.Writer, name string, w repeat.Work, opt Options) error {
	switch name {
	case "placements.csv":
		return WritePlacements(out, w)
	case "findings.txt":
		return WriteFindings(out, w, opt)
	case "README.txt":
		return writeIndex(out, w, opt)
	}
	if of, ok := strings.CutSuffix(name, ".png"); ok {
		return writePicture(out, w, of)
	}
	if format, n := cutNamed(name); format != nil {
		sheet, err := opt.sheetNumber(w, n)
		if err != nil {
			return err
		}
		if isCutOnly(name) {
			return format.Write(out, cutOnly(w, sheet, opt))
		}
		return format.Write(out, cutDrawing(w, sheet, opt))
	}
	b, err := bookNamed(name, w, opt)
	if err != nil {
		return err
	}
	return pdf.WriteBook(out, b)
}

// cutNamed returns the format of a cut drawing and the number of its sheet; nil
// for a file that is none.
func cutNamed(name string) (export.Format, int) {
	stem, extension, _ := strings.Cut(name, ".")
	n := map[string]int{"cut": 1, "cut-only": 1, "cut-second": 2, "cut-only-second": 2}[stem]
	if n == 0 {
		return nil, 0
	}
	for _, f := range []export.Format{svg.Format{}, dxf.Format{}, pdf.Format{}, hpgl.Format{}} {
		if f.Extension() == "."+extension {
			return f, n
		}
	}
	return nil, 0
}

// isCutOnly reports whether a cut drawing holds nothing but what is cut.
func isCutOnly(name string) bool { return strings.HasPrefix(name, "cut-only") }

func bookNamed(name string, w repeat.Work, opt Options) (export.Book, error) {
	switch name {
	case "transfer.pdf":
		return Transfer(w, 1, opt)
	case "transfer-whole.pdf":
		return TransferWhole(w, 1, opt)
	case "transfer-second.pdf":
		return Transfer(w, 2, opt)
	case "transfer-second-whole.pdf":
		return TransferWhole(w, 2, opt)
	case "binding.pdf":
		return Binding(w, opt)
	case "reinforcement.pdf":
		return Reinforcement(w, opt)
	case "bench.pdf":
		return BenchPlan(w, opt)
	case "register.pdf":
		return Register(w, opt)
	case "proof.pdf":
		return Proof(w, opt)
	case "dyer.pdf":
		return DyersCard(w, opt)
	case "strip.pdf":
		return Strip(w, opt)
	case "strip-whole.pdf":
		return StripWhole(w, opt)
	}
	return export.Book{}, fmt.Errorf("the job folder has no %q; it has %s", name, strings.Join(Names(w), ", "))
}

func writePicture(out io.Writer, w repeat.Work, of string) error {
	picture, err := Picture(w, of, pictureWidth)
	if err != nil {
		return err
	}
	return raster.Encode(out, picture, pictureDPI)
}
