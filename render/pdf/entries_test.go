package pdf

import (
	"bytes"
	"fmt"
	"regexp"
	"strings"
	"testing"

	"github.com/tdewolff/canvas"

	"centrepop/render/measure"
	"centrepop/templates/draw"
	"centrepop/templates/typeface"
)

// written are the objects of a file, by their numbers from 1.
func written(t *testing.T, f *file, b *bytes.Buffer) (out []string) {
	t.Helper()
	if err := f.w.Flush(); err != nil {
		t.Fatal(err)
	}
	for i := range f.offsets {
		_, body, _ := strings.Cut(b.String()[f.offsets[i]:], fmt.Sprintf("%d 0 obj\n", i+1))
		body, _, _ = strings.Cut(body, "\nendobj")
		out = append(out, body)
	}
	return out
}

// TestOutlineWritten: each bookmark names those round it, its page, and how many it shows when open (ISO 32000-1, table 153).
func TestOutlineWritten(t *testing.T) {
	t.Parallel()
	var b bytes.Buffer
	f := newFile(&b, &packer{})
	if root := f.outline(&draw.Document{Pages: make([]draw.Page, 2)}, nil); root != 0 || len(f.offsets) != 0 {
		t.Errorf("no bookmarks: object %d", root)
	}
	doc := &draw.Document{Pages: []draw.Page{
		{Bookmarks: []draw.Bookmark{{Title: "a"}, {Title: "b", Level: 1}, {Title: "c", Level: 2}}},
		{Bookmarks: []draw.Bookmark{{Title: "d", Level: 1}, {Title: "e"}}},
		{Bookmarks: []draw.Bookmark{{Title: "f", Level: 1}}},
	}}
	if root := f.outline(doc, []int{71, 72, 73}); root != 1 {
		t.Errorf("the root is %d", root)
	}
	want := []string{
		"<</Type /Outlines /First 2 0 R /Last 6 0 R /Count 6>>",
		"<</Title (a) /Parent 1 0 R /Next 6 0 R /First 3 0 R /Last 5 0 R /Count 3 /Dest [71 0 R /Fit]>>",
		"<</Title (b) /Parent 2 0 R /Next 5 0 R /First 4 0 R /Last 4 0 R /Count 1 /Dest [71 0 R /Fit]>>",
		"<</Title (c) /Parent 3 0 R /Dest [71 0 R /Fit]>>",
		"<</Title (d) /Parent 2 0 R /Prev 3 0 R /Dest [72 0 R /Fit]>>",
		"<</Title (e) /Parent 1 0 R /Prev 2 0 R /First 7 0 R /Last 7 0 R /Count 1 /Dest [72 0 R /Fit]>>",
		"<</Title (f) /Parent 6 0 R /Dest [73 0 R /Fit]>>",
	}
	for i, got := range written(t, f, &b) {
		if got != want[i] {
			t.Errorf("object %d is %s, want %s", i+1, got, want[i])
		}
	}
}

// TestPlainDocument: pages without labels are numbered from 1, and a file without bookmarks, title, subject or language
// says nothing of them.
func TestPlainDocument(t *testing.T) {
	t.Parallel()
	var b bytes.Buffer
	if err := Write(&b, &draw.Document{Date: "2025-03-14", Pages: []draw.Page{{WidthMm: 100, HeightMm: 50}, {WidthMm: 100, HeightMm: 50, Label: "T"}, {WidthMm: 100, HeightMm: 50}}}); err != nil {
		t.Fatal(err)
	}
	d := measure.Open(t, b.Bytes())
	for i, want := range []string{"1", "T", "3"} {
		if got := d.Label(i); got != want {
			t.Errorf("page %d is labelled %q, want %q", i+1, got, want)
		}
	}
	if !strings.Contains(b.String(), "/MediaBox [0 0 283.4646 141.7323]") { // to a ten thousandth of a point
		t.Error("the pages have another size")
	}
	for _, key := range []string{"/Outlines", "/PageMode", "/Title", "/Subject", "/Lang", "/Annots"} {
		if strings.Contains(b.String(), key) {
			t.Errorf("the file has %s", key)
		}
	}
}

// TestFontEntries: the measures of the faces in thousandths of their size, as their own tables have them (DejaVu Sans
// Condensed 2.37, of 2048 units: ascender 1901, descender -483, capitals 1493), and their characters, a hundred a block.
func TestFontEntries(t *testing.T) {
	t.Parallel()
	for bold, name := range map[bool]string{false: "DejaVuSansCondensed /Flags 4", true: "DejaVuSansCondensed-Bold /Flags 4"} {
		var b bytes.Buffer
		f := newFile(&b, &packer{})
		if _, err := f.font(bold, []glyph{{id: 36, char: 'A', advance: 615.5}, {id: 37, char: 'B'}}); err != nil {
			t.Fatal(err)
		}
		all, stem := strings.Join(written(t, f, &b), "\n"), map[bool]string{false: "/StemV 80 ", true: "/StemV 140 "}[bold]
		m := typeface.MetricsOf(bold)
		box := fmt.Sprintf("/FontBBox [%.0f %.0f %.0f %.0f] ", float64(m.XMin)/2.048, float64(m.YMin)/2.048, float64(m.XMax)/2.048, float64(m.YMax)/2.048)
		for _, want := range []string{name, " /Ascent 928 /Descent -236 /CapHeight 729 ", stem, box, "/W [36[615.5 0]]"} {
			if !strings.Contains(all, want) {
				t.Errorf("bold %v: no %q", bold, want)
			}
		}
	}
	var used []glyph
	for i := range uint16(201) {
		used = append(used, glyph{id: 3 + i, char: rune(0x1E00 + int(i))})
	}
	for n, blocks := range map[int]string{0: "", 1: "1 ", 99: "99 ", 100: "100 ", 101: "100 1 ", 200: "100 100 ", 201: "100 100 1 "} {
		text, got := string(toUnicode(used[:n])), ""
		for _, m := range regexp.MustCompile(`(\d+ )beginbfchar\n((?:<.*\n)*)endbfchar`).FindAllStringSubmatch(text, -1) {
			if got += m[1]; fmt.Sprint(strings.Count(m[2], "\n"), " ") != m[1] {
				t.Errorf("%d glyphs: a block of %s has %d", n, m[1], strings.Count(m[2], "\n"))
			}
		}
		if got != blocks || n > 0 && !strings.Contains(text, fmt.Sprintf("<%04X> <%04X>\n", 2+n, 0x1E00+n-1)) {
			t.Errorf("%d glyphs: blocks of %q, want %q", n, got, blocks)
		}
	}
}

// TestClipReach: what lies off all of a clip is left out, and what lies in any of its parts is not, at either side of them.
func TestClipReach(t *testing.T) {
	t.Parallel()
	for _, clip := range []string{"M10 10H20V20H10Z", "M10 10H12V12H10Z M18 18H20V20H18Z", "M18 18H20V20H18Z M10 10H12V12H10Z", "M-20 -20H-10V-10H-20Z"} {
		for _, moved := range [][2]float64{{0, 0}, {30, 40}} {
			b := path(clip).Bounds()
			for _, at := range []struct {
				x, y float64
				seen bool
			}{
				{b.X0 - 0.9, b.Y0 - 0.9, true}, {b.X1 + 0.9, b.Y1 + 0.9, true}, {b.X0 - 1.1, b.Y0, false}, {b.X0, b.Y0 - 1.1, false}, {b.X1 + 1.1, b.Y1, false}, {b.X1, b.Y1 + 1.1, false},
			} {
				dot := draw.Shape{Path: path("M0 0H2V2H0Z").Translate(at.x-1, at.y-1), Fill: draw.Black}
				p := &painter{pen: freshPen, seen: draw.R(-100, -100, 100, 100), dxMm: moved[0], dyMm: moved[1]}
				p.clip(path(clip))
				before := len(p.b)
				if err := p.shape(dot); err != nil {
					t.Fatal(err)
				}
				if (len(p.b) > before) != at.seen {
					t.Errorf("clip %s moved by %v: a dot at %v, %v is drawn %v", clip, moved, at.x, at.y, !at.seen)
				}
			}
		}
	}
}

// TestMovedGroups: only what is moved and neither turned, stretched nor mirrored is written where it lies; all else has a
// matrix, whichever of its numbers it is.
func TestMovedGroups(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		m     canvas.Matrix
		moved bool
	}{
		{canvas.Matrix{{1, 0, 25.4}, {0, 1, 50.8}}, true}, {canvas.Matrix{{2, 0, 25.4}, {0, 1, 50.8}}, false}, {canvas.Matrix{{1, 0.5, 25.4}, {0, 1, 50.8}}, false},
		{canvas.Matrix{{1, 0, 25.4}, {0.5, 1, 50.8}}, false}, {canvas.Matrix{{1, 0, 25.4}, {0, 2, 50.8}}, false}, {canvas.Matrix{{-1, 0, 25.4}, {0, 1, 50.8}}, false},
	} {
		got := content(t, draw.Group{Drawing: &draw.Drawing{Items: []draw.Item{lined("M0 0L25.4 0")}}, Transform: c.m})
		if strings.Contains(got, " cm\n") == c.moved || strings.Contains(got, "72 144 m 144 144 l") != c.moved {
			t.Errorf("%v: %s", c.m, got)
		}
	}
}
