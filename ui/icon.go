package ui

import (
	"bytes"
	"fmt"
	"strings"
	"sync"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"

	"tsugime/assets"
	"tsugime/repeat/outlinefile"
)

// outlinedIcons are the drawn icons with their lines as filled outlines, by their
// names: Fyne gives colours to what is filled only.
var outlinedIcons = sync.OnceValue(func() map[string][]byte {
	all := map[string][]byte{}
	for _, name := range assets.IconNames() {
		svg, err := outlinedIcon(assets.DrawnIcon(name))
		if err != nil {
			panic(fmt.Errorf("icon %s: %w", name, err)) // shipped, and read by a test
		}
		all[name] = svg
	}
	return all
})

// outlinedIcon returns an icon whose lines are filled outlines.
func outlinedIcon(svg []byte) ([]byte, error) {
	d, err := outlinefile.ReadSVG(bytes.NewReader(svg), outlinefile.Options{})
	if err != nil {
		return nil, err
	}
	if len(d.Notes) > 0 {
		return nil, fmt.Errorf("line %d: %s", d.Notes[0].Line, d.Notes[0].Text)
	}
	var b strings.Builder
	b.WriteString(`<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 24 24">`)
	for _, p := range d.Pieces {
		if p.Shape.Outline != nil {
			fmt.Fprintf(&b, `<path d="%s"/>`, p.Shape.Outline.PathData(3))
			continue
		}
		c := p.Shape.Disc
		fmt.Fprintf(&b, `<circle cx="%.3f" cy="%.3f" r="%.3f"/>`, c.Centre.X.MM(), c.Centre.Y.MM(), c.Diameter.MM()/2)
	}
	b.WriteString(`</svg>`)
	return []byte(b.String()), nil
}

// icon is a drawn icon in the colour of the words.
func (p *palette) icon(name string) fyne.Resource {
	return p.iconIn(name, theme.ColorNameForeground)
}

// iconIn is a drawn icon in a colour of Fyne's. Fyne keeps pictures of icons by their
// names, so those of the two looks differ.
func (p *palette) iconIn(name string, in fyne.ThemeColorName) fyne.Resource {
	svg, ok := outlinedIcons()[name]
	if !ok {
		return nil
	}
	look := "day"
	if p == &byLamp {
		look = "lamp"
	}
	return theme.NewColoredResource(fyne.NewStaticResource("tsugime-"+name+"-"+look+".svg", svg), in)
}

// fynesIcons are ours for those that Fyne's own dialogs and widgets show.
var fynesIcons = map[fyne.ThemeIconName]string{
	theme.IconNameCancel: "cancel", theme.IconNameConfirm: "confirm", theme.IconNameDelete: "delete", theme.IconNameSearch: "loupe",
	theme.IconNameError: "error", theme.IconNameInfo: "info", theme.IconNameQuestion: "question", theme.IconNameWarning: "warning",
	theme.IconNameContentUndo: "undo", theme.IconNameContentRedo: "redo", theme.IconNameContentClear: "cancel",
	theme.IconNameDocumentSave: "save", theme.IconNameDocumentPrint: "print", theme.IconNameDocument: "file",
	theme.IconNameFile: "file", theme.IconNameFileText: "file", theme.IconNameFileImage: "file", theme.IconNameFileApplication: "file",
	theme.IconNameFolder: "folder", theme.IconNameFolderOpen: "folder", theme.IconNameFolderNew: "folder-new",
	theme.IconNameHome: "home", theme.IconNameStorage: "chest", theme.IconNameComputer: "chest", theme.IconNameDesktop: "sheets", theme.IconNameDownload: "open",
	theme.IconNameNavigateBack: "left", theme.IconNameNavigateNext: "right", theme.IconNameMoveUp: "up", theme.IconNameMoveDown: "down",
	theme.IconNameMenuExpand: "expand", theme.IconNameArrowDropDown: "unfold", theme.IconNameArrowDropUp: "fold",
	theme.IconNameList: "list", theme.IconNameGrid: "grid", theme.IconNameSettings: "settings",
	theme.IconNameViewZoomIn: "closer", theme.IconNameViewZoomOut: "farther", theme.IconNameViewZoomFit: "whole",
}

// Icon returns the drawn icon for a name of Fyne's, or Fyne's where none is drawn.
func (t Theme) Icon(n fyne.ThemeIconName) fyne.Resource {
	if name, ok := fynesIcons[n]; ok {
		return t.palette().icon(name)
	}
	return theme.DefaultTheme().Icon(n)
}
