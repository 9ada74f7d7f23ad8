package assets

import (
	"embed"
	"path"
	"slices"
	"strings"
)

// The icons are drawn by one hand: on a grid of 24, with round lines 2 thick, black.
//
//go:embed icons/*.svg
var icons embed.FS

// IconNames lists the drawn icons, sorted.
func IconNames() []string {
	files, err := icons.ReadDir("icons")
	if err != nil {
		panic(err) // embedded
	}
	var names []string
	for _, f := range files {
		names = append(names, strings.TrimSuffix(f.Name(), ".svg"))
	}
	slices.Sort(names)
	return names
}

// DrawnIcon returns an icon as SVG, nil where there is none of the name.
func DrawnIcon(name string) []byte {
	data, err := icons.ReadFile(path.Join("icons", name+".svg"))
	if err != nil {
		return nil
	}
	return data
}
