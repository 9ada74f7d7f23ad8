package export

import (
	"fmt"
	"sync"

	"github.com/tdewolff/canvas"
	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/goregular"

	"tsugime/assets"
	"tsugime/repeat/geom"
)

// A Face is one of the fonts that are part of the program, so that a sheet looks
// the same on every machine.
type Face int

// The faces. Latin, Greek and Cyrillic are the Go fonts (Bigelow & Holmes, 2016),
// Japanese is M+ 1p. NoFace stands for letters that none of them has.
const (
	Plain Face = iota
	Bold
	Japanese
	NoFace
)

// Faces lists the faces that have letters.
func Faces() []Face { return []Face{Plain, Bold, Japanese} }

// japaneseSize is the em of the Japanese face beside a Latin one of 1, and
// japaneseRise how far it is lifted: a kanji, which fills its square, then reaches
// as far above a capital as below the line. japaneseStroke is drawn around its
// letters where bold is asked for, since there is one weight of it.
const (
	japaneseSize   = 0.92
	japaneseRise   = 0.04
	japaneseStroke = 0.036
)

// ttf returns the font's file.
func (f Face) ttf() []byte {
	switch f {
	case Plain:
		return goregular.TTF
	case Bold:
		return gobold.TTF
	case Japanese:
		return assets.JapaneseType()
	}
	panic(fmt.Sprintf("export: face %d has no font", f))
}

// A fount is a face at a weight and a size, and the shapes that were asked for
// so far. It may be used from many goroutines; in which order they ask changes
// nothing.
type fount struct {
	face   Face
	size   float64 // of the face's em in ems of the text, as all here
	rise   float64 // over the baseline
	stroke float64 // around each letter
	font   *canvas.Font
	mu     sync.Mutex
	made   map[rune]letter
}

var (
	plain    = sync.OnceValue(func() *fount { return load(Plain, 1, 0, 0) })
	bold     = sync.OnceValue(func() *fount { return load(Bold, 1, 0, 0) })
	japanese = sync.OnceValue(func() *fount { return load(Japanese, japaneseSize, japaneseRise, 0) })
	stroked  = sync.OnceValue(func() *fount { return load(Japanese, japaneseSize, japaneseRise, japaneseStroke) })
)

// load panics on a font that can't be read: the fonts are part of the program.
func load(face Face, size, rise, stroke float64) *fount {
	font, err := canvas.LoadFont(face.ttf(), 0, canvas.FontRegular)
	if err != nil {
		panic(fmt.Sprintf("export: the built-in font can't be read: %v", err))
	}
	return &fount{face: face, size: size, rise: rise, stroke: stroke, font: font, made: map[rune]letter{}}
}

// fountOf returns what r is set in: the Latin face where it has the letter, or
// else the Japanese one; nil where neither has it.
func fountOf(r rune, heavy bool) *fount {
	latin := plain()
	if heavy {
		latin = bold()
	}
	if latin.glyph(r) != 0 {
		return latin
	}
	ours := japanese()
	if heavy {
		ours = stroked()
	}
	if ours.glyph(r) != 0 {
		return ours
	}
	return nil
}

// letterOf returns the shape of r. What no face has becomes a frame that can't be
// overlooked, so that no word goes missing unseen.
func letterOf(r rune, heavy bool) letter {
	if f := fountOf(r, heavy); f != nil {
		return f.letter(r)
	}
	return frame()
}

// fount returns the face as it is.
func (f Face) fount() *fount {
	switch f {
	case Plain:
		return plain()
	case Bold:
		return bold()
	}
	return japanese()
}

// Advance returns the width of a glyph of f at an em.
func (f Face) Advance(glyph uint16, em geom.Length) geom.Length {
	font := f.fount().font
	return em.Times(float64(font.GlyphAdvance(glyph)) / float64(font.Head.UnitsPerEm))
}
