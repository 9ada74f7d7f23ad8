// Package pdf writes a Drawing or a Book as PDF 1.6 (ISO 32000-1:2008 tells what
// that version holds), at true scale: pages are of the drawing's own size, and the
// file asks the viewer not to scale when it prints.
//
// Content is in millimetres, y down; one matrix at the head of each page turns
// it into points. Each layer is an optional content group, one for all layers of
// the same name, so that a viewer can show or hide it. A drawing that several
// pages show is written once. Words are set in the faces of the lettering, of
// which the letters that are used are embedded, so that they can be found and
// copied and look the same everywhere.
//
// No clock and no chance goes into a file: the same book gives the same bytes.
package pdf

import (
	"errors"
	"fmt"
	"io"

	"tsugime/export"
	"tsugime/repeat/geom"
)

// Format writes a Drawing as a PDF of one page of its own size.
type Format struct{}

// Name returns "PDF".
func (Format) Name() string { return "PDF" }

// Extension returns ".pdf".
func (Format) Extension() string { return ".pdf" }

// Write writes d on one page.
func (Format) Write(w io.Writer, d export.Drawing) error { return WriteBook(w, export.Single(&d)) }

// MaxPage is the longest side of a page, 14,400 points (ISO 32000-1, annex C.2).
// A unit of its own (UserUnit) would let a page be larger, but readers that
// don't know it print such a page at the wrong scale without a word; so a larger
// page is an error.
const MaxPage = 14_400 * geom.Inch / 72

// minPage is the shortest side of a page, 3 points (the same annex).
const minPage = 3 * geom.Inch / 72

// WriteBook writes b, one page of the file for each of its pages.
func WriteBook(w io.Writer, b export.Book) error {
	if err := check(b); err != nil {
		return err
	}
	f := newFile(w)
	s := newShelf(f, b)
	s.catalogue(b)
	for _, d := range s.drawings {
		s.form(d)
	}
	for i, p := range b.Pages {
		s.page(s.pages[i], p)
	}
	s.groups()
	s.fonts()
	return f.finish(s.root, s.info)
}

func check(b export.Book) error {
	if len(b.Pages) == 0 {
		return fmt.Errorf("book %q has no pages; add one", b.Title)
	}
	for i, p := range b.Pages {
		if err := checkPage(p); err != nil {
			return fmt.Errorf("book %q, page %d: %w", b.Title, i+1, err)
		}
	}
	return nil
}

func checkPage(p export.Page) error {
	d := p.Drawing
	if err := d.Check(); err != nil {
		return err
	}
	if d.Width > MaxPage || d.Height > MaxPage {
		return fmt.Errorf("%s by %s mm is more than a page can be, %s mm a side; cut it into more pages", d.Width, d.Height, MaxPage)
	}
	if d.Width < minPage || d.Height < minPage {
		return fmt.Errorf("%s by %s mm is less than a page can be, %s mm a side; make it larger", d.Width, d.Height, minPage)
	}
	for _, v := range p.Views {
		if v.Of == nil {
			return errors.New("a view shows no drawing; give it one")
		}
		if v.Window.Empty() || v.Window.Width() == 0 || v.Window.Height() == 0 {
			return fmt.Errorf("a view of %q has an empty window; give it a width and a height", v.Of.Title)
		}
		if err := v.Of.Check(); err != nil {
			return err
		}
	}
	return nil
}
