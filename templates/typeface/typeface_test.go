package typeface_test

import (
	"encoding/binary"
	"errors"
	"math"
	"os"
	"strings"
	"testing"
	"unicode"
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

// TestEveryCharacter: a character has what cmap and hmtx of both files say of it, read by another reader; what either
// lacks is set as Missing. The width of a text is the sum, whatever stands beside it.
func TestEveryCharacter(t *testing.T) {
	files := map[bool]*font.SFNT{false: whole(t, "DejaVuSansCondensed.ttf"), true: whole(t, "DejaVuSansCondensed-Bold.ttf")}
	either := 0 // in one file alone
	for r := rune(0); r <= 0xFB06; r++ {
		if r == 0x2C80 {
			r = 0xA640 // what is between, neither has
		}
		if r == 0xA800 {
			r = 0xF000
		}
		if r == 0xF010 {
			r = 0xFB00
		}
		in := [2]bool{files[false].GlyphIndex(r) != 0, files[true].GlyphIndex(r) != 0}
		if in[0] != in[1] {
			either++
		}
		if typeface.Has(r) && !(in[0] && in[1]) || !typeface.Has(r) && in[0] && in[1] && unicode.IsPrint(r) {
			t.Errorf("Has(%U) is %v, in the files %v", r, typeface.Has(r), in)
		}
		for bold, file := range files {
			set := r
			if !typeface.Has(r) {
				set = typeface.Missing
			}
			id, advance := typeface.Glyph(r, bold)
			if id != file.GlyphIndex(set) || advance != file.GlyphAdvance(id) {
				t.Errorf("%U, bold %v: glyph %d, %d wide", r, bold, id, advance)
			}
			if got, want := typeface.WidthMm("a"+string(r)+"b", 2048, bold), typeface.WidthMm("ab", 2048, bold)+float64(advance); got != want {
				t.Errorf("%U, bold %v: %v wide, want %v", r, bold, got, want)
			}
		}
	}
	if either == 0 {
		t.Error("no character is in one file alone, so the test shows nothing of those")
	}
}

// TestWrapBreaks: where lines break: at any white space, exactly at the width and not above it, within a word that is
// too wide by characters, and by bytes where they are no characters. Each digit is 1172/2048 em wide, a space 585.
func TestWrapBreaks(t *testing.T) {
	const digit, space = 1172 * 3 / 2048.0, 585 * 3 / 2048.0
	missing := typeface.WidthMm("\xff", 3, false)
	for _, c := range []struct {
		text  string
		width float64
		want  string
	}{
		{"0\t0\u00a00", 50, "0 0 0"}, {"\u2003 0", 50, "0"}, {"0 ", 50, "0"}, {" ", 50, ""}, {"0  0", 50, "0 0"},
		{"0 0", 2*digit + space, "0 0"}, {"0 0", 2*digit + space - 1e-6, "0|0"}, {"00 0 0", 2*digit + space, "00|0 0"},
		{"00", 2 * digit, "00"}, {"00", 2*digit - 1e-6, "0|0"}, {"0 0000 0", 3 * digit, "0|000|0 0"}, {"0 0000 00", 2*digit + 1e-6, "0|00|00|00"},
		{"\xff\xff\xff\xff\xff", 2*missing + 1e-6, "\xff\xff|\xff\xff|\xff"}, {"é0é0é", 1e-6, "é|0|é|0|é"}, {"\uFFFD\uFFFD", 1e-6, "\uFFFD|\uFFFD"},
		{"0 0", 0, "0 0"}, {"0 0\n0", -1, "0 0|0"}, {"0 0", math.Inf(1), "0 0"}, {"0\n", 50, "0|"},
	} {
		if got := strings.Join(typeface.Wrap(c.text, 3, c.width, false), "|"); got != c.want {
			t.Errorf("Wrap(%q, %v) = %q, want %q", c.text, c.width, got, c.want)
		}
	}
	for _, size := range []float64{0, math.NaN(), math.Inf(1)} {
		if got := typeface.Wrap("0  0", size, 1, false); len(got) != 1 || got[0] != "0  0" {
			t.Errorf("size %v: %q", size, got)
		}
		if path, err := typeface.Outline("H", size, false); err != nil || !path.Empty() {
			t.Errorf("outline at size %v: %v, %v", size, path, err)
		}
	}
}

// TestWrapCopiesNothing: the lines of a text whose words are a space apart are pieces of it; one with other white space is copied.
func TestWrapCopiesNothing(t *testing.T) {
	single, double := "one two three four", "one two  three four"
	wrap := func(text string) float64 {
		return testing.AllocsPerRun(20, func() { typeface.Wrap(text, 3, 10, false) })
	}
	wrap(single)
	if a, b := wrap(single), wrap(double); a >= b {
		t.Errorf("%v allocations for single spaces, %v for a double one", a, b)
	}
	if a, b := wrap(single), wrap(single+" "); a != b {
		t.Errorf("%v allocations, %v with a space at the end", a, b)
	}
}

// TestOutlinePlaces: each glyph stands where the advances before it end, at the scale of the size.
func TestOutlinePlaces(t *testing.T) {
	one, err := typeface.Outline("H", 10, true)
	if err != nil {
		t.Fatal(err)
	}
	for _, before := range []string{"", "H", "1é ", "漢"} {
		path, err := typeface.Outline(before+"H", 20, true)
		if err != nil {
			t.Fatal(err)
		}
		at, w := path.Bounds(), one.Bounds()
		if want := typeface.WidthMm(before, 20, true) + 2*w.X1; math.Abs(at.X1-want) > 1e-6 || math.Abs(path.Length()) < 2*one.Length()-1e-6 {
			t.Errorf("after %q it ends at %v, want %v", before, at.X1, want)
		}
	}
}
