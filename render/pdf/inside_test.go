package pdf

import (
	"encoding/binary"
	"fmt"
	"testing"

	"github.com/tdewolff/canvas"
)

// TestGreyProfile reads the profile as ICC.1:2001-04 (version 2) lays it out: head
// of 128 bytes with the size first, illuminant D50 (0.9642, 1, 0.8249 in 16.16), then
// the table of tags, each in its place, on a boundary of four.
func TestGreyProfile(t *testing.T) {
	t.Parallel()
	b := greyProfile()
	at := func(i int) int { return int(binary.BigEndian.Uint32(b[i:])) }
	if at(0) != len(b) || at(8) != 0x02100000 || string(b[12:24]) != "prtrGRAYXYZ " || string(b[36:40]) != "acsp" {
		t.Fatalf("head % x", b[:40])
	}
	d50 := []int{0xF6D6, 0x10000, 0xD32D}
	for i, want := range d50 {
		if got := at(68 + 4*i); got != want {
			t.Errorf("illuminant %d is %x, want %x", i, got, want)
		}
	}
	for _, c := range b[80:128] {
		if c != 0 {
			t.Errorf("something is reserved: % x", b[80:128])
			break
		}
	}
	const name = "Grey, gamma 2.2"
	want := map[string]string{"desc": "desc", "cprt": "text", "wtpt": "XYZ ", "kTRC": "curv"}
	next := 128 + 4 + 12*len(want)
	if at(128) != len(want) {
		t.Fatalf("%d tags", at(128))
	}
	for i := range len(want) {
		sign, from, size := string(b[132+12*i:][:4]), at(136+12*i), at(140+12*i)
		if from != next || from%4 != 0 || from+size > len(b) || string(b[from:][:4]) != want[sign] {
			t.Errorf("%s at %d, %d long, of %d", sign, from, size, len(b))
			continue
		}
		next = from + (size+3)/4*4
		switch sign {
		case "desc": // 12, the name and its 0, and 78 for the other languages
			if size != 12+len(name)+1+78 || at(from+8) != len(name)+1 || string(b[from+12:][:len(name)]) != name {
				t.Errorf("%s is %d long", sign, size)
			}
		case "wtpt":
			for k, v := range d50 {
				if at(from+8+4*k) != v {
					t.Errorf("white %d is %x", k, at(from+8+4*k))
				}
			}
		case "kTRC":
			if gamma := float64(binary.BigEndian.Uint16(b[from+12:])) / 256; at(from+8) != 1 || gamma < 2.195 || gamma > 2.205 {
				t.Errorf("gamma %v", gamma)
			}
		}
	}
	if next != len(b) {
		t.Errorf("%d bytes, the last tag ends at %d", len(b), next)
	}
}

// TestWidths: neighbours share a list, another begins after a gap (ISO 32000-1,
// 9.7.4.3).
func TestWidths(t *testing.T) {
	t.Parallel()
	for want, used := range map[string][]glyph{
		"": nil, "3[500]": {{id: 3, advance: 500}}, "3[500 250]": {{id: 3, advance: 500}, {id: 4, advance: 250}},
		"3[500.123]": {{id: 3, advance: 500.12345}}, "3[500]\n5[250]": {{id: 3, advance: 500}, {id: 5, advance: 250}}, "3[500 1]\n9[2 3]": {{id: 3, advance: 500}, {id: 4, advance: 1}, {id: 9, advance: 2}, {id: 10, advance: 3}},
	} {
		if got := string(widths(used)); got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}

// TestRectangle: which subpaths are upright rectangles, and their corner and sides.
func TestRectangle(t *testing.T) {
	t.Parallel()
	for svg, want := range map[string][]float64{
		"M3 4H10V20H3Z": {3, 4, 7, 16}, "M-3 -4H10V-20H-3Z": {-3, -4, 13, -16}, "M3 4V20H10V4Z": nil, "M3 4H10V20H4Z": nil, "M3 4L10 5V20H3Z": nil,
		"M3 4H10L11 20H3Z": nil, "M3 4H10V20L3 21Z": nil, "M3 4H10V20Z": nil,
		"M3 4H10V20H3V4": nil, "M3 4H10V20H3": nil, "M3 4C3 4 10 4 10 4L3 20Z": nil, "M3 4L10 4C10 4 10 20 10 20Z": nil, "M3 4Q5 4 10 4Q10 20 3 20L3 4": nil, "M3 4H10V20H3L5 5Z": nil,
	} {
		x, y, w, h, ok := rectangle(canvas.MustParseSVGPath(svg).Data())
		if ok != (want != nil) || ok && fmt.Sprint(x, y, w, h) != fmt.Sprint(want[0], want[1], want[2], want[3]) {
			t.Errorf("%s: %g, %g, %g, %g, %v", svg, x, y, w, h, ok)
		}
	}
}
