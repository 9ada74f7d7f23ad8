package ui

import (
	"context"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/widget"

	"tsugime/export"
	"tsugime/export/report"
	"tsugime/ui/printer"
)

// Where the preferences keep what was chosen last.
const (
	printerKey = "print-printer"
	copiesKey  = "print-copies"
	paperKey   = "print-paper"
	sheetKey   = "print-sheet"
)

// A printChoice is the choice of what is printed, and how.
type printChoice struct {
	w       *Window
	sheets  []string // of the job folder, those that can be printed
	sheet   *widget.Select
	pages   *widget.Entry
	copies  *widget.Entry
	paper   *widget.Select
	printer *widget.Select
	dialog  *dialog.CustomDialog
}

// print asks what is to be printed, and on what.
func (w *Window) print() {
	p := &printChoice{w: w, sheets: report.Paged(w.work), pages: widget.NewEntry(), copies: widget.NewEntry()}
	last := w.app.Preferences()
	p.sheet = selected(append([]string{say("all of them")}, p.sheets...), last.String(sheetKey))
	p.pages.SetPlaceHolder(say("all; or like 1-3, 5"))
	p.copies.SetText(strconv.Itoa(max(last.Int(copiesKey), 1)))
	var papers []string
	for _, page := range export.Pages() {
		papers = append(papers, page.Name)
	}
	p.paper = selected(papers, w.Order().Sheets.Page)
	if slices.Contains(papers, last.String(paperKey)) {
		p.paper.SetSelected(last.String(paperKey))
	}
	p.printer = selected([]string{say("the system's own choice")}, "")
	p.show()
	go func() {
		names := printer.Printers(context.Background())
		later(func() {
			p.printer.SetOptions(append(p.printer.Options, names...))
			if slices.Contains(names, last.String(printerKey)) {
				p.printer.SetSelected(last.String(printerKey))
			}
		})
	}()
}

// selected is a list with one of its options chosen, the first where there is no such.
func selected(options []string, chosen string) *widget.Select {
	s := widget.NewSelect(options, nil)
	s.SetSelectedIndex(max(slices.Index(options, chosen), 0))
	return s
}

// show opens the dialog.
func (p *printChoice) show() {
	form := container.New(layout.NewFormLayout(),
		widget.NewLabel(say("Sheets")), p.sheet,
		widget.NewLabel(say("Pages of each")), p.pages,
		widget.NewLabel(say("Copies")), p.copies,
		widget.NewLabel(say("Paper")), p.paper,
		widget.NewLabel(say("Printer")), p.printer)
	words := quietLabel()
	words.SetText(say("Pages are made for this paper and printed as large as they are: nothing is fitted or scaled. Measure the check square before a sheet goes on the bench: its side is 100 mm."))
	p.dialog = dialog.NewCustomWithoutButtons(say("Print the Sheets"), container.NewBorder(nil, words, nil, nil, form), p.w.win)
	p.dialog.SetButtons([]fyne.CanvasObject{
		widget.NewButton(say("Cancel"), p.dialog.Hide),
		widget.NewButton(say("Open in the Viewer"), func() { p.do(p.view) }),
		&widget.Button{Text: say("Print"), Importance: widget.HighImportance, OnTapped: func() { p.do(p.send) }},
	})
	p.dialog.Resize(fyne.NewSize(520, 420))
	p.dialog.Show()
	p.w.win.Canvas().Focus(p.sheet)
}

// do makes the chosen sheets in the background and hands their files on. What can't be
// read is told, and the dialog stays.
func (p *printChoice) do(hand func(ctx context.Context, files []string, job printer.Job) (string, error)) {
	job, err := p.job()
	if err != nil {
		p.w.fail(err)
		return
	}
	names := p.sheets
	if i := p.sheet.SelectedIndex(); i > 0 {
		names = p.sheets[i-1 : i]
	}
	p.remember()
	p.dialog.Hide()
	work, cutter := p.w.work, p.w.cutterNow()
	options := report.Options{Only: names, Page: p.paper.Selected, Force: true, Rack: cutter.Rack, Rates: cutter.Rates()}
	p.w.background(say("Making the sheets ready"), func(ctx context.Context) (func(), error) {
		folder, err := os.MkdirTemp("", "tsugime-print-")
		if err != nil {
			return nil, fmt.Errorf("a folder for the sheets: %w", err)
		}
		files, err := report.JobFolder(ctx, work, folder, options, nil)
		if err != nil {
			return nil, errors.Join(err, os.RemoveAll(folder))
		}
		said, err := hand(ctx, files, job)
		return func() { p.w.Say(said) }, err
	})
}

// job is what was asked for, without its file.
func (p *printChoice) job() (j printer.Job, err error) {
	if j.Pages, err = printer.Ranges(p.pages.Text); err != nil {
		return j, err
	}
	if j.Copies, err = strconv.Atoi(strings.TrimSpace(p.copies.Text)); err != nil || j.Copies < 1 {
		return j, errors.New(say("%s copies can't be printed; write a number from 1", strconv.Quote(p.copies.Text)))
	}
	page, err := export.PageNamed(p.paper.Selected)
	if err != nil {
		return j, err
	}
	if j.Media = printer.Media(page); p.printer.SelectedIndex() > 0 {
		j.Printer = p.printer.Selected
	}
	return j, nil
}

// remember keeps the choice for the next time.
func (p *printChoice) remember() {
	last := p.w.app.Preferences()
	last.SetString(paperKey, p.paper.Selected)
	last.SetString(sheetKey, p.sheet.Selected)
	if n, err := strconv.Atoi(strings.TrimSpace(p.copies.Text)); err == nil {
		last.SetInt(copiesKey, n)
	}
	if p.printer.SelectedIndex() > 0 {
		last.SetString(printerKey, p.printer.Selected)
	} else {
		last.SetString(printerKey, "")
	}
}

// send prints the files; the printer has its own copy of each when it returns.
func (p *printChoice) send(ctx context.Context, files []string, job printer.Job) (string, error) {
	defer os.RemoveAll(filepath.Dir(files[0]))
	for _, f := range files {
		job.File = f
		if _, err := printer.Print(ctx, job); err != nil {
			return "", err
		}
	}
	return say("%d sheets went to the printer.", len(files)), nil
}

// view opens the files in the system's viewer, which reads them when it will: they stay
// until the system clears its folder of passing files.
func (p *printChoice) view(ctx context.Context, files []string, _ printer.Job) (string, error) {
	for _, f := range files {
		if err := printer.View(ctx, f); err != nil {
			return "", err
		}
	}
	return say("%d sheets are opened in the viewer; print them there at 100 %%.", len(files)), nil
}
