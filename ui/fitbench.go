package ui

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"

	"tsugime/repeat/document"
	"tsugime/repeat/pattern"
)

// A fitBench is where the unit is made to meet the step, and what it is to repeat
// in across.
type fitBench struct {
	w      *Window
	across *widget.Select
	fits   *widget.Select
	about  *widget.Label // the fit that is chosen, in full
	punch  *widget.Label // the dots and the rack
	found  []document.OrderFit
}

// What a fit may meet across, as the list has it.
const (
	asItIs = iota
	backSeams
	fieldWidth
	fieldAndSeams
)

var acrossNames = []string{"across as it is", "and the back seams", "and the width of the field", "and both"}

func (b *fitBench) add(s *draft) {
	b.w = s.w
	f := s.form
	f.heading("Fit to the step")
	var names []string
	for _, name := range acrossNames {
		names = append(names, say(name))
	}
	b.across = newSelect(names, nil)
	b.across.SetSelectedIndex(asItIs)
	b.across.OnChanged = func(string) { b.refresh(b.w.Order()) }
	b.fits = newSelect(nil, func(string) { b.tell() })
	b.fits.PlaceHolder = say("strain across, along, shear")
	b.about, b.punch = quietLabel(), quietLabel()
	f.add(b.across)
	f.add(b.fits)
	f.add(b.about)
	f.button("Apply This Fit", b.apply)
	f.add(b.punch)
	f.button("Snap the Dots to the Rack", b.w.snapDots)
}

// wish is what the lists ask for.
func (b *fitBench) wish(o document.Order) document.FitWish {
	w := document.FitWish{Step: o.Sheet.Step}
	switch at := b.across.SelectedIndex(); at {
	case backSeams:
		w.Seam = true
	case fieldWidth, fieldAndSeams:
		w.Width, w.Seam = o.Sheet.Field.Width, at == fieldAndSeams
	}
	return w
}

func (b *fitBench) refresh(o document.Order) {
	b.found, _ = o.Fits(b.wish(o)) // none where the lattice or the step can't be fitted
	var options []string
	for i, f := range b.found {
		options = append(options, fmt.Sprintf("%d:  %d·A %+d·B   %.3f %%  %.3f %%  %.3f %%", i+1,
			f.M, f.N, 100*f.Strain.X, 100*f.Strain.Y, 100*f.Strain.Shear))
	}
	if !slices.Equal(options, b.fits.Options) {
		b.fits.Options = options
	}
	b.fits.ClearSelected()
	b.tell()
	b.punch.SetText(punchWords(o, b.w))
}

// chosen returns the fit that is picked in the list.
func (b *fitBench) chosen() (document.OrderFit, bool) {
	if i := b.fits.SelectedIndex(); i >= 0 && i < len(b.found) {
		return b.found[i], true
	}
	return document.OrderFit{}, false
}

// tell says all about the fit that is chosen.
func (b *fitBench) tell() {
	f, ok := b.chosen()
	if !ok {
		b.about.SetText(say("Pick a fit to see what it changes."))
		return
	}
	u := b.w.unit()
	parts := []string{
		say("across %+.3f %%, along %+.3f %%, shear %.3f %%, turned %.3f°",
			100*f.Strain.X, 100*f.Strain.Y, 100*f.Strain.Shear, f.Strain.Turn*180/math.Pi),
		say("pitch %s, %.2f per cm², %.0f per square kane sun", u.Format(f.Pitch(), 4), f.PerCM2, f.PerSquareSun()),
		say("%s off at the back seams", u.Format(f.SeamOff, 3)),
	}
	if f.WidthOff > 0 {
		parts = append(parts, say("%s off at the field's edge", u.Format(f.WidthOff, 3)))
	}
	if math.Abs(f.Bent) > pattern.MostBent {
		parts = append(parts, say("bends the ground by %.2f %%", 100*math.Abs(f.Bent)))
	}
	if !f.KeepsGround {
		parts = append(parts, say("ends the ground: it can't be laid again"))
	}
	b.about.SetText(say("%s.", strings.Join(parts, say("; "))))
}

func (b *fitBench) apply() {
	f, ok := b.chosen()
	if !ok {
		b.w.Say(say("Pick a fit from the list first."))
		return
	}
	b.w.Edit("Fit to the Step", func(o document.Order) (document.Order, error) { return document.ApplyFit(o, f) })
}

// punchWords tells which punches are nearest to the dots.
func punchWords(o document.Order, w *Window) string {
	punches := o.Punches()
	if len(punches) == 0 {
		return say("Dots stay round and keep their size.")
	}
	const most = 3
	var parts []string
	for i, m := range punches {
		if i == most {
			parts = append(parts, say("and %d more sizes", len(punches)-most))
			break
		}
		parts = append(parts, fmt.Sprintf("%s → %s (%+.1f %%)", w.unit().Format(m.Dot, 3), w.unit().Format(m.Punch.Diameter, 3), 100*m.Change()))
	}
	return say("Dots stay round. The nearest punches of the rack: %s.", strings.Join(parts, ", "))
}

// snapDots gives the dots the sizes of the rack.
func (w *Window) snapDots() { w.Edit("Snap the Dots to the Rack", document.SnapDots) }

// fitCommands are what the draft's fit can be asked for by name.
func fitCommands() []command {
	return []command{
		{"Edit", named("Apply This Fit"), keys(key(fyne.KeyE, ctrl)), fitChosen,
			func(w *Window) { w.stations[draftAt].(*draft).fit.apply() }},
		{"Edit", named("Snap the Dots to the Rack"), keys(key(fyne.KeyR, ctrl)), drafting, (*Window).snapDots},
	}
}

// fitChosen reports whether a fit is picked on the draft's bench.
func fitChosen(w *Window) bool {
	if !drafting(w) {
		return false
	}
	_, ok := w.stations[draftAt].(*draft).fit.chosen()
	return ok
}
