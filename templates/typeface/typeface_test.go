package typeface_test

import (
	"encoding/binary"
	"errors"
	"math"
	"os"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/tdewolff/canvas"
	"github.com/tdewolff/font"
	"pgregory.net/rapid"

	"centrepop/templates/typeface"
)

// Advance widths read from the hmtx table of DejaVu Sans Condensed 2.37, in
// units of 1/2048 em.
func TestWidthMm(t *testing.T) {
	cases := []struct {
		text string
		bold bool
		want float64 // font units
	}{
		{"", false, 0},
		{" ", false, 585},
		{"0", false, 1172},
		{"0123456789", false, 11720},
		{"0", true, 1282},
	}
	for _, c := range cases {
		got := typeface.WidthMm(c.text, 2048, c.bold)
		if math.Abs(got-c.want) > 1e-9 {
			t.Errorf("WidthMm(%q, 2048, %v) = %v, want %v", c.text, c.bold, got, c.want)
		}
	}
	for _, size := range []float64{0, -1, math.NaN(), math.Inf(1)} {
		if got := typeface.WidthMm("a", size, false); got != 0 {
			t.Errorf("WidthMm at size %v = %v, want 0", size, got)
		}
	}
	// No kerning: the width of a pair is the sum, also where the face kerns.
	pair := typeface.WidthMm("AV", 10, false)
	sum := typeface.WidthMm("A", 10, false) + typeface.WidthMm("V", 10, false)
	if math.Abs(pair-sum) > 1e-9 {
		t.Errorf("AV is %v wide, A and V together %v", pair, sum)
	}
}

// whole reads a font file as it lies in the folder.
func whole(t *testing.T, name string) *font.SFNT {
	t.Helper()
	b, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	sfnt, err := font.ParseSFNT(b, 0)
	if err != nil {
		t.Fatal(err)
	}
	return sfnt
}

func TestCapHeightIsThatOfH(t *testing.T) {
	for _, name := range []string{"DejaVuSansCondensed.ttf", "DejaVuSansCondensed-Bold.ttf"} {
		sfnt := whole(t, name)
		_, _, _, top := sfnt.GlyphBounds(sfnt.GlyphIndex('H'))
		if got := float64(top) / float64(sfnt.Head.UnitsPerEm); got != typeface.CapHeight {
			t.Errorf("H is %v em high, want %v", got, typeface.CapHeight)
		}
	}
}

// The characters the sheets use must be in both weights.
func TestHasTheShopsCharacters(t *testing.T) {
	for _, r := range "ABCabc019 .,;:-–—+±×÷=≤≥≈√°′″µΩαβφ⌀Ø½¼¾⅛²³·•→←↑↓☐☑✓△▽□äöüßÄÖÜéèêçñåæøłšžőűЖЯжπ" {
		if !typeface.Has(r) {
			t.Errorf("the face lacks %q (%U)", r, r)
		}
	}
	for _, r := range []rune{'\n', '\t', 0, 0x7F, 0x85, 0x200B, '漢', '😀', 0xD800, 0x10FFFF, -1} {
		if typeface.Has(r) {
			t.Errorf("Has(%U) is true", r)
		}
	}
}

func TestPrintable(t *testing.T) {
	cases := []struct{ in, want string }{
		{"", ""},
		{"M12 × 1,75", "M12 × 1,75"},
		{"a\tb\nc", "a□b□c"},
		{"漢😀", "□□"},
		{"\xff", "□"},
	}
	for _, c := range cases {
		if got := typeface.Printable(c.in); got != c.want {
			t.Errorf("Printable(%q) = %q, want %q", c.in, got, c.want)
		}
	}
}

func TestWrap(t *testing.T) {
	cases := []struct {
		text  string
		width float64
		want  string
	}{
		{"", 50, ""},
		{"one two", 50, "one two"},
		{"one two three", 13, "one two|three"},
		{"  one   two  ", 50, "one two"},
		{"one\n\ntwo", 50, "one||two"},
		{"0000000000", 6, "000|000|000|0"},
		{"漢", 0.1, "漢"},
		{"a b", math.NaN(), "a b"},
	}
	for _, c := range cases {
		got := strings.Join(typeface.Wrap(c.text, 3, c.width, false), "|")
		if got != c.want {
			t.Errorf("Wrap(%q, width %v) = %q, want %q", c.text, c.width, got, c.want)
		}
	}
}

// Wrapping loses no character but white space, and no line of more than one
// character is too wide.
func TestWrapKeepsText(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.StringN(0, 60, -1).Draw(t, "text")
		width := rapid.Float64Range(1, 40).Draw(t, "width")
		lines := typeface.Wrap(text, 3, width, false)
		if a, b := squeeze(strings.Join(lines, "")), squeeze(text); a != b {
			t.Fatalf("lines hold %q, want %q", a, b)
		}
		for _, line := range lines {
			if utf8.RuneCountInString(line) > 1 && typeface.WidthMm(line, 3, false) > width {
				t.Fatalf("%q is wider than %v", line, width)
			}
		}
	})
}

func squeeze(s string) string { return strings.Join(strings.Fields(s), "") }

func TestOutline(t *testing.T) {
	path, err := typeface.Outline("HH", 10, false)
	if err != nil {
		t.Fatal(err)
	}
	b := path.Bounds()
	if math.Abs(b.Y0) > 1e-9 || math.Abs(b.Y1-10*typeface.CapHeight) > 1e-6 {
		t.Errorf("H reaches from %v to %v, want 0 to %v", b.Y0, b.Y1, 10*typeface.CapHeight)
	}
	if w := typeface.WidthMm("HH", 10, false); b.X0 < 0 || b.X1 > w || b.X1 < 0.8*w {
		t.Errorf("HH reaches from %v to %v, width %v", b.X0, b.X1, w)
	}
}

// A subset is a font of its own: a reader that knows nothing of ours finds the
// glyphs under their old numbers, with outlines and advances as they were, the
// parts of composed ones among them, and no others.
func TestSubset(t *testing.T) {
	t.Parallel()
	for name, bold := range map[string]bool{"DejaVuSansCondensed.ttf": false, "DejaVuSansCondensed-Bold.ttf": true} {
		all := whole(t, name)
		var glyphs []uint16
		for _, r := range "AØé½ " {
			id, advance := typeface.Glyph(r, bold)
			if id != all.GlyphIndex(r) || advance != all.GlyphAdvance(id) {
				t.Errorf("%s: %q is glyph %d, %d wide", name, r, id, advance)
			}
			glyphs = append(glyphs, id)
		}
		file, err := typeface.Subset(bold, glyphs)
		if err != nil {
			t.Fatal(err)
		}
		if len(file) > 52_000 {
			t.Errorf("%s: %d bytes for five glyphs", name, len(file))
		}
		part, err := font.ParseEmbeddedSFNT(file, 0)
		if err != nil {
			t.Fatal(err)
		}
		for _, tag := range []string{"cvt ", "fpgm", "prep"} {
			if part.Tables[tag] != nil {
				t.Errorf("%s: the subset has a table %s", name, tag)
			}
		}
		if most := binary.BigEndian.Uint16(part.Tables["maxp"][26:]); most != 0 {
			t.Errorf("%s: instructions of up to %d bytes", name, most)
		}
		filled := 0
		for g := range all.NumGlyphs() {
			if len(part.Glyf.Get(g)) > 0 {
				filled++
			}
		}
		if filled < 5 || filled > 14 {
			t.Errorf("%s: %d glyphs have an outline", name, filled)
		}
		for _, g := range glyphs {
			var a, b canvas.Path
			if err := errors.Join(all.GlyphPath(&a, g, 0, 0, 0, 1, font.NoHinting), part.GlyphPath(&b, g, 0, 0, 0, 1, font.NoHinting)); err != nil {
				t.Fatal(err)
			}
			// The length of the program stands behind the ends of the contours, or
			// a flag of a part tells of it.
			if glyph := part.Glyf.Get(g); len(glyph) > 0 {
				contours := int(int16(binary.BigEndian.Uint16(glyph)))
				at := 10 + 2*max(0, contours)
				if v := binary.BigEndian.Uint16(glyph[at:]); contours >= 0 && v != 0 || contours < 0 && v&(1<<8) != 0 {
					t.Errorf("%s: glyph %d has instructions", name, g)
				}
			}
			if a.String() != b.String() || part.GlyphAdvance(g) != all.GlyphAdvance(g) {
				t.Errorf("%s: glyph %d has changed", name, g)
			}
		}
	}
	if _, err := typeface.Subset(false, []uint16{65535}); err == nil {
		t.Error("a glyph that is not there gives no error")
	}
}
