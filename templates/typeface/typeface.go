// Package typeface holds the one type family every sheet is set in, DejaVu
// Sans Condensed (see LICENSE.txt), and measures text with it. Lengths are
// millimetres; a size is the em size. Widths are sums of the advance widths
// in the font's hmtx table, without kerning and without ligatures, which is
// how the PDF and the preview set the text too.
//
// Text is set in the characters of the Basic Multilingual Plane that the face
// holds; Printable replaces the others, and every function here measures
// what Printable returns.
package typeface

import (
	"bytes"
	_ "embed" // the two font files
	"fmt"
	"math"
	"strings"
	"sync"
	"unicode"
	"unicode/utf8"

	"github.com/tdewolff/canvas"
	"github.com/tdewolff/font"
)

//go:embed DejaVuSansCondensed.ttf
var regular []byte

//go:embed DejaVuSansCondensed-Bold.ttf
var bold []byte

// Family is the name of the family as the font files give it.
const Family = "DejaVu Sans Condensed"

// CapHeight is the height of a capital H as a part of the em size, in both
// weights: 1493 of 2048 font units, from the outline of H.
const CapHeight = 1493.0 / 2048

// Missing stands in place of a character that cannot be set: a white square.
const Missing = '\u25A1'

// Regular returns a copy of the TrueType file of the regular weight.
func Regular() []byte { return bytes.Clone(regular) }

// Bold returns a copy of the TrueType file of the bold weight.
func Bold() []byte { return bytes.Clone(bold) }

// loaded is the parsed pair of faces. It is written once and only read after.
var (
	loadOnce sync.Once
	loaded   [2]face
	loadErr  error
)

type face struct {
	sfnt *font.SFNT
	em   float64 // font units per em
}

// faceOf returns the parsed face of one weight. Both files are part of the
// program and are read by the tests of this package, so a failure here is a
// fault of the program and panics.
func faceOf(isBold bool) face {
	loadOnce.Do(func() {
		for i, b := range [][]byte{regular, bold} {
			sfnt, err := font.ParseSFNT(b, 0)
			if err != nil {
				loadErr = fmt.Errorf("typeface: %w", err)
				return
			}
			loaded[i] = face{sfnt: sfnt, em: float64(sfnt.Head.UnitsPerEm)}
		}
	})
	if loadErr != nil {
		panic(loadErr)
	}
	if isBold {
		return loaded[1]
	}
	return loaded[0]
}

// Has reports whether both weights hold a glyph for r and r lies in the Basic
// Multilingual Plane and is no control character. U+FFFD, which stands for
// text that was lost, counts as one the face lacks.
func Has(r rune) bool {
	if r < 0x20 || r >= unicode.ReplacementChar || unicode.IsControl(r) || unicode.Is(unicode.Cf, r) {
		return false
	}
	return faceOf(false).sfnt.GlyphIndex(r) != 0 && faceOf(true).sfnt.GlyphIndex(r) != 0
}

// Printable returns s with every character that cannot be set replaced by
// Missing: those the face lacks, those above U+FFFF, control and invisible
// formatting characters, and bytes that are not UTF-8.
func Printable(s string) string {
	return strings.Map(func(r rune) rune {
		if Has(r) {
			return r
		}
		return Missing
	}, s)
}

// WidthMm returns the advance width in millimetres of the text at the em size
// sizeMm. It is 0 for an empty text, and for a size that is not a positive
// finite number.
func WidthMm(text string, sizeMm float64, bold bool) float64 {
	if !positive(sizeMm) {
		return 0
	}
	f := faceOf(bold)
	units := 0
	for _, r := range Printable(text) {
		units += int(f.sfnt.GlyphAdvance(f.sfnt.GlyphIndex(r)))
	}
	return float64(units) / f.em * sizeMm
}

// Fit returns the em size in millimetres, sizeMm or less, at which the text
// is at most maxMm wide. It returns 0 where no size fits (maxMm or sizeMm not
// positive) and the text has a width.
func Fit(text string, sizeMm, maxMm float64, bold bool) float64 {
	width := WidthMm(text, sizeMm, bold)
	if width == 0 || width <= maxMm {
		return sizeMm
	}
	if !positive(maxMm) {
		return 0
	}
	fitted := sizeMm * maxMm / width
	for WidthMm(text, fitted, bold) > maxMm { // the last digit of the quotient
		fitted = math.Nextafter(fitted, 0)
	}
	return fitted
}

// Wrap breaks the text into lines at most widthMm wide at the em size sizeMm.
// It breaks at spaces, keeps line feeds as breaks, and divides a word only
// where the word alone is too wide; a single character is never divided, so
// it alone can be wider than the line. Spaces at a break are dropped. An
// empty text gives one empty line. A width or size that is not positive and
// finite breaks at line feeds only.
func Wrap(text string, sizeMm, widthMm float64, bold bool) []string {
	var lines []string
	for _, paragraph := range strings.Split(text, "\n") {
		if !positive(widthMm) || !positive(sizeMm) {
			lines = append(lines, paragraph)
			continue
		}
		lines = append(lines, wrapParagraph(paragraph, sizeMm, widthMm, bold)...)
	}
	return lines
}

func wrapParagraph(text string, sizeMm, widthMm float64, bold bool) []string {
	fits := func(s string) bool { return WidthMm(s, sizeMm, bold) <= widthMm }
	var lines []string
	line := ""
	for _, word := range strings.Fields(text) {
		if line != "" {
			if joined := line + " " + word; fits(joined) {
				line = joined
				continue
			}
			lines = append(lines, line)
		}
		for !fits(word) {
			head := longestHead(word, fits)
			if head == len(word) {
				break
			}
			lines = append(lines, word[:head])
			word = word[head:]
		}
		line = word
	}
	return append(lines, line)
}

// longestHead returns the length in bytes of the longest beginning of the
// word that fits, at least one character.
func longestHead(word string, fits func(string) bool) int {
	end := 0
	for i, r := range word {
		next := i + len(string(r))
		if r == utf8.RuneError && !strings.HasPrefix(word[i:], "\uFFFD") {
			next = i + 1 // a byte that is not UTF-8
		}
		if end > 0 && !fits(word[:next]) {
			break
		}
		end = next
	}
	return end
}

// Outline returns the text as filled outlines (non-zero rule) in millimetres,
// its baseline starting at the origin, y up. The error is that of a damaged
// glyph.
func Outline(text string, sizeMm float64, bold bool) (*canvas.Path, error) {
	path := &canvas.Path{}
	if !positive(sizeMm) {
		return path, nil
	}
	f := faceOf(bold)
	scale := sizeMm / f.em
	x := 0.0
	for _, r := range Printable(text) {
		id := f.sfnt.GlyphIndex(r)
		if err := f.sfnt.GlyphPath(path, id, 0, x, 0, scale, font.NoHinting); err != nil {
			return nil, fmt.Errorf("typeface: outline of %q: %w", r, err)
		}
		x += scale * float64(f.sfnt.GlyphAdvance(id))
	}
	return path, nil
}

func positive(v float64) bool { return v > 0 && !math.IsInf(v, 1) }
