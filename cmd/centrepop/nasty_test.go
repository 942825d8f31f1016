//go:build unix

package main

import (
	"fmt"
	"math"
	"path/filepath"
	"strings"
	"testing"
	"unicode"

	"centrepop/render/measure"
)

// TestNastyButValid prints jobs that strain the sheets but are right, and
// measures the pages: nothing off the paper, no text over another.
func TestNastyButValid(t *testing.T) {
	t.Parallel()
	plate, housing := fileText(t, "testdata/hostile/good/plate.yaml"), fileText(t, "testdata/hostile/good/housing.yaml")
	long := strings.Repeat("w", 60)
	words := strings.TrimSpace(strings.Repeat("word and ", 22))
	for _, c := range []struct{ name, job, part string }{
		{"long title of words", "", plate + "title: " + words + "\n"},
		{"long title in one word", "", plate + "title: " + strings.Repeat("W", 200) + "\n"},
		{"long names", "", strings.NewReplacer("part: plate", "part: "+long, "bolts", long).Replace(plate)},
		{"long texts everywhere", "revision: " + strings.Repeat("R", 40) + "\ndrawn: " + words + "\nchecked: " + strings.Repeat("m", 200) + "\nnotes: [" + strings.Repeat("n", 2000) + "]\n",
			strings.Replace(plate, "size: M10", "note: "+words+", size: M10", 1) + "material: " + strings.Repeat("S", 200) + "\nnotes: [" + strings.Repeat("N", 2000) + "]\n"},
		{"hundred notes", "", plate + "notes:\n" + numbered(100, "  - "+strings.Repeat("Mind the edge %[1]d. ", 20)+"\n")},
		{"other alphabets", "", plate + "title: \"Plate Ωμέγα щи e\\u0301\\u0302 \\u00a0x\"\nmaterial: \"Сталь 45\"\nnotes: [\"ΩΩ ½ ≤ Ø ± ⌀ √ →\", \"" + strings.Repeat("Щ", 500) + "\"]\n"},
		{"largest quantity", "", plate + "quantity: 10000\n"},
		{"three hundred holes", "", strings.NewReplacer("count: 6", "count: 300", "M10 clearance", "0.5").Replace(plate)},
		{"smallest part", "", "part: dot\nkind: plate\nthickness: 0.001\noutline: {circle: 0.001}\n"},
		{"smallest hole", "", strings.Replace(plate, "M10 clearance", "0.001", 1)},
		{"holes on one another", "", plate + "  - {name: again, circle: {pcd: 140, count: 6, first: 30}, size: M10 tap}\n"},
		{"hundred steps", "", "part: s\nkind: shaft\nprofile:\n  outside:\n" + numbered(100, "    - {name: s%d, diameter: 50, length: 1}\n")},
		{"thin and ten metres", "", "part: s\nkind: shaft\nprofile:\n  outside:\n    - {diameter: 1, length: 9999}\n"},
		{"hundred radial holes", "", strings.NewReplacer("clock: 0", "clock: ["+strings.Trim(numbered(100, "%d, "), ", ")+"]", "M10x1 tap", "0.5").Replace(housing)},
		{"nearly a tube", "", "part: c\nkind: cone\ncone: {large: 300, small: 299, height: 300, thickness: 0.001}\n"},
		{"nearly a disc", "", "part: c\nkind: cone\ncone: {large: 300, small: 1, height: 0.01, thickness: 0.001}\n"},
		{"smallest paper", "paper: 140x200 mm\n", plate + "title: " + words + "\n"},
		{"largest paper", "paper: 2000x2000 mm\n", plate},
		{"long paper", "paper: 2000x140 mm\n", plate},
		{"byte order mark and CRLF", "", "\ufeff" + strings.ReplaceAll(plate, "\n", "\r\n")},
		{"path of curves", "", "part: blob\nkind: plate\nthickness: 3\noutline: {path: \"M100 0 C100 55 55 100 0 100 S-100 55 -100 0 Q-100 -100 0 -100 T100 0 Z\"}\n"},
	} {
		t.Run(c.name, func(t *testing.T) {
			t.Parallel()
			dir := t.TempDir()
			job := filepath.Join(dir, "job.yaml")
			write(t, filepath.Join(dir, "part.yaml"), c.part)
			write(t, job, "job: "+c.name+"\nunits: mm\nparts: [part.yaml]\n"+c.job)
			doc := opened(t, "sheets", "--draft", job)
			for page := range min(doc.Pages(), 12) {
				checkPrint(t, doc, page)
			}
		})
	}
}

// checkPrint checks one page: every character is on the paper, and no two
// lie over each other.
func checkPrint(t *testing.T, doc *measure.Doc, page int) {
	t.Helper()
	width, height := doc.Size(page)
	chars := doc.Chars(page)
	if len(chars) < 20 {
		t.Errorf("page %d has only %d characters", page+1, len(chars))
	}
	const edge = 3 // mm that office printers cannot reach; common practice, no source
	upright := make([]bool, len(chars))
	for i, a := range chars {
		if a.Left < edge || a.Bottom < edge || a.Right > width-edge || a.Top > height-edge {
			t.Errorf("page %d: %s lies off the paper of %.0f × %.0f mm", page+1, around(chars, i), width, height)
			return
		}
		// Accents belong over letters, and slanting boxes cannot tell.
		upright[i] = !unicode.Is(unicode.M, a.Rune) && math.Mod(a.AngleDeg, 90) == 0
		for k, b := range chars[:i] {
			if upright[i] && upright[k] && a.Left < b.Right && b.Left < a.Right &&
				over(a.Left, a.Right, b.Left, b.Right) > 0.4 && over(a.Bottom, a.Top, b.Bottom, b.Top) > 0.4 {
				t.Errorf("page %d: %s lies over %s", page+1, around(chars, i), around(chars, k))
				return
			}
		}
	}
}

// over is the part of the shorter of two stretches that they share, 0 to 1.
func over(a0, a1, b0, b1 float64) float64 {
	return (math.Min(a1, b1) - math.Max(a0, b0)) / math.Min(a1-a0, b1-b0)
}

// around shows a character with its neighbours.
func around(chars []measure.Char, i int) string {
	var b strings.Builder
	for _, c := range chars[max(0, i-12):min(len(chars), i+12)] {
		b.WriteRune(c.Rune)
	}
	return fmt.Sprintf("%q in %q at %.1f, %.1f", chars[i].Rune, b.String(), chars[i].Left, chars[i].Bottom)
}
