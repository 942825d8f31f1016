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
	_ "embed" // the two font files
	"fmt"
	"math"
	"strings"
	"sync"
	"sync/atomic"
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
const CapHeight = capUnits / 2048.0

const capUnits = 1493

// Missing stands in place of a character that cannot be set: a white square.
const Missing = '\u25A1'

// face is one weight, read on first use and not written after.
type face struct {
	sfnt *font.SFNT
	em   float64 // font units per em
}

var (
	loadRegular = sync.OnceValue(func() *face { return load(regular) })
	loadBold    = sync.OnceValue(func() *face { return load(bold) })
)

// load reads a font file. Both are part of the program and are read by the
// tests of this package, so a failure is a fault of the program and panics.
func load(file []byte) *face {
	sfnt, err := font.ParseSFNT(file, 0)
	if err != nil {
		panic(fmt.Errorf("typeface: %w", err))
	}
	return &face{sfnt: sfnt, em: float64(sfnt.Head.UnitsPerEm)}
}

func faceOf(isBold bool) *face {
	if isBold {
		return loadBold()
	}
	return loadRegular()
}

// setting is what is set for a character: the numbers of its glyphs, those of
// Missing where a face lacks it, and their advances in font units, packed into
// one number so that it can be stored at once.
type setting uint64

const lacking setting = 1 << 63 // glyph numbers are below 2^15

func (s setting) of(bold bool) (id, advance uint16) {
	if bold {
		return uint16(s >> 16), uint16(s)
	}
	return uint16(s>>48) &^ (1 << 15), uint16(s >> 32)
}

// common are the settings of the usual characters, each filled in when it is
// first asked for, and 0 until then.
var common [0x2800]atomic.Uint64

// settingOf returns the setting of a character.
func settingOf(r rune) setting {
	if uint(r) >= uint(len(common)) {
		return find(r)
	}
	if v := common[r].Load(); v != 0 {
		return setting(v)
	}
	v := find(r)
	common[r].Store(uint64(v))
	return v
}

// find looks a character up in the fonts.
func find(r rune) setting {
	var s setting
	regular, bold := loadRegular(), loadBold()
	if r < 0x20 || r >= unicode.ReplacementChar || unicode.IsControl(r) || unicode.Is(unicode.Cf, r) ||
		bold.sfnt.GlyphIndex(r) == 0 { // the regular face has all that the bold one has
		r, s = Missing, lacking
	}
	for _, f := range []*face{regular, bold} {
		id := f.sfnt.GlyphIndex(r)
		s = s&lacking | s<<32&^lacking | setting(id)<<16 | setting(f.sfnt.GlyphAdvance(id))
	}
	return s
}

// Has reports whether both weights hold a glyph for r and r lies in the Basic
// Multilingual Plane and is no control character. U+FFFD, which stands for
// text that was lost, counts as one the face lacks.
func Has(r rune) bool { return settingOf(r)&lacking == 0 }

// Lacks returns the first character of s that cannot be set, and whether there
// is one: see Printable.
func Lacks(s string) (rune, bool) {
	for _, r := range s {
		if !Has(r) {
			return r, true
		}
	}
	return 0, false
}

// Printable returns s with every character that cannot be set replaced by
// Missing: those the face lacks, those above U+FFFF, control and invisible
// formatting characters, and bytes that are not UTF-8.
func Printable(s string) string {
	if _, lacks := Lacks(s); !lacks {
		return s
	}
	return strings.Map(func(r rune) rune {
		if Has(r) {
			return r
		}
		return Missing
	}, s)
}

// Glyph returns the number of the glyph that is set for a character, that of
// Missing if the face lacks it, and its advance in font units.
func Glyph(r rune, bold bool) (id, advance uint16) { return settingOf(r).of(bold) }

// ascii are the advances of the characters of ASCII, in font units.
var ascii = [2]func() *[utf8.RuneSelf]uint16{
	sync.OnceValue(func() *[utf8.RuneSelf]uint16 { return asciiAdvances(false) }),
	sync.OnceValue(func() *[utf8.RuneSelf]uint16 { return asciiAdvances(true) }),
}

func asciiAdvances(bold bool) *[utf8.RuneSelf]uint16 {
	var out [utf8.RuneSelf]uint16
	for r := range out {
		_, out[r] = settingOf(rune(r)).of(bold)
	}
	return &out
}

// units is the advance width of a text in font units.
func units(text string, bold bool) int {
	table := ascii[0]()
	if bold {
		table = ascii[1]()
	}
	sum := 0
	for i := 0; i < len(text); { // most characters are of ASCII
		if b := text[i]; b < utf8.RuneSelf {
			sum += int(table[b])
			i++
			continue
		}
		r, size := utf8.DecodeRuneInString(text[i:])
		_, advance := settingOf(r).of(bold)
		sum += int(advance)
		i += size
	}
	return sum
}

// WidthMm returns the advance width in millimetres of the text at the em size
// sizeMm. It is 0 for an empty text, and for a size that is not a positive
// finite number.
func WidthMm(text string, sizeMm float64, bold bool) float64 {
	if !positive(sizeMm) {
		return 0
	}
	return float64(units(text, bold)) / faceOf(bold).em * sizeMm
}

// Wrap breaks the text into lines at most widthMm wide at the em size sizeMm.
// It breaks at spaces, keeps line feeds as breaks, and divides a word only
// where the word alone is too wide; a single character is never divided, so
// it alone can be wider than the line. Spaces at a break are dropped. An
// empty text gives one empty line. A width or size that is not positive and
// finite breaks at line feeds only.
func Wrap(text string, sizeMm, widthMm float64, bold bool) []string {
	if !positive(widthMm) || !positive(sizeMm) {
		return strings.Split(text, "\n")
	}
	w := wrapping{bold: bold, em: faceOf(bold).em, sizeMm: sizeMm, widthMm: widthMm, space: units(" ", bold)}
	for paragraph := range strings.SplitSeq(text, "\n") {
		w.paragraph(singleSpaced(paragraph))
	}
	return w.lines
}

// singleSpaced is a text with one space between its words and none about them.
func singleSpaced(text string) string {
	last := ' '
	for _, r := range text {
		if r == ' ' && last == ' ' || r != ' ' && unicode.IsSpace(r) {
			return strings.Join(strings.Fields(text), " ")
		}
		last = r
	}
	return strings.TrimSuffix(text, " ")
}

// wrapping is a text being broken into lines.
type wrapping struct {
	bold                bool
	em, sizeMm, widthMm float64
	space               int
	lines               []string
}

// fits tells whether a line of so many font units is not too wide.
func (w *wrapping) fits(units int) bool { return float64(units)/w.em*w.sizeMm <= w.widthMm }

// paragraph breaks a single-spaced text. Its lines are pieces of it.
func (w *wrapping) paragraph(text string) {
	start, end, lineUnits := 0, 0, 0 // of the line in text
	for at := 0; at < len(text); {
		word, _, _ := strings.Cut(text[at:], " ")
		next, wordUnits := at+len(word), units(word, w.bold)
		if joined := lineUnits + w.space + wordUnits; end > start && w.fits(joined) {
			end, lineUnits, at = next, joined, next+1
			continue
		}
		if end > start {
			w.lines = append(w.lines, text[start:end])
		}
		for !w.fits(wordUnits) {
			head := longestHead(text[at:next], func(s string) bool { return w.fits(units(s, w.bold)) })
			if head == next-at {
				break
			}
			w.lines = append(w.lines, text[at:at+head])
			at += head
			wordUnits = units(text[at:next], w.bold)
		}
		start, end, lineUnits, at = at, next, wordUnits, next+1
	}
	w.lines = append(w.lines, text[start:end])
}

// longestHead returns the length in bytes of the longest beginning of the
// word that fits, at least one character.
func longestHead(word string, fits func(string) bool) (end int) {
	for end < len(word) {
		_, size := utf8.DecodeRuneInString(word[end:])
		if end > 0 && !fits(word[:end+size]) {
			break
		}
		end += size
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
	var x float64
	for _, r := range Printable(text) {
		id, advance := Glyph(r, bold)
		if err := f.sfnt.GlyphPath(path, id, 0, x, 0, scale, font.NoHinting); err != nil {
			return nil, fmt.Errorf("typeface: outline of %q: %w", r, err)
		}
		x += scale * float64(advance)
	}
	return path, nil
}

func positive(v float64) bool { return v > 0 && !math.IsInf(v, 1) }

// TTF is the font file itself, regular or bold, for a browser.
func TTF(isBold bool) []byte {
	if isBold {
		return bold
	}
	return regular
}
