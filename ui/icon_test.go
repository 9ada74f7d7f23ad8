package ui

import (
	"encoding/xml"
	"image"
	"image/draw"
	"image/png"
	"os"
	"path/filepath"
	"regexp"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/driver/software"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/theme"

	"tsugime/assets"
)

// painted is an icon on a panel, px wide, as Fyne's software canvas paints it.
func painted(r fyne.Resource, px int, th fyne.Theme) image.Image {
	c := software.NewTransparentCanvas()
	c.SetPadded(false)
	o := canvas.NewImageFromResource(r)
	o.FillMode = canvas.ImageFillContain
	c.SetContent(o)
	c.Resize(fyne.NewSquareSize(float32(px)))
	return software.RenderCanvas(c, th)
}

// inked is how much of a picture an icon covers, 0 to 1.
func inked(img image.Image) float64 {
	sum, b := 0.0, img.Bounds()
	for y := b.Min.Y; y < b.Max.Y; y++ {
		for x := b.Min.X; x < b.Max.X; x++ {
			_, _, _, a := img.At(x, y).RGBA()
			sum += float64(a) / 0xffff
		}
	}
	return sum / float64(b.Dx()*b.Dy())
}

// One hand drew them: one grid, one thickness, round ends, black alone.
func TestIconsAreOfOneHand(t *testing.T) {
	for _, name := range assets.IconNames() {
		svg := string(assets.DrawnIcon(name))
		var root struct {
			ViewBox string `xml:"viewBox,attr"`
			Groups  []struct {
				Width string `xml:"stroke-width,attr"`
				Cap   string `xml:"stroke-linecap,attr"`
				Join  string `xml:"stroke-linejoin,attr"`
			} `xml:"g"`
		}
		if err := xml.Unmarshal([]byte(svg), &root); err != nil {
			t.Errorf("%s: %v", name, err)
		}
		if root.ViewBox != "0 0 24 24" {
			t.Errorf("%s: drawn on %s, want a grid of 24", name, root.ViewBox)
		}
		for _, g := range root.Groups {
			if g.Width != "2" || g.Cap != "round" || g.Join != "round" {
				t.Errorf("%s: lines are %+v, want round and 2 thick", name, g)
			}
		}
		if other := regexp.MustCompile(`(fill|stroke)="(?:[^nb]|n[^o]|b[^l])[^"]*"`).FindString(svg); other != "" {
			t.Errorf("%s: %s is a colour of its own", name, other)
		}
	}
}

// Every icon is seen at 16 and 20 pixels, fills the most of its place, no two are
// alike, and both looks give it their colour.
func TestEveryIconIsSeenInBothLooks(t *testing.T) {
	a := test.NewTempApp(t)
	folder := filepath.Join("..", "out", "window")
	if err := os.MkdirAll(folder, 0o755); err != nil {
		t.Fatal(err)
	}
	names := assets.IconNames()
	sheet := image.NewRGBA(image.Rect(0, 0, 3*30*7, 30*2*(len(names)+6)/7))
	drawn := map[string]string{}
	for i, name := range names {
		for look, p := range both {
			a.Settings().SetTheme(Theme{p})
			for k, px := range []int{16, 20} {
				img := painted(p.icon(name), px, Theme{p})
				if got := inked(img); got < 0.06 || got > 0.75 {
					t.Errorf("%s, %s, %d px: it covers %.0f %% of its place", look, name, px, 100*got)
				}
				if p == &byDay {
					at := image.Pt(90*(i%7)+5+35*k, 60*(i/7)+5)
					draw.Draw(sheet, image.Rect(at.X-5, at.Y-5, at.X+60, at.Y+50), image.NewUniform(p.card), image.Point{}, draw.Src)
					draw.Draw(sheet, image.Rectangle{at, at.Add(image.Pt(px, px))}, img, image.Point{}, draw.Over)
				}
			}
		}
		img := painted(byDay.icon(name), 24, Theme{&byDay})
		key := string(img.(*image.NRGBA).Pix)
		if other, ok := drawn[key]; ok {
			t.Errorf("%s looks like %s", name, other)
		}
		drawn[key] = name
	}
	f, err := os.Create(filepath.Join(folder, "icons.png"))
	if err != nil {
		t.Fatal(err)
	}
	if err := png.Encode(f, sheet); err != nil {
		t.Fatal(err)
	}
	if err := f.Close(); err != nil {
		t.Fatal(err)
	}
}

// What is drawn is shown: by Fyne's dialogs, or at a station.
func TestEveryIconHasAPlace(t *testing.T) {
	shown := map[string]bool{}
	for _, name := range fynesIcons {
		shown[name] = true
	}
	for _, name := range stationNames {
		shown[stationIcon(name)] = true
	}
	for _, name := range assets.IconNames() {
		if !shown[name] {
			t.Errorf("%s is shown nowhere", name)
		}
	}
}

// Fyne's own dialogs show drawn icons.
func TestFynesIconsAreOurs(t *testing.T) {
	a := test.NewTempApp(t)
	a.Settings().SetTheme(Theme{&byLamp})
	for n, name := range fynesIcons {
		if (Theme{&byLamp}).Icon(n) == nil {
			t.Errorf("%s: there is no icon %q", n, name)
		}
	}
	if got := theme.ConfirmIcon().Name(); got != "foreground_tsugime-confirm-lamp.svg" {
		t.Errorf("the dialogs confirm with %s", got)
	}
}
